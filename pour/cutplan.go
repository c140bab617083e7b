package pour

// Ways to plan the cuts.
const (
	CutBars  = "bars"  // bars of the mould's thickness, as many as there is room for
	CutCount = "count" // so many bars, all alike
	CutMass  = "mass"  // so many bars, all of one mass
	CutMarks = "marks" // where marks_mm says
	CutGang  = "gang"  // the maker's own wires, all at once
	CutBest  = "best"  // most bars, embeds that stand where they are told to clear of every cut, bars alike
)

// Where the length that is left over goes.
const (
	LeftEndB  = "b"     // all of it to end B
	LeftEndA  = "a"     // all of it to end A
	LeftTrims = "trims" // to both ends alike
	LeftBars  = "bars"  // to the bars
)

// How the loaf lies under the cutter.
const (
	LayUpright    = "upright"
	LaySide       = "side"
	LayUpsideDown = "upside_down"
	LayPulledUp   = "pulled_up" // upright, the wire pulled up from below
)

// What bars ought to be alike in, where the plan is looked for.
const (
	EvenMass      = "mass"
	EvenThickness = "thickness"
)

// What cuts.
const (
	CutWire  = "wire"
	CutBlade = "blade"
)

// Cut is how the loaf is cut. Lengths are from the named end A of the mould; a cut is where the middle of a wire or blade passes.
type Cut struct {
	By        string    // one of the Cut… ways; empty: CutBars
	Count     int       // bars wanted, where By is CutCount or CutMass; 0: as many as bars of the mould's thickness
	KerfMM    float64   // what one cut takes
	TrimAMM   float64   // least trim at end A; 0: the end is kept
	TrimBMM   float64   // least trim at end B; 0: the end is kept
	SliceMM   float64   // a sample slice; 0: none
	SliceAt   string    // "a" or "b"; empty: "a"
	Left      string    // one of the Left… words; empty: LeftEndB, where By is CutCount LeftBars
	MarksMM   []float64 // CutMarks: the cuts
	WiresMM   []float64 // CutGang: where the wires stand, measured from the first
	GangAtMM  float64   // CutGang: where the first wire stands; 0: where it suits best
	Tool      string    // CutWire or CutBlade; empty: CutWire
	VaryMM    float64   // CutBest: a bar may be so much thinner or thicker than the mould's; 0: usualVaryMM
	Even      string    // CutBest: EvenMass or EvenThickness; empty: EvenMass
	Lay       string    // one of the Lay… words; empty: LayUpright
	OpeningMM float64   // what the cutter lets through under its wires; 0: not stated
	BedMM     float64   // how deep its bed is, from the stop behind; 0: not stated
	ClearMM   float64   // clearance wanted on each side of an embed
	PlaceMM   float64   // how far off a piece is set by hand
	WanderMM  float64   // how far a cut wanders
	RimMM     float64   // height of rule or rim over the base's surface; 0: as the mould's rim
	SightDeg  float64   // how far from upright the maker looks down
	EyeMM     float64   // the eye stays over the middle of the loaf, so high above rule or rim; 0: it moves over every mark
}

func cutFields(c *Cut) []Field {
	return []Field{
		{Key: "by", Label: "cut by", Need: Quiet, Takes: TakesWord, Words: CutBars + " " + CutCount + " " + CutMass + " " + CutMarks + " " + CutGang + " " + CutBest, At: &c.By, Means: "the mould's bar thickness, a number of equal bars, of bars of one mass, your own marks, your own wires, the best plan around your embeds"},
		{Key: "count", Label: "bars wanted", Need: Quiet, High: 200, Step: 1, At: &c.Count, Means: "bars, where by is count or mass; 0: as many as fit"},
		{Key: "kerf_mm", Label: "a cut takes", Need: Quiet, Unit: UnitMM, High: 10, Step: 0.1, At: &c.KerfMM, Means: "what one cut takes of the length"},
		{Key: "trim_a_mm", Label: "trim at end A", Need: Quiet, Unit: UnitMM, High: 500, Step: 1, At: &c.TrimAMM, Means: "least that is trimmed at end A; 0: the end is kept"},
		{Key: "trim_b_mm", Label: "trim at end B", Need: Quiet, Unit: UnitMM, High: 500, Step: 1, At: &c.TrimBMM, Means: "least that is trimmed at end B; 0: the end is kept"},
		{Key: "slice_mm", Label: "sample slice", Need: Quiet, Unit: UnitMM, High: 100, Step: 1, At: &c.SliceMM, Means: "a slice to keep as a sample; 0: none"},
		{Key: "slice_at", Label: "slice at end", Need: Quiet, Takes: TakesWord, Words: "a b", At: &c.SliceAt, Means: "at which end it is cut"},
		{Key: "left", Label: "what is left over", Need: Quiet, Takes: TakesWord, Words: LeftEndB + " " + LeftEndA + " " + LeftTrims + " " + LeftBars, At: &c.Left, Means: "goes to one end, to both trims or to the bars; left out: to end B, where by is count to the bars"},
		{Key: "marks_mm", Label: "own cuts", Need: Quiet, Unit: UnitMM, High: 3000, Step: 0.5, At: &c.MarksMM, Means: "cuts from end A, where by is marks"},
		{Key: "wires_mm", Label: "own wires", Need: Quiet, Unit: UnitMM, High: 3000, Step: 0.5, At: &c.WiresMM, Means: "where the wires stand as measured, the first at 0, where by is gang"},
		{Key: "gang_at_mm", Label: "first wire at", Need: Quiet, Unit: UnitMM, High: 3000, Step: 0.5, At: &c.GangAtMM, Means: "where the first wire meets the loaf; 0: where it suits best"},
		{Key: "vary_mm", Label: "bars may vary by", Need: Quiet, Unit: UnitMM, High: 100, Step: 0.5, At: &c.VaryMM, Means: "where by is best: so much thinner or thicker than the mould's bars; 0: 2"},
		{Key: "even", Label: "bars alike in", Need: Quiet, Takes: TakesWord, Words: EvenMass + " " + EvenThickness, At: &c.Even, Means: "where by is best: what they ought to be alike in"},
		{Key: "tool", Label: "cut with", Need: Quiet, Takes: TakesWord, Words: CutWire + " " + CutBlade, At: &c.Tool, Means: "what cuts"},
		{Key: "lay", Label: "loaf lies", Need: Quiet, Takes: TakesWord, Words: LayUpright + " " + LaySide + " " + LayUpsideDown + " " + LayPulledUp, At: &c.Lay, Means: "how the loaf lies under the cutter"},
		{Key: "opening_mm", Label: "cutter lets through", Need: Quiet, Unit: UnitMM, High: 1000, Step: 1, At: &c.OpeningMM, Means: "height between bed and frame; 0: not stated"},
		{Key: "bed_mm", Label: "cutter's bed", Need: Quiet, Unit: UnitMM, High: 1000, Step: 1, At: &c.BedMM, Means: "how deep its bed is, from the stop behind; 0: not stated"},
		{Key: "clear_mm", Label: "clearance wanted", Need: Standing, Unit: UnitMM, Default: 3, High: 100, Step: 0.5, At: &c.ClearMM, Means: "between a cut and an embed"},
		{Key: "place_mm", Label: "set by hand within", Need: Standing, Unit: UnitMM, Default: 1, High: 50, Step: 0.5, At: &c.PlaceMM, Means: "how far off a piece is set by hand"},
		{Key: "wander_mm", Label: "a cut wanders", Need: Standing, Unit: UnitMM, Default: 0.5, High: 50, Step: 0.1, At: &c.WanderMM, Means: "how far a cut wanders, a wire bows"},
		{Key: "rim_mm", Label: "rim over the soap", Need: Quiet, Unit: UnitMM, High: 300, Step: 1, At: &c.RimMM, Means: "height of rule or rim above the base; 0: as the mould's rim"},
		{Key: "sight_deg", Label: "you look from", Need: Standing, Unit: UnitDegree, Default: 5, High: 60, Step: 1, At: &c.SightDeg, Means: "how far from upright you look down on a mark"},
		{Key: "eye_mm", Label: "your eye stays at", Need: Quiet, Unit: UnitMM, High: 3000, Step: 10, At: &c.EyeMM, Means: "height over the rim of an eye that stays over the loaf's middle; 0: it moves with each mark"},
	}
}
