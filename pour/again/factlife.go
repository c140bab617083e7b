package again

import (
	"fmt"
	"math"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
)

// lived lists what was logged of the batch after the pour, by its days.
func (p Past) lived(show pour.Show) []Fact {
	var out []Fact
	for _, e := range life.Events(p.Pour) {
		if f, ok := p.livedOnce(show, e); ok {
			out = append(out, f)
		}
	}
	if ready, ok := p.dryDay(); ok && p.off(ready.V) {
		out = append(out, Fact{Path: "bed.cure_days", What: "dry by your criterion", Said: fmt.Sprintf("%s %s than planned: by %d weighings on day %s after the cut (%s to %s), planned day %s",
			daysTold(math.Abs(ready.V-p.Sheet.Plan.Bed.CureDays)), soonWord(ready.V-p.Sheet.Plan.Bed.CureDays), len(p.drying.Means), show.Number(ready.V, 0), show.Number(math.Max(0, ready.Low()), 0), show.Number(ready.High(), 0), show.Number(p.Sheet.Plan.Bed.CureDays, 0))})
	}
	return out
}

func (p Past) livedOnce(show pour.Show, e logbook.Event) (Fact, bool) {
	switch e.Kind {
	case logbook.Unmoulded:
		return p.unmoulded(show, e)
	case logbook.Sniffed:
		return p.sniffed(e), true
	case logbook.Looked:
		return p.looked(e), true
	case logbook.Tested:
		return Fact{What: "tested", Said: strings.TrimSpace(fmt.Sprintf("%s %s %s", e.What, show.Number(e.Value, 1), e.Text))}, true
	case logbook.Failed:
		return Fact{What: "the batch", Said: strings.TrimSuffix("failed: "+e.Text, ": ")}, true
	}
	return Fact{}, false
}

// hoursIn is how many hours after lye-in a moment was.
func (p Past) hoursIn(at time.Time) (float64, bool) {
	in, ok := p.lyeIn()
	return at.Sub(in).Hours(), ok && at.After(in)
}

// unmoulded says how firm the loaf was when it left its mould, and after how many hours.
func (p Past) unmoulded(show pour.Show, e logbook.Event) (Fact, bool) {
	f := Fact{What: "out of the mould", Path: "bed.cut_after_h"}
	at, hour := e.When()
	h, ok := p.hoursIn(at)
	switch {
	case e.What == "" && !(ok && hour):
		return f, false
	case ok && hour:
		f.Said = strings.TrimSpace(fmt.Sprintf("%s %s h after lye-in, planned to be cut after %s h", e.What, show.Number(h, 0), show.Number(p.Sheet.Plan.Bed.CutAfterH, 0)))
	default:
		f.Said = e.What + " on " + e.Day()
	}
	return f, true
}

// week is in which week after the cut, or after the pour where nobody logged that, an event was, the nearest one; 0 in the first days.
func (p Past) week(e logbook.Event) int {
	from, ok := p.cutAt()
	if !ok {
		from = p.Pour.Opened
	}
	at, _ := e.When()
	return max(0, int(math.Round(at.Sub(from).Hours()/24/7)))
}

// weekTold says a week; the first is that of the cut's days.
func weekTold(n int) string {
	if n == 0 {
		return "in the first days"
	}
	return fmt.Sprintf("by week %d", n)
}

// since says how long after the cut, or after the pour where nobody logged that, an event was: in days at first, then in weeks.
func (p Past) since(e logbook.Event) string {
	from, what := p.Pour.Opened, "pour"
	if at, ok := p.cutAt(); ok {
		from, what = at, "cut"
	}
	at, _ := e.When()
	switch days := int(day.Of(at) - day.Of(from)); {
	case days <= 0:
		return "at the " + what
	case p.week(e) > 0:
		return weekTold(p.week(e))
	default:
		return daysTold(float64(days)) + " after the " + what
	}
}

// Words for how strong a scent is, from 0 to 4.
func strength(v float64) string {
	return [...]string{"gone", "faint", "clear", "strong", "very strong"}[int(min(max(math.Round(v), 0), 4))]
}

// sniffed says how strong a scent was in a week.
func (p Past) sniffed(e logbook.Event) Fact {
	f := Fact{What: "the scent of the bar", Said: strength(e.Value) + " " + p.since(e)}
	if e.Text != "" {
		f.Said += ", " + e.Text
	}
	for _, b := range p.Sheet.Batches() {
		for i, x := range b.Scents {
			if x.ID == e.Life.Scent || e.Life.Scent == "" {
				at := fmt.Sprintf("%s.scent[%d].", b.Name, i)
				f.Also = append(f.Also, at+"scent", at+"percent_of_oils")
				if x.ID == e.Life.Scent {
					f.What = x.Name
				}
			}
		}
	}
	if len(f.Also) > 0 {
		f.Path, f.Also = f.Also[0], f.Also[1:]
	}
	return f
}

// looked says what was seen on the bars.
func (p Past) looked(e logbook.Event) Fact {
	much := [...]string{"no", "a trace of", "some", "much", "very much"}[int(min(max(math.Round(e.Value), 0), 4))]
	f := Fact{What: "looked at the bars", Said: strings.TrimSpace(fmt.Sprintf("%s %s %s", much, e.What, p.since(e)))}
	if e.What == logbook.LookAsh {
		f.Path = "bed.keep"
	}
	for _, b := range p.Sheet.Batches() {
		if i := p.jugAt(b.Name, e.Jug); i >= 0 && (e.Batch == "" || e.Batch == b.Name) {
			f.What, f.Path = e.Jug+" of the "+string(b.Name), fmt.Sprintf("%s.jug[%d].name", b.Name, i)
			f.Also = []string{fmt.Sprintf("%s.jug[%d].batter_colour", b.Name, i)}
			break
		}
	}
	if e.Life.Colour != "" {
		f.Said = "seen as " + e.Life.Colour + " " + p.since(e)
	}
	if e.Text != "" {
		f.Said += ", " + e.Text
	}
	return f
}
