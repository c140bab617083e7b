package pour

// Severity of a warning.
type Severity string

// The three severities.
const (
	Note    Severity = "note"    // good to know
	Caution Severity = "caution" // likely to spoil something
	Stop    Severity = "stop"    // do not go on; with a stop on the lye no lye amounts are printed
)

// Warning is one thing the maker should know before lye meets oil.
type Warning struct {
	Code     string // stable; listed by [Codes]
	Severity Severity
	Where    string // "base", "icing", "base jug fern", "mould" …
	Text     string // the reason, one sentence
	Do       string // what to do
	Lye      bool   // stands on the lye: with Stop, no lye amounts are printed
}
