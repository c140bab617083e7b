package label

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
)

// Amount is how much of something a design has, percent of the bar as it was made, or a batch's superfat.
type Amount struct {
	Kind    string // one of the Range… words; never RangeWhite, which is summed here
	ID      string // on the shelf
	Name    string // as screens name it
	Batch   string // of a superfat: the batch that has it
	White   bool   // a white pigment
	Percent float64
}

// Verdict is whether a design stays inside a report.
type Verdict struct {
	Report string // id; empty: none is asked for
	Missed []Miss // nothing in it: inside
	Why    string // why it cannot be judged; empty: it was
}

// Miss is a figure that leaves its range.
type Miss struct {
	Range   Range   // what it leaves; of what the report does not name, the kind and id alone
	What    string  // as screens name it
	Batch   string  // of a superfat: the batch
	Is      float64 // percent
	By      float64 // how far beyond the end it passed; above 0
	Unnamed bool    // the report says nothing of it, so that none of it was assessed
}

// Judge holds a design against a report: what leaves its range, in the order of the ranges, then what no range names. Amounts of one kind and id are
// added up; each batch's superfat is judged by itself; white pigments count together where the report has a range for them, and one that it does not name
// beside that is covered by it. Superfat is judged where the report has a range for it. An amount that is no number cannot be judged.
func Judge(r Report, has []Amount) Verdict {
	v := Verdict{Report: r.ID}
	if len(r.Ranges) == 0 {
		v.Why = "the report has no ranges yet: enter what the assessor allows"
		return v
	}
	for _, a := range has {
		if math.IsNaN(a.Percent) || math.IsInf(a.Percent, 0) {
			v.Why = a.what() + " cannot be worked out yet"
			return v
		}
	}
	sums, white := summed(has)
	for _, x := range r.Ranges {
		switch x.Kind {
		case RangeWhite:
			v.judge(x, Amount{Kind: RangeWhite, Name: "white pigments", Percent: white})
		case RangeSuperfat:
			for _, a := range has {
				if a.Kind == RangeSuperfat {
					v.judge(x, a)
				}
			}
		default:
			v.judge(x, amountOf(sums, x))
		}
	}
	for _, a := range sums {
		if a.Percent > threshold && !r.names(a) {
			v.Missed = append(v.Missed, Miss{Range: Range{Kind: a.Kind, ID: a.ID}, What: a.what(), Is: a.Percent, By: a.Percent, Unnamed: true})
		}
	}
	return v
}

// judge adds what an amount leaves of a range.
func (v *Verdict) judge(x Range, a Amount) {
	by := max(a.Percent-x.Most, x.Least-a.Percent)
	if by > threshold {
		v.Missed = append(v.Missed, Miss{Range: x, What: a.what(), Batch: a.Batch, Is: a.Percent, By: by})
	}
}

// summed are the amounts of materials, those of one kind and id added up, in the order in which they come; and the sum of the white pigments.
func summed(has []Amount) (sums []Amount, white float64) {
	for _, a := range has {
		if a.Kind == RangeSuperfat {
			continue
		}
		if a.White {
			white += a.Percent
		}
		at := slices.IndexFunc(sums, func(s Amount) bool { return s.Kind == a.Kind && s.ID == a.ID })
		if at < 0 {
			sums = append(sums, a)
			continue
		}
		sums[at].Percent += a.Percent
	}
	return sums, white
}

// amountOf is the amount a range is of; none of it where nothing of that kind and id is there.
func amountOf(sums []Amount, x Range) Amount {
	at := slices.IndexFunc(sums, func(a Amount) bool { return a.Kind == x.Kind && a.ID == x.ID })
	if at < 0 {
		return Amount{Kind: x.Kind, ID: x.ID, Name: x.ID}
	}
	return sums[at]
}

// names says whether a report has a range for a material.
func (r Report) names(a Amount) bool {
	return slices.ContainsFunc(r.Ranges, func(x Range) bool {
		return x.Kind == a.Kind && x.ID == a.ID || x.Kind == RangeWhite && a.White
	})
}

func (a Amount) what() string {
	if a.Kind == RangeSuperfat && a.Batch != "" {
		return "superfat of the " + a.Batch
	}
	return cmp.Or(a.Name, a.ID, a.Kind)
}

// Tell is the verdict in one line: whether the design is inside, or what leaves the report furthest for its range. Empty where none is asked for.
func (v Verdict) Tell() string {
	switch {
	case v.Report == "":
		return ""
	case v.Why != "":
		return "report " + v.Report + ": " + v.Why
	case len(v.Missed) == 0:
		return "inside report " + v.Report
	}
	text := "outside report " + v.Report + ": " + v.Missed[0].Tell()
	if more := len(v.Missed) - 1; more > 0 {
		text += fmt.Sprintf("; and %d more", more)
	}
	return text
}

// Tell is what leaves its range and by how much: "olive oil 42.1 %, 2.1 over its most".
func (m Miss) Tell() string {
	places := places(m.By)
	is, by := fixed(m.Is, places), fixed(m.By, places)
	if m.By < math.Pow10(-mostPlaces) {
		by = "less than " + fixed(math.Pow10(-mostPlaces), mostPlaces)
	}
	switch {
	case m.Unnamed:
		return fmt.Sprintf("%s %s %%, not named in it", m.What, is)
	case m.Is <= 0 && m.Range.Kind != RangeSuperfat:
		return fmt.Sprintf("no %s, %s %% under its least", m.What, by)
	case m.Is < m.Range.Least:
		return fmt.Sprintf("%s %s %%, %s under its least", m.What, is, by)
	}
	return fmt.Sprintf("%s %s %%, %s over its most", m.What, is, by)
}

// mostPlaces is how fine a percentage is told.
const mostPlaces = 4

// places is how many digits behind the point tell so much with two figures, one of a whole percent or more.
func places(by float64) int {
	for n := 1; n < mostPlaces; n++ {
		if by >= 0.95*math.Pow10(1-n) {
			return n
		}
	}
	return mostPlaces
}

func fixed(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }
