package batches

import (
	"fmt"
	"math"
	"strings"

	"pourbench/chem/cure"
	"pourbench/pour"
	"pourbench/pour/drying"
	"pourbench/pour/logbook/life"
	"pourbench/tui/chart"
	"pourbench/tui/listing"
	"pourbench/tui/screen"
)

// dries says whether a batch is one whose bars dry, or will.
func dries(b *life.Batch) bool {
	return b.Fault == nil && !b.Is(life.Failed, life.Trial, life.UnderWay)
}

// drying tells how the bars dry: what they weighed last, what that comes to, when they are dry by the maker's criterion, and how sure that is.
func (m *Model) drying(b *life.Batch) []line {
	d := b.Drying
	if !dries(b) || d.Fit == nil && d.Why == nil {
		return nil
	}
	var out []line
	say := func(text string, st screen.Style) {
		lead := ""
		if len(out) == 0 {
			lead = "drying"
		}
		out = append(out, line{lead: lead, text: text, style: st})
	}
	if n := len(d.Means); n > 0 && d.Weighed {
		say(fmt.Sprintf("%s on day %.0f, mean of bars %s", m.show().Dose(d.Means[n-1].G), d.Means[n-1].Day, numbers(d.Bars)), m.look.Text)
	}
	st := m.look.Text
	if d.Why != nil {
		st = m.look.Caution
	}
	say(d.Tell(), st)
	if !d.Known || !b.Ready.Known || b.CutDay == nil {
		return out
	}
	ready := b.Ready
	left := "passed"
	if n := int(ready.Day - m.opt.Today); n > 0 {
		left = plural(n, "day") + " left"
	}
	say(fmt.Sprintf("ready %s, %s to %s: %s. That is dry by your criterion and no more than that", ready.Day, ready.Early.Short(), ready.Late.Short(), left), m.look.Text)
	now := float64(m.opt.Today - *b.CutDay)
	say(fmt.Sprintf("loses %s a week now, dries to %s", percent(d.Fit.WeeklyLoss(now)), m.mass(d.Fit.Final())), m.look.Text)
	return out
}

// percent is an estimate in percent with its band.
func percent(e cure.Estimate) string {
	return fmt.Sprintf("about %.2g %% (%.2g to %.2g)", e.V, math.Max(0, e.Low()), e.High())
}

// mass is an estimate of a bar's mass with its band.
func (m *Model) mass(e cure.Estimate) string {
	show := m.show()
	return fmt.Sprintf("about %s (%s to %s)", show.Dose(e.V), show.Dose(e.Low()), show.Dose(e.High()))
}

// plotOf makes the drawing of how a batch dries; it is made once and kept, since it takes the law at many days.
func (m *Model) plotOf(b *life.Batch) drying.Plot {
	d := b.Drying
	if d.Fit == nil || b.CutDay == nil {
		return drying.Plot{}
	}
	p := drying.Plot{Name: b.Name, Show: m.show(), Cut: *b.CutDay, Today: pour.AsFigure(float64(m.opt.Today - *b.CutDay))}
	for _, w := range d.Means {
		p.Points = append(p.Points, drying.Point{Day: w.Day, G: w.G})
	}
	if d.Known {
		p.Ready = drying.ReadyOn(d.Ready)
	}
	if d.Why != nil {
		p.Why = d.Tell()
		return p
	}
	return p.Fitted(d.Fit)
}

// The height of the drawing on a low screen and where there is more room, and the least width in which it is told from its axes.
const (
	lowPlot  = 9
	highPlot = 13
	plotW    = 30
	roomyH   = 28
)

// plotRows is how many lines of what is told of a batch are its drawing; 0: it has none.
func (m *Model) plotRows(b *life.Batch) int {
	area := listing.Within(m.place().Chosen)
	if b.ID != m.detailOf || !dries(b) || m.plot.Empty() || m.opt.Plain || area.Dx() < plotW {
		return 0
	}
	if area.Dy() < roomyH {
		return lowPlot
	}
	return highPlot
}

// drawPlot draws how the batch dries.
func (m *Model) drawPlot(a screen.Area, _ *life.Batch) { chart.Drying(a, m.look, m.plot) }

// plotWords says what the drawing shows.
func (m *Model) plotWords(b *life.Batch) []string {
	if b.ID != m.detailOf || !dries(b) || m.plot.Empty() {
		return nil
	}
	return m.plot.Tell()
}

// numbers writes numbers one after the other.
func numbers(list []int) string { return strings.Trim(fmt.Sprint(list), "[]") }

// plural is so many of something.
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
