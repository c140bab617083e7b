package pour

import (
	"fmt"
	"strings"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/chem/colour"
	"pourbench/pour/cost"
	"pourbench/pour/label"
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// Shelf is the catalogue a plan draws from. It is a value handed on: presets fill it, a maker's own file is laid over it.
type Shelf struct {
	Oils       []Oil
	Colourants []Colourant
	Extras     []Extra
	Families   []Family
	Scents     []Scent
	Moulds     []MouldEntry
	Techniques []Technique
	Toppings   []ToppingMaterial
	Markets    []label.Market
	Allergens  []label.Allergen
	Names      []ListName // of what is listed as an ingredient, beside those of the oils

	House cost.House  // what her costs are beside materials, laid over in the same way; the zero value: nothing is stated
	Label label.House // what she states once for all labels, laid over in the same way
	Stock lot.Stock   // what lies there, laid over like a maker's file; the zero value: no ledger is kept

	priced bool         // some entry names a price; set by Prepared
	listed names        // by what a list can call it, in small letters; set by Prepared
	plain  colour.Paint // a batter without colour; the zero Paint: not prepared
}

// Source says where a figure comes from and how far it was checked.
type Source struct {
	Text       string // the document, or "common practice, no source"
	Confidence string // "read", "derived", "mixed", "memory", "common practice", "own" (the maker's file) or "invented" (an example)
}

// Told is the source in a maker's words.
func (s Source) Told() string { return MakersWords(s.Text) }

// MakersWords tells a source or a note of the shelf in a maker's words: the shelf's own say what was looked up and what not in fewer.
func MakersWords(text string) string {
	return strings.NewReplacer(
		"common practice, no source", "what makers commonly do, not measured",
		"memory, no document at hand", "general knowledge, not looked up",
		"(read)", "(looked up)",
		", read)", ", looked up)",
		", memory)", ", as remembered, not looked up)",
		"(memory)", "(as remembered, not looked up)",
		"memory: ", "as remembered: ",
		"memory; ", "as remembered; ",
		"from memory", "as remembered, not looked up",
		"none in memory", "none known",
	).Replace(text)
}

// Oil is an oil, butter, wax or free acid on the shelf.
type Oil struct {
	ID, Name        string
	Also            []string // other names it goes by
	INCI, INCISoap  string   // as added, with the English word where it has one, and as its sodium soap
	INCIPlain       string   // as added in the form without the English word, where it is not what is left without its brackets
	INCIPotassium   string   // as its potassium soap; empty: not known
	SaltUnassigned  bool     // no assigned name of its soaps was found: INCISoap is what makers write
	INCISource      Source
	SaltSource      Source // of the names of its soaps; empty: INCISource
	Fat             chem.Fat
	SapSource       Source
	IodineSource    Source
	DensitySource   Source
	FattyAcidSource Source
	FreeAcidPercent Figure // usual free fatty acid as sold, % of its mass as oleic acid; 100 for a free acid, unknown where not stated
	FreeAcidSource  Source // empty where FreeAcidPercent is unknown
	Tint            string // "#rrggbb" of a batter of it alone: an estimate; empty: cream
	TintSource      Source
	tint            colour.Paint // the same, to be mixed with those of the other oils; set by Prepared
	Note            string
	PricePerKG      money.Amount // what a kilogram costs where no pack says; 0: not stated
}

// How a colourant wets.
const (
	DisperseOil    = "oil"
	DisperseWater  = "water"
	DisperseEither = "either"
)

// What alkali does to a colourant.
const (
	AlkaliStable  = "stable"
	AlkaliShifts  = "shifts"  // another shade than in the packet
	AlkaliDies    = "dies"    // destroyed or faded
	AlkaliUnknown = "unknown" // depends on the packet: test it
)

// Colourant is a pigment, mica, dye, lake or plant colour.
type Colourant struct {
	ID, Name        string
	Class           string       // "pigment", "mica", "dye", "lake" or "plant"
	ColourIndex     string       // CI number, where it has one
	MadeOf          []Ingredient // what it is in a list; none: by its number, or its name
	Disperse        string       // DisperseOil, DisperseWater or DisperseEither
	DoseLowPercent  float64      // usual dose of the jug's batter
	DoseHighPercent float64
	CarrierParts    float64 // usual grams of carrier per gram
	Alkali          string  // AlkaliStable, AlkaliShifts, AlkaliDies or AlkaliUnknown
	AlkaliNote      string
	Caution         string       // what else to mind: rules, skin, cloth
	Dust            bool         // a fine powder that must not be breathed
	Titanium        bool         // titanium white: scatters, and brings glycerin rivers
	White           bool         // whitens
	Colour          string       // "#rrggbb" of a white batter at the middle of the dose range, of a white of a cream batter: an estimate
	stain           colour.Stain // what it does to a batter; set by Prepared
	BulkGML         float64      // loose bulk density for spoon estimates; 0: unknown
	Source          Source
	PricePerKG      money.Amount // what a kilogram costs where no pack says; 0: not stated
}

// Kinds of extra, which decide its cautions.
const (
	ExtraSugar   = "sugar"
	ExtraMilk    = "milk"
	ExtraAlcohol = "alcohol"
	ExtraAcid    = "acid"
	ExtraSalt    = "salt"
	ExtraClay    = "clay"
	ExtraPlain   = "plain"
)

// When an extra joins the lye.
const (
	LyeBefore = "before" // dissolved in the water before the alkali
	LyeHot    = "hot"    // into the lye while it is hot
	LyeCooled = "cooled" // into the cooled lye
)

// Extra goes into the whole batch before the split.
type Extra struct {
	ID, Name        string
	Kind            string       // one of the Extra… kinds
	MadeOf          []Ingredient // what it is in a list; none: by its name
	In              string       // InOils or InLye
	LyeWhen         string       // one of the Lye… words: when it joins, where it goes into the lye
	Dust            bool         // a fine powder that must not be breathed
	WaterPercent    float64      // of its mass
	FatPercent      float64      // fat that alkali can saponify, of its mass; 0 for none
	FatSapKOHMgG    float64      // saponification value of that fat, mg KOH per g; above 0 wherever FatPercent is
	AlkaliKOHMgG    float64      // alkali it uses up beside its fat, mg KOH per g; 0 for none
	DensityGML      float64
	ClockFactor     float64 // on the speed of trace; 1: none
	ClockSD         float64 // of ln ClockFactor
	ClockAtPercent  float64 // dose, of oils, that ClockFactor was stated for; 0: the middle of the usual doses
	DoseLowPercent  float64 // usual, of oils
	DoseHighPercent float64
	Caution         string
	Source          Source
	PricePerKG      money.Amount // what a kilogram costs where no pack says; 0: not stated
}

// ClockDosePercent is the dose, percent of oils, that ClockFactor holds for: the stated one, or the middle of the usual doses.
func (x Extra) ClockDosePercent() float64 {
	if x.ClockAtPercent > 0 {
		return x.ClockAtPercent
	}
	return (x.DoseLowPercent + x.DoseHighPercent) / 2
}

// How a scent behaves in batter, as the maker or the supplier says it (reference: trace model, section 2.4).
const (
	BehaviourUnknown = "unknown"
	BehaviourNone    = "none" // no acceleration
	BehaviourSlows   = "slows"
	BehaviourFast    = "fast"   // accelerates
	BehaviourStrong  = "strong" // clove and cinnamon kind
	BehaviourSeizes  = "seizes"
)

// Family is a family of scents and how it tends to behave: common practice, no source.
type Family struct {
	ID, Name  string
	Behaviour string // one of the Behaviour… words
	Note      string
	Source    Source
}

// Scent is a fragrance or essential oil.
type Scent struct {
	ID, Name        string
	Families        []string // family ids
	Notes           string   // what it smells of
	INCI            string   // of an essential oil, as lists name it; empty: none is stated
	Extract         string   // the listed natural extract that it is, as labels name that; empty: it is none
	Behaviour       string   // one of the Behaviour… words; empty: the fastest of its families
	Rices           bool     // known to rice or separate
	TestLoadPercent float64  // of oils, at which the behaviour was seen; 0: 3
	VanillinPercent float64  // vanillin and ethyl vanillin in the scent
	AlkaliKOHMgG    float64  // alkali its phenols can take up, mg KOH per g of scent; 0: none known
	LimitPercent    float64  // of the finished product, category 9 of its own certificate; 0: no certificate on the shelf
	Amendment       string   // of that certificate
	DensityGML      float64
	FlashC          float64
	Allergens       []Allergen
	Invented        bool // an example scent: not a product
	Source          Source
	PricePerKG      money.Amount // what a kilogram costs where no pack says; 0: not stated
}

// Allergen is a substance to be named above a threshold.
type Allergen struct {
	Name    string
	CAS     string  // its number, where the statement gives it; empty: not
	Percent float64 // of the scent
}

// Technique is a way the portions meet.
type Technique struct {
	ID, Name string
	Kind     string     // "layers", "drop", "column", "pot", "hanger", "comb" or "spoon"
	From, To chem.Stage // the batter suits from reaching From until it passes To
	Passes   int
	Turns    float64
	HeightMM float64
	Do       string // one line: how it is done
	Source   Source
}

// Suits says in words at which stages of trace the technique can be poured.
func (t Technique) Suits() string {
	if t.From == t.To {
		return t.To.String()
	}
	return t.From.String() + " to " + t.To.String()
}

// Prepared returns the shelf with what colours need worked out once, which takes about a millisecond. Whoever fills a shelf calls it last;
// on a shelf that is not prepared, jugs take their first colourant's colour as it stands. A colour that cannot be read is refused.
func (s Shelf) Prepared() (Shelf, error) {
	cream, err := colour.ParseHex(colour.PlainBatter)
	if err != nil {
		return s, err
	}
	if s.plain, err = colour.NewPaint(cream, 0); err != nil {
		return s, err
	}
	if s.Oils, err = tinted(s.Oils, s.plain); err != nil {
		return s, err
	}
	s.priced = s.anyPrice()
	s.listed = s.listedNames()
	s.Colourants = append([]Colourant(nil), s.Colourants...)
	for i := range s.Colourants {
		c := &s.Colourants[i]
		if c.Colour == "" {
			continue
		}
		rgb, err := colour.ParseHex(c.Colour)
		if err != nil {
			return s, fmt.Errorf("prepare colourant %s: %w", c.ID, err)
		}
		stain := colour.NewStain
		if c.Titanium || c.White {
			stain = colour.NewWhite
		}
		if c.stain, err = stain(rgb, (c.DoseLowPercent+c.DoseHighPercent)/2); err != nil {
			return s, fmt.Errorf("prepare colourant %s: %w", c.ID, err)
		}
	}
	return s, nil
}

// Oil returns the oil with that id.
func (s Shelf) Oil(id string) (Oil, bool) {
	return find(s.Oils, id, func(o *Oil) string { return o.ID })
}

// Colourant returns the colourant with that id.
func (s Shelf) Colourant(id string) (Colourant, bool) {
	return find(s.Colourants, id, func(c *Colourant) string { return c.ID })
}

// Extra returns the extra with that id; a colourant serves as an extra too.
func (s Shelf) Extra(id string) (Extra, bool) {
	if x, ok := find(s.Extras, id, func(x *Extra) string { return x.ID }); ok {
		return x, true
	}
	c, ok := s.Colourant(id)
	if !ok {
		return Extra{}, false
	}
	x := Extra{
		ID: c.ID, Name: c.Name, Kind: ExtraPlain, In: InOils, LyeWhen: LyeBefore, Dust: c.Dust, DensityGML: pigmentGML, ClockFactor: 1,
		DoseLowPercent: c.DoseLowPercent, DoseHighPercent: c.DoseHighPercent, Source: c.Source,
	}
	if c.Titanium {
		x.ClockFactor, x.ClockSD = titaniumClockFactor, clock.AdditiveSD
	}
	return x, true
}

// Scent returns the scent with that id.
func (s Shelf) Scent(id string) (Scent, bool) {
	return find(s.Scents, id, func(c *Scent) string { return c.ID })
}

// Family returns the scent family with that id.
func (s Shelf) Family(id string) (Family, bool) {
	return find(s.Families, id, func(f *Family) string { return f.ID })
}

// Technique returns the technique with that id.
func (s Shelf) Technique(id string) (Technique, bool) {
	return find(s.Techniques, id, func(t *Technique) string { return t.ID })
}

// Topping returns the topping material with that id.
func (s Shelf) Topping(id string) (ToppingMaterial, bool) {
	return find(s.Toppings, id, func(m *ToppingMaterial) string { return m.ID })
}

// Market returns the market with that id.
func (s Shelf) Market(id string) (label.Market, bool) {
	return find(s.Markets, id, func(m *label.Market) string { return m.ID })
}

// titaniumClockFactor is what titanium white in the whole batch does to the speed of trace: common practice, no source (reference:
// trace model, section 2.4).
const titaniumClockFactor = 1.1

// pigmentGML is a middling particle density for a pigment stirred in dry, g/mL: between mica (2.82) and titanium
// dioxide (4.2), CRC Handbook values. A pigment is under 1 % of a batter, so its error moves a volume by under 0.2 %.
const pigmentGML = 3.5

func find[T any](list []T, id string, key func(*T) string) (T, bool) {
	for i := range list {
		if key(&list[i]) == id {
			return list[i], true
		}
	}
	var none T
	return none, false
}
