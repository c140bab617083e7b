package trace_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
	"pourbench/pour/stock/trace"
)

const today = day.Day(20_600)

func olive() lot.Material { return lot.Material{Kind: lot.Oil, ID: "olive"} }

// quarter is a small ledger: olive oil of lot A12 in two tubs, one of them in a master-batch, cartons without a lot, and a take for a batch that nobody poured.
func quarter() []stock.Entry {
	g := func(v float64) lot.Quantity { q, _ := lot.Weighed(v); return q }
	d := today - 90
	return []stock.Entry{
		{ID: "1", Kind: stock.Received, Day: d, Pack: "olive-1", Material: olive(), Name: "Olive oil", Lot: "A12", Supplier: "the mill", Q: g(5000)},
		{ID: "2", Kind: stock.Received, Day: d, Pack: "olive-2", Material: olive(), Name: "Olive oil", Lot: "a12", Supplier: "the mill", Q: g(1000)},
		{ID: "3", Kind: stock.Received, Day: d, Pack: "box-1", Material: lot.Material{Kind: lot.Packaging, ID: "box"}, Name: "Box", Q: g(100)},
		{ID: "4", Kind: stock.Taken, Day: d + 1, Pack: "olive-1", For: "oils-1", Q: g(2000)},
		{ID: "5", Kind: stock.Made, Day: d + 1, Pack: "oils-1", Material: lot.Material{Kind: lot.Blend, ID: "oils"}, Name: "Master-batch", Lot: "M7", Q: g(1999.5)},
		{ID: "6", Kind: stock.Taken, Day: d + 2, Pack: "oils-1", For: "meadow", Q: g(800.25)},
		{ID: "7", Kind: stock.Taken, Day: d + 2, Pack: "olive-2", For: "meadow", Jug: "white", Q: g(12.3456), Planned: true},
		{ID: "8", Kind: stock.Taken, Day: d + 2, Pack: "olive-2", For: "meadow", Jug: "blue", Q: g(10)},
		{ID: "9", Kind: stock.Taken, Day: d + 30, Pack: "box-1", For: "meadow", Q: g(20)},
		{ID: "10", Kind: stock.Lost, Day: d + 3, Pack: "olive-1", Q: g(50), Text: "fell over"},
		{ID: "11", Kind: stock.Counted, Day: d + 4, Pack: "olive-1", Q: g(2940), Text: "weighed"},
		{ID: "12", Kind: stock.Taken, Day: d + 5, Pack: "olive-1", For: "nowhere", Q: g(1)},
	}
}

// pours are two batches: meadow, of the ledger, and old, in which lots were only typed.
func pours() []life.Batch {
	when := (today - 88).At(10, 0, time.UTC)
	batch := func(id string, marks ...logbook.Event) life.Batch {
		for i := range marks {
			marks[i].ID, marks[i].Wall = string(rune('a'+i)), when.Add(time.Duration(i)*time.Minute)
		}
		p := logbook.Pour{ID: id, Name: strings.ToUpper(id), Opened: when, PlanErr: errNone{}, Events: marks}
		return life.Of(p, pour.Shelf{}, pour.Hand{}, today)
	}
	return []life.Batch{
		batch("meadow",
			logbook.Event{Kind: logbook.Weighed, What: "Olive oil", Lot: "A12", Value: 22},
			logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 20, Seconds: 1}},
			logbook.Event{Kind: logbook.Lotted, Lot: "B 1", Life: logbook.Life{Count: 19}},
			logbook.Event{Kind: logbook.Sold, What: "market", Life: logbook.Life{Count: 12, Audience: "town"}},
			logbook.Event{Kind: logbook.Given, Life: logbook.Life{Count: 2}},
			logbook.Event{Kind: logbook.Counted, Life: logbook.Life{Count: 4}}),
		batch("old",
			logbook.Event{Kind: logbook.Weighed, What: "olive OIL", Lot: "a12 ", Value: 300},
			logbook.Event{Kind: logbook.Weighed, What: "Rose clay", Lot: "R9", Value: 5, Jug: "pink"},
			logbook.Event{Kind: logbook.Weighed, What: "Rose clay", Lot: "r9", Value: 5, Jug: "white"},
			logbook.Event{Kind: logbook.Sliced, Life: logbook.Life{Count: 10}},
			logbook.Event{Kind: logbook.Lotted, Lot: "C1", Life: logbook.Life{Count: 5}},
			logbook.Event{Kind: logbook.Lotted, Lot: "C2", Life: logbook.Life{Count: 5}},
			logbook.Event{Kind: logbook.Sold, Life: logbook.Life{Count: 10}}),
	}
}

type errNone struct{}

func (errNone) Error() string { return "no plan" }

func graph() trace.Graph { return trace.Of(stock.Of(quarter(), today), pours()) }

func found(t *testing.T, g trace.Graph, what string) trace.Thing {
	t.Helper()
	list, err := g.Find(what)
	if err != nil || len(list) != 1 {
		t.Fatalf("%q is borne by %v: %v", what, list, err)
	}
	return list[0]
}

// linesOf are the lines of a tree under each other.
func linesOf(tree trace.Tree) string {
	out := ""
	for _, l := range tree.Lines {
		first, _ := l.Lead()
		out += first + l.Words() + "\n"
	}
	return out
}

func TestALotIsFollowedToEverySale(t *testing.T) {
	g := graph()
	want := `lot A12 of Olive oil, from the mill
|- pack olive-1 Olive oil, lot A12, 5000 g received 2026-02-26, 2939 g left, 60 g lost
|  |- 2000 g into pack oils-1 Master-batch, lot M7, 1999.5 g made 2026-02-27, 1199.25 g left
|  |  \- 800.25 g into batch meadow MEADOW, poured 2026-02-28, labelled, 20 bars
|  |     \- 19 bars of meadow labelled B 1
|  |        |- 2026-02-28: 1 bar not good enough to sell, at the cut
|  |        |- 2026-02-28: 12 bars sold, at market, for town
|  |        |- 2026-02-28: 2 bars given
|  |        |- 1 bar missing by a count
|  |        \- 4 bars left here
|  \- 1 g into batch nowhere [! no batch nowhere is in the logbook]
|- pack olive-2 Olive oil, lot a12, 1000 g received 2026-02-26, 977.6544 g left
|  \- 22.3456 g (12.3456 g of it as planned) in white, blue into batch meadow MEADOW, poured 2026-02-28, labelled, 20 bars (as above)
\- 300 g into batch old OLD, poured 2026-02-28, sold out, 10 bars [! it stands in the pour alone; the ledger has no entry of it]
   |- 2026-02-28: 10 bars sold
   |- 5 bars of old labelled C1 [! its batch has several labels: which bars of it are where nobody wrote]
   \- 5 bars of old labelled C2 [! its batch has several labels: which bars of it are where nobody wrote]
`
	lot := found(t, g, "  A12 ")
	if got := linesOf(g.Tree(lot, trace.Forward)); got != strings.ReplaceAll(want, "\\-", "`-") {
		t.Errorf("the tree is\n%s", got)
	}
	r := g.Recall(lot)
	if (r.Bars != trace.Whereabouts{All: 30, Sold: 22, Given: 2, Seconds: 1, Missing: 1, Left: 4}) || len(r.Batches) != 3 || len(r.Packs) != 3 || len(r.Places) != 6 {
		t.Errorf("the recall is %+v", r)
	}
	doubts := strings.Join(r.Doubts, "\n")
	if !strings.Contains(doubts, "lot a12 into batch old: it stands in the pour alone") || !strings.Contains(doubts, "no batch nowhere") || len(r.Doubts) != 2 {
		t.Errorf("it doubts\n%s", doubts)
	}
	// 5000 + 1000 came; 12.3456 + 10 + 1 went into batches, 2000 into the master-batch, 50 fell over; the count found 2940 where 5000 - 2000 - 50 should be.
	b, ok := g.Balance(lot)
	if want := (trace.Balance{Kind: "oil", Received: 60000000, Batches: 233456, Made: 20000000, Lost: 500000, Counted: 100000, Left: 39166544}); !ok || b != want {
		t.Errorf("the balance is %+v, want %+v", b, want)
	}
}

func TestABarGoesBackToEveryLot(t *testing.T) {
	g := graph()
	want := `19 bars of meadow labelled B 1
\- batch meadow MEADOW, poured 2026-02-28, labelled, 20 bars
   |- 800.25 g of pack oils-1 Master-batch, lot M7, 1999.5 g made 2026-02-27, 1199.25 g left
   |  |- lot M7 of Master-batch, made here
   |  \- 2000 g of pack olive-1 Olive oil, lot A12, 5000 g received 2026-02-26, 2939 g left, 60 g lost
   |     \- lot A12 of Olive oil, from the mill
   |- 22.3456 g (12.3456 g of it as planned) in white, blue of pack olive-2 Olive oil, lot a12, 1000 g received 2026-02-26, 977.6544 g left
   |  \- lot A12 of Olive oil, from the mill
   \- 20 pieces of pack box-1 Box, 100 pieces received 2026-02-26, 80 pieces left [! no lot was written down]
`
	bars := found(t, g, "b  1")
	if got := linesOf(g.Tree(bars, trace.Backward)); got != strings.ReplaceAll(want, "\\-", "`-") {
		t.Errorf("the tree is\n%s", got)
	}
	sources := []string{}
	for _, x := range g.Sources(bars) {
		sources = append(sources, g.Tell(x))
	}
	if got := strings.Join(sources, "\n"); got != "pack box-1 Box, 100 pieces received 2026-02-26, 80 pieces left\nlot A12 of Olive oil, from the mill" {
		t.Errorf("it goes back to\n%s", got)
	}
	if d := g.Recall(found(t, g, "C2")).Doubts; len(d) != 1 || !strings.Contains(d[0], "several labels") {
		t.Errorf("the bars of several labels doubt %q", d)
	}
}

// A lot that stands in a pour's file alone is found, with all that was weighed of it.
func TestATypedLotIsFoundAndMarked(t *testing.T) {
	g := graph()
	tree := g.Tree(found(t, g, "R9"), trace.Forward)
	if len(tree.Lines) < 2 || tree.Lines[0].Text != "lot R9 of Rose clay" ||
		!strings.HasPrefix(tree.Lines[1].Text, "10 g in pink, white into batch old") || !strings.Contains(tree.Lines[1].Mark, "no entry") {
		t.Errorf("the tree is\n%s", linesOf(tree))
	}
	if _, ok := g.Balance(tree.Of); ok {
		t.Error("a lot that never came has a balance")
	}
}

// What a pour says it drew counts where the ledger has no entry of it any more, and not twice where it has.
func TestWhatAPourDrewIsFoundWithoutTheLedger(t *testing.T) {
	when := (today - 88).At(10, 0, time.UTC)
	p := logbook.Pour{ID: "meadow", Opened: when, PlanErr: errNone{}, Events: []logbook.Event{
		{ID: "a", Wall: when, Kind: logbook.Drew, What: "Olive oil", Pack: "olive-2", Lot: "a12", Value: 22.3456, Entry: "7"},
		{ID: "b", Wall: when, Kind: logbook.Drew, What: "Box", Pack: "box-9", Value: 3, Entry: "99"},
	}}
	g := trace.Of(stock.Of(quarter(), today), []life.Batch{life.Of(p, pour.Shelf{}, pour.Hand{}, today)})
	links := g.Links(trace.PackOf("olive-2"), trace.Forward)
	if len(links) != 1 || links[0].Doubt != "" || links[0].Q != 223456 {
		t.Errorf("of the pack in the ledger went %+v", links)
	}
	if got := linesOf(g.Tree(found(t, g, "box-9"), trace.Forward)); !strings.Contains(got, "into batch meadow") || !strings.Contains(got, "it stands in the pour alone") {
		t.Errorf("of the pack that the ledger does not know:\n%s", got)
	}
}

func TestWhatBearsNoNumberIsRefusedWithWhatIsMeant(t *testing.T) {
	g := graph()
	for what, want := range map[string]string{"A13": `did you mean "a12"?`, "zzzzzzzz": "pourbench stock lists", "": "no lot", "mead\x1bow2": "meadow"} {
		if list, err := g.Find(what); err == nil || !strings.Contains(err.Error(), want) || len(list) != 0 {
			t.Errorf("%q: %v, %v", what, list, err)
		}
	}
}

// A ledger mended by hand so that a pack went into itself by another is told once and ends.
func TestWhatGoesRoundIsToldOnce(t *testing.T) {
	blend := lot.Material{Kind: lot.Blend, ID: "x"}
	g := trace.Of(stock.Of([]stock.Entry{
		{ID: "1", Kind: stock.Made, Pack: "x-1", Material: blend, Q: lot.One},
		{ID: "2", Kind: stock.Made, Pack: "x-2", Material: blend, Q: lot.One},
		{ID: "3", Kind: stock.Taken, Pack: "x-1", For: "x-2", Q: lot.One},
		{ID: "4", Kind: stock.Taken, Pack: "x-2", For: "x-1", Q: lot.One},
		{ID: "5", Kind: stock.Taken, Pack: "gone", For: "", Q: lot.One},
	}, today), nil)
	tree := g.Tree(trace.PackOf("x-1"), trace.Forward)
	if len(tree.Lines) != 3 || !tree.Lines[2].Again {
		t.Errorf("the tree is\n%s", linesOf(tree))
	}
	if got := linesOf(g.Tree(trace.PackOf("gone"), trace.Forward)); !strings.Contains(got, "of a pack that never came") {
		t.Errorf("the tree is\n%s", got)
	}
}

// Oil of one pack that was weighed for the batch and, as planned, wets a colour is told as what was weighed, with how much of it nobody weighed.
func TestWeighedOilStaysWeighedWhereItWetsColoursToo(t *testing.T) {
	g := func(v float64) lot.Quantity { q, _ := lot.Weighed(v); return q }
	take := func(id, jug string, v float64, planned bool) stock.Entry {
		return stock.Entry{ID: id, Kind: stock.Taken, Day: today - 88, Pack: "olive-1", For: "meadow", Jug: jug, Q: g(v), Planned: planned}
	}
	came := stock.Entry{ID: "1", Kind: stock.Received, Day: today - 90, Pack: "olive-1", Material: olive(), Name: "Olive oil", Lot: "A12", Q: g(5000)}
	for _, c := range []struct {
		says, column string
		takes        []stock.Entry
	}{
		{"604.5 g (4.5 g of it as planned) in all of it and in white into", "in part", []stock.Entry{take("2", "", 600, false), take("3", "white", 4.5, true)}},
		{"604.5 g (4.5 g of it as planned) in all of it and in white into", "in part", []stock.Entry{take("2", "white", 4.5, true), take("3", "", 600, false)}},
		{"604.5 g in all of it and in white into", "", []stock.Entry{take("2", "", 600, false), take("3", "white", 4.5, false)}},
		{"604.5 g (as planned) in all of it and in white into", "planned", []stock.Entry{take("2", "", 600, true), take("3", "white", 4.5, true)}},
		{"14.5 g (4.5 g of it as planned) in white, blue into", "in part", []stock.Entry{take("2", "white", 10, false), take("3", "blue", 4.5, true)}},
	} {
		graph := trace.Of(stock.Of(append([]stock.Entry{came}, c.takes...), today), pours())
		pack := found(t, graph, "olive-1")
		if text := linesOf(graph.Tree(pack, trace.Forward)); !strings.Contains(text, c.says) {
			t.Errorf("want %q in:\n%s", c.says, text)
		}
		at := slices.Index(trace.Columns(), "planned")
		rows := graph.Rows(pack, trace.Forward)
		if !slices.ContainsFunc(rows, func(r []string) bool {
			return r[slices.Index(trace.Columns(), "from")] == "olive-1" && r[at] == c.column
		}) {
			t.Errorf("%s: no row of the pack says %q: %q", c.says, c.column, rows)
		}
	}
}
