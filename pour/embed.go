package pour

// The outlines of an embed seen from above.
const (
	OutlineRound   = "round"   // a cylinder, a disc
	OutlineBall    = "ball"    // a sphere
	OutlineBox     = "box"     // a cuboid
	OutlineEllipse = "ellipse" // an oval piece
	OutlineRod     = "rod"     // a rod along the whole loaf, cut through by every wire
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

// Embed is one kind of piece that is set into the top.
type Embed struct {
	Name       string
	Outline    string    // one of the Outline… words; empty: OutlineRound
	LengthMM   float64   // along the loaf; the diameter of what is round
	WidthMM    float64   // across it; 0: as long
	TurnDeg    float64   // turned from above
	AnyTurn    bool      // it may come to lie any way round
	HeightMM   float64   // of the whole piece; 0: of a ball, its diameter
	OutMM      float64   // of its height, stands out of the base
	G          float64   // of one piece, as weighed; 0: from its volume
	DensityGML float64   // 0: that of its material
	Colour     string    // "#rrggbb"; empty: grey
	Material   string    // one of the Embed… materials; empty: EmbedSoap
	MadeDays   float64   // before the pour it is made
	HardDays   float64   // it needs to harden
	In         string    // EmbedEach or EmbedOwn; empty: EmbedEach
	Every      int       // every so many bars; 0: each
	PerBar     int       // side by side across the bar; 0: one
	AlongMM    float64   // from the bar's middle towards end B
	AcrossMM   float64   // from the bar's middle to the right, seen from end A
	AtMM       []float64 // EmbedOwn: centres from end A
	SetMin     float64   // to set one piece
}

// Fields are the rows of the list, pointing into the item.
func (e *Embed) Fields() []Field {
	return []Field{
		{Key: "name", Label: "name", Need: Required, Takes: TakesName, High: 24, At: &e.Name, Means: "what the piece is called"},
		{Key: "outline", Label: "outline", Need: Quiet, Takes: TakesWord, Words: OutlineRound + " " + OutlineBall + " " + OutlineBox + " " + OutlineEllipse + " " + OutlineRod, At: &e.Outline, Means: "its outline from above; rod: along the whole loaf"},
		{Key: "length_mm", Label: "along the loaf", Need: Required, Unit: UnitMM, Low: 1, High: 3000, Step: 1, At: &e.LengthMM, Means: "along the loaf; the diameter of what is round"},
		{Key: "width_mm", Label: "across", Need: Quiet, Unit: UnitMM, High: 2000, Step: 1, At: &e.WidthMM, Means: "across the loaf; 0: as long"},
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
		{Key: "in", Label: "stands in", Need: Quiet, Takes: TakesWord, Words: EmbedEach + " " + EmbedOwn, At: &e.In, Means: "the bars, or where at_mm says"},
		{Key: "every", Label: "every so many bars", Need: Quiet, High: 100, Step: 1, At: &e.Every, Means: "every so many bars; 0: each"},
		{Key: "per_bar", Label: "in each bar", Need: Quiet, High: 40, Step: 1, At: &e.PerBar, Means: "side by side across the bar; 0: one"},
		{Key: "along_mm", Label: "off the middle, along", Need: Quiet, Unit: UnitMM, Low: -500, High: 500, Step: 0.5, At: &e.AlongMM, Means: "from the bar's middle towards end B"},
		{Key: "across_mm", Label: "off the middle, across", Need: Quiet, Unit: UnitMM, Low: -1000, High: 1000, Step: 0.5, At: &e.AcrossMM, Means: "from the bar's middle to the right, seen from end A"},
		{Key: "at_mm", Label: "centres", Need: Quiet, Unit: UnitMM, High: 3000, Step: 0.5, At: &e.AtMM, Means: "centres from end A, where in is at"},
		{Key: "set_min", Label: "set one", Need: Quiet, Unit: UnitMinute, High: 10, Step: 0.05, At: &e.SetMin, Means: "to set one piece; 0: estimated"},
	}
}

// EmbedSheet is one kind of embed, and where each piece of it stands.
type EmbedSheet struct {
	Name          string
	PieceG        Figure
	SubmergedMM3  Figure // of one piece, below the base's surface
	Pieces        []EmbedPiece
	AllG          Figure
	DisplacesG    Figure // batter that all pieces take the place of
	SetMin        float64
	ExtentMM      Figure // along the loaf
	NeedMM        Figure // clearance each side needs, worst case
	NeedUsuallyMM Figure // where the errors are independent of each other
}

// The verdicts on an embed between two cuts.
const (
	VerdictClear = "clear"
	VerdictTight = "tight"
	VerdictCut   = "will be cut"
)

// EmbedPiece is one piece.
type EmbedPiece struct {
	Bar      int     // from 1; 0: in no bar
	CentreMM float64 // from end A
	AcrossMM float64 // from the loaf's middle to the right, seen from end A
	MarkMM   float64 // as it is marked on the rim, rounded once
	ClearMM  Figure  // to the nearer cut
	Verdict  string
}
