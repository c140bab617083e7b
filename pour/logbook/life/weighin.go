package life

import (
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
)

// WeighIn is one weighing of bars that dry.
type WeighIn struct {
	EventID string // of the live cut: of the first bar's mark
	At      time.Time
	When    Moment
	Days    float64 // from the cut
	Bars    []int   // from 1 at end A; 0 is the one bar of older logs, of which nobody says which it is
	MassesG []float64
}

// OneBar stands for the bar of older logs, which weigh one bar when it is cut and once after its cure.
const OneBar = 0

// Mass is what a bar weighed then.
func (w WeighIn) Mass(bar int) (g float64, ok bool) {
	if i := slices.Index(w.Bars, bar); i >= 0 && i < len(w.MassesG) {
		return w.MassesG[i], true
	}
	return 0, false
}

// weighIns gathers the weighings from the events in their order: those of the cut, whether it was run live or logged, those since, and those of
// older logs.
func weighIns(events []logbook.Event, bars map[string]int) []WeighIn {
	var out []WeighIn
	live := -1 // where the cut that was run live stands in it
	for _, e := range events {
		w := weighIn(e)
		switch {
		case e.Kind == logbook.Cut && e.Step != "":
			bar, ok := bars[e.Step]
			if !ok {
				continue // trims and slice
			}
			if live < 0 {
				live, out = len(out), append(out, w)
			}
			cut := &out[live]
			if i := slices.Index(cut.Bars, bar); i >= 0 { // weighed again
				cut.MassesG[i] = e.Value
				continue
			}
			cut.Bars, cut.MassesG = append(cut.Bars, bar), append(cut.MassesG, e.Value)
		case e.Kind == logbook.Cut || e.Kind == logbook.Cured:
			w.Bars, w.MassesG = []int{OneBar}, []float64{e.Value}
			out = append(out, w)
		case (e.Kind == logbook.Sliced || e.Kind == logbook.WeighIn) && len(e.Life.MassesG) > 0:
			w.Bars, w.MassesG = numbered(e.Life), slices.Clone(e.Life.MassesG)
			out = append(out, w)
		}
	}
	return out
}

func weighIn(e logbook.Event) WeighIn {
	at, _ := e.When()
	return WeighIn{EventID: e.ID, At: at, When: moment(e)}
}

// numbered are the bars of an event's masses: those it names, and those behind them where it names fewer.
func numbered(l logbook.Life) []int {
	out := slices.Clone(l.Bars[:min(len(l.Bars), len(l.MassesG))])
	for next := 1; len(out) < len(l.MassesG); next++ {
		if !slices.Contains(out, next) {
			out = append(out, next)
		}
	}
	return out
}

// barsOf are the bars that the steps of a sheet's cut weigh.
func barsOf(sheet *pour.Sheet) map[string]int {
	out := map[string]int{}
	for _, m := range underway.Masses(sheet, nil) {
		if m.Bar > 0 {
			out[m.Step] = m.Bar
		}
	}
	return out
}
