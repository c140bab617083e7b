package again

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/live"
)

// Fact is something that happened, beside the figure or field of the plan that it is of.
type Fact struct {
	Path string   // of that figure or field in the plan as poured; empty: it is of the pour as a whole
	Also []string // where else it is told
	What string   // what it is of, in words: "base oils", "poppy of the base"
	Said string   // what happened: "planned 34 °C, was 38 °C"
}

// Told is a fact in one line.
func (f Fact) Told() string { return f.What + ": " + f.Said }

// Least differences that are told: what a thermometer, a hand at the clock and a pair of hands can tell apart.
const (
	leastC   = 0.5
	leastMin = 1.0
)

// Happened lists what was otherwise than planned, and what was noticed, in the order of the pour and its cure: temperatures and weights, the run,
// jugs, the cut, the weeks after it. same is how many figures were measured and came out as planned.
func (p Past) Happened(show pour.Show) (facts []Fact, same int) {
	for _, d := range learn.Compare(p.Pour, p.Sheet) {
		if p.beforeLyeIn(d.Path) {
			continue // lye is made when there is time for it: how warm it was says how long it stood
		}
		f, told := p.compared(show, d)
		switch {
		case told:
			facts = append(facts, f)
		case d.Planned.Known && d.Actual.Known:
			same++
		}
	}
	facts = append(facts, p.lengths(show)...)
	facts = append(facts, p.bursts(show)...)
	facts = append(facts, p.noticed(show)...)
	return append(facts, p.lived(show)...), same
}

// beforeLyeIn says whether a figure is of the making of a lye or of its cooling.
func (p Past) beforeLyeIn(path string) bool {
	return slices.ContainsFunc(p.state.Steps, func(s live.StepState) bool {
		return (s.Kind == live.StepMakeLye || s.Kind == pour.TaskCoolLye) && p.lyePath(s.Batch) == path
	})
}

// lyePath is the path of when the lye of a batch is to be made; empty: it does not cool.
func (p Past) lyePath(n pour.BatchName) string {
	i := slices.IndexFunc(p.Sheet.Run, func(t pour.Task) bool { return t.Batch == n && t.Kind == pour.TaskCoolLye })
	if i < 0 {
		return ""
	}
	return fmt.Sprintf("run[%d].start_min", i)
}

// compared says how a figure was otherwise than planned; false: it was as planned, or one of the two is unknown.
func (p Past) compared(show pour.Show, d learn.Difference) (Fact, bool) {
	f := Fact{Path: d.Path, What: d.What, Also: p.beside(d.Path)}
	if !d.Actual.Known {
		return f, false
	}
	was := d.Told(show, d.Actual)
	if !d.Planned.Known {
		f.Said = "was " + was + ", which the plan does not say"
		return f, d.Path != "" || d.Unit != pour.UnitMinute
	}
	planned, by := d.Told(show, d.Planned), d.Actual.V-d.Planned.V
	switch d.Unit {
	case pour.UnitCelsius:
		f.Said = "planned " + planned + ", was " + was
		return f, math.Abs(by) >= leastC && planned != was
	case pour.UnitPercent:
		f.Said = "planned " + planned + ", was " + was
		return f, planned != was
	case pour.UnitMinute:
		f.Said = fmt.Sprintf("%s %s: planned at %s, was at %s", show.Minutes(math.Abs(by)), lateWord(by), planned, was)
		if d.Predicted {
			f.Said = fmt.Sprintf("%s %s than the models alone say: %s, seen at %s", show.Minutes(math.Abs(by)), soonWord(by), show.Predicted(d.Planned.V), was)
		}
		return f, math.Abs(by) >= leastMin
	}
	off := d.Told(show, pour.Know(math.Abs(by)))
	f.Said = fmt.Sprintf("%s too %s: planned %s, was %s", off, map[bool]string{true: "much", false: "little"}[by > 0], planned, was)
	if d.Path == "bars.cured_g" || d.Path == "bars.cut_g" || strings.HasPrefix(d.Path, "cut.") {
		f.Said = fmt.Sprintf("was %s instead of %s", was, planned)
	}
	return f, planned != was
}

func lateWord(by float64) string {
	if by > 0 {
		return "late"
	}
	return "early"
}

func soonWord(by float64) string {
	if by > 0 {
		return "later"
	}
	return "sooner"
}
