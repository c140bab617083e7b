package paper

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"
	"time"

	"pourbench/pour/stock/trace"
)

// TraceText writes where things went and what went into them, as trees of lines, and of each what a recall has to know: how many bars, every sale,
// and where all of its grams are. When it was asked stands at the top, so that the page proves a drill.
func TraceText(g trace.Graph, things []trace.Thing, asked time.Time) string {
	p := textPage()
	p.wrapped("", fmt.Sprintf("Asked %s. %s", asked.Format("2006-01-02 15:04:05 -07:00"), bearing(len(things))))
	for _, t := range things {
		for _, tree := range g.Both(t) {
			p.raw("")
			p.raw(map[trace.Way]string{trace.Forward: "WHERE IT WENT", trace.Backward: "WHAT WENT INTO IT"}[tree.Way])
			branches(p, tree)
		}
		recall(p, g, t)
		sources(p, g, t)
	}
	return p.text()
}

// bearing says that several things bear what was asked for.
func bearing(n int) string {
	if n < 2 {
		return ""
	}
	return fmt.Sprintf("%d things bear that number.", n)
}

// branches writes a tree.
func branches(p *page, tree trace.Tree) {
	for _, l := range tree.Lines {
		first, further := l.Lead()
		for i, text := range wrap(plain(l.Words()), max(p.wide-width(first), leastText)) {
			if i == 0 {
				p.raw(first + text)
			} else {
				p.raw(further + "  " + text)
			}
		}
	}
}

// recall writes what a recall of a thing has to know.
func recall(p *page, g trace.Graph, t trace.Thing) {
	r := g.Recall(t)
	if b, ok := g.Balance(t); ok {
		p.raw("")
		p.wrapped("Balance: ", balance(b))
		if b.Off != 0 {
			p.alert(fmt.Sprintf("%s %s are not accounted for: look at the ledger's entries of this lot.", b.Off, b.Kind.Unit()))
		}
	}
	if t.Kind == trace.Batch || len(r.Batches) > 0 || len(r.Places) > 0 {
		p.raw("")
		p.wrapped("Recall: ", reached(r))
		of := ""
		for _, x := range r.Places {
			if x.Of != of {
				of = x.Of
				p.wrapped("  ", "of "+of+":")
			}
			p.wrapped("    ", g.Tell(x))
		}
	}
	for _, d := range r.Doubts {
		p.wrapped("! ", d)
	}
}

// balance is a balance in words.
func balance(b trace.Balance) string {
	unit := b.Kind.Unit()
	parts := []string{fmt.Sprintf("%s %s into batches", b.Batches, unit)}
	add := func(is bool, format string, args ...any) {
		if is {
			parts = append(parts, fmt.Sprintf(format, args...))
		}
	}
	add(b.Made != 0, "%s %s into blends and embeds", b.Made, unit)
	add(b.Lost != 0, "%s %s lost", b.Lost, unit)
	add(b.Counted > 0, "%s %s too little by counts", b.Counted, unit)
	add(b.Counted < 0, "(-%s) %s too much by counts", -b.Counted, unit)
	add(true, "%s %s left", b.Left, unit)
	return fmt.Sprintf("%s %s = %s.", b.Received, unit, strings.Join(parts, " + "))
}

// reached is how far a thing went, in words.
func reached(r trace.Recall) string {
	w := r.Bars
	text := fmt.Sprintf("%d %s, %d bars = %d sold + %d given + %d kept + %d seconds + %d missing + %d left here.",
		len(r.Batches), map[bool]string{true: "batch", false: "batches"}[len(r.Batches) == 1], w.All, w.Sold, w.Given, w.Kept, w.Seconds, w.Missing, w.Left)
	if t := r.Of.Kind; t == trace.Bars {
		text = strings.TrimPrefix(text, "0 batches, ")
	}
	if w.Unknown > 0 {
		text += fmt.Sprintf(" How many bars there are of %d of them is not logged.", w.Unknown)
	}
	return text
}

// sources writes what a batch or bars go back to.
func sources(p *page, g trace.Graph, t trace.Thing) {
	if t.Kind == trace.Lot {
		return
	}
	list := g.Sources(t)
	if len(list) == 0 {
		return
	}
	p.raw("")
	p.raw("Every lot it goes back to:")
	for _, x := range list {
		text := g.Tell(x)
		if x.Kind == trace.Pack {
			text += " [! no lot was written down]"
		}
		p.wrapped("  ", text)
	}
}

// TraceCSV writes every step of where things went and of what went into them as a table (RFC 4180).
func TraceCSV(w io.Writer, g trace.Graph, things []trace.Thing) error {
	out := csv.NewWriter(w)
	_ = out.Write(trace.Columns()) // what goes wrong comes out of Error below
	for _, t := range things {
		for _, way := range []trace.Way{trace.Backward, trace.Forward} {
			for _, r := range g.Rows(t, way) {
				_ = out.Write(r)
			}
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("write the trace as CSV: %w", err)
	}
	return nil
}
