package paper

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"pourbench/pour/lot"
	"pourbench/pour/money"
	safe "pourbench/pour/plain"
	"pourbench/pour/stock/closing"
)

// The columns of a page that closes the books.
const (
	closeWords = 44
	closeQ     = 18
	closeCost  = 18
)

// ClosingText writes the books of some days closed: of every material what there was and came, and what became of it, in its own unit and in money, and
// where the cost of the batches is. Money is rounded where it is shown, half up to the cent; a total is the rounded sum and not the sum of rounded lines.
func ClosingText(m closing.Materials, b closing.Bars) string {
	p := textPage()
	rule := map[lot.Formula]string{lot.FIFO: "the earliest receipt's cost goes out first", lot.Average: "moving average"}[m.Formula]
	p.wrapped("", strings.TrimSpace(fmt.Sprintf("The books from %s to %s. Cost: %s. Totals are rounded sums, not sums of rounded lines. %s", m.From, m.To, rule, currency(m.Currency))))
	if len(m.Rows) == 0 {
		p.wrapped("", "Nothing was received until then: pourbench stock receive writes in what came.")
	}
	for _, r := range m.Rows {
		p.raw("")
		closingRow(p, strings.ToUpper(string(r.Material.Kind))+" "+r.Name, r.Material.Kind.Unit(), r)
	}
	if len(m.Rows) > 0 {
		closingTotals(p, m)
	}
	closingBars(p, b)
	for _, d := range m.Odd {
		p.alert(d.Entry + " " + d.Text)
	}
	return p.text()
}

// closingTotals writes the books of all materials: grams and pieces apart, where there are both, and the money of both.
func closingTotals(p *page, m closing.Materials) {
	weighed, counted := false, false
	for _, r := range m.Rows {
		weighed, counted = weighed || !r.Material.Kind.Counted(), counted || r.Material.Kind.Counted()
	}
	if weighed {
		p.raw("")
		closingRow(p, "ALL THAT IS WEIGHED", lot.Oil.Unit(), m.Weighed)
	}
	if counted {
		p.raw("")
		closingRow(p, "ALL THAT IS COUNTED", lot.Packaging.Unit(), m.Pieces)
	}
	p.raw("")
	closingRow(p, "ALL OF IT", "", m.Total)
}

func currency(code string) string {
	if code == "" {
		return ""
	}
	return "All in " + code + "."
}

// closingLine is one line of the books of a material.
type closingLine struct {
	key, words string
	sum        closing.Sum
	always     bool
}

// closingLines are the lines of the books of a material, what came before what went.
func closingLines(r closing.Row) []closingLine {
	return []closingLine{
		{"opening", "there was", r.Opening, true},
		{"bought", "+ bought", r.Bought, true},
		{"made", "+ made here", r.Made, false},
		{"batches", "- used in batches", r.Batches, true},
		{"blends", "- used in blends and embeds", r.Blends, false},
		{"lost", "- spilled and thrown away", r.Lost, false},
		{"counted", "- shrunk, by counts", r.Counted, false},
		{"left", "= is left", r.Left, true},
		{"off", "! NOT ACCOUNTED FOR", r.Off, false},
	}
}

// closingRow writes the books of one material, or of several. Lines of nothing are left out where they can be.
func closingRow(p *page, title, unit string, r closing.Row) {
	p.keep(func() {
		p.raw(closingCells(clip(plain(title), closeWords), unit, "cost"))
		for _, l := range closingLines(r) {
			if !l.always && l.sum.Q == 0 && l.sum.Cost.Sign() == 0 {
				continue
			}
			q := l.sum.Q.String()
			if unit == "" {
				q = ""
			}
			p.raw(closingCells("  "+l.words, q, l.sum.Cost.Cents()))
		}
		if r.Back != 0 && unit != "" {
			p.raw(closingCells("  (taken and given back, in no line above)", r.Back.String(), ""))
		}
	})
}

func closingCells(words, q, cost string) string {
	return padded(words, closeWords) + strings.Repeat(" ", max(0, closeQ-width(q))) + q + strings.Repeat(" ", max(0, closeCost-width(cost))) + cost
}

// barsLine is one line of the books of the bars.
type barsLine struct {
	key, words string
	bars       int
	counts     bool // it is of bars
	cost       money.Amount
	costs      bool // it carries cost
}

func barsLines(b closing.Bars) []barsLine {
	of := func(key, words string, c closing.Count) barsLine {
		return barsLine{key, words, c.Bars, true, c.Cost, true}
	}
	return []barsLine{
		of("opening", "bars there were", b.Opening),
		{"loaves", "+ in loaves not cut then", 0, false, b.Loaves, true},
		{"added", "+ went into batches", 0, false, b.Added, true},
		{"cut", "+ bars cut", b.Cut, true, money.Amount{}, false},
		of("sold", "- sold", b.Sold),
		of("given", "- given away", b.Given),
		of("own", "- kept for oneself", b.Own),
		{"samples", "- kept as samples, which carry no cost", b.Samples, true, money.Amount{}, false},
		{"seconds", "- seconds, which carry no cost", b.Seconds, true, money.Amount{}, false},
		of("missing", "- missing, by counts", b.Missing),
		of("written off", "- written off: failed, or no good bar", b.WrittenOff),
		{"uncut", "= in loaves not cut yet", 0, false, b.Uncut, true},
		of("left", "= bars on hand", b.Left),
	}
}

// closingBars writes the books of the bars.
func closingBars(p *page, b closing.Bars) {
	p.raw("")
	p.keep(func() {
		p.raw(closingCells("BARS, at the cost of their batches", "bars", "cost"))
		for _, l := range barsLines(b) {
			bars, cost := "", ""
			if l.counts {
				bars = fmt.Sprint(l.bars)
			}
			if l.costs {
				cost = l.cost.Cents()
			}
			p.raw(closingCells("  "+l.words, bars, cost))
		}
	})
	for _, t := range b.Taken {
		p.raw(closingCells("  (sold for)", "", strings.TrimSpace(t.Amount.Cents()+" "+t.Currency)))
	}
	if b.NoPrice > 0 {
		p.wrapped("  ", fmt.Sprintf("For %d of the bars sold no price was written.", b.NoPrice))
	}
	if len(b.Unknown) > 0 {
		p.alert("How many bars they gave, or all that they cost, is not known of " + strings.Join(b.Unknown, ", ") + ": the figures above are the least.")
	}
}

// ClosingCSV writes the books as a table, a row for every line, with exact amounts (RFC 4180).
func ClosingCSV(w io.Writer, m closing.Materials, b closing.Bars) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{"of", "name", "line", "quantity", "unit", "cost", "currency", "from", "to"}) // what goes wrong comes out of Error below
	row := func(of, name, line, q, unit, cost string) {
		_ = out.Write([]string{of, safe.Cell(name), line, q, unit, cost, safe.Cell(m.Currency), m.From.String(), m.To.String()})
	}
	for _, r := range m.Rows {
		for _, l := range closingLines(r) {
			row(r.Material.String(), r.Name, l.key, l.sum.Q.String(), r.Material.Kind.Unit(), l.sum.Cost.Exact())
		}
	}
	for _, l := range closingLines(m.Total) {
		row("all", "", l.key, "", "", l.sum.Cost.Exact())
	}
	for _, l := range barsLines(b) {
		bars, cost := "", ""
		if l.counts {
			bars = fmt.Sprint(l.bars)
		}
		if l.costs {
			cost = l.cost.Exact()
		}
		row("bars", "", l.key, bars, "bars", cost)
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("write the books as CSV: %w", err)
	}
	return nil
}
