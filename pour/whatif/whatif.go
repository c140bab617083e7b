// Package whatif tries changes of a plan and offers those that bring every jug inside its window. It works sheets out and reads them;
// no figure is made here.
package whatif

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/chem/colour"
	"pourbench/pour"
)

// Suggestion is one change of a plan, or two together, that brings jugs nearer to their windows.
type Suggestion struct {
	What   []string  // one clause for each change: "work 3 °C cooler"
	Edit   pour.Edit // makes all of them
	Jugs   []Effect  // what it does to every jug whose chances it moves, the base's first
	Solves bool      // every jug is then likely inside its window
}

// Effect is what a suggestion does to a jug's chances of coming too late or too early.
type Effect struct {
	Batch                       pour.BatchName
	Jug                         string
	LateBefore, LateAfter       pour.Figure // percent
	EarlyBefore, EarlyAfter     pour.Figure // percent
	OutsideBefore, OutsideAfter bool        // likely outside its window, before and after
}

// Most suggestions that are offered, and how many single changes are tried in pairs.
const (
	mostSuggestions = 5
	mostPaired      = 6
)

// Suggest tries cooler and warmer, weaker and stronger lye, less and more stick-blending, scents later or in another jug and another
// order of pouring, alone and then in pairs, and offers those that help most: first the ones that bring every jug inside its window,
// with fewer changes before more. A change that would bring a new caution or stop is not offered. It returns none when every jug
// is likely inside its window already, or when there is no clock. It works out some thirty sheets: not for every frame.
func Suggest(p pour.Plan, s pour.Shelf, h pour.Hand) []Suggestion {
	w := whatIf{plan: p, shelf: s, hand: h, judge: colour.NewJudge()}
	w.before = w.work(p, true)
	w.start = w.score(w.before)
	if w.start.outside == 0 {
		return nil
	}
	singles := w.tried(w.changes())
	slices.SortStableFunc(singles, byScore)
	var pairs []change
	paired := w.picked(singles, mostPaired)
	for i, a := range paired {
		for _, b := range paired[i+1:] {
			if a.kind != b.kind {
				pairs = append(pairs, change{kind: a.kind + "+" + b.kind, what: append(slices.Clone(a.what), b.what...), edit: pour.Both(a.edit, b.edit)})
			}
		}
	}
	all := singles
	if len(singles) == 0 || singles[0].score.outside > 0 {
		all = append(all, w.tried(pairs)...)
		slices.SortStableFunc(all, byScore)
	}
	out := make([]Suggestion, 0, mostSuggestions)
	for _, c := range w.picked(all, mostSuggestions) {
		out = append(out, Suggestion{What: slices.Concat(c.what, c.splits), Edit: c.whole(), Jugs: w.effects(c.sheet), Solves: c.score.outside == 0})
	}
	return out
}

// picked takes the first changes of a list, yet of every batch with a jug outside some that help it: an icing that is soon brought inside
// must not hide what can be done for a base that cannot. What solves all needs no company.
func (w *whatIf) picked(list []change, most int) []change {
	if len(list) <= most || list[0].score.outside == 0 {
		return list[:min(most, len(list))]
	}
	batches := w.before.Batches()
	take, taken := make([]bool, len(list)), 0
	for i, b := range batches {
		was, of := w.harm(b), 0
		for k, c := range list {
			if of < most/len(batches) && was.outside > 0 && w.harm(c.sheet.Batches()[i]).compare(was) < 0 {
				of++
				if !take[k] {
					take[k], taken = true, taken+1
				}
			}
		}
	}
	out := make([]change, 0, most)
	for k, c := range list {
		if take[k] || taken < most {
			out = append(out, c)
			if !take[k] {
				taken++
			}
		}
	}
	return out
}

// Outside names the jugs of a plan that are likely outside their windows when their turn comes, the base's first.
func Outside(p pour.Plan, s pour.Shelf, h pour.Hand) []string {
	w := whatIf{plan: p, shelf: s, hand: h}
	sheet := w.work(p, false)
	var out []string
	for _, b := range sheet.Batches() {
		for _, j := range b.Jugs {
			if w.outside(j) >= pour.LikelyPercent {
				out = append(out, j.Name)
			}
		}
	}
	return out
}

// change is one thing that was tried.
type change struct {
	kind  string
	what  []string
	edit  pour.Edit
	sheet pour.Sheet
	score score

	splits []string  // clauses of what else it takes, so that no batch is split before it is an emulsion
	split  pour.Edit // and the edit; nil: nothing else
}

// whole is the change with the splits it moves.
func (c change) whole() pour.Edit {
	if c.split == nil {
		return c.edit
	}
	return pour.Both(c.edit, c.split)
}

// mixed moves the splits that a change brings before the emulsion, which is a harm that was not there: to the next whole minute after it.
func (w *whatIf) mixed(c change) change {
	for _, b := range c.sheet.Batches() {
		early := func(x pour.Warning) bool { return x.Code == "split-early" && x.Where == string(b.Name) }
		at := b.EmulsionAtMin()
		if !at.Known || !slices.ContainsFunc(c.sheet.Warnings, early) || slices.ContainsFunc(w.before.Warnings, early) {
			continue
		}
		to := math.Ceil(at.V)
		c.splits = append(c.splits, sentence(b.Name, "split it at %s", w.plan.Show.Minutes(to))...)
		c.split = pour.SetSplitAt(b.Name, to)
		if p, err := pour.Apply(w.plan, w.shelf, c.whole()); err == nil {
			c.sheet = w.work(p, false)
		}
		break // one batch at a time: a second that comes early is refused as any new caution is
	}
	return c
}

// score says how far a sheet's jugs are from their windows.
type score struct {
	outside int     // jugs likely outside
	worst   float64 // largest chance of any jug of being outside, percent
	sum     float64
}

func (s score) compare(o score) int {
	return cmp.Or(cmp.Compare(s.outside, o.outside), cmp.Compare(math.Round(s.worst), math.Round(o.worst)), cmp.Compare(s.sum, o.sum))
}

// kindOrder marks changes of who is poured after whom, which alone move the neighbours.
const kindOrder = "order"

// work works a changed plan out; what the colours do beside each other only where the change may move it, because it takes longest.
func (w *whatIf) work(p pour.Plan, mingle bool) pour.Sheet {
	sheet := pour.Weigh(p, w.shelf).Time(w.shelf, w.hand)
	if mingle {
		sheet = sheet.Mingle(w.shelf, w.hand, w.judge)
	}
	return sheet
}

func byScore(a, b change) int {
	if (a.score.outside == 0) == (b.score.outside == 0) && len(a.what) != len(b.what) {
		return cmp.Compare(len(a.what), len(b.what))
	}
	return a.score.compare(b.score)
}

type whatIf struct {
	plan   pour.Plan
	shelf  pour.Shelf
	hand   pour.Hand
	judge  *colour.Judge
	before pour.Sheet
	start  score
}

func (w *whatIf) score(sheet pour.Sheet) score {
	var out score
	for _, b := range sheet.Batches() {
		of := w.harm(b)
		out.outside, out.worst, out.sum = out.outside+of.outside, max(out.worst, of.worst), out.sum+of.sum
	}
	return out
}

// harm is the part of a sheet's score that is one batch's.
func (w *whatIf) harm(b *pour.BatchSheet) score {
	var out score
	for _, j := range b.Jugs {
		p := w.outside(j)
		out.worst, out.sum = max(out.worst, p), out.sum+p
		if p >= pour.LikelyPercent {
			out.outside++
		}
	}
	return out
}

// outside is a jug's chance of being outside its window when its turn comes, percent.
func (w *whatIf) outside(j pour.JugSheet) float64 {
	return max(j.Clock.LateChancePercent.V, j.Clock.EarlyChancePercent.V)
}

// tried works every change out and keeps those that help and bring no new caution.
func (w *whatIf) tried(list []change) []change {
	var out []change
	for _, c := range list {
		p, err := pour.Apply(w.plan, w.shelf, c.edit)
		if err != nil {
			continue
		}
		c.sheet = w.work(p, false)
		c = w.mixed(c)
		if c.score = w.score(c.sheet); c.score.compare(w.start) >= 0 {
			continue
		}
		if strings.Contains(c.kind, kindOrder) {
			c.sheet = c.sheet.Mingle(w.shelf, w.hand, w.judge)
		}
		if !w.spoils(c.sheet) {
			out = append(out, c)
		}
	}
	return out
}

// spoils reports whether a sheet has a caution or a stop that was not there before, or a batch whose clock fell silent.
func (w *whatIf) spoils(sheet pour.Sheet) bool {
	for _, x := range sheet.Warnings {
		late := strings.HasSuffix(x.Code, "-late") || strings.HasPrefix(x.Code, "jug-") || strings.HasPrefix(x.Code, "icing-")
		if x.Severity == pour.Note || late { // the chances are judged by the score
			continue
		}
		if !slices.ContainsFunc(w.before.Warnings, func(old pour.Warning) bool { return old.Code == x.Code && old.Severity == x.Severity }) {
			return true
		}
	}
	return silenced(sheet, w.before)
}

// silenced reports whether a batch has no times that had them before.
func silenced(sheet, before pour.Sheet) bool {
	old := before.Batches()
	for i, b := range sheet.Batches() {
		if i < len(old) && b.Refused.Times != "" && old[i].Refused.Times == "" {
			return true
		}
	}
	return false
}

func (w *whatIf) effects(after pour.Sheet) []Effect {
	var out []Effect
	old := w.before.Batches()
	for i, b := range after.Batches() {
		for _, j := range b.Jugs {
			k := slices.IndexFunc(old[i].Jugs, func(x pour.JugSheet) bool { return x.Name == j.Name })
			if k < 0 {
				continue
			}
			was := old[i].Jugs[k]
			if was.Clock.LateChancePercent == j.Clock.LateChancePercent && was.Clock.EarlyChancePercent == j.Clock.EarlyChancePercent {
				continue
			}
			out = append(out, Effect{
				Batch: b.Name, Jug: j.Name, LateBefore: was.Clock.LateChancePercent, LateAfter: j.Clock.LateChancePercent,
				EarlyBefore: was.Clock.EarlyChancePercent, EarlyAfter: j.Clock.EarlyChancePercent,
				OutsideBefore: w.outside(was) >= pour.LikelyPercent, OutsideAfter: w.outside(j) >= pour.LikelyPercent,
			})
		}
	}
	return out
}

// changes lists what may be tried: for every batch with a jug outside, whatever makes it slower or quicker, as it needs.
func (w *whatIf) changes() []change {
	var out []change
	for _, b := range w.before.Batches() {
		n := b.Name
		late, early := false, false
		for _, j := range b.Jugs {
			late = late || j.Clock.LateChancePercent.V >= pour.LikelyPercent
			early = early || w.outside(j) >= pour.LikelyPercent && j.Clock.EarlyChancePercent.V >= pour.LikelyPercent
		}
		if late {
			out = slices.Concat(out, w.pace(n, -1), w.scentChanges(n))
			if n == pour.Base {
				out = append(out, w.order()...)
			}
		}
		if early {
			out = append(out, w.pace(n, 1)...)
		}
	}
	return out
}

func sentence(n pour.BatchName, format string, args ...any) []string {
	where := ""
	if n == pour.Icing {
		where = " for the icing"
	}
	return []string{fmt.Sprintf(format, args...) + where}
}
