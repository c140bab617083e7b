package cost

import (
	"fmt"
	"slices"

	"pourbench/pour/money"
)

// Kind is what a line of a bill is for.
type Kind string

// The kinds of cost that a batch carries. What selling costs is none of them: IAS 2.16 keeps it out of the cost of what is in stock (read 2nd-hand).
const (
	Materials Kind = "materials"
	Packaging Kind = "packaging"
	Energy    Kind = "energy"
	Labour    Kind = "labour"
	Overhead  Kind = "overhead"
)

// Kinds lists the kinds in the order of a bill.
func Kinds() []Kind { return []Kind{Materials, Packaging, Energy, Labour, Overhead} }

// Line is one cost of a batch.
type Line struct {
	Kind   Kind
	Name   string
	Amount money.Amount
	Lacks  string // why it is not known what it costs, in the maker's words; empty: it is
	From   string // where the price is from and what it is of
}

// Bars is how many bars a batch gives.
type Bars struct {
	Cut     int // all that come off the cutter
	Good    int // that can be sold: without sample, trims, seconds and rejects, which carry no cost
	Testers int // of the good ones, given away to be tried
}

// What the two costs of a bar are called wherever they are told. They are one where no bar is given away.
const (
	GoodBar = "a good bar" // the batch over all its good bars, testers among them
	SoldBar = "a bar sold" // the batch over the bars that bring money, which carry the testers
)

// Sold is how many of the bars bring money.
func (b Bars) Sold() int { return max(b.Good-b.Testers, 0) }

// Bill is what a batch costs.
type Bill struct {
	Currency  string
	Lines     []Line // in the order of the kinds
	Bars      Bars
	HandsS    int64    // of work, s
	Lacks     string   // why it cannot be known at all, beside its lines; empty: nothing
	Uncounted []string // what is not stated and therefore not in it, in the maker's words
}

// Bill makes the bill of a batch: its materials and its packaging, each at what its packs cost, and what the house's costs add for a batch and for
// so many seconds of hands.
func (h House) Bill(goods []Line, handsS int64, bars Bars) Bill {
	b := Bill{Currency: h.Currency, Bars: bars, HandsS: handsS, Lines: slices.Clone(goods)}
	b.add(Energy, "energy", h.EnergyPerBatch, "a batch, from your costs", "energy: energy_per_batch is not stated")
	b.add(Labour, "labour", h.WagePerHour.Part(handsS, 3600), "hands' time at "+Written(h.WagePerHour, h.Currency)+" an hour", "labour: wage_per_hour is not stated")
	b.add(Overhead, "overhead", h.OverheadPerBatch, "a batch, from your costs", "overhead: overhead_per_batch is not stated")
	slices.SortStableFunc(b.Lines, func(x, y Line) int { return slices.Index(Kinds(), x.Kind) - slices.Index(Kinds(), y.Kind) })
	return b
}

func (b *Bill) add(kind Kind, name string, a money.Amount, from, uncounted string) {
	if a.Sign() == 0 {
		b.Uncounted = append(b.Uncounted, uncounted)
		return
	}
	b.Lines = append(b.Lines, Line{Kind: kind, Name: name, Amount: a, From: from})
}

// Sum is what the lines of some kinds come to, of all without one. Where a line's cost is not known the sum is the least it can be, and not known.
func (b Bill) Sum(kinds ...Kind) (sum money.Amount, known bool) {
	known = b.Lacks == ""
	for _, l := range b.Lines {
		if len(kinds) > 0 && !slices.Contains(kinds, l.Kind) {
			continue
		}
		sum, known = sum.Plus(l.Amount), known && l.Lacks == ""
	}
	return sum, known
}

// Total is what the batch costs. Where it is not known, it is the least that it costs.
func (b Bill) Total() (money.Amount, bool) { return b.Sum() }

// Unit is what a good bar costs: the whole batch over its good bars (cost accounting: normal rejects are carried by the good ones).
// Where it is not known the least it costs; nothing where there is no good bar.
func (b Bill) Unit() (money.Amount, bool) {
	total, known := b.Total()
	return b.perGood(total, known)
}

// UnitSold is what a bar costs of those that bring money: the whole batch over the bars sold, so that they carry those given away. Where it is not
// known the least it costs; nothing where none is sold.
func (b Bill) UnitSold() (money.Amount, bool) {
	total, known := b.Total()
	if b.Bars.Sold() == 0 {
		return money.Amount{}, false
	}
	return total.Part(1, int64(b.Bars.Sold())), known && len(b.Lines) > 0
}

func (b Bill) perGood(sum money.Amount, known bool) (money.Amount, bool) {
	if b.Bars.Good <= 0 {
		return money.Amount{}, false
	}
	return sum.Part(1, int64(b.Bars.Good)), known && len(b.Lines) > 0
}

// Lacking lists what keeps the total from being known, in the maker's words.
func (b Bill) Lacking() []string {
	var out []string
	if b.Bars.Good <= 0 {
		out = append(out, fmt.Sprintf("no bar of it can be sold: %d come off the cutter, and all of them are rejects", b.Bars.Cut))
	}
	for _, l := range b.Lines {
		if l.Lacks != "" {
			out = append(out, l.Name+": "+l.Lacks)
		}
	}
	if b.Lacks != "" {
		out = append(out, b.Lacks)
	}
	if len(b.Lines) == 0 {
		out = append(out, "nothing of it has a price")
	}
	return out
}

// Largest is the places of the n largest lines, largest first, the earlier first where two are alike.
func (b Bill) Largest(n int) []int {
	at := make([]int, len(b.Lines))
	for i := range at {
		at[i] = i
	}
	slices.SortStableFunc(at, func(i, k int) int { return b.Lines[k].Amount.Compare(b.Lines[i].Amount) })
	return at[:min(n, len(at))]
}

// Changed is the bill with one of its lines so many percent dearer, or cheaper.
func (b Bill) Changed(line int, by money.Percent, cheaper bool) Bill {
	b.Lines = slices.Clone(b.Lines)
	a, change := b.Lines[line].Amount, b.Lines[line].Amount.Percent(by)
	if cheaper {
		b.Lines[line].Amount = a.Minus(change)
	} else {
		b.Lines[line].Amount = a.Plus(change)
	}
	return b
}
