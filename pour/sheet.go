package pour

import (
	"strings"

	"pourbench/chem"
	"pourbench/pour/script"
)

// Figure is a number that could not always be worked out. An unknown figure is drawn as a dash and written as null, never as 0.
type Figure struct {
	V     float64
	Known bool
}

// Know returns a known figure.
func Know(v float64) Figure { return Figure{V: v, Known: true} }

// Sheet is every figure worked out from a plan.
type Sheet struct {
	Plan      Plan // the plan it was worked out from
	Base      BatchSheet
	Icing     *BatchSheet // nil: no icing
	Run       []Task
	CutRun    []Task // the cut, on a clock of its own: 0 is when it begins
	Bars      Bars
	Gel       Gel           // how warm the loaf gets in its bed; filled in by [Sheet.Time]
	TopScript script.Script // what is done to the poured loaf before it is put to bed
	CutScript script.Script // how it is cut, a day later, and what goes on the bars
	Totals    []Weighing    // everything to weigh, base and icing together, largest first
	Warnings  []Warning     // worst first
	Timed     bool          // the clock's figures and warnings are in it
	Cut       CutSheet      // where the loaf is cut and what comes of it
	Embeds    []EmbedSheet  // by the plan's list
	Piping    PipingSheet   // the icing as it is piped
	Toppings  []ToppingLine
	Cure      CureSheet  // how a bar dries; filled in by [Sheet.Time]
	Cost      CostSheet  // what the batch is going to cost
	Label     LabelSheet // what its label has to say; filled in by [Sheet.Time]
	Mingling  Mingling   // what the colours do beside each other; filled in by [Sheet.Mingle]
}

// BatchSheet is every figure of one batch.
type BatchSheet struct {
	Name       BatchName
	ReadyBlend string // weighed as one; empty: oil by oil
	Oils       []OilLine
	Extras     []ExtraLine
	Scents     []ScentLine
	Jugs       []JugSheet

	Size       Size
	Lye        LyeSheet
	Superfat   BatchSuperfat
	Heat       Heat
	Fats       Fats
	Refused    Refusal
	LyeInAtMin float64
	Script     script.Script // what is done with its batter, act by act; no acts: none could be made
	Sigma      float64       // sd of ln speed, for the pot without scent
}

// Size is how much of a batch there is. All of it is [Unknown] where [Refusal.Masses] says why.
type Size struct {
	OilsG        float64
	OilsWeighG   float64 // rounded to the scale step
	ExtrasG      float64
	BatterG      float64
	BatterML     float64
	BatterWeighG float64 // rounded to the scale step
	PouredML     float64 // batter, colourants and scent, less loss
	PouredG      float64
	LossPercent  float64
	HeightMM     float64 // how high it stands in the mould (base) or on the bars (icing)
	DryG         float64 // oils, pure alkali, dry extras, pigments, oil carriers, scent: before loss
}

// Refusal says what could not be worked out, and why.
type Refusal struct {
	Masses     string // why no masses are given: every mass, volume and height that follows is [Unknown]; empty: they are
	Times      string // why no times are given; empty: they are
	Unfinished bool   // the blend's parts do not sum to 100
	Unsized    string // why nothing says how much of it there is; empty: something does
	ShortWater bool   // stock lye or extras bring more water than the lye wants
	ShortOil   string // id of the oil of which the carriers want more than the blend holds; empty: none
}

// Alkali is what is weighed of one alkali.
type Alkali struct {
	PureG         float64
	PurityPercent float64
	WeighedG      float64 // exact: pure ÷ purity; 0 with a stock lye
	ToWeighG      float64 // rounded down on the lye step
}

// StockLye is what is weighed of a ready solution.
type StockLye struct {
	StrengthPercent float64 // pure NaOH in it; 0: dry alkali is weighed
	WeighedG        float64 // exact
	ToWeighG        float64 // rounded down on the lye step
}

// LyeSheet is the lye of a batch: what is weighed, how strong it is, and what takes it up.
type LyeSheet struct {
	NaOH, KOH                 Alkali
	Stock                     StockLye
	WaterToAddG               Figure // unknown: the stock lye brings more water than the plan wants
	WaterInExtrasG, AllWaterG float64
	WaterBeforeG              float64 // of the water in extras, what is there before the alkali
	OnIce                     bool    // a watery extra is the lye's water: frozen or chilled, the alkali little by little
	DemandKOHG, AcidKOHG      float64 // alkali all oils, the carriers' taken out of them too, want at 0 % superfat, and what acids among the extras use up, g KOH
	CarrierSapKOHMgG          float64 // saponification value of the oil that carries the colours, and its low end
	CarrierSapLow             float64
	ExtraFatKOHG              float64 // alkali the fat in the extras takes up, g KOH: it is not reckoned into the alkali, so it is superfat
	ConcentrationPercent      float64 // as defined in the plan
	PureConcentrationPercent  float64 // pure alkali ÷ (pure alkali + impurity + water): what density, heat and clock use
	AsMixedPercent            float64 // at the moment of dissolving, before extras join
}

// BatchSuperfat is the superfat of a whole batch, percent of what its fats could take up.
type BatchSuperfat struct {
	PlannedPercent   float64 // the discount on what all oils want, the carriers' taken out of them too
	ExactPercent     float64 // of all of the batch with the fat in its extras, before any scale rounds
	AsWeighedPercent float64 // the same of what the scales show
	MixedPercent     float64 // of the batter as it is mixed, before the carriers join: a jug without one keeps it
	LowPercent       float64 // of all oils alone, each at the low end of its published range: no caution of it rests on fat that an extra may lack
	HighPercent      float64 // and at the high end
}

// Heat is how warm a batch gets as it is mixed.
type Heat struct {
	LyeRiseK Figure  // adiabatic rise of the lye water
	LyePeakC Figure  // room + rise
	MixC     float64 // batter temperature as the two meet, or as measured
	CloudC   Figure  // rough cloud point of the blend, ± chem.CloudBandC; unknown: too little of it has a fatty-acid profile
}

// Fats is the chemistry of a blend of oils.
type Fats struct {
	Families    chem.Families
	IodineValue Figure // unknown: part of the blend has no fatty-acid profile
	SapKOHMgG   float64
}

// OilLine is one oil to weigh.
type OilLine struct {
	ID, Name                   string
	Percent, G                 float64
	WeighG                     float64 // on the scale step; the oils sum to OilsWeighG
	SapKOHMgG, SapLow, SapHigh float64
}

// ExtraLine is one extra to weigh.
type ExtraLine struct {
	ID, Name     string
	Kind, In     string
	Joins        Joining
	Percent, G   float64
	WaterPercent float64
	AllPercent   Figure  // of the oils: so much of it leaves no other water to add; unknown for what is not mostly water
	AcidKOHG     float64 // alkali its acids use up, g KOH
	FatKOHG      float64 // alkali its fat takes up, g KOH
}

// ScentLine is one scent of a batch.
type ScentLine struct {
	ID, Name             string
	LoadPercent, G       float64 // of the batch's oils
	Into                 []string
	InBarPercent         float64 // of the cured bar, base and icing together
	LimitPercent         float64 // from its certificate; 0: none on the shelf
	VanillinPercent      float64 // of the scent
	VanillinInBarPercent float64
}

// JugSheet is every figure of one jug.
type JugSheet struct {
	Name             string
	SharePercent     float64
	BatterG          float64 // exact
	BatterWeighG     float64 // on the scale step; the jugs sum to the batch's
	TotalG           float64 // BatterWeighG + pigments + carriers + scents
	TotalML          float64
	VesselML         float64 // what its vessel has to hold at most: a pot that the others are poured into holds them all
	Colourants       []DoseLine
	Scents           []ScentGrams
	ScentLoadPercent float64 // of this jug's oils
	VanillinPercent  float64 // vanillin in this jug's own part of the cured bar
	WhitePercent     float64 // titanium white in this jug's batter, from base and jug together
	Superfat         JugSuperfat
	Colour           JugColour
	Clock            JugClock
}

// JugSuperfat is the superfat of one jug, percent of what its fats could take up.
type JugSuperfat struct {
	HeldPercent      float64 // of what it really holds: its part of the batter, its carrier's oil and the alkali its scents can take up
	FirmPercent      float64 // the same if its scents take up none: what is judged
	LowPercent       float64 // and every oil at the low end of its published range
	AsWeighedPercent float64 // of what the scales show, its scents taking up none
}

// JugColour is the colour of one jug's batter, as "#rrggbb".
type JugColour struct {
	Hex                       string // empty: unknown
	Estimated                 bool
	WeeksHex                  string // after some weeks, where vanillin browns it; empty: as it is
	WeeksLowHex, WeeksHighHex string // the least and the most browning to expect
}

// JugClock is when one jug thickens and when it is poured; all of it is filled in by [Sheet.Time].
type JugClock struct {
	Stages             [chem.Stages]StageTime // from this batch's own lye-in
	Window             Window                 // on the run clock: when the technique suits this jug
	PourAtMin          Figure                 // on the run clock: when its first act begins
	LastAtMin          Figure                 // on the run clock: when the last act begins that moves it, with the pot or under a tool
	LateChancePercent  Figure                 // past what the technique allows when its last act begins
	LateJug            string                 // whose chance that is: the jug's own, or for a pot full of colours the quickest in it
	EarlyChancePercent Figure                 // not yet what the technique needs when its first act begins
	TraceAtPour        Figure                 // 0 at lye-in, 1 emulsion … 5 stiff, when its turn comes: an ordinal scale
}

// StageTime is when a stage is reached, min; unknown: not within the clock's horizon, or no estimate.
type StageTime struct{ Low, Mid, High Figure }

// Window is the middle estimate of when a technique suits a jug, min on the run clock.
type Window struct{ From, To Figure }

// DoseLine is one colourant in one jug.
type DoseLine struct {
	ID, Name     string
	Class        string // as on the shelf
	DosePercent  float64
	PigmentG     float64
	Carrier      string // one of the Carry… words
	CarrierName  string // of the oil, or the word; empty: stirred in dry
	CarrierG     float64
	TeaspoonsML5 Figure // metric teaspoons of 5 mL, an estimate; weighing wins
}

// ScentGrams is one scent in one jug.
type ScentGrams struct {
	ID, Name string
	G        float64
}

// Band is a figure and the ends of its 80 % band.
type Band struct{ Low, Mid, High Figure }

// How likely a loaf gels.
const (
	GelLikely   = "likely"     // to its edge
	GelInPart   = "in part"    // may gel, the middle before the edge
	GelUnlikely = "not likely" // nowhere
)

// Gel is how warm the base's loaf gets in its bed, and whether it gels there: the weakest of the clock's figures.
type Gel struct {
	Word          string // GelLikely, GelInPart or GelUnlikely; empty: not worked out
	FromC         Figure // where this lye's soap begins to gel
	MiddleC       Band   // warmest in the middle, °C, from a slow batter to a quick one
	EdgeC         Figure // warmest at the edge, °C, at the median
	PeakAtMin     Figure // when the middle is warmest, on the run clock
	MiddlePercent Figure // chance that the middle gels, in tenths
	EdgePercent   Figure // chance that the edge gels too
}

// Weighing is one thing on the shopping and weighing list.
type Weighing struct {
	Name string
	Kind string // one of the Weigh… words
	Jug  string // what it goes into; empty: the whole batch, or in the totals all jugs
	G    float64
}

// Bars is what comes off the cutter.
type Bars struct {
	Count                int
	ThicknessMM          float64
	CutG                 float64 // one bar with its icing, as cut
	CuredG               float64
	FinalMoisturePercent float64
	IcingPerBarG         float64
	StandsMM             float64 // base and icing together in the mould: the icing's mean height, its peaks stand higher
	OverRimMM            float64 // the same, over the mould's rim; below 0: so much under it
	BaseScentPercent     float64 // all scent of the cured bar
}

// TaskKind says what a task is.
type TaskKind string

// Task kinds, in their usual order. Between scent and bed stand the script's acts, whose kinds are those of [script.Kind].
const (
	TaskCoolLye TaskKind = "cool the lye"
	TaskMix     TaskKind = "mix"
	TaskSplit   TaskKind = "split"
	TaskColour  TaskKind = "colour"
	TaskScent   TaskKind = "scent"
	TaskPour             = TaskKind(script.Pour)
	TaskPipe             = TaskKind(script.Pipe)
	TaskPeak             = TaskKind(script.Peak)
	TaskFill             = TaskKind(script.Fill)
	TaskEmbed            = TaskKind(script.Embed)
	TaskStrew            = TaskKind(script.Strew)
	TaskWatch            = TaskKind(script.Watch)
	TaskBed     TaskKind = "put to bed"
	TaskEnd     TaskKind = "end the trial"
)

// Task is one thing the hands do, on the run clock.
type Task struct {
	Key       string // stable name: batch, kind and jug; what RunPlan.Order lists
	Kind      TaskKind
	Batch     BatchName // empty: it is done to the loaf
	Jug       string    // empty: the whole batch, or the loaf
	Item      string    // which embed, topping, cut or piece it is about; empty: none
	Act       int       // place among the acts of the batch, the top or the cut; NoAct: the task is none
	Part      Figure    // of the jug or, poured out, of the pot: above 0 to 1; unknown: the task is no act that uses one
	Round     Figure    // from 1; unknown: it is not done in rounds
	G         Figure    // what the act moves, on the scale step: a jug's acts sum to what the jug holds
	StartMin  float64
	LengthMin float64
}

// OfCut reports whether the task is one of the cut's own run.
func (t Task) OfCut() bool { return strings.HasPrefix(t.Key, keyCut+" ") && t.Batch == "" }

// NoAct is the act of a task that is none.
const NoAct = -1

// Batches returns the base's sheet and, where there is one, the icing's.
func (s *Sheet) Batches() []*BatchSheet {
	if s.Icing == nil {
		return []*BatchSheet{&s.Base}
	}
	return []*BatchSheet{&s.Base, s.Icing}
}
