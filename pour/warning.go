package pour

import "strings"

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
	Text     string // the reason, one sentence; one that stands on a jug names it first
	Do       string // what to do
	Lye      bool   // stands on the lye: with Stop, no lye amounts are printed
}

// Batch is the batch it stands on; false: it stands on the plan as a whole, its mould, its bed.
func (w Warning) Batch() (BatchName, bool) {
	for _, n := range [2]BatchName{Base, Icing} {
		if w.Where == string(n) || strings.HasPrefix(w.Where, string(n)+" ") {
			return n, true
		}
	}
	return "", false
}

// Jug is the jug it stands on, and its batch; false: it stands on none.
func (w Warning) Jug() (BatchName, string, bool) { return w.on(BatchName.jug) }

// Scent is the name of the scent it stands on, and its batch; false: it stands on none.
func (w Warning) Scent() (BatchName, string, bool) { return w.on(BatchName.scent) }

// Extra is the name of the extra it stands on, and its batch; false: it stands on none.
func (w Warning) Extra() (BatchName, string, bool) { return w.on(BatchName.extra) }

// on is the name of what it stands on, by how a place in a batch is written.
func (w Warning) on(place func(BatchName, string) string) (BatchName, string, bool) {
	n, _ := w.Batch()
	name, ok := strings.CutPrefix(w.Where, place(n, ""))
	return n, name, ok && n != ""
}

// Told is the reason as it is read away from the place it stands on: what names no jug begins with its batch, a fault with its place in
// the plan's file.
func (w Warning) Told() string {
	n, ok := w.Batch()
	_, _, jug := w.Jug()
	switch {
	case jug || !ok && w.Code != "plan-fault":
		return w.Text
	case ok:
		return string(n) + ": " + w.Text
	default:
		return w.Where + ": " + w.Text
	}
}
