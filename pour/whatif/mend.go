package whatif

import (
	"slices"
	"strings"

	"pourbench/chem/colour"
	"pourbench/pour"
)

// Mend is an edit that takes a warning away.
type Mend struct {
	Says string // what it does, as one clause: "raise the superfat to 3 %"
	Edit pour.Edit
}

// mostMends is how many mends of one warning are offered.
const mostMends = 3

// Mends finds, for every warning of a sheet that is worked out in full and in its order, the edits that take it away. Each was tried on a
// sheet of its own: it leaves fewer warnings of that code in that place, and it brings no stop and no caution that was not there. A warning
// without mends is one that no edit of a plan takes away: its own words say what to do. It works out some hundred sheets: not for every frame.
func Mends(sheet pour.Sheet, shelf pour.Shelf, h pour.Hand) [][]Mend {
	return MendsOf(sheet, shelf, h, func(pour.Warning) bool { return true })
}

// MendsOf is [Mends] of some of the warnings: the others have none.
func MendsOf(sheet pour.Sheet, shelf pour.Shelf, h pour.Hand, wanted func(pour.Warning) bool) [][]Mend {
	out := make([][]Mend, len(sheet.Warnings))
	if len(sheet.Base.Jugs) == 0 {
		return out // a plan with faults
	}
	m := mender{whatIf: whatIf{plan: sheet.Plan, shelf: shelf, hand: h, judge: colour.NewJudge(), before: sheet}}
	m.weighed = pour.Weigh(sheet.Plan, shelf)
	m.timed = m.weighed.Time(shelf, h)
	for i, w := range sheet.Warnings {
		if wanted(w) {
			out[i] = m.mends(w)
		}
	}
	return out
}

// ladder is one way to mend, in growing steps: the first that cures is offered.
type ladder []Mend

// mender tries mends. Its sheet before is that of the plan, worked out in full.
type mender struct {
	whatIf
	weighed, timed pour.Sheet // the same before the clock, and before the colours
	helps          []Suggestion
	asked          bool // the search for what brings jugs inside their windows was made
}

// ways are the ladders to try for a warning. A code that is not here has no edit that takes its warning away: it stands on what things are, or on what only the
// maker can find out.
func (m *mender) ways(w pour.Warning) []ladder {
	for _, group := range [...]func(*mender, pour.Warning) []ladder{lyeWays, fatWays, scentWays, loadWays, colourWays, mouldWays, pipingWays, runWays, toppingWays, embedWays, cutWays, cureWays, labelWays} {
		if ways := group(m, w); ways != nil {
			return ways
		}
	}
	return nil
}

func (m *mender) mends(w pour.Warning) []Mend {
	var out []Mend
	for _, way := range m.ways(w) {
		i := slices.IndexFunc(way, func(x Mend) bool { return m.cures(w, x.Edit) })
		if i < 0 || slices.ContainsFunc(out, func(x Mend) bool { return x.Says == way[i].Says }) {
			continue
		}
		if out = append(out, way[i]); len(out) == mostMends {
			break
		}
	}
	return out
}

// cures tries an edit. A warning that is found without the clock is looked for without it first: that settles most.
func (m *mender) cures(w pour.Warning, e pour.Edit) bool {
	p, err := pour.Apply(m.plan, m.shelf, e)
	if err != nil {
		return false
	}
	sheet := pour.Weigh(p, m.shelf)
	known := fewer(sheet, m.weighed, w)
	if !known && slices.Contains(m.weighed.Warnings, w) {
		return false
	}
	sheet = sheet.Time(m.shelf, m.hand)
	known = known || fewer(sheet, m.timed, w)
	if !known && slices.Contains(m.timed.Warnings, w) || worse(sheet, m.before) {
		return false
	}
	if known && !m.recoloured(p) {
		return true
	}
	sheet = sheet.Mingle(m.shelf, m.hand, m.judge)
	return fewer(sheet, m.before, w) && !worse(sheet, m.before)
}

// recoloured says whether a plan's colours lie otherwise than in the plan before, so that others may touch.
func (m *mender) recoloured(p pour.Plan) bool {
	if p.Swirl != m.plan.Swirl || !slices.Equal(p.Run.Order, m.plan.Run.Order) || len(p.Base.Jugs) != len(m.plan.Base.Jugs) {
		return true
	}
	for i, j := range p.Base.Jugs {
		if !slices.Equal(j.Colourants, m.plan.Base.Jugs[i].Colourants) {
			return true
		}
	}
	return false
}

// count is how many warnings of a code stand in a place, those that begin with some words.
func count(s pour.Sheet, code, where, words string) int {
	n := 0
	for _, w := range s.Warnings {
		if w.Code == code && w.Where == where && strings.HasPrefix(w.Text, words) {
			n++
		}
	}
	return n
}

// fewer says whether a warning is gone: of its code there are fewer in its place, and fewer of those that say the same up to their figures.
func fewer(s, before pour.Sheet, w pour.Warning) bool {
	words := w.Text
	if i := strings.IndexAny(words, "0123456789"); i >= 0 {
		words = words[:i]
	}
	return count(s, w.Code, w.Where, "") < count(before, w.Code, w.Where, "") && count(s, w.Code, w.Where, words) < count(before, w.Code, w.Where, words)
}

// worse says whether a sheet has a stop or a caution that was not there before, or a batch whose clock fell silent. Where a batch had no masses,
// most cautions could not be found: only a stop counts.
func worse(s, before pour.Sheet) bool {
	blind := slices.ContainsFunc(before.Batches(), func(b *pour.BatchSheet) bool { return b.Refused.Masses != "" })
	for _, w := range s.Warnings {
		if w.Severity != pour.Note && (w.Severity == pour.Stop || !blind) && count(s, w.Code, w.Where, "") > count(before, w.Code, w.Where, "") {
			return true
		}
	}
	return silenced(s, before)
}
