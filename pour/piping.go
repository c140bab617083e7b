package pour

// The shapes an icing is piped or spooned in.
const (
	PipeFree    = "free"    // no shape is stated: so much on every bar, put on by eye
	PipeDollop  = "dollop"  // pressed out upright over one spot
	PipeRosette = "rosette" // a flat coil
	PipeShells  = "shells"  // a border of shells
	PipeRope    = "rope"    // a strand, straight or wound
	PipeRuffle  = "ruffle"  // a ribbon in waves
	PipeSpooned = "spooned" // a layer with a relief
)

// The tips an icing is piped from.
const (
	TipRound = "round"
	TipStar  = "star"
	TipSlot  = "slot" // a petal or basket tip
)

// Where piped units stand.
const (
	PipeBars = "bars" // so many on the centre of every bar
	PipeLoaf = "loaf" // in rows along the whole loaf
)

// The reliefs of a spooned top.
const (
	ReliefWaves  = "waves"  // sine or triangular ridges
	ReliefSwoops = "swoops" // parabolic valleys with sharp crests
	ReliefPoints = "points" // cones on a square grid
)

// Piping is the shape of the icing: the tip, what is made with it, and the bags.
type Piping struct {
	Shape    string  // one of the Pipe… shapes; empty: PipeFree
	Tip      string  // one of the Tip… words; empty: TipRound
	Points   int     // of a star
	TipMM    float64 // width of the opening: the diameter over a star's tips, a slot's length
	ValleyMM float64 // of a star: the diameter at its valleys
	WideMM   float64 // of a slot: its width at the wide end
	NarrowMM float64 // of a slot: its width at the narrow end
	Swell    float64 // diameter of the strand ÷ that of the opening; 0: 1
	Pull     float64 // hand speed ÷ speed out of the tip; 0: 1

	WidthMM        float64 // of one unit across: a dollop's base, a shell's head
	HeightMM       float64 // of one unit
	Profile        float64 // of a dollop: 0 is taken as a cone, 1; 0.5 is round
	CoilFromMM     float64 // of a rosette: radius at which the strand's centre line begins
	CoilMM         float64 // of a rosette: radius at which it ends
	Tiers          int     // of a rosette: coils one upon the other, each ending half a strand further in; 0: one
	OverlapPercent float64 // of a strand's width, or of a shell's length
	HeadMM         float64 // of a shell: length of its head
	TailMM         float64 // of a shell: length of its tail
	WindMM         float64 // of a rope: radius of its winding; 0: straight
	PitchMM        float64 // of a rope: length of one winding
	SwingMM        float64 // of a ruffle: amplitude
	WaveMM         float64 // of a ruffle: wavelength
	LayerMM        float64 // spooned: height of the flat layer
	ReliefMM       float64 // spooned: height of the relief above it
	Relief         string  // spooned: one of the Relief… words; empty: ReliefWaves

	Along  string // PipeBars or PipeLoaf; empty: PipeBars
	PerBar int    // units on every bar; 0: one
	Rows   int    // rows along the loaf; 0: one

	CupML          float64 // what a measuring cup holds; 0: not weighed
	CupG           float64 // icing in that cup, as weighed
	OverrunPercent float64 // air whipped in, where no cup was weighed
	ResiduePercent float64 // of what is made, stays in bag and tip
	ResidueBagG    float64 // stays in each bag and tip; 0: ResiduePercent counts
	BagG           float64 // what a bag is filled with at most
	UnitS          float64 // seconds for one unit or for 100 mm along the loaf
	FillMin        float64 // to fill one bag
	LeastG         float64 // the smallest batch the maker's vessel can blend; 0: not stated
	PeakMM         float64 // how high a peak pulled from the base stands when it is piped on; 0: to be tried
}

// Shaped says whether a shape is stated. Without one the icing is put on by eye, and what is said of bags and tips counts for nothing.
func (p *Piping) Shaped() bool { return p.Shape != "" && p.Shape != PipeFree }

// Spoons says whether the icing is spooned on: it fills no bag.
func (p *Piping) Spoons() bool { return p.Shape == PipeSpooned }

// border says whether the shape is a strand or a ribbon, as long as there is room.
func (p *Piping) border() bool { return p.Shape == PipeRope || p.Shape == PipeRuffle }

func pipingFields(p *Piping) []Field {
	return []Field{
		{Key: "shape", Label: "shape", Need: Quiet, Takes: TakesWord, Words: PipeFree + " " + PipeDollop + " " + PipeRosette + " " + PipeShells + " " + PipeRope + " " + PipeRuffle + " " + PipeSpooned, At: &p.Shape, Means: "what is piped or spooned; free: by eye"},
		{Key: "tip", Label: "tip", Need: Quiet, Takes: TakesWord, Words: TipRound + " " + TipStar + " " + TipSlot, At: &p.Tip, Means: "the opening it is piped from"},
		{Key: "points", Label: "points of the star", Need: Quiet, High: 24, Step: 1, At: &p.Points, Means: "of a star tip"},
		{Key: "tip_mm", Label: "tip opening", Need: Quiet, Unit: UnitMM, High: 60, Step: 0.5, At: &p.TipMM, Means: "diameter of the opening, over a star's points; a slot's length"},
		{Key: "valley_mm", Label: "between the points", Need: Quiet, Unit: UnitMM, High: 60, Step: 0.5, At: &p.ValleyMM, Means: "of a star: diameter at its valleys"},
		{Key: "wide_mm", Label: "slot, wide end", Need: Quiet, Unit: UnitMM, High: 60, Step: 0.5, At: &p.WideMM, Means: "of a slot: width at its wide end"},
		{Key: "narrow_mm", Label: "slot, narrow end", Need: Quiet, Unit: UnitMM, High: 60, Step: 0.5, At: &p.NarrowMM, Means: "of a slot: width at its narrow end"},
		{Key: "swell", Label: "strand swells by", Need: Quiet, High: 2, Step: 0.01, At: &p.Swell, Means: "diameter of the strand by that of the opening; 0: 1"},
		{Key: "pull", Label: "pulled by", Need: Quiet, High: 5, Step: 0.05, At: &p.Pull, Means: "speed of the hand by that out of the tip; 0: 1, neither stretched nor heaped"},
		{Key: "width_mm", Label: "width of one", Need: Quiet, Unit: UnitMM, High: 500, Step: 1, At: &p.WidthMM, Means: "of one unit across: a dollop's base, a shell's head"},
		{Key: "height_mm", Label: "height of one", Need: Quiet, Unit: UnitMM, High: 300, Step: 1, At: &p.HeightMM, Means: "of one dollop or shell"},
		{Key: "profile", Label: "profile", Need: Quiet, High: 4, Step: 0.25, At: &p.Profile, Means: "of a dollop: 1 a cone, 0.5 round; 0: 1"},
		{Key: "coil_from_mm", Label: "coil begins at", Need: Quiet, Unit: UnitMM, High: 200, Step: 0.5, At: &p.CoilFromMM, Means: "of a rosette: radius of the strand's middle where the coil begins"},
		{Key: "coil_mm", Label: "coil ends at", Need: Quiet, Unit: UnitMM, High: 200, Step: 0.5, At: &p.CoilMM, Means: "of a rosette: radius of the strand's middle where the coil ends"},
		{Key: "tiers", Label: "coils upon each other", Need: Quiet, High: 6, Step: 1, At: &p.Tiers, Means: "of a rosette, each ending half a strand further in than the one below; 0: one"},
		{Key: "overlap_percent", Label: "overlap", Need: Quiet, Unit: UnitPercent, High: 90, Step: 5, At: &p.OverlapPercent, Means: "of a strand's width in a coil, or of a shell's length"},
		{Key: "head_mm", Label: "shell's head", Need: Quiet, Unit: UnitMM, High: 200, Step: 1, At: &p.HeadMM, Means: "length of a shell's head"},
		{Key: "tail_mm", Label: "shell's tail", Need: Quiet, Unit: UnitMM, High: 200, Step: 1, At: &p.TailMM, Means: "length of a shell's tail"},
		{Key: "wind_mm", Label: "rope winds by", Need: Quiet, Unit: UnitMM, High: 100, Step: 0.5, At: &p.WindMM, Means: "of a rope: radius of its winding; 0: straight"},
		{Key: "pitch_mm", Label: "one winding", Need: Quiet, Unit: UnitMM, High: 200, Step: 1, At: &p.PitchMM, Means: "of a rope: length of one winding"},
		{Key: "swing_mm", Label: "ruffle swings by", Need: Quiet, Unit: UnitMM, High: 100, Step: 0.5, At: &p.SwingMM, Means: "of a ruffle: how far it swings to each side"},
		{Key: "wave_mm", Label: "one wave", Need: Quiet, Unit: UnitMM, High: 200, Step: 1, At: &p.WaveMM, Means: "of a ruffle: length of one wave"},
		{Key: "layer_mm", Label: "flat layer", Need: Quiet, Unit: UnitMM, High: 200, Step: 1, At: &p.LayerMM, Means: "spooned: height of the flat layer"},
		{Key: "relief_mm", Label: "relief", Need: Quiet, Unit: UnitMM, High: 200, Step: 1, At: &p.ReliefMM, Means: "spooned: height of the relief above it"},
		{Key: "relief", Label: "relief is", Need: Quiet, Takes: TakesWord, Words: ReliefWaves + " " + ReliefSwoops + " " + ReliefPoints, At: &p.Relief, Means: "spooned: what the relief looks like"},
		{Key: "along", Label: "stands", Need: Quiet, Takes: TakesWord, Words: PipeBars + " " + PipeLoaf, At: &p.Along, Means: "on the middle of every bar, or in rows along the loaf"},
		{Key: "per_bar", Label: "on each bar", Need: Quiet, High: 40, Step: 1, At: &p.PerBar, Means: "units on every bar; 0: one"},
		{Key: "rows", Label: "rows", Need: Quiet, High: 40, Step: 1, At: &p.Rows, Means: "rows along the loaf; 0: one"},
		{Key: "cup_ml", Label: "a cup holds", Need: Quiet, Unit: UnitML, High: 5000, Step: 5, At: &p.CupML, Means: "a measuring cup filled with icing; 0: not weighed"},
		{Key: "cup_g", Label: "the cup weighs", Need: Quiet, Unit: UnitGram, High: 5000, Step: 1, At: &p.CupG, Means: "icing in that cup"},
		{Key: "overrun_percent", Label: "air whipped in", Need: Quiet, Unit: UnitPercent, High: 200, Step: 5, At: &p.OverrunPercent, Means: "air whipped in, where no cup was weighed"},
		{Key: "residue_percent", Label: "stays in the bag", Need: Standing, Unit: UnitPercent, Default: 7, High: 60, Step: 1, At: &p.ResiduePercent, Means: "of what is made, stays in bag and tip; counts instead of icing.loss_percent as soon as a shape is stated"},
		{Key: "residue_bag_g", Label: "stays in each bag", Need: Quiet, Unit: UnitGram, High: 500, Step: 5, At: &p.ResidueBagG, Means: "stays in each bag and tip; 0: residue_percent counts"},
		{Key: "bag_g", Label: "a bag holds", Need: Standing, Unit: UnitGram, Default: 250, High: 5000, Step: 10, At: &p.BagG, Means: "what a bag is filled with at most"},
		{Key: "unit_s", Label: "time for one", Need: Standing, Unit: UnitSecond, Default: 7, High: 600, Step: 1, At: &p.UnitS, Means: "for one unit, or for 100 mm along the loaf"},
		{Key: "fill_min", Label: "fill a bag", Need: Standing, Unit: UnitMinute, Default: 2.5, High: 60, Step: 0.5, At: &p.FillMin, Means: "to fill one bag"},
		{Key: "least_g", Label: "least that blends", Need: Quiet, Unit: UnitGram, High: 5000, Step: 10, At: &p.LeastG, Means: "smallest batch your vessel can blend; 0: not stated"},
		{Key: "peak_mm", Label: "peak of the base", Need: Quiet, Unit: UnitMM, High: 200, Step: 1, At: &p.PeakMM, Means: "how high a peak pulled from the base stands when it is piped on; 0: to be tried"},
	}
}
