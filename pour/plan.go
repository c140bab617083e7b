// Package pour is the design of a soap pour: the plan a maker writes, the edits she makes to it,
// and [Work], which turns a plan, a shelf and her hand into a [Sheet] of figures.
//
// Everything here is a plain value. Nothing reads a file, a clock or a terminal, and nothing but
// Work and the functions below it works out a figure.
//
// Units: g, mL, mm, °C and min, percent in plans and sheets, fractions inside formulas.
package pour

import "time"

// FormatVersion is the version of the plan file this program writes and reads.
const FormatVersion = 1

// Plan is one design: a base batter split into jugs, poured into a mould, with an optional icing.
type Plan struct {
	Name     string    // title on screens and papers
	Notes    string    // the maker's own words; never interpreted
	PourAt   time.Time // wall clock at the bench when the base's lye meets its oils; zero: papers carry relative times
	Show     Show
	Mould    Mould
	Room     Room
	Swirl    Swirl
	Bed      Bed
	Run      RunPlan
	Piping   Piping // the shape of the icing
	Top      Top    // what goes onto and into the poured loaf
	Cut      Cut
	Cure     Cure
	Cost     Cost
	Label    Label
	Base     Batch
	Icing    *Batch // nil: no icing
	Template bool   // begins new plans: opened at the bench it gives one of its own
	Trial    bool   // a trial: the jugs are watched, nothing is poured, nothing is put to bed
	AgainOf  string // id of the pour in the logbook that it pours again; empty: none
}

// The units figures are drawn in.
const (
	MassGram   = "g"
	MassOunce  = "oz" // avoirdupois
	DegreesC   = "C"
	DegreesF   = "F"
	LengthMM   = "mm"
	LengthInch = "in"
)

// Show says how figures are drawn; the plan itself is always metric.
type Show struct {
	Mass        string  // MassGram or MassOunce
	Temperature string  // DegreesC or DegreesF
	Length      string  // LengthMM or LengthInch
	ScaleStepG  float64 // the step of the kitchen scale, g, > 0
	LyeStepG    float64 // the finer step for alkali and small doses, g, > 0
}

// Room is where the pour happens.
type Room struct {
	TemperatureC    float64 // air, °C, -10 to 50
	HumidityPercent float64 // relative humidity where the bars lie; 0: not stated
}

// Swirl is how the jugs meet in the mould.
type Swirl struct {
	Technique  string  // id of a technique on the shelf
	Seed       int64   // which of the many faces this technique can pour
	Passes     int     // rounds in which every jug has its turn, ways over the mould with the pot, or strokes of the comb; 0: the technique's own
	Turns      float64 // turns of the tool; 0: the technique's own
	HeightMM   float64 // height poured from; 0: the technique's own
	First      string  // jug that is poured first whatever its colour; empty: any
	Last       string  // jug that is poured last; empty: any
	PotBetween bool    // some of the pot is poured between every two others, so that no two others touch
}

// Ways to put the loaf to bed.
const (
	BedBare     = "bare"     // uncovered or lightly covered at room temperature
	BedInsulate = "insulate" // wrapped warm, to drive gel
	BedChill    = "chill"    // refrigerated, to keep gel away
)

// Bed is what happens from the last pour to the shelf.
type Bed struct {
	Keep      string  // BedBare, BedInsulate or BedChill
	CutAfterH float64 // hours in the mould before the cut, from lye-in
	CureDays  float64 // days on the rack after the cut
}

// Do is what is done to the loaf to keep it so, for every text that tells its bed.
func (b Bed) Do() string {
	switch b.Keep {
	case BedInsulate:
		return "cover it without touching the top and wrap it warm, towards gel"
	case BedChill:
		return "cover it without touching the top and chill it, apart from food, against gel"
	default:
		return "cover it lightly without touching the top, no wrapping"
	}
}

// Lies is how the loaf lies then.
func (b Bed) Lies() string {
	switch b.Keep {
	case BedInsulate:
		return "wrapped"
	case BedChill:
		return "chilled"
	default:
		return "covered lightly, not wrapped"
	}
}

// RunPlan is how long the hands need, and an order of tasks that differs from the usual one.
type RunPlan struct {
	CoolLyeMin float64  // from dissolving to the planned lye temperature; 0: estimated
	SplitMin   float64  // to pour off one jug
	StirMin    float64  // to stir the colour into one jug
	ScentMin   float64  // to stir scent into one jug
	PourMin    float64  // to pour one jug in full, however many rounds it takes
	ChangeMin  float64  // in rounds: to put one jug down and take the next
	IntoPotMin float64  // to pour one jug into the pot in full
	TurnMin    float64  // one turn of the spoon or stick in the pot
	PourOutMin float64  // to pour the pot out in full
	WireMin    float64  // to draw the wire through the mould
	CombMin    float64  // one stroke of the comb over the whole mould
	SpoonMin   float64  // to lay one jug by the spoonful, in full
	LevelMin   float64  // to tap the mould down or even the top
	PipeMin    float64  // to pipe or spoon one jug of icing that has no shape
	PeakMin    float64  // to try whether the base carries icing; 0: as usual
	SkinMin    float64  // from the last touch of the fresh top until it has skinned; 0: estimated
	MarkMin    float64  // to lay the marks of all cuts; 0: as usual
	CutMin     float64  // one cut, and to wipe what cut; 0: as usual
	WeighMin   float64  // to weigh one bar; 0: as usual
	BedMin     float64  // to cover and put away
	Order      []string // task keys in the maker's order; tasks not named keep their usual place
}

// Ways to size a batch.
const (
	SizeMould = "mould" // base: fill the mould to its fill height
	SizeOils  = "oils"  // oils are given, the height follows
	SizeBar   = "bar"   // icing: grams on every bar
	SizeLayer = "layer" // icing: top area × mean height
	SizeShape = "shape" // icing: what its [piping] shape comes to
)

// How the jugs of an icing come into the bag.
const (
	BagEach = "each" // a bag for each jug
	BagOne  = "one"  // the jugs side by side in one bag: striped
)

// What happens to the oil that carries a colourant.
const (
	CarrierExtra = "extra"      // on top of the batch: more superfat in that jug
	CarrierBatch = "from_batch" // taken out of the batch before mixing: of the oil named as the carrier or, where none is, of its largest
)

// What a KOH share is a share of.
const (
	ShareMoles = "moles" // of the demand, by moles
	ShareMass  = "mass"  // of the mass of the pure alkali: KOH ÷ (KOH + NaOH)
)

// Batch is one mixing of oils and lye: the base or the icing.
type Batch struct {
	Size                    string  // SizeMould, SizeOils, SizeBar, SizeLayer or SizeShape
	OilsG                   float64 // SizeOils: all oils, g
	PerBarG                 float64 // SizeBar: icing on each bar, g
	LayerMM                 float64 // SizeLayer: mean height over the bar, mm
	LossPercent             float64 // icing: stays in the bag and bowl; the base's loss is the mould's
	SuperfatPercent         float64 // lye discount, -5 to 40
	LyeConcentrationPercent float64 // alkali as weighed ÷ (alkali as weighed + all its water), 10 to 60
	KOHSharePercent         float64 // of the pure alkali, by moles or by mass as KOHShareBy says
	KOHShareBy              string  // ShareMoles or ShareMass; empty: ShareMoles
	NaOHPurityPercent       float64 // 50 to 100
	KOHPurityPercent        float64 // 50 to 100
	StockLyePercent         float64 // pure NaOH in a ready solution, % by mass; 0: dry alkali is weighed
	OilsC                   float64 // planned temperature of the melted oils
	LyeC                    float64 // planned temperature of the lye
	BatterC                 float64 // measured batter temperature; used when BatterMeasured
	BatterMeasured          bool
	Blend                   []Burst // stick-blender bursts; empty: stirred by hand only
	SplitAtMin              float64 // after this batch's lye-in
	StartAtMin              float64 // icing: its lye-in on the run clock; the base starts at 0
	FinalMoisturePercent    float64 // water left in the cured bar, 0 to 30
	Carrier                 string  // CarrierExtra or CarrierBatch
	CarrierOil              string  // oil id for oil-borne colourants
	ReadyBlend              string  // name of a ready-mixed oil blend: one weighing; empty: oil by oil
	Oils                    []OilPart
	Extras                  []ExtraPart
	Jugs                    []Jug // the first is the pot
	Scents                  []ScentPart
	Bags                    string // icing: BagEach or BagOne; empty: BagEach
}

// Burst is one run of the stick blender.
type Burst struct {
	AtMin float64 // after this batch's lye-in
	S     float64 // seconds
}

// OilPart is an oil's part of a batch's oils.
type OilPart struct {
	Oil     string  // id on the shelf
	Percent float64 // of all oils by mass; the parts of a batch sum to 100, or it is not finished: see [Batch.Unfinished]
	Held    bool    // keeps its part when another changes; a part that is typed is held
}

// Where an extra goes in.
const (
	InOils  = "oils"      // stirred into the melted oils
	InLye   = "lye"       // into the lye, before or after the alkali, as the shelf says
	InWater = "lye_water" // it is the lye's water, or part of it: there before the alkali; what is mostly water is frozen or chilled first
)

// ExtraPart goes into the whole batch before the split: white pigment, shimmer, sugar, salt, milk.
type ExtraPart struct {
	Extra         string  // id of an extra or of a colourant on the shelf
	PercentOfOils float64 // by mass
	In            string  // InOils, InLye or InWater; empty: where the shelf says
}

// Jug is a coloured portion of a batch.
type Jug struct {
	Name         string
	SharePercent float64 // of the batter by mass; the shares of a batch sum to 100
	Held         bool    // keeps its share when another changes
	CapacityML   float64 // of the vessel; 0: not stated
	BatterColour string  // "#rrggbb" of the finished batter; empty: estimated
	Colourants   []Dose
}

// What a colourant is wetted with before it goes into its jug.
const (
	CarryOil      = "oil"
	CarryWater    = "water"
	CarryGlycerin = "glycerin"
	CarryNone     = "none" // stirred in dry
)

// Dose is one colourant in one jug.
type Dose struct {
	Colourant    string  // id on the shelf
	DosePercent  float64 // of that jug's batter by mass
	CarrierParts float64 // grams of carrier per gram of pigment; 0: as the shelf says
	Carrier      string  // CarryOil, CarryWater, CarryGlycerin or CarryNone; empty: as the colourant disperses
}

// ScentPart is one scent and the jugs it goes to.
type ScentPart struct {
	Scent         string   // id on the shelf
	PercentOfOils float64  // of the batch's oils by mass, as makers say it
	Into          []string // jug names; empty: every jug
	AtMin         float64  // earliest minute after this batch's lye-in
}

// Clone returns a copy that shares nothing with p.
func (p Plan) Clone() Plan {
	p.Run.Order = append([]string(nil), p.Run.Order...)
	p.Top = p.Top.clone()
	p.Cost.Packaging = append([]PackagingPart(nil), p.Cost.Packaging...)
	p.Cut.MarksMM = append([]float64(nil), p.Cut.MarksMM...)
	p.Cut.WiresMM = append([]float64(nil), p.Cut.WiresMM...)
	p.Base = p.Base.Clone()
	if p.Icing != nil {
		icing := p.Icing.Clone()
		p.Icing = &icing
	}
	return p
}

// Clone returns a copy that shares nothing with b.
func (b Batch) Clone() Batch {
	b.Blend = append([]Burst(nil), b.Blend...)
	b.Oils = append([]OilPart(nil), b.Oils...)
	b.Extras = append([]ExtraPart(nil), b.Extras...)
	b.Jugs = append([]Jug(nil), b.Jugs...)
	for i := range b.Jugs {
		b.Jugs[i].Colourants = append([]Dose(nil), b.Jugs[i].Colourants...)
	}
	b.Scents = append([]ScentPart(nil), b.Scents...)
	for i := range b.Scents {
		b.Scents[i].Into = append([]string(nil), b.Scents[i].Into...)
	}
	return b
}
