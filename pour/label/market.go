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
	Rows        []Row
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
