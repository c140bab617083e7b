package label

// What a label has to carry in a market, beside its weight: words of [Print.Wants].
const (
	WantsMaker       = "maker"       // who is responsible for it, with an address
	WantsContact     = "contact"     // a way to reach her
	WantsLot         = "lot"         // a batch number
	WantsDate        = "date"        // best before, or months after opening
	WantsIngredients = "ingredients" // a list of them
)

// Print is how a label is printed in a market. The zero value: nothing is asked for.
type Print struct {
	Identity  string   // what it is, in all languages that are wanted: "Soap", "Soap / Savon"
	Wants     []string // Wants… words
	MadeFor   string   // before the maker's name: "Made by"; empty: nothing
	NotFood   string   // what is said where it looks like food, in all languages; empty: in English
	ByCapital bool     // the weight's height is that of capitals, or of a small o where there are small letters; else of its figures
	BoldNet   bool     // figures of the weight are bold
	Lowest    float64  // percent of the panel's height, from below, in which the weight stands; 0: anywhere
	LowestCM2 float64  // panels up to that may have it anywhere
	ClearMM   float64  // left free about the weight
	TextMM    float64  // least height of all other words; 0: none is stated
	SmallCM2  float64  // panels up to that may have smaller words; 0: none may
	SmallMM   float64  // least height of words on them
	NoBand    string   // why a band round the bar is no place for it there; empty: it may be
}

// LeastMM is how high the small letters of a panel's other words must be at least, mm; 0: the market states none.
func (p Print) LeastMM(panelCM2 float64) float64 {
	if p.SmallCM2 > 0 && panelCM2 <= p.SmallCM2 {
		return p.SmallMM
	}
	return p.TextMM
}

// AtFoot reports whether the weight must stand in the lowest part of a panel.
func (p Print) AtFoot(panelCM2 float64) bool { return p.Lowest > 0 && panelCM2 > p.LowestCM2 }
