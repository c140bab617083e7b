package fresh

import (
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/presets"
)

func shelf(t testing.TB) pour.Shelf {
	t.Helper()
	s, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func made(t testing.TB, w Wishes, s pour.Shelf) pour.Plan {
	t.Helper()
	p, err := Plan(w, s, pour.Hand{})
	if err != nil {
		t.Fatalf("%+v: %v", w, err)
	}
	return p
}

// Every technique, each mould, with and without an icing, with colours and scents of all tempers: whole, free of stops, and nothing that
// the sheet says is likely too late or too early.
func TestANewPlanCanBePouredAsItIs(t *testing.T) {
	s := shelf(t)
	// No more jugs than one pair of hands pours thin after a split at the emulsion: nine with a quick scent are late whatever is tried.
	colours := [][]string{nil, {"titanium-white-oil", "ultramarine-blue", "mica-rose"}, {"activated-charcoal", "mica-gold", "mica-pearl", "madder", "cocoa-powder"}}
	scents := [][]string{nil, {"lavender-oil"}, {"meadow-hay", "alp-rose"}}
	for i, technique := range s.Techniques {
		for k, icing := range []bool{false, true} {
			if k != i%2 && os.Getenv("POURBENCH_LONG") == "" {
				continue // each technique once, and each with and without where there is time
			}
			w := Wishes{Technique: technique.ID, Mould: s.Moulds[(i+3*k)%len(s.Moulds)].ID, Colours: colours[(i+k)%3], Scents: scents[(i+2*k)%3], Icing: icing}
			if icing && w.Mould == "tube-75" {
				w.Mould = "cavities-12" // a tube has no top: see the test of that
			}
			p := made(t, w, s)
			sheet := pour.Work(p, s, pour.Hand{})
			if faults := p.Check(s); len(faults) > 0 {
				t.Errorf("%+v: %v", w, faults)
			}
			for _, x := range sheet.Warnings {
				if x.Severity == pour.Stop || x.Code == "scent-fast-late" || x.Code == "icing-thin" || x.Code == "icing-late" {
					t.Errorf("%+v: %s %s: %s", w, x.Where, x.Code, x.Text)
				}
			}
			if sheet.Base.Refused.Times != "" || sheet.Base.Refused.Masses != "" || len(p.Base.Jugs) != 1+len(w.Colours) || (p.Icing != nil) != icing || len(p.Base.Scents) != len(w.Scents) {
				t.Errorf("%+v: it is not what was wished for: %+v", w, p)
			}
		}
	}
}

func TestATubeHasNoIcing(t *testing.T) {
	s := shelf(t)
	if _, err := Plan(Wishes{Mould: "tube-75", Icing: true}, s, pour.Hand{}); err == nil || !strings.Contains(err.Error(), "leave the icing out") {
		t.Errorf("%v", err)
	}
	f := NewForm(s, pour.Show{})
	for _, id := range []string{"tube-75", s.Techniques[0].ID, choicePlain, choiceDone} {
		var err error
		if f, err = f.Answer(id); err != nil {
			t.Fatal(err)
		}
	}
	if q, ok := f.Question(); !ok || strings.Contains(q.Ask, "icing") {
		t.Errorf("a tube is asked %q", q.Ask)
	}
	if p := made(t, f.Wishes, s); p.Mould.Shape != pour.ShapeTube || p.Icing != nil {
		t.Errorf("%+v", p.Mould)
	}
}

// Tubes and single moulds make plans of so many bars as the shelf says.
func TestRoundsAndSingleMouldsAreNewPlansToo(t *testing.T) {
	s := shelf(t)
	for mould, bars := range map[string]int{"tube-75": 8, "cavities-6": 6, "cavities-12": 12} {
		sheet := pour.Weigh(made(t, Wishes{Mould: mould, Icing: mould == "cavities-6"}, s), s)
		if sheet.Bars.Count != bars {
			t.Errorf("%s makes %d bars", mould, sheet.Bars.Count)
		}
	}
}

// The wishes of the first example's kind come out without any caution at all.
func TestAnEverydayPlanIsFreeOfCautions(t *testing.T) {
	s := shelf(t)
	for _, w := range []Wishes{{}, {Icing: true}, {Colours: []string{"titanium-white-oil", "ultramarine-blue"}, Scents: []string{"lavender-oil"}, Icing: true}} {
		for _, x := range pour.Work(made(t, w, s), s, pour.Hand{}).Warnings {
			if x.Severity != pour.Note {
				t.Errorf("%+v: %s: %s", w, x.Code, x.Text)
			}
		}
	}
}

func TestWhatIsNotOnTheShelfIsRefusedWithItsName(t *testing.T) {
	s := shelf(t)
	for _, w := range []Wishes{{Mould: "shoe"}, {Technique: "stare"}, {Colours: []string{"sky"}}, {Scents: []string{"socks"}}} {
		name := w.Mould + w.Technique + strings.Join(w.Colours, "") + strings.Join(w.Scents, "")
		if _, err := Plan(w, s, pour.Hand{}); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%+v: %v", w, err)
		}
	}
	for _, n := range []int{-1, MostBars + 1} {
		if _, err := Plan(Wishes{Bars: n}, s, pour.Hand{}); err == nil {
			t.Errorf("%d bars are made", n)
		}
	}
	for name, empty := range map[string]func(*pour.Shelf){
		"oil": func(s *pour.Shelf) { s.Oils = nil }, "mould": func(s *pour.Shelf) { s.Moulds = nil }, "technique": func(s *pour.Shelf) { s.Techniques = nil },
	} {
		bare := shelf(t)
		empty(&bare)
		if _, err := Plan(Wishes{}, bare, pour.Hand{}); err == nil || !strings.Contains(err.Error(), "no "+name) {
			t.Errorf("without a single %s: %v", name, err)
		}
	}
}

func TestALoafGivesTheBarsThatAreWanted(t *testing.T) {
	s := shelf(t)
	for n := 1; n <= MostBars; n++ {
		p, err := Wishes{Bars: n}.plan(s)
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Mould.BarCount(); got != n || p.Mould.Shape != pour.ShapeLoaf {
			t.Errorf("%d bars wanted, a %s gives %d", n, p.Mould.Shape, got)
		}
	}
	five, err := Wishes{Bars: 4}.plan(s)
	if err != nil {
		t.Fatal(err)
	}
	small, err := Wishes{Mould: "loaf-small"}.plan(s)
	if err != nil || five.Mould.WidthMM != small.Mould.WidthMM || five.Mould.LengthMM != 100 {
		t.Errorf("four bars are cut from %+v, not from the smallest loaf that holds them", five.Mould)
	}
}

// A maker's shelf without some of the oils still gives a blend of a hundred, in the same proportions.
func TestTheBlendIsMadeOfWhatTheShelfHolds(t *testing.T) {
	s := shelf(t)
	var less []pour.Oil
	for _, o := range s.Oils {
		if o.ID != "shea" && o.ID != "sunflower-ho" {
			less = append(less, o)
		}
	}
	s.Oils = less
	p := made(t, Wishes{}, s)
	want := map[string]float64{"olive": 60, "coconut": 25.0 / 0.75, "castor": 5 / 0.75} // 45, 25 and 5 of 75
	for _, o := range p.Base.Oils {
		if math.Abs(o.Percent-want[o.Oil]) > 1e-9 {
			t.Errorf("%s is %g %%, want %g", o.Oil, o.Percent, want[o.Oil])
		}
	}
	s.Oils = []pour.Oil{s.Oils[3]}
	if p := made(t, Wishes{Icing: true}, s); len(p.Base.Oils) != 1 || p.Base.Oils[0].Percent != 100 {
		t.Errorf("of a single oil the blend is %+v", p.Base.Oils)
	}
}

// What a scent that speeds the batter up may do it does in one jug; what is slow goes everywhere, but not on top of the other.
func TestAFastScentGoesIntoOneJugAlone(t *testing.T) {
	s := shelf(t)
	p := made(t, Wishes{Technique: "drop", Colours: []string{"titanium-white-oil", "ultramarine-blue", "mica-rose"}, Scents: []string{"lavender-oil", "alp-rose"}}, s)
	slow, fast := p.Base.Scents[0], p.Base.Scents[1]
	if len(fast.Into) != 1 || fast.Scent != "alp-rose" {
		t.Fatalf("the fast scent goes into %v", fast.Into)
	}
	if len(slow.Into) != 3 || strings.Contains(strings.Join(slow.Into, "|"), fast.Into[0]) {
		t.Errorf("the slow scent goes into %v, the fast into %v", slow.Into, fast.Into)
	}
	one := made(t, Wishes{Colours: []string{"ultramarine-blue"}, Scents: []string{"lavender-oil"}}, s)
	if len(one.Base.Scents[0].Into) != 0 || one.Base.Scents[0].PercentOfOils != scentPercent {
		t.Errorf("a slow scent alone goes into %v at %g %%", one.Base.Scents[0].Into, one.Base.Scents[0].PercentOfOils)
	}
}

func TestThePotKeepsMostWhereTheColoursGoIntoIt(t *testing.T) {
	s := shelf(t)
	three := []string{"titanium-white-oil", "ultramarine-blue", "mica-rose"}
	for technique, pot := range map[string]float64{"drop": 40, "hanger": 40, "layers": 25, "comb": 25} {
		p := made(t, Wishes{Technique: technique, Colours: three}, s)
		if got := p.Base.Jugs[0].SharePercent; got != pot || math.Abs(p.Base.Jugs[3].SharePercent-(100-pot)/3) > 1e-9 {
			t.Errorf("%s: the pot keeps %g %%, the last jug %g %%", technique, got, p.Base.Jugs[3].SharePercent)
		}
	}
	if p := made(t, Wishes{Technique: "drop", Colours: three[:1]}, s); p.Base.Jugs[0].SharePercent != 50 {
		t.Errorf("with one colour the pot keeps %g %%", p.Base.Jugs[0].SharePercent)
	}
}

func TestAWishIsAPlanOnceAndForAll(t *testing.T) {
	s := shelf(t)
	w := Wishes{Name: "  Hay day ", Colours: []string{"mica-gold", "mica-gold"}, Scents: []string{"meadow-hay"}, Icing: true}
	a, b := made(t, w, s), made(t, w, s)
	if !reflect.DeepEqual(a, b) {
		t.Error("the same wishes give two plans")
	}
	if a.Name != "Hay day" || a.Base.Jugs[1].Name == a.Base.Jugs[2].Name {
		t.Errorf("it is called %q, its jugs %q and %q", a.Name, a.Base.Jugs[1].Name, a.Base.Jugs[2].Name)
	}
	if made(t, Wishes{}, s).Name != everydayName {
		t.Error("a plan without a name has none")
	}
}

// A scent is never planned over what its certificate allows of the cured bar, be it alone, in a single jug or beside others.
func TestNoScentIsPlannedOverItsLimit(t *testing.T) {
	s := shelf(t)
	wished := [][]string{{"scree-carnation", "spiced-pear"}, {"spring-lilac", "scree-carnation", "hut-smoke", "alp-rose"}}
	for _, sc := range s.Scents {
		if sc.LimitPercent > 0 && sc.LimitPercent < scentPercent {
			wished = append(wished, []string{sc.ID})
		}
	}
	for _, scents := range wished {
		for _, colours := range [][]string{nil, {"ultramarine-blue"}} {
			sheet := pour.Work(made(t, Wishes{Technique: "layers", Colours: colours, Scents: scents}, s), s, pour.Hand{})
			for _, x := range sheet.Warnings {
				if x.Severity == pour.Stop || x.Code == "scents-limit-sum" {
					t.Errorf("%v with %v: %s: %s", scents, colours, x.Code, x.Text)
				}
			}
		}
	}
}

// The hands take as long as in a plan file that does not say: none of their minutes is left at nothing.
func TestANewPlanBeginsWithTheHandsUsualMinutes(t *testing.T) {
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	p, err := Wishes{}.plan(shelf)
	if err != nil {
		t.Fatal(err)
	}
	if p.Run.ChangeMin != 0.1 || p.Run.IntoPotMin != 0.5 || p.Run.WireMin != 1 || p.Run.LevelMin != 0.25 || p.Run.PourOutMin != 1.5 {
		t.Errorf("the hands' minutes are %+v", p.Run)
	}
}

// Whatever a new plan is poured by, it is divided when it is an emulsion and its scents go in then: for all but the thickest it used to be a minute before.
// The split is put on the next half minute, never on the one before the emulsion.
func TestASplitIsMovedBehindTheEmulsion(t *testing.T) {
	s := shelf(t)
	try := trying{shelf: s}
	moved := 0
	for _, c := range []float64{24, 27, 30, 33, 36} {
		p := made(t, Wishes{}, s)
		p.Base.OilsC, p.Base.LyeC, p.Base.Blend, p.Base.SplitAtMin = c, c, nil, 0
		next, err := try.mixed(p, Wishes{})
		if err != nil {
			t.Fatal(err)
		}
		sheet := pour.Weigh(next, s).Time(s, pour.Hand{})
		at := sheet.Base.EmulsionAtMin()
		if split := next.Base.SplitAtMin; !at.Known || split < at.V || split >= at.V+splitStepMin {
			t.Errorf("at %v °C it is split at %v, an emulsion at %v", c, split, at)
		}
		if math.Mod(at.V, splitStepMin) > 0.01 {
			moved++
		}
	}
	if moved < 3 {
		t.Errorf("%d of them are an emulsion between two half minutes", moved)
	}
}

func TestANewPlanIsSplitOnceItIsAnEmulsion(t *testing.T) {
	s := shelf(t)
	for _, technique := range []string{"hanger", "drop", "column", "layers"} {
		p := made(t, Wishes{Technique: technique, Colours: []string{"titanium-white-oil", "ultramarine-violet"}, Scents: []string{"lavender-oil"}, Icing: technique == "layers"}, s)
		sheet := pour.Weigh(p, s).Time(s, pour.Hand{})
		for _, b := range sheet.Batches() {
			at := b.Jugs[0].Clock.Stages[chem.Emulsion].Mid
			if split := p.Batch(b.Name).SplitAtMin; !at.Known || split < at.V {
				t.Errorf("%s: the %s is split at %v, an emulsion at %v", technique, b.Name, split, at)
			}
		}
		if at := p.Base.Scents[0].AtMin; at < p.Base.SplitAtMin {
			t.Errorf("%s: scented at %v, split at %v", technique, at, p.Base.SplitAtMin)
		}
	}
}
