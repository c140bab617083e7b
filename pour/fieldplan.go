package pour

// The defaults below are common practice, no source.

// tableKeys are the tables of a plan file in its order; the first is what stands above the sections.
func tableKeys() []string {
	return []string{"", "show", "mould", "room", "swirl", "bed", "run", string(Base), string(Icing), tablePiping, tableTop, tableCut, tableCure, tableCost, tableLabel}
}

// The tables that are written only where they say something.
const (
	tablePiping = "piping"
	tableTop    = "top"
	tableCut    = "cut"
	tableCure   = "cure"
	tableCost   = "cost"
	tableLabel  = "label"
)

// Tables lists everything a plan holds, table by table in the order of the file, each row pointing into the plan. The
// icing's table is there only when there is an icing.
func (p *Plan) Tables() []Table {
	keys := tableKeys()
	out := make([]Table, 0, len(keys))
	for _, key := range keys {
		if fields := p.fieldsOf(key); fields != nil {
			out = append(out, Table{key, fields})
		}
	}
	return out
}

// fieldsOf are the rows of one table; nil: the plan has no such table.
func (p *Plan) fieldsOf(key string) []Field {
	switch key {
	case "":
		return topFields(p)
	case "show":
		return showFields(&p.Show)
	case "mould":
		return mouldFields(&p.Mould)
	case "room":
		return roomFields(&p.Room)
	case "swirl":
		return swirlFields(&p.Swirl)
	case "bed":
		return bedFields(&p.Bed)
	case "run":
		return runFields(&p.Run)
	case tablePiping:
		return pipingFields(&p.Piping)
	case tableTop:
		return topLists(&p.Top)
	case tableCut:
		return cutFields(&p.Cut)
	case tableCure:
		return cureFields(&p.Cure)
	case tableCost:
		return costFields(&p.Cost)
	case tableLabel:
		return labelFields(&p.Label)
	case string(Base):
		return batchFields(Base, &p.Base)
	case string(Icing):
		if p.Icing != nil {
			return batchFields(Icing, p.Icing)
		}
	}
	return nil
}

func topFields(p *Plan) []Field {
	return []Field{
		{Key: "name", Label: "name", Need: Required, Takes: TakesName, High: 80, At: &p.Name, Means: "title on screens and papers"},
		{Key: "notes", Label: "notes", Need: Quiet, Takes: TakesProse, At: &p.Notes, Means: "your own words; never interpreted"},
		{Key: "pour_at", Label: "pour at", Need: Quiet, At: &p.PourAt, Means: "when the base's lye meets its oils; without it papers tell minutes from there"},
		{Key: "template", Label: "template", Need: Quiet, At: &p.Template, Means: "opened at the bench it begins a new plan"},
		{Key: "trial", Label: "trial", Need: Quiet, At: &p.Trial, Means: "the jugs are watched, nothing is poured"},
		{Key: "again_of", Label: "pours again", Need: Quiet, High: 240, At: &p.AgainOf, Means: "the pour of your logbook that this plan pours again, by its id"},
	}
}

func showFields(s *Show) []Field {
	return []Field{
		{Key: "mass", Label: "mass", Need: Standing, Takes: TakesWord, Words: MassGram + " " + MassOunce, At: &s.Mass, Means: "unit of mass on screens and papers; oz is avoirdupois"},
		{Key: "temperature", Label: "temperature", Need: Standing, Takes: TakesWord, Words: DegreesC + " " + DegreesF, At: &s.Temperature, Means: "unit of temperature on screens and papers"},
		{Key: "length", Label: "length", Need: Standing, Takes: TakesWord, Words: LengthMM + " " + LengthInch, At: &s.Length, Means: "unit of length on screens and papers"},
		{Key: "scale_step_g", Label: "scale step", Need: Standing, Unit: UnitGram, Default: 0.1, Low: 0.001, High: 50, Step: 0.1, At: &s.ScaleStepG, Means: "step of the kitchen scale"},
		{Key: "lye_step_g", Label: "lye scale step", Need: Standing, Unit: UnitGram, Default: 0.1, Low: 0.001, High: 5, Step: 0.01, At: &s.LyeStepG, Means: "finer step, for alkali and small doses"},
	}
}

func mouldFields(m *Mould) []Field {
	return []Field{
		{Key: "shape", Label: "shape", Need: Standing, Takes: TakesWord, Words: ShapeLoaf + " " + ShapeSlab + " " + ShapeTube + " " + ShapeCavity, At: &m.Shape, Means: ShapesMean},
		{Key: "length_mm", Label: "length inside", Need: Required, Unit: UnitMM, Low: 20, High: 3000, Step: 5, At: &m.LengthMM, Means: "inside length; of a tube its diameter, of cavities that of one"},
		{Key: "width_mm", Label: "width inside", Need: Required, Unit: UnitMM, Low: 20, High: 2000, Step: 1, At: &m.WidthMM, Means: "inside width; of a tube its diameter again"},
		{Key: "height_mm", Label: "height to the rim", Need: Required, Unit: UnitMM, Low: 10, High: 1000, Step: 1, At: &m.HeightMM, Means: "inside height to the rim"},
		{Key: "fill_mm", Label: "fill height", Need: Required, Unit: UnitMM, Low: 5, High: 1000, Step: 1, At: &m.FillMM, Means: "planned height of the base batter"},
		{Key: "bar_mm", Label: "bar thickness", Need: Required, Unit: UnitMM, Low: 5, High: 1000, Step: 1, At: &m.BarMM, Means: "thickness of a bar along the length, of a tube's round along its height; cavities: not used"},
		{Key: "bar_width_mm", Label: "bar width (slab)", Need: Quiet, Unit: UnitMM, High: 2000, Step: 1, At: &m.BarWidthMM, Means: "slab: width of a bar across the slab; 0: the whole width"},
		{Key: "cavities", Label: "cavities", Need: Quiet, High: 500, Step: 1, At: &m.Cavities, Means: "cavity: how many single moulds are filled"},
		{Key: "cavity_ml", Label: "one cavity holds", Need: Quiet, Unit: UnitML, High: 2000, Step: 1, At: &m.CavityML, Means: "cavity: mL in one filled to fill_mm; 0: length by width by fill_mm"},
		{Key: "loss_percent", Label: "stays in the pots", Need: Standing, Unit: UnitPercent, Default: 1.5, High: 50, Step: 0.5, At: &m.LossPercent, Means: "of what is mixed, stays in pots, jugs and spoons"},
	}
}

func roomFields(r *Room) []Field {
	return []Field{
		{Key: "temperature_c", Label: "room", Need: Standing, Unit: UnitCelsius, Default: 21, Low: -10, High: 50, Step: 1, At: &r.TemperatureC, Means: "the air where the pour happens"},
		{Key: "humidity_percent", Label: "air is damp by", Need: Quiet, Unit: UnitPercent, High: 100, Step: 5, At: &r.HumidityPercent, Means: "relative humidity where the bars lie; 0: not stated"},
	}
}

func swirlFields(s *Swirl) []Field {
	return []Field{
		{Key: "technique", Label: "technique", Need: Standing, Takes: TakesTechnique, Words: "layers", At: &s.Technique, Means: "how the jugs meet in the mould"},
		{Key: "seed", Label: "seed", Need: Quiet, At: &s.Seed, Means: "which of the many faces the technique can pour"},
		{Key: "passes", Label: "passes", Need: Quiet, High: 60, Step: 1, At: &s.Passes, Means: "rounds, ways over the mould or strokes of the comb; 0: the technique's own"},
		{Key: "turns", Label: "turns of the tool", Need: Quiet, High: 20, Step: 0.5, At: &s.Turns, Means: "turns of the tool; 0: the technique's own"},
		{Key: "height_mm", Label: "pour height", Need: Quiet, Unit: UnitMM, High: 1000, Step: 10, At: &s.HeightMM, Means: "height poured from; 0: the technique's own"},
		{Key: "first", Label: "first", Need: Quiet, Takes: TakesJug, At: &s.First, Means: "jug that is poured first whatever its colour"},
		{Key: "last", Label: "last", Need: Quiet, Takes: TakesJug, At: &s.Last, Means: "jug that is poured last"},
		{Key: "pot_between", Label: "pot between", Need: Quiet, At: &s.PotBetween, Means: "some of the pot is poured between every two others"},
	}
}

func bedFields(b *Bed) []Field {
	return []Field{
		{Key: "keep", Label: "put to bed", Need: Standing, Takes: TakesWord, Words: BedBare + " " + BedInsulate + " " + BedChill, At: &b.Keep, Means: "bare: covered lightly, no wrapping; insulate: wrapped, to drive gel; chill: cold, to keep gel away"},
		{Key: "cut_after_h", Label: "cut after", Need: Standing, Unit: UnitHour, Default: 20, Low: 1, High: 240, Step: 1, At: &b.CutAfterH, Means: "in the mould before the cut, from lye-in"},
		{Key: "cure_days", Label: "cure", Need: Standing, Unit: UnitDay, Default: 28, High: 730, Step: 1, At: &b.CureDays, Means: "on the rack after the cut"},
	}
}

func runFields(r *RunPlan) []Field {
	return []Field{
		{Key: "cool_lye_min", Label: "cool the lye (0: estimate)", Need: Quiet, Unit: UnitMinute, High: 2880, Step: 5, At: &r.CoolLyeMin, Means: "from dissolving to the planned lye temperature; 0: estimated"},
		{Key: "split_min", Label: "split, each jug", Need: Standing, Unit: UnitMinute, Default: 0.5, High: 60, Step: 0.25, At: &r.SplitMin, Means: "to pour off one jug"},
		{Key: "stir_min", Label: "stir colour, each jug", Need: Standing, Unit: UnitMinute, Default: 0.5, High: 60, Step: 0.25, At: &r.StirMin, Means: "to stir the colour into one jug"},
		{Key: "scent_min", Label: "stir scent, each jug", Need: Standing, Unit: UnitMinute, Default: 0.5, High: 60, Step: 0.25, At: &r.ScentMin, Means: "to stir scent into one jug"},
		{Key: "pour_min", Label: "pour, each jug", Need: Standing, Unit: UnitMinute, Default: 1, High: 60, Step: 0.25, At: &r.PourMin, Means: "to pour one jug in full, however many rounds it takes"},
		{Key: "change_min", Label: "change jugs, in rounds", Need: Standing, Unit: UnitMinute, Default: 0.1, High: 10, Step: 0.05, At: &r.ChangeMin, Means: "in rounds: to put one jug down and take the next"},
		{Key: "into_pot_min", Label: "into the pot, each jug", Need: Standing, Unit: UnitMinute, Default: 0.5, High: 60, Step: 0.25, At: &r.IntoPotMin, Means: "to pour one jug into the pot in full"},
		{Key: "turn_min", Label: "turn the spoon once", Need: Standing, Unit: UnitMinute, Default: 0.25, High: 10, Step: 0.25, At: &r.TurnMin, Means: "one turn of the spoon or stick in the pot"},
		{Key: "pour_out_min", Label: "pour the pot out", Need: Standing, Unit: UnitMinute, Default: 1.5, High: 60, Step: 0.25, At: &r.PourOutMin, Means: "to pour the pot out in full"},
		{Key: "wire_min", Label: "draw the wire", Need: Standing, Unit: UnitMinute, Default: 1, High: 60, Step: 0.25, At: &r.WireMin, Means: "to draw the wire through the mould"},
		{Key: "comb_min", Label: "comb, each stroke", Need: Standing, Unit: UnitMinute, Default: 1, High: 60, Step: 0.25, At: &r.CombMin, Means: "one stroke of the comb over the whole mould"},
		{Key: "spoon_min", Label: "spoon, each jug", Need: Standing, Unit: UnitMinute, Default: 3, High: 60, Step: 0.25, At: &r.SpoonMin, Means: "to lay one jug by the spoonful, in full"},
		{Key: "level_min", Label: "tap down, level", Need: Standing, Unit: UnitMinute, Default: 0.25, High: 60, Step: 0.25, At: &r.LevelMin, Means: "to tap the mould down or even the top"},
		{Key: "pipe_min", Label: "pipe, each jug", Need: Standing, Unit: UnitMinute, Default: 2, High: 120, Step: 0.5, At: &r.PipeMin, Means: "to pipe or spoon one jug of icing"},
		{Key: "bed_min", Label: "put to bed", Need: Standing, Unit: UnitMinute, Default: 2, High: 120, Step: 0.5, At: &r.BedMin, Means: "to cover and put away"},
		{Key: "peak_min", Label: "try the base (0: usual)", Need: Quiet, Unit: UnitMinute, High: 60, Step: 0.25, At: &r.PeakMin, Means: "to try whether the base carries icing; 0: 0.5"},
		{Key: "skin_min", Label: "top skins in (0: estimate)", Need: Quiet, Unit: UnitMinute, High: 1440, Step: 5, At: &r.SkinMin, Means: "from the last touch of the fresh top until it has skinned; 0: 45, an estimate"},
		{Key: "mark_min", Label: "lay the marks (0: usual)", Need: Quiet, Unit: UnitMinute, High: 120, Step: 0.5, At: &r.MarkMin, Means: "to lay the marks of all cuts along the loaf; 0: 3"},
		{Key: "cut_min", Label: "cut, each (0: usual)", Need: Quiet, Unit: UnitMinute, High: 60, Step: 0.25, At: &r.CutMin, Means: "one cut, and to wipe what cut; 0: 0.5"},
		{Key: "weigh_min", Label: "weigh, each bar (0: usual)", Need: Quiet, Unit: UnitMinute, High: 30, Step: 0.05, At: &r.WeighMin, Means: "to weigh one bar; 0: 0.25"},
		{Key: "order", Label: "order", Need: Quiet, Takes: TakesTask, At: &r.Order, Means: "tasks in your own order; those not named keep their usual place"},
	}
}
