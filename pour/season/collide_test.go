package season_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
)

// moulds are those that random seasons pour in: two she may own, and one she has not.
func moulds() []pour.Mould {
	other := loaf()
	other.LengthMM = 300
	return []pour.Mould{loaf(), other, {Shape: pour.ShapeTube, LengthMM: 75, WidthMM: 75, HeightMM: 300}}
}

func owned(count, at int) season.Mould {
	m := moulds()[at]
	return season.Mould{Name: fmt.Sprint("mould ", at), Count: count, Shape: m.Shape, LengthMM: m.LengthMM, WidthMM: m.WidthMM, HeightMM: m.HeightMM}
}

// first is the day random seasons begin on.
const first = day.Day(20_700)

func drawDesign(t *rapid.T, i int) season.Design {
	n := func(what string, high int) int { return rapid.IntRange(0, high).Draw(t, what) }
	early := n("early", 20)
	middle := early + n("middle", 10)
	return season.Design{
		Name: fmt.Sprint("design ", i), Mould: moulds()[n("mould", 2)], Bars: n("bars", 12), BarsKnown: true, CutDays: n("cut", 4),
		Cure: season.Span{Early: early, Middle: middle, Late: middle + n("late", 15)},
	}
}

// draw draws a season in which much collides.
func draw(t *rapid.T) season.Facts {
	n := func(what string, low, high int) int { return rapid.IntRange(low, high).Draw(t, what) }
	f := season.Facts{Today: first + day.Day(n("today", 0, 10)), Designs: map[string]season.Design{}}
	f.File.House = season.House{RackBars: n("rack", 1, 40), MostPours: n("most", 0, 2)}
	for at := range n("moulds", 0, 2) {
		f.File.House.Moulds = append(f.File.House.Moulds, owned(n("count", 1, 2), at))
	}
	for d := time.Sunday; d <= time.Saturday; d++ {
		if rapid.Bool().Draw(t, "bench") {
			f.File.House.BenchDays = append(f.File.House.BenchDays, d)
		}
	}
	const designs = 3
	for i := range designs {
		f.Designs[fmt.Sprint(i)] = drawDesign(t, i)
	}
	for i := range n("dates", 0, 3) {
		d := season.Date{Name: fmt.Sprint("date ", i), Day: first + day.Day(n("day", 0, 60)), LabelDays: n("label", 0, 3)}
		for k := range n("wants", 0, designs) {
			d.Wants = append(d.Wants, season.Want{fmt.Sprint("design ", k), n("wanted", 1, 25)})
		}
		f.File.Dates = append(f.File.Dates, d)
	}
	for range n("pours", 0, 8) {
		p := season.Planned{Plan: fmt.Sprint(n("plan", 0, designs-1))}
		if k := n("for", 0, len(f.File.Dates)); k > 0 {
			p.For = f.File.Dates[k-1].Name
		}
		if rapid.Bool().Draw(t, "fixed") {
			d := first + day.Day(n("pour day", 0, 30))
			p.Day = &d
		}
		f.File.Pours = append(f.File.Pours, p)
	}
	states := []life.State{life.InMould, life.Curing, life.Ready, life.Labelled}
	for i := range n("standing", 0, 3) {
		s := season.Standing{ID: fmt.Sprint("s", i), Name: fmt.Sprint("design ", n("of", 0, designs-1)), State: rapid.SampledFrom(states).Draw(t, "state"), Mould: moulds()[n("in", 0, 2)]}
		s.Poured = f.Today - day.Day(n("ago", 0, 20))
		s.Cut = s.Poured + day.Day(n("cut after", 0, 4))
		s.Ready = season.Band{s.Cut + 10, s.Cut + 15, s.Cut + 20}
		if rapid.Bool().Draw(t, "counted") {
			s.Bars = life.Account{Known: true, Bars: 10, Left: n("left", 0, 10)}
		}
		f.Standing = append(f.Standing, s)
	}
	return f
}

// kinds are the places of the rows of all collisions of a kind, in order.
func kinds(b season.Board, k season.CollisionKind) []int {
	out := []int{}
	for _, c := range b.Collisions {
		if c.Kind == k {
			out = append(out, c.Row)
		}
	}
	slices.Sort(out)
	return out
}

// takes is what a row takes up of a house on a day, by plain looking: places on the rack, and moulds of a kind, -1 where it has none.
func takes(f season.Facts, r season.Row, on day.Day) (bars, mould int) {
	mould = -1
	d, s := f.Designs[r.Plan], season.Standing{}
	for _, o := range f.Standing {
		if o.ID == r.ID {
			s = o
		}
	}
	in, dries, of := true, true, d.Mould
	if !r.Planned() {
		in, dries, of = s.State == life.InMould, s.State != life.Ready && s.State != life.Labelled, s.Mould
	}
	if in && (on == r.Pour || on > r.Pour && on < r.Cut) {
		for at, m := range f.File.House.Moulds {
			if m.Shape == of.Shape && m.LengthMM == of.LengthMM {
				mould = at
			}
		}
	}
	if dries && r.BarsKnown && on >= r.Cut && on < r.Ready.Late {
		bars = r.Bars
	}
	return bars, mould
}

// Day by day every place is counted by itself: who comes when nothing is left collides. Those that stand go before those that are planned
// for the same day, then goes the order of the board.
func TestCollisionsAreThoseThatCountingFinds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := draw(t)
		b := season.Of(f)
		h := f.File.House
		turn := make([]int, 0, len(b.Rows))
		for i, r := range b.Rows {
			if r.Placed && (!r.Planned() || r.Pour >= f.Today) { // what was not poured on its day takes up nothing
				turn = append(turn, i)
			}
		}
		slices.SortStableFunc(turn, func(x, y int) int {
			p, q := b.Rows[x], b.Rows[y]
			if p.Pour != q.Pour {
				return int(p.Pour - q.Pour)
			}
			return strings.Compare(fmt.Sprint(p.Planned()), fmt.Sprint(q.Planned()))
		})
		inUse, full, weeks := map[int]bool{}, map[int]bool{}, map[day.Day]bool{}
		for on := first - 60; on < first+400; on++ {
			left := make([]int, len(h.Moulds))
			for at, m := range h.Moulds {
				left[at] = m.Count
			}
			rack, bench := h.RackBars, h.MostPours
			for _, i := range turn {
				r := b.Rows[i]
				bars, at := takes(f, r, on)
				rack -= bars
				if at >= 0 {
					if left[at]--; left[at] < 0 && r.Planned() {
						inUse[i] = true
					}
				}
				if r.Pour == on {
					if bench--; bench < 0 && h.MostPours > 0 && r.Planned() {
						full[i] = true
					}
				}
			}
			if rack < 0 && on >= f.Today {
				weeks[on-day.Day((int(on.Weekday())+6)%7)] = true
			}
		}
		compare := func(k season.CollisionKind, want map[int]bool) {
			all := []int{}
			for i := range want {
				all = append(all, i)
			}
			slices.Sort(all)
			if got := kinds(b, k); !slices.Equal(got, all) {
				t.Fatalf("%s: rows %v, counted %v", k, got, all)
			}
		}
		compare(season.MouldInUse, inUse)
		compare(season.BenchFull, full)
		if got := kinds(b, season.RackFull); len(got) != len(weeks) {
			t.Fatalf("%d weeks too full, counted %d", len(got), len(weeks))
		}
		off, past := map[int]bool{}, map[int]bool{}
		for i, r := range b.Rows {
			switch {
			case !r.Placed || !r.Planned():
			case r.Pour < f.Today:
				past[i] = true
			case len(h.BenchDays) > 0 && !slices.Contains(h.BenchDays, r.Pour.Weekday()):
				off[i] = true
			}
		}
		compare(season.OffDay, off)
		compare(season.DayPast, past)
	})
}

// clashes counts what a pour on a day that is not free for it adds to, of all rows and of one entry.
func clashes(b season.Board, entry int) (all, own int) {
	for _, c := range b.Collisions {
		switch c.Kind {
		case season.MouldInUse, season.BenchFull, season.OffDay, season.DayPast:
			if all++; b.Rows[c.Row].Entry == entry {
				own++
			}
		}
	}
	return all, own
}

// A day that is named as free is free: moved there, the pour collides with nothing, and nothing with it.
func TestADayThatIsNamedAsFreeIsFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, moved := draw(t), 0
		b := season.Of(f)
		for _, c := range b.Collisions {
			before, _, found := strings.Cut(c.Help, ", the next free day before")
			if !found || c.Row < 0 || !b.Rows[c.Row].Fixed {
				continue
			}
			words := strings.Fields(before)
			to := b.Rows[c.Row].Pour - 1
			for ; to.Short() != strings.Join(words[len(words)-2:], " "); to-- {
				if to < f.Today {
					t.Fatalf("no such day: %s", c.Help)
				}
			}
			entry := b.Rows[c.Row].Entry
			all, own := clashes(b, entry)
			g := f
			g.File.Pours = slices.Clone(f.File.Pours)
			g.File.Pours[entry-1].Day = &to
			left, still := clashes(season.Of(g), entry)
			if moved++; still > 0 || left > all-own {
				t.Fatalf("moved to %s (%s): %d of its own, %d of %d", to, c.Help, still, left, all)
			}
		}
		if moved == 0 {
			t.Skip("no day is named as free: rapid draws another, and fails where it has to leave out too many")
		}
	})
}

// What comes out of its mould on the day it is poured has the mould for that day all the same.
func TestAMouldIsInUseForTheWholeDay(t *testing.T) {
	f := season.Facts{Today: first, Designs: map[string]season.Design{"a": meadow()}}
	d := f.Designs["a"]
	d.CutDays = 0
	f.Designs["a"] = d
	f.File.House.Moulds = []season.Mould{owned(1, 0)}
	on, next := first+3, first+4
	f.File.Pours = []season.Planned{{Plan: "a", Day: &on}, {Plan: "a", Day: &on}, {Plan: "a", Day: &next}}
	if b := season.Of(f); len(kinds(b, season.MouldInUse)) != 1 {
		t.Errorf("%+v", b.Collisions)
	}
}

func TestMoreRackNeverAddsCollisions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := draw(t)
		before := len(season.Of(f).Collisions)
		f.File.House.RackBars += rapid.IntRange(1, 30).Draw(t, "more")
		if after := len(season.Of(f).Collisions); after > before {
			t.Fatalf("%d collisions, with more rack %d", before, after)
		}
	})
}

func TestALaterMarketNeverNeedsAnEarlierPour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := draw(t)
		if len(f.File.Dates) == 0 {
			return
		}
		later := f
		later.File.Dates = slices.Clone(f.File.Dates)
		later.File.Dates[0].Day += day.Day(rapid.IntRange(0, 40).Draw(t, "later"))
		of := map[int]season.Row{}
		for _, r := range season.Of(f).Rows {
			of[r.Entry] = r
		}
		for _, r := range season.Of(later).Rows {
			was := of[r.Entry]
			if r.Entry > 0 && r.HasDate && (r.By.Early < was.By.Early || r.By.Middle < was.By.Middle || r.By.Late < was.By.Late || r.Pour < was.Pour) {
				t.Fatalf("%+v was %+v", r, was)
			}
			if r.By.Late > r.By.Middle || r.By.Middle > r.By.Early {
				t.Fatalf("to be sure is no later than likely: %+v", r.By)
			}
		}
	})
}

// No bar is given twice, and what is wanted is covered or short.
func TestSumsOfBarsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := draw(t)
		b := season.Of(f)
		given := map[int]int{}
		for _, d := range b.Dates {
			for _, c := range d.Covers {
				sum := c.Short
				for _, s := range c.From {
					r := b.Rows[s.Row]
					if s.Bars <= 0 || !r.BarsKnown || r.Name != c.Design || r.Ready.Middle > d.Label || r.HasDate && r.Due > d.Day {
						t.Fatalf("%s takes %d bars of %+v", d.Name, s.Bars, r)
					}
					sum += s.Bars
					given[s.Row] += s.Bars
				}
				if sum != c.Wanted || c.Short < 0 || c.Unsure > c.Wanted-c.Short {
					t.Fatalf("%+v", c)
				}
				if short := slices.ContainsFunc(b.Collisions, func(k season.Collision) bool {
					return k.Kind == season.NotCovered && k.Date == d.Name && strings.Contains(k.Text, " of "+c.Design+" and")
				}); short != (c.Short > 0 && d.Day >= f.Today) {
					t.Fatalf("%d short, told: %v", c.Short, short)
				}
			}
		}
		for i, n := range given {
			if n > b.Rows[i].Bars {
				t.Fatalf("%d bars given of %+v", n, b.Rows[i])
			}
		}
	})
}
