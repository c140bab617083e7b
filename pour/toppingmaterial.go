package pour

import (
	"pourbench/chem"
	"pourbench/pour/money"
)

// Kinds of topping material, in the order in which they go on: what wets comes first, powder last (common practice).
const (
	ToppingDrizzle = "drizzle" // runs over the top: thinned batter, oil
	ToppingSpray   = "spray"   // a mist
	ToppingPiece   = "piece"   // laid or dropped one by one
	ToppingGrain   = "grain"   // strewn
	ToppingDust    = "dust"    // powder and glitter
)

// Whether a topping bleeds or browns.
const (
	ToppingNever = "no"
	ToppingMay   = "may" // by its packet
	ToppingDoes  = "yes"
)

// ToppingMaterial is what can be strewn, dusted, sprayed or drizzled on a bar.
type ToppingMaterial struct {
	ID, Name    string
	Kind        string       // one of the Topping… kinds
	When        string       // one of the Strew… words: when it usually goes on
	Ingredients []string     // as a list of ingredients names them, largest first; its packet's own list decides
	MadeOf      []Ingredient // the same with how much of each; none: Ingredients, in equal parts
	Colour      string       // "#rrggbb", for the picture: an estimate
	Note        string       // how it is put on, what else to mind
	Dust        bool         // a fine powder that must not be breathed
	Flammable   bool         // its vapour burns
	Plastic     bool         // synthetic polymer particles, which have dates
	Batter      bool         // it is icing batter, thinned: it is weighed with its batch
	Heat        ToppingHeat
	Wet         ToppingWet
	Alkali      ToppingAlkali
	Use         ToppingUse
	PricePerKG  money.Amount // what a kilogram costs where no pack says; 0: not stated
}

// ToppingHeat is what warmth does to a topping.
type ToppingHeat struct {
	MeltsC Figure // softens or melts from here, °C; unknown: no melting in play
	Note   string
	Source Source
}

// ToppingWet is what water does to a topping.
type ToppingWet struct {
	Crystals  []chem.Crystal // what in it draws water from damp air until it dissolves; mixed solids do so sooner
	WeepsRH   Figure         // relative humidity from which it is sticky or wet, percent, where its crystals do not say
	Dissolves bool           // in the wet of soap that has no skin, whatever the room
	Note      string
	Source    Source
}

// ToppingAlkali is what fresh soap does to a topping.
type ToppingAlkali struct {
	Bleeds, Browns string // ToppingNever, ToppingMay or ToppingDoes
	Note           string
	Source         Source
}

// ToppingUse is how much of a topping goes on, and how long that takes.
type ToppingUse struct {
	SizeMM           float64 // diameter of one grain; 0: not strewn by coverage
	Flat             bool    // SizeMM is the thickness of something flat
	DensityGML       float64 // of one grain; 0: unknown
	CoverLowPercent  float64 // of the bar's top, usual; both 0: none
	CoverHighPercent float64
	DoseLowG         float64 // on a bar, usual; both 0: none
	DoseHighG        float64
	StaysPercent     float64 // of its mass, on the bar; the rest evaporates
	HandsS           float64 // to put it on one bar, s
	Source           Source
}

// WeepsRH is the relative humidity, percent, from which the topping draws water from air of c °C until it is wet: what the shelf says, or
// the limit of its crystals, together where they are several. Unknown: nothing in it does.
func (m ToppingMaterial) WeepsRH(c float64) Figure {
	if m.Wet.WeepsRH.Known {
		return m.Wet.WeepsRH
	}
	limits := make([]float64, 0, len(m.Wet.Crystals))
	for _, k := range m.Wet.Crystals {
		if rh, ok := k.DissolvesRH(c); ok {
			limits = append(limits, rh)
		}
	}
	rh, ok := chem.MixedRH(limits...)
	return Figure{V: rh, Known: ok}
}
