package label

// Allergen is an entry of the list of substances that are named above a threshold.
type Allergen struct {
	Entry      string   // its number in the list, in small letters; of prohibited ones with the annex before it: "ii-1380"
	Name       string   // as a label names it
	Covers     []string // what it stands for, as statements of scents name it
	CAS        []string
	Group      bool // one name for the sum of what it covers
	Old        bool // one of the 24 that stood before
	Extract    bool // a natural extract or oil, which counts with all of its mass
	Prohibited bool // may not be there at all
	CapOnly    bool // limited, and not named on labels
	MostRinse  float64
	Note       string
	From       string // the document it stands in
	Confidence string // how far that was checked
}

// Found is an allergen of a bar.
type Found struct {
	Name         string // as a label names it
	G            float64
	CutPercent   float64
	CuredPercent float64  // what is judged
	Named        bool     // above the threshold of the market
	From         []Traced // largest first
	Prohibited   bool     // may not be there at all
	Most         float64  // percent of the cured bar that may be there; 0: no limit is known here
	Over         bool     // it is beyond that
	Either       []string // its CAS number stands in several rows of the list: to be asked, and never named by itself
	Unlisted     bool     // stands in no list: it is shown and never named by itself
}

// Traced is how much of an allergen comes with one scent.
type Traced struct {
	Scent string
	G     float64
}
