package label

import "pourbench/pour/day"

// The allergens a market wants named.
const (
	AllergensLong = "long" // the 81 names of Regulation (EU) 2023/1545
	AllergensOld  = "old"  // the 24 that stood before
	AllergensNone = "none"
)

// What a height of letters goes by.
const (
	HeightByMass = "mass" // the weight declared
	HeightByFace = "face" // the area of the face it stands on
	HeightBySide = "side" // the longest side of the pack
)

// How single packs are judged where the average of a batch counts.
const (
	AverageTNE  = "tne"  // Directive 76/211/EEC, annex I: few short by more than the tolerable error, none by more than twice that
	AverageFive = "five" // none short by more than 5 % (NMI guide to pre-packaged goods)
)

// Market is where a bar is sold and what its label follows there. It is filled from the shelf.
type Market struct {
	ID, Name string
	Short    string // for narrow places
	AsOf     day.Day

	Heading     string  // before the list: "Ingredients:"
	WholeINCI   bool    // INCI names keep the English word in brackets
	EUTrivial   bool    // but what the EU calls otherwise than by that name without the word ("Aqua", "Cera Alba") is called so
	English     bool    // English names may be used instead of INCI
	ScentWord   string  // "Parfum", "Fragrance"
	ScentLast   bool    // it may stand at the end
	ByName      bool    // colourants by name rather than by number
	FreePercent float64 // below this any order is right
	FreeAt      bool    // and at it
	Allergens   string  // one of the Allergens… words
	OverPercent float64 // of the cured bar: an allergen above this is named
	Pounds      bool    // ounces stand beside the grams
	HeightBy    string  // one of the HeightBy… words
	Heights     []Height

	Average      string  // how single packs are judged where the average counts: AverageTNE, AverageFive; empty: not known here, every pack must hold
	AfterPacking bool    // the weight is judged after it was packed too, so that what a bar still loses counts
	Figures      int     // of a weight that count at most; 0: any
	KiloFrom     float64 // from so many g on it is said in kilograms; 0: always in grams
	OnlySoap     bool    // sold only as soap: words that claim more move it to another class

	Print Print

	From    string // where all that is from
	Checked string // and how far it was checked, in the words of a source
	Rows    []Row
}

// Height is a row of a table of letter heights.
type Height struct {
	UpTo float64 // g, cm² or mm, itself included; 0: any
	MM   float64
}

// Row is a line of a market's list of what stands on a label or is done before sale.
type Row struct {
	ID         string // short and lasting: what ticks name
	Text       string
	Document   string
	Clause     string
	Confidence string // "read", "read (2nd-hand)", "memory", "derived", "common practice"
	AsOf       day.Day
	Finds      string // what of the design answers it by itself: a word of the checks; empty: only a maker can tick it
}
