package pour_test

import (
	"slices"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
)

// thin is the hanger example without scents and icing, so cool and so little blended that it is no emulsion for many minutes.
func thin(t *testing.T, technique string, splitMin float64) pour.Sheet {
	t.Helper()
	p, shelf := example(t, "first-snow")
	p.Icing, p.Base.Scents, p.Swirl.Technique = nil, nil, technique
	p.Base.OilsC, p.Base.LyeC, p.Base.Blend, p.Base.SplitAtMin = 30, 30, []pour.Burst{{S: 5}}, splitMin
	return pour.Work(p, shelf, pour.Hand{})
}

// By hand: the clock's middle for the pot is the moment; a split is early before it, and the pour with it.
func TestASplitBeforeTheEmulsionIsWarnedOf(t *testing.T) {
	at := thin(t, "hanger", 1).Base.Jugs[0].Clock.Stages[chem.Emulsion].Mid
	if !at.Known || at.V < 4 {
		t.Fatalf("the example is an emulsion at %v: it tells nothing", at)
	}
	for _, r := range []struct {
		split float64
		want  bool
	}{{0, true}, {at.V - 1.5, true}, {pour.RoundMinutes(at.V), false}, {at.V + 5, false}} {
		w, ok := found(thin(t, "hanger", r.split), "split-early")
		if ok != r.want || ok && (w.Where != "base" || w.Severity != pour.Caution) {
			t.Errorf("split at %v, an emulsion at %v: %v %+v", r.split, at.V, ok, w)
		}
	}
}

// What is said tells a split that is early from a pour that is: of an icing as well, whose clock begins with its own lye, and of a batch that is all in
// one jug, which is not split.
func TestWhatIsEarlyIsSaid(t *testing.T) {
	p, shelf := example(t, "alpine-meadow")
	p.Swirl.Technique, p.Base.Scents, p.Icing.Scents = "hanger", nil, nil
	p.Icing.Jugs[0].SharePercent = 100
	p.Icing.Jugs = p.Icing.Jugs[:1]
	for _, b := range []*pour.Batch{&p.Base, p.Icing} {
		b.OilsC, b.LyeC, b.Blend, b.SplitAtMin = 30, 30, []pour.Burst{{S: 5}}, 0
	}
	for _, start := range []float64{0, 8, 60} {
		p.Icing.StartAtMin = start
		sheet := pour.Work(p, shelf, pour.Hand{})
		for _, b := range sheet.Batches() {
			pours := ""
			for _, j := range b.Jugs {
				if after := j.Clock.PourAtMin.V - b.LyeInAtMin; pours == "" && pour.RoundMinutes(after) < pour.RoundMinutes(j.Clock.Stages[chem.Emulsion].Mid.V) {
					pours = j.Name
				}
			}
			want := "split at"
			switch {
			case len(b.Jugs) == 1 && pours == "":
				want = ""
			case len(b.Jugs) == 1:
				want = pours + " is poured before"
			case pours != "":
				want = "and poured before"
			}
			said := ""
			for _, w := range sheet.Warnings {
				if w.Code == "split-early" && w.Where == string(b.Name) {
					said = w.Text
				}
			}
			if !strings.Contains(said, want) || (want == "") != (said == "") || strings.Contains(said, "poured") != (pours != "") {
				t.Errorf("with the icing begun at %v the %s says %q, want %q", start, b.Name, said, want)
			}
		}
	}
	w, _ := found(thin(t, "hanger", thin(t, "hanger", 1).Base.Jugs[0].Clock.Stages[chem.Emulsion].Mid.V-0.75), "split-early")
	if !strings.HasPrefix(w.Text, "split at ") || strings.Contains(w.Text, "poured") {
		t.Errorf("of a split a little early alone it says %q", w.Text)
	}
}

// Whatever a technique asks for, no jug is poured before it with nothing said.
func TestEveryTechniqueSaysThatAJugIsEarly(t *testing.T) {
	_, shelf := example(t, "first-snow")
	for _, technique := range shelf.Techniques {
		sheet := thin(t, technique.ID, 0)
		for _, j := range sheet.Base.Jugs {
			early := slices.ContainsFunc(sheet.Warnings, func(w pour.Warning) bool { return w.Code == "jug-early" && w.Where == "base jug "+j.Name })
			if want := j.Clock.EarlyChancePercent.V >= pour.LikelyPercent; early != want || j.Clock.PourAtMin.V < 4 && !early {
				t.Errorf("%s: %s is poured at %v, too thin %v: said %v", technique.ID, j.Name, j.Clock.PourAtMin, j.Clock.EarlyChancePercent, early)
			}
		}
	}
}

// A scent that goes in at the split waits for a later one; one that comes later still, or was put before the split by hand, stays.
func TestScentsWaitForALaterSplit(t *testing.T) {
	p, shelf := example(t, "first-snow")
	p.Base.SplitAtMin = 2
	p.Base.Scents = []pour.ScentPart{{Scent: "lavender-oil", PercentOfOils: 1, AtMin: 2}, {Scent: "lavender-oil", PercentOfOils: 1, AtMin: 9}, {Scent: "lavender-oil", PercentOfOils: 1, AtMin: 1}}
	next, err := pour.Apply(p, shelf, pour.SetSplitAt(pour.Base, 5))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{5, 9, 1} {
		if at := next.Base.Scents[i].AtMin; at != want {
			t.Errorf("scent %d goes in at %v, want %v", i, at, want)
		}
	}
	if next.Base.SplitAtMin != 5 || p.Base.Scents[0].AtMin != 2 {
		t.Errorf("split at %v, the plan before has %v", next.Base.SplitAtMin, p.Base.Scents[0].AtMin)
	}
}
