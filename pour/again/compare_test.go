package again

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/pourtest"
)

// Nothing differs from itself, and all that the sheet accounts for is the same.
func TestAPlanComparedWithItselfDiffersInNothing(t *testing.T) {
	plan, shelf := meadow(t)
	s := pour.Work(plan, shelf, pour.Hand{})
	c := Compare(s, s)
	if c.Fields+c.Figures+len(c.Groups) > 0 || c.SameFigures != len(s.Explained()) || c.SameFields < 100 {
		t.Errorf("%+v", c)
	}
}

// line finds a line by what it is of.
func line(c Comparison, what string) (Line, string) {
	for _, g := range c.Groups {
		for _, l := range g.Lines {
			if l.What == what || l.Path == what {
				return l, g.Title
			}
		}
	}
	return Line{}, ""
}

// By plain arithmetic: twice the dose is twice the pigment, but for the little batter that it takes the room of; the field and the figure stand in the section of the jugs, both values with their units.
func TestADifferenceHasBothValuesWithTheirUnits(t *testing.T) {
	plan, shelf := meadow(t)
	before := pour.Work(plan, shelf, pour.Hand{})
	more, err := pour.Apply(plan, shelf, pour.SetNumber("base.jug[1].colourant[0].dose_percent", 2*plan.Base.Jugs[1].Colourants[0].DosePercent))
	must(t, err)
	c := Compare(before, pour.Work(more, shelf, pour.Hand{}))
	pigment, at := line(c, "base.jugs[1].colourants[0].pigment_g")
	first, err := strconv.ParseFloat(strings.TrimSuffix(pigment.First, " g"), 64)
	must(t, err)
	second, err := strconv.ParseFloat(strings.TrimSuffix(pigment.Second, " g"), 64)
	must(t, err)
	if r := second / first; r < 1.99 || r > 2.01 || at != "base: weigh and wet the colours, jug by jug" {
		t.Errorf("pigment %s and %s, in %q", pigment.First, pigment.Second, at)
	}
	if c.Fields != 1 || c.SameFields == 0 {
		t.Errorf("%d fields differ", c.Fields)
	}
	if l, at := line(c, "base jug "+plan.Base.Jugs[1].Name+" colourant "+plan.Base.Jugs[1].Colourants[0].Colourant+": dose"); at != "base: weigh and wet the colours, jug by jug" || !strings.HasSuffix(l.First, " %") {
		t.Errorf("the dose is %+v in %q", l, at)
	}
	if l, _ := line(c, "base.superfat_percent"); l.What != "" {
		t.Errorf("the planned superfat is told to differ: %+v", l)
	}
}

// A jug that is gone stands with a dash, and the others are compared by their names.
func TestWhatOnlyOneHasStandsBesideADash(t *testing.T) {
	plan, shelf := meadow(t)
	without, err := pour.Apply(plan, shelf, pour.RemoveJug(pour.Base, 1))
	must(t, err)
	a, b := pour.Work(plan, shelf, pour.Hand{}), pour.Work(without, shelf, pour.Hand{})
	if l, _ := line(Compare(a, b), "base.jugs[1].share_percent"); l.First == none || l.Second != none {
		t.Errorf("the jug that is gone: %+v", l)
	}
	c := Compare(b, a)
	if l, _ := line(c, "base jug "+plan.Base.Jugs[1].Name+": share"); l.First != none || l.Second == none {
		t.Errorf("the jug that is new: %+v", l)
	}
}

// Every section that a figure or a field is put into is one that is told: nothing that differs is lost.
func TestEverythingThatDiffersIsToldOnce(t *testing.T) {
	plan, shelf := meadow(t)
	rng := rand.New(rand.NewPCG(1, 2))
	other := plan
	for range 12 {
		if next, err := pour.Apply(other, shelf, pour.Reseed(rng.Int64N(1000))); err == nil {
			other = next
		}
	}
	other.Icing = nil
	other.Mould.LengthMM += 30
	other.Base.OilsC += 5
	a, b := pour.Work(plan, shelf, pour.Hand{}), pour.Work(other, shelf, pour.Hand{})
	c := Compare(a, b)
	told := 0
	for _, g := range c.Groups {
		told += len(g.Lines)
	}
	if told != c.Fields+c.Figures || told < 100 {
		t.Errorf("%d lines of %d fields and %d figures", told, c.Fields, c.Figures)
	}
	for _, x := range pour.Differences(plan, other) {
		if !slices.Contains(sections(), sectionOfField(x)) {
			t.Errorf("%s is in no section", x.Where)
		}
	}
	for _, path := range append(a.Explained(), b.Explained()...) {
		if !slices.Contains(sections(), sectionOf(path)) {
			t.Errorf("%s is in %q, which is no section", path, sectionOf(path))
		}
	}
}

// Over random plans: each compares with itself to nothing, and the other way round is the mirror image.
func TestComparingMirrors(t *testing.T) {
	plan, shelf := meadow(t)
	rapid.Check(t, func(t *rapid.T) {
		a, b := pourtest.Rich(t, plan.Clone(), shelf), pourtest.Rich(t, plan.Clone(), shelf)
		b.Show = a.Show
		x, y := pour.Weigh(a, shelf), pour.Weigh(b, shelf)
		if c := Compare(x, x); len(c.Groups) > 0 {
			t.Fatalf("differs from itself: %+v", c.Groups)
		}
		there, back := Compare(x, y), Compare(y, x)
		if there.Fields != back.Fields || there.SameFields != back.SameFields || there.Figures != back.Figures {
			t.Fatalf("%d and %d fields, %d and %d figures", there.Fields, back.Fields, there.Figures, back.Figures)
		}
		if d := cmp.Diff(pairs(there, false), pairs(back, true)); d != "" {
			t.Fatalf("no mirror: %s", d)
		}
	})
}

// pairs are the two values of every line, sorted, turned round where that is asked for.
func pairs(c Comparison, turned bool) []string {
	var out []string
	for _, g := range c.Groups {
		for _, l := range g.Lines {
			if turned {
				l.First, l.Second = l.Second, l.First
			}
			out = append(out, g.Title+"|"+l.First+"|"+l.Second) // a label may name its place, which is that of the first
		}
	}
	slices.Sort(out)
	return out
}
