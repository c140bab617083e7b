package label

// Verdict is whether a design stays inside a report.
type Verdict struct {
	Report string // id; empty: none is asked for
	Missed []Miss // nothing in it: inside
	Why    string // why it cannot be judged; empty: it was
}

// Miss is a figure that leaves its range.
type Miss struct {
	Range Range
	What  string  // as screens name it
	Is    float64 // percent
	By    float64 // how far beyond the end it passed; above 0
}
