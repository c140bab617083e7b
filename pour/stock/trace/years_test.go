package trace_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/lot"
	"pourbench/pour/stock/stocktest"
	"pourbench/pour/stock/trace"
)

func drawn(t *rapid.T) stocktest.Business {
	return stocktest.Draw(stocktest.Seeded(rapid.Uint64().Draw(t, "seed")), stocktest.Size{Batches: 10, Materials: 9, Each: 5, Clean: rapid.Bool().Draw(t, "clean")})
}

// everything is every pack, lot, batch, label and place that can be met in a business.
func everything(b stocktest.Business, g trace.Graph) []trace.Thing {
	var out []trace.Thing
	add := func(t trace.Thing) {
		if !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	for id := range b.Told.Left {
		add(trace.PackOf(id))
		for _, l := range g.Links(trace.PackOf(id), trace.Backward) {
			add(l.From)
		}
	}
	for _, x := range b.Batches() {
		add(trace.BatchOf(x.ID))
		for _, far := range g.Reach(trace.BatchOf(x.ID), trace.Forward) {
			add(far)
		}
		for _, far := range g.Reach(trace.BatchOf(x.ID), trace.Backward) {
			add(far)
		}
	}
	return out
}

// A thing is reached forwards from another exactly where that other is reached backwards from it.
func TestForwardsAndBackwardsAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t)
		g := trace.Of(b.State(), b.Batches())
		all := everything(b, g)
		forward, backward := map[[2]trace.Thing]bool{}, map[[2]trace.Thing]bool{}
		for _, x := range all {
			for _, y := range g.Reach(x, trace.Forward) {
				forward[[2]trace.Thing{x, y}] = true
			}
			for _, y := range g.Reach(x, trace.Backward) {
				backward[[2]trace.Thing{y, x}] = true
			}
		}
		for pair := range forward {
			if !backward[pair] {
				t.Fatalf("%v goes into %v, which does not go back to it", pair[0], pair[1])
			}
		}
		for pair := range backward {
			if !forward[pair] {
				t.Fatalf("%v goes back to %v, which does not go into it", pair[1], pair[0])
			}
		}
	})
}

// From every pack exactly those batches are reached that it went into by the business's own account, by whatever blends of blends.
func TestEveryPackReachesTheBatchesItWentInto(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t)
		g := trace.Of(b.State(), b.Batches())
		isPack := func(id string) bool { _, ok := b.Told.Left[id]; return ok }
		for id := range b.Told.Left {
			want := map[string]bool{}
			var into func(id string)
			into = func(id string) { // by plain steps through the account
				for to := range b.Told.Into[id] {
					if !want[to] {
						want[to] = true
						into(to)
					}
				}
			}
			into(id)
			got := map[string]bool{}
			for _, x := range g.Reach(trace.PackOf(id), trace.Forward) {
				if x.Kind == trace.Batch || x.Kind == trace.Pack {
					if isPack(x.ID) != (x.Kind == trace.Pack) {
						t.Fatalf("%v is no %s", x, x.Kind)
					}
					got[x.ID] = true
				}
			}
			if len(got) != len(want) {
				t.Fatalf("%s reaches %v, want %v", id, got, want)
			}
			for to := range want {
				if !got[to] {
					t.Fatalf("%s went into %s, which is not reached", id, to)
				}
			}
		}
	})
}

// Whatever was received of a lot is in batches, in blends, lost, counted off or left, to the ten-thousandth; and all bars of a recall are somewhere.
func TestEveryLotBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t)
		g := trace.Of(b.State(), b.Batches())
		left := lot.Quantity(0)
		for id, want := range b.Told.Left {
			x, ok := g.Balance(trace.PackOf(id))
			if !ok || x.Off != 0 || x.Left != want || x.Received != x.Batches+x.Made+x.Lost+x.Counted+x.Left {
				t.Fatalf("%s: %+v, want %s left", id, x, want)
			}
			left += want
		}
		for _, x := range everything(b, g) {
			if x.Kind == trace.Lot {
				if y, ok := g.Balance(x); ok && (y.Off != 0 || y.Received != y.Batches+y.Made+y.Lost+y.Counted+y.Left) {
					t.Fatalf("%v: %+v", x, y)
				}
			}
			w := g.Recall(x).Bars
			if w.All != w.Sold+w.Given+w.Kept+w.Seconds+w.Missing+w.Left {
				t.Fatalf("%v: %+v", x, w)
			}
		}
		for _, x := range b.Batches() {
			r := g.Recall(trace.BatchOf(x.ID))
			if r.Bars.Sold != b.Told.Sold[x.ID] || x.Bars.Known && r.Bars.All != x.Bars.Bars {
				t.Fatalf("%s: %+v, want %d sold of %d", x.ID, r.Bars, b.Told.Sold[x.ID], x.Bars.Bars)
			}
		}
	})
}

// A tree tells every thing that is reached, follows none twice, and is as deep as its branches.
func TestATreeTellsAllThatIsReached(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t)
		g := trace.Of(b.State(), b.Batches())
		for _, x := range everything(b, g) {
			for _, way := range []trace.Way{trace.Forward, trace.Backward} {
				tree := g.Tree(x, way)
				told := map[trace.Thing]bool{}
				for _, l := range tree.Lines {
					told[l.Thing] = true
					if first, further := l.Lead(); len(first) != 3*l.Depth || len(further) != 3*l.Depth || l.Text == "" {
						t.Fatalf("%q at depth %d: %q", first, l.Depth, l.Text)
					}
				}
				reached := g.Reach(x, way)
				if len(told) != len(reached)+1 {
					t.Fatalf("%d things are told of %d that are reached from %v", len(told), len(reached)+1, x)
				}
				for _, y := range reached {
					if !told[y] {
						t.Fatalf("%v is not told of %v", y, x)
					}
				}
			}
		}
	})
}
