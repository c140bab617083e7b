package pour

// The outlines of an embed seen from above.
const (
	OutlineRound   = "round"   // a cylinder, a disc
	OutlineBall    = "ball"    // a sphere
	OutlineBox     = "box"     // a cuboid
	OutlineEllipse = "ellipse" // an oval piece
	OutlineRod     = "rod"     // a rod along the whole loaf, cut through by every wire
	OutlineOwn     = "own"     // with the corners the maker measured, cut from a sheet
)

// What an embed is made of.
const (
	EmbedSoap  = "cold_process"
	EmbedMelt  = "melt_and_pour"
	EmbedDried = "dried"
	EmbedOther = "other"
)

// Which bars an embed stands in.
const (
	EmbedEach = "bar" // every bar
	EmbedOwn  = "at"  // where at_mm says
)

// Embed is one kind of piece that is set into the top. What is 0 or empty is as it usually is: see [Embed.material] and [Embed.made].
type Embed struct {
	Name       string
	Outline    string    // one of the Outline… words; empty: OutlineRound
	LengthMM   float64   // along the loaf; the diameter of what is round, a rod's too
	WidthMM    float64   // across it; 0: as long
	Corners    []float64 // OutlineOwn: x and y of each corner in turn, along the loaf and across it, in any unit and from any place
	TurnDeg    float64   // turned from above
	AnyTurn    bool      // it may come to lie any way round
	HeightMM   float64   // of the whole piece; 0: its length
	OutMM      float64   // of its height, stands out of the base
	G          float64   // of one piece, as weighed; 0: from its volume
	DensityGML float64   // 0: that of its material
	Colour     string    // "#rrggbb"; empty: grey
	Material   string    // one of the Embed… materials; empty: EmbedSoap
	MadeDays   float64   // before the pour it is made; 0: as long as it has to harden
	HardDays   float64   // it has to harden; 0: as its material has to
	Hard       bool      // it is harder than the loaf at its cut
	In         string    // EmbedEach or EmbedOwn; empty: EmbedEach
	Every      int       // every so many bars; 0: each
	PerBar     int       // side by side across the bar; 0: one
	AlongMM    float64   // from the bar's middle towards end B
	AcrossMM   float64   // from the bar's middle to the right, seen from end A
	AtMM       []float64 // EmbedOwn: centres from end A
	SetMin     float64   // to set one piece; 0: as it usually takes
	AsBase     bool      // of cold-process soap: made as the base is, its colours and scents with it
	MadeOf     []MadeOf  // what it is made of; none: as AsBase says, or not known
}

// MadeOf is a part of what an embed is made of.
type MadeOf struct {
	Name    string  // as a list of ingredients names it
	Percent float64 // of the piece by mass; the parts of a piece sum to 100, or none says how much
}

// Fields are the rows of the list, pointing into the item.
func (m *MadeOf) Fields() []Field {
	return []Field{
		{Key: "name", Label: "ingredient", Need: Required, High: 80, At: &m.Name, Means: "as a list of ingredients names it"},
		{Key: "percent", Label: "part", Need: Quiet, Unit: UnitPercent, High: 100, Step: 1, At: &m.Percent, Means: "of the piece by mass; all 0: not known"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (e *Embed) Fields() []Field {
	return []Field{
		{Key: "name", Label: "name", Need: Required, Takes: TakesName, High: 24, At: &e.Name, Means: "what the piece is called"},
		{Key: "outline", Label: "outline", Need: Quiet, Takes: TakesWord, Words: OutlineRound + " " + OutlineBall + " " + OutlineBox + " " + OutlineEllipse + " " + OutlineRod + " " + OutlineOwn, At: &e.Outline, Means: "its outline from above; rod: along the whole loaf; own: by corners"},
		{Key: "length_mm", Label: "along the loaf", Need: Required, Unit: UnitMM, Low: 1, High: 3000, Step: 1, At: &e.LengthMM, Means: "along the loaf; the diameter of what is round, a rod's too"},
		{Key: "width_mm", Label: "across", Need: Quiet, Unit: UnitMM, High: 2000, Step: 1, At: &e.WidthMM, Means: "across the loaf; 0: as long"},
		{Key: "corners", Label: "corners", Need: Quiet, Low: -10000, High: 10000, Step: 1, At: &e.Corners, Means: "where outline is own: x, y of each corner in turn, along and across, drawn at any size; length_mm makes it as long"},
		{Key: "turn_deg", Label: "turned by", Need: Quiet, Unit: UnitDegree, Low: -180, High: 180, Step: 5, At: &e.TurnDeg, Means: "turned, seen from above"},
		{Key: "any_turn", Label: "any way round", Need: Quiet, At: &e.AnyTurn, Means: "it may come to lie any way round"},
		{Key: "height_mm", Label: "height", Need: Quiet, Unit: UnitMM, High: 500, Step: 1, At: &e.HeightMM, Means: "of the whole piece; 0: its length"},
		{Key: "out_mm", Label: "stands out", Need: Quiet, Unit: UnitMM, High: 500, Step: 1, At: &e.OutMM, Means: "of its height, above the base"},
		{Key: "g", Label: "weighs", Need: Quiet, Unit: UnitGram, High: 5000, Step: 0.1, At: &e.G, Means: "one piece as weighed; 0: from its volume"},
		{Key: "density_g_ml", Label: "density", Need: Quiet, Unit: UnitDensity, High: 5, Step: 0.01, At: &e.DensityGML, Means: "0: that of its material"},
		{Key: "colour", Label: "colour", Need: Quiet, Takes: TakesColour, At: &e.Colour, Means: "for the pictures"},
		{Key: "material", Label: "material", Need: Quiet, Takes: TakesWord, Words: EmbedSoap + " " + EmbedMelt + " " + EmbedDried + " " + EmbedOther, At: &e.Material, Means: "what it is made of"},
		{Key: "made_days", Label: "made before", Need: Quiet, Unit: UnitDay, High: 3650, Step: 1, At: &e.MadeDays, Means: "days before the pour it is made"},
		{Key: "hard_days", Label: "hardens for", Need: Quiet, Unit: UnitDay, High: 365, Step: 1, At: &e.HardDays, Means: "days it needs to harden; 0: as its material does"},
		{Key: "hard", Label: "harder than the loaf", Need: Quiet, At: &e.Hard, Means: "it is harder than the loaf is at its cut"},
		{Key: "in", Label: "stands in", Need: Quiet, Takes: TakesWord, Words: EmbedEach + " " + EmbedOwn, At: &e.In, Means: "the bars, or where at_mm says"},
		{Key: "every", Label: "every so many bars", Need: Quiet, High: 100, Step: 1, At: &e.Every, Means: "every so many bars; 0: each"},
		{Key: "per_bar", Label: "in each bar", Need: Quiet, High: 40, Step: 1, At: &e.PerBar, Means: "side by side across the bar; 0: one"},
		{Key: "along_mm", Label: "off the middle, along", Need: Quiet, Unit: UnitMM, Low: -500, High: 500, Step: 0.5, At: &e.AlongMM, Means: "from the bar's middle towards end B"},
		{Key: "across_mm", Label: "off the middle, across", Need: Quiet, Unit: UnitMM, Low: -1000, High: 1000, Step: 0.5, At: &e.AcrossMM, Means: "from the bar's middle to the right, seen from end A"},
		{Key: "at_mm", Label: "centres", Need: Quiet, Unit: UnitMM, High: 3000, Step: 0.5, At: &e.AtMM, Means: "centres from end A, where in is at"},
		{Key: "set_min", Label: "set one", Need: Quiet, Unit: UnitMinute, High: 10, Step: 0.05, At: &e.SetMin, Means: "to set one piece; 0: estimated"},
		{Key: "as_base", Label: "made as the base", Need: Quiet, At: &e.AsBase, Means: "cold-process soap of the base's own recipe, its colours and scents with it; counts where made_of says nothing"},
		{Key: "made_of", Label: "made of", Need: Quiet, High: maxParts, At: &e.MadeOf, Means: "its ingredients; none: as as_base says, or not known, and then no label is printed"},
	}
}

// stuff is what an embed of a material usually is.
type stuff struct {
	called          string
	gml             float64 // density, g/mL
	lowGML, highGML float64 // what can be; 0: anything
	hardDays        float64 // between its making and the pour
}

// material is what is taken where the plan says nothing. Densities: a finished bar 1.05 (middle of 1.02 to 1.08, memory); glycerin soap 1.12, between
// soap and glycerol (assumed); dried pieces 0.4 (assumed: weigh one); anything else as water. What can be: soap from whipped, 0.7, to salty or full of
// clay, 1.3, melt-and-pour soap up to that too, glycerol having 1.26; dried pieces up to sugar's 1.6 (all assumed). Days: cold-process soap 1 to 7, 3 in the middle, melt
// and pour hours to a day, dried pieces none; common practice, no source.
func (e *Embed) material() stuff {
	switch e.Material {
	case EmbedMelt:
		return stuff{called: "melt-and-pour soap", gml: 1.12, lowGML: 0.7, highGML: 1.3, hardDays: 1}
	case EmbedDried:
		return stuff{called: "a dried piece", gml: 0.4, highGML: 1.6}
	case EmbedOther:
		return stuff{gml: 1}
	default:
		return stuff{called: "soap", gml: 1.05, lowGML: 0.7, highGML: 1.3, hardDays: 3}
	}
}

// hardDays is how long it has to harden before it is set, days.
func (e *Embed) hardDays() float64 {
	return orUsual(e.HardDays, e.material().hardDays)
}

// made is how old it is at the pour, days.
func (e *Embed) made() float64 {
	return orUsual(e.MadeDays, e.hardDays())
}

// agedHard is from how many days on a cold-process piece is taken to be harder than a loaf that is cut the day after: common practice, no source.
const agedHard = 14

// hard reports whether it is harder than the loaf at its cut, so that a wire goes round it rather than through it.
func (e *Embed) hard() bool {
	return e.Hard || e.soap() && e.made() >= agedHard
}

func (e *Embed) soap() bool { return e.Material == "" || e.Material == EmbedSoap }

// gml is its density, g/mL.
func (e *Embed) gml() float64 {
	return orUsual(e.DensityGML, e.material().gml)
}

// width, height: across the loaf and from its bottom to its top, mm.
func (e *Embed) width() float64 {
	return orUsual(e.WidthMM, e.LengthMM)
}

func (e *Embed) height() float64 {
	if e.Outline == OutlineBall {
		return e.LengthMM
	}
	return orUsual(e.HeightMM, e.LengthMM)
}

// side is how many stand side by side across a bar.
func (e *Embed) side() int { return max(e.PerBar, 1) }

// setMin is how long setting one takes, min: a few seconds, common practice, no source.
func (e *Embed) setMin() float64 {
	const usual = 0.1
	return orUsual(e.SetMin, usual)
}
