package pour_test

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/whatif"
)

// loaf is the demo in the mould of the printed examples, 250 × 80 mm cut into bars of 25, in a dry room, with toppings.
func loaf(t *testing.T, toppings ...pour.Topping) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := shelved(t)
	p.Mould.Shape, p.Mould.LengthMM, p.Mould.WidthMM, p.Mould.BarMM = pour.ShapeLoaf, 250, 80, 25
	p.Room.HumidityPercent, p.Top.Toppings = 50, toppings
	return p, shelf
}

func made(ids ...string) []pour.ToppingPart {
	parts := make([]pour.ToppingPart, len(ids))
	for i, id := range ids {
		parts[i] = pour.ToppingPart{Material: id, Percent: 100 / float64(len(ids))}
	}
	return parts
}

// The printed worked example: 10 % of a bar's top of 25 × 80 mm under balls of 1.5 mm and 1.55 g/mL is 0.310 g, 113.2 of them.
func TestACoverageGivesTheGramsOfThePage(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{CoveragePercent: 10, Parts: made("nonpareils")})
	l := pour.Weigh(p, shelf).Toppings[0]
	if !near(l.PerBarG.V, 0.310, 1e-9) || !near(l.AllG.V, 3.10, 1e-9) || !near(l.CoversPercent.V, 10, 1e-9) {
		t.Errorf("%+v", l)
	}
	if !near(l.Pieces.V, 113.2, 5e-4) {
		t.Errorf("%g pieces, want 113.2", l.Pieces.V)
	}
	if l.When != pour.StrewSkin || l.Turn != 1 || l.Name != "nonpareils" || !near(l.HandsMin, 50.0/60, 1e-9) { // 5 s a bar
		t.Errorf("%+v", l)
	}
	p.Top.Toppings[0].CoveragePercent = 0 // 5 to 15 % is usual
	if l := pour.Weigh(p, shelf).Toppings[0]; !near(l.PerBarG.V, 0.310, 1e-9) {
		t.Errorf("as is usual: %g g", l.PerBarG.V)
	}
	p.Top.Toppings[0].GPerBar = 0.62
	if l := pour.Weigh(p, shelf).Toppings[0]; l.PerBarG.V != 0.62 || !near(l.CoversPercent.V, 20, 1e-9) {
		t.Errorf("typed: %+v", l)
	}
}

// The printed worked example of the cut: 5 % of grains of 2 mm, 80 mm wide, a kerf of 0.6 mm: 3.31 grains at each cut.
func TestACutMeetsTheGrainsOfThePage(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{CoveragePercent: 5, Parts: made("coarse-salt")})
	p.Cut.KerfMM = 0.6
	s := pour.Weigh(p, shelf)
	if l := s.Toppings[0]; !near(l.CutHits.V, 3.31, 1e-3) {
		t.Errorf("%g grains", l.CutHits.V)
	}
	saidOf(t, s, "topping-wire", "coarse salt, refined: the cut meets the topping first, then the whole face, and drags grains down the face, about 3 at each cut")
	p.Cut.Lay = pour.LayUpsideDown
	saidOf(t, pour.Weigh(p, shelf), "topping-wire", "crushes what stands on the top, about 3 at each cut")
}

// saidOf finds a warning that holds some words.
func saidOf(t *testing.T, s pour.Sheet, code, words string) {
	t.Helper()
	for _, w := range s.Warnings {
		if w.Code == code && strings.Contains(w.Text, words) {
			return
		}
	}
	t.Errorf("no %s says %q: %+v", code, words, s.Warnings)
}

func silent(t *testing.T, s pour.Sheet, code string) {
	t.Helper()
	if w, ok := found(s, code); ok {
		t.Errorf("%s is said: %s", code, w.Text)
	}
}

// A blend of equal masses of balls of 1.5 mm, 1.55 g/mL and of a flat thing hides by both: worked out by hand. A gram of the balls hides
// 1000/(1 × 1.55) = 645.161 mm², a gram of calendula 0.1 mm thick and 0.3 g/mL 33 333.3; half of each 16 989.2; 10 % of 2000 mm² are 200.
func TestABlendHidesByAllThatIsInIt(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{Name: "meadow", CoveragePercent: 10, Parts: made("nonpareils", "calendula-petals")})
	s := pour.Weigh(p, shelf)
	l := s.Toppings[0]
	if !near(l.PerBarG.V, 200/16989.247311828, 1e-9) || l.Name != "meadow" || !near(l.Parts[1].G.V, l.AllG.V/2, 1e-12) {
		t.Errorf("%+v", l)
	}
	for _, name := range []string{"nonpareils", "calendula petals, dried"} {
		if !strings.Contains(fmt.Sprint(s.Totals), name) {
			t.Errorf("%s is not weighed: %v", name, s.Totals)
		}
	}
	saidOf(t, s, "topping-bleeds", "nonpareils: the colour runs")
	for _, w := range s.Warnings {
		if w.Code == "topping-bleeds" && strings.Contains(w.Text, "calendula") {
			t.Errorf("what does not bleed is named: %s", w.Text)
		}
	}
}

// Spirit evaporates, batter is weighed with its batch: neither adds to the bar, and batter is not bought.
func TestWhatEvaporatesAndWhatIsBatterAddsNothing(t *testing.T) {
	p, shelf := loaf(t)
	bare := pour.Weigh(p, shelf)
	p.Top.Toppings = []pour.Topping{{GPerBar: 1, Parts: made("alcohol-mist")}, {GPerBar: 4, Parts: made("icing-drizzle")}, {GPerBar: 2, Parts: made("mica-spray")}}
	s := pour.Weigh(p, shelf)
	if !near(s.Bars.CutG, bare.Bars.CutG+0.1, 1e-9) { // 5 % of the spray is mica
		t.Errorf("a bar weighs %g, bare %g", s.Bars.CutG, bare.Bars.CutG)
	}
	list := ""
	for _, w := range s.Totals {
		if w.Kind == pour.WeighTopping {
			list += fmt.Sprintf("%s %.1f; ", w.Name, w.G)
		}
	}
	if list != "mica in alcohol, sprayed 20.0; alcohol, misted 10.0; " {
		t.Errorf("weighed: %s", list)
	}
}

func TestACoverageOfWhatHasNoGrainsIsUnknown(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{CoveragePercent: 10, Parts: made("mica-dust")})
	s := pour.Weigh(p, shelf)
	if l := s.Toppings[0]; l.PerBarG.Known || l.AllG.Known || l.AddsG.Known || l.CoversPercent.Known {
		t.Errorf("%+v", l)
	}
	saidOf(t, s, "figure-unknown", "mica, dusted: the shelf has no size of its grains")
	if s.Bars.CutG == s.Bars.CutG {
		t.Errorf("a bar with who knows how much mica weighs %g", s.Bars.CutG)
	}
}

// They go on by when, and otherwise as the plan lists them.
func TestToppingsTakeTurns(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{When: pour.StrewCure, Parts: made("rose-petals")}, pour.Topping{Parts: made("mineral-glitter")},
		pour.Topping{When: pour.StrewWet, Parts: made("icing-drizzle")}, pour.Topping{Parts: made("sanding-sugar")})
	s := pour.Weigh(p, shelf)
	turns := ""
	for _, l := range s.Toppings {
		turns += fmt.Sprint(l.Turn)
	}
	if turns != "4213" {
		t.Errorf("turns %s, want 4213", turns)
	}
	saidOf(t, s, "topping-order", "glitter of mica or glass: goes on before sanding sugar, uncoloured")
	for i, w := range s.Warnings {
		for _, v := range s.Warnings[:i] {
			if w.Code == "topping-order" && v.Code == w.Code {
				t.Errorf("two are out of order: %s; %s", v.Text, w.Text)
			}
		}
	}
}

// CRC: sodium chloride 75.36 % at 20 °C; with sucrose, 85 %, 64 % by the Ross estimate. 80 % of humidity: 0.941 g of water a gram of glycerin.
func TestDampRoomsMakeSugarAndSaltWeep(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{Parts: made("coarse-salt")})
	for _, c := range []struct {
		rh    float64
		parts []pour.ToppingPart
		weeps bool
	}{{75, made("coarse-salt"), false}, {76, made("coarse-salt"), true}, {76, made("sanding-sugar"), false}, {84.9, made("sanding-sugar"), false}, {85, made("sanding-sugar"), true}, {60, made("sanding-sugar", "coarse-salt"), false}, {65, made("sanding-sugar", "coarse-salt"), true}, {40, made("sea-salt"), true}, {65, made("hard-candy", "coarse-salt"), true}, {59, made("hard-candy", "coarse-salt"), false}, {80, made("sanding-sugar", "coloured-sugar"), false}} {
		p.Room.TemperatureC, p.Room.HumidityPercent, p.Top.Toppings[0].Parts = 20, c.rh, c.parts
		s := pour.Weigh(p, shelf)
		if _, weeps := found(s, "topping-weeps"); weeps != c.weeps {
			t.Errorf("%v at %g %%: weeps %v", c.parts, c.rh, weeps)
		}
		silent(t, s, "topping-damp")
	}
	p.Room.HumidityPercent, p.Top.Toppings[0].Parts = 80, made("coarse-salt")
	saidOf(t, pour.Weigh(p, shelf), "topping-weeps", "its glycerin holds 0.9 g of water a gram there")
	p.Room.HumidityPercent = 0
	saidOf(t, pour.Weigh(p, shelf), "topping-damp", "from 75 % of humidity on; the room's is not stated")
}

// 0.1 g on a bar of 110 g is 0.091 %, over the line of 0.01 %: printed. The bar here is another, so the percentage is worked out from it.
func TestPlasticGlitterHasItsDates(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{GPerBar: 0.1, Parts: made("polyester-glitter")})
	s := pour.Weigh(p, shelf)
	if want := 100 * 0.1 / s.Bars.CuredG; !near(s.Toppings[0].PlasticPercent.V, want, 1e-9) {
		t.Errorf("%g %% of plastic, want %g", s.Toppings[0].PlasticPercent.V, want)
	}
	saidOf(t, s, "topping-plastic", "over the line of 0.01 %; in the EU no longer sold loose since 17 October 2023, in rinse-off products not from 17 October 2027 on")
	p.Bed.CutAfterH, p.Bed.CureDays = 24, 28
	for _, c := range []struct {
		day  int
		late bool
	}{{17, false}, {18, true}} { // 29 days later it is 16 October, or 17
		q, _ := pouredOn(2027, 9, c.day).of(p, shelf)
		if w, _ := found(pour.Weigh(q, shelf), "topping-plastic"); strings.Contains(w.Text, "these bars are ready after that, on 17 October 2027") != c.late {
			t.Errorf("poured on the %dth: %s", c.day, w.Text)
		}
	}
	p.Top.Toppings[0].GPerBar = 0.005
	saidOf(t, pour.Weigh(p, shelf), "topping-plastic", "under the line")
}

func TestPlasticIsCountedAsThePageDoes(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{GPerBar: 0.1, Parts: made("polyester-glitter")})
	bare := pour.Weigh(p, shelf)
	p.Base.Size, p.Base.OilsG = pour.SizeOils, bare.Base.Size.OilsG*(110-0.1-icingCured(p, shelf))/(bare.Bars.CuredG-0.1-icingCured(p, shelf))
	s := pour.Weigh(p, shelf)
	if !near(s.Bars.CuredG, 110, 1e-6) || fmt.Sprintf("%.3f", s.Toppings[0].PlasticPercent.V) != "0.091" {
		t.Errorf("%g %% of a bar of %g g", s.Toppings[0].PlasticPercent.V, s.Bars.CuredG)
	}
}

// icingCured is what the icing is of a cured bar.
func icingCured(p pour.Plan, shelf pour.Shelf) float64 {
	with := pour.Weigh(p, shelf).Bars.CuredG
	p.Icing = nil
	return with - pour.Weigh(p, shelf).Bars.CuredG
}

// What melts is judged by the room, the batter it lies on and the loaf's own heat; after the cut the loaf is cool.
func TestToppingsMeltByTheirHeat(t *testing.T) {
	for _, c := range []struct {
		what, id, when, keep, words string
		room                        float64
	}{
		{"a hot room", "chocolate", pour.StrewCure, pour.BedBare, "the room is at 27 °C", 27},
		{"a cool room", "chocolate", pour.StrewCure, pour.BedBare, "", 25},
		{"warm batter", "chocolate", pour.StrewWet, pour.BedBare, "the batter is at ", 20},
		{"a loaf that gels", "melt-and-pour-pieces", pour.StrewSkin, pour.BedInsulate, "softens from 50 °C on; the loaf warms to near ", 21},
		{"a loaf that gels perhaps", "beeswax-pieces", pour.StrewSkin, pour.BedInsulate, "gel is possible, and then the loaf's middle may reach ", 21},
		{"the same after the cut", "melt-and-pour-pieces", pour.StrewCut, pour.BedInsulate, "", 21},
		{"a loaf that is chilled", "carnauba-flakes", pour.StrewSkin, pour.BedChill, "", 21},
	} {
		p, shelf := loaf(t, pour.Topping{When: c.when, Parts: made(c.id)})
		p.Room.TemperatureC, p.Bed.Keep = c.room, c.keep
		if strings.HasSuffix(c.what, "perhaps") {
			p = gelsPerhaps(t, p, shelf, 70.3)
		}
		s := pour.Work(p, shelf, pour.Hand{})
		if c.words == "" {
			silent(t, s, "topping-melts")
			continue
		}
		saidOf(t, s, "topping-melts", c.words)
		n := 0
		for _, w := range s.Warnings {
			if w.Code == "topping-melts" {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%s: said %d times", c.what, n)
		}
	}
}

// gelsPerhaps warms the batter until the loaf may gel and its edge is still cooler than that.
func gelsPerhaps(t *testing.T, p pour.Plan, shelf pour.Shelf, edgeC float64) pour.Plan {
	t.Helper()
	for c := 28.0; c < 48; c++ {
		p.Base.OilsC, p.Base.LyeC = c, c
		if g := pour.Weigh(p, shelf).Time(shelf, pour.Hand{}).Gel; g.Word == pour.GelInPart && g.EdgeC.V < edgeC && g.MiddleC.High.V > edgeC {
			return p
		}
	}
	t.Fatal("no loaf gels perhaps")
	return p
}

func TestTheBenchIsWarnedOfVapourAndDust(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{Parts: made("mica-spray")})
	s := pour.Weigh(p, shelf)
	w, _ := found(s, "topping-flammable")
	if !strings.Contains(w.Do, "no flame") || !strings.Contains(w.Do, "safety data sheet") {
		t.Errorf("%+v", w)
	}
	if w, _ = found(s, "topping-dust"); !strings.Contains(w.Do, "dust mask") || !strings.Contains(w.Do, "safety data sheet") {
		t.Errorf("%+v", w)
	}
}

func TestATrialIsNotTopped(t *testing.T) {
	p, shelf := loaf(t, pour.Topping{Parts: made("nonpareils")})
	p.Trial = true
	if s := pour.Weigh(p, shelf); len(s.Toppings) != 0 {
		t.Errorf("%+v", s.Toppings)
	}
}

func TestToppingsThatCannotBeAreRefused(t *testing.T) {
	for want, top := range map[string]pour.Topping{
		"top.topping[0].part: the topping is made of nothing":                {},
		"top.topping[0].part: the parts of the topping sum to 90 %":          {Parts: []pour.ToppingPart{{Material: "nonpareils", Percent: 90}}},
		`top.topping[0].part[1].material = "nonpareils": stands in the top`:  {Parts: made("nonpareils", "nonpareils")},
		`top.topping[0].part[0].material = "nonparels": is no topping on th`: {Parts: made("nonparels")},
		`top.topping[0].when = "later": is not a word this key knows`:        {When: "later", Parts: made("nonpareils")},
	} {
		p, shelf := loaf(t, top)
		told := ""
		for _, f := range p.Check(shelf) {
			told += f.Error() + "\n"
		}
		if !strings.Contains(told, want) {
			t.Errorf("want %s, told %s", want, told)
		}
	}
}

// Every figure of toppings of every kind is worked out again from the numbers its account shows.
func TestToppingsAreAccountedFor(t *testing.T) {
	p, shelf := loaf(t,
		pour.Topping{CoveragePercent: 12, Parts: made("nonpareils", "calendula-petals", "polyester-glitter")[:2]},
		pour.Topping{GPerBar: 0.3, Parts: made("polyester-glitter", "mica-spray")}, pour.Topping{Parts: made("chocolate")},
		pour.Topping{When: pour.StrewWet, Parts: made("icing-drizzle")}, pour.Topping{HandsMin: 3, Parts: made("mica-dust")})
	p.Top.Toppings[0].Parts[0].Percent, p.Top.Toppings[0].Parts[1].Percent = 70, 30
	s := pour.Work(p, shelf, pour.Hand{})
	told, fired := 0, 0
	for _, path := range s.Explained() {
		if !strings.HasPrefix(path, "toppings[") && !strings.HasPrefix(path, "bars.") && !strings.HasPrefix(path, "totals[") {
			continue
		}
		a, err := s.Explain(path, shelf, pour.Hand{})
		if err != nil {
			t.Fatal(err)
		}
		fired += len(a.Fires)
		if a.Value.Known {
			told++
			checkAccount(t, "the loaf", a)
		}
		for _, w := range a.Fires {
			if strings.HasPrefix(path, "toppings[") && w.Where != "topping "+s.Toppings[int(path[9]-'0')].Name {
				t.Errorf("%s feeds the warning on %s", path, w.Where)
			}
		}
	}
	if told < 60 || fired == 0 {
		t.Errorf("%d figures are told, %d warnings", told, fired)
	}
}

func TestAMaterialTellsWhatIsDoneToIt(t *testing.T) {
	p, shelf := loaf(t)
	for _, c := range []struct{ id, what, says, source string }{
		{"beeswax-pieces", "in heat", "softens or melts from 70 °C; peak of its melting", "memory"},
		{"coarse-salt", "in heat", "no melting in play", "memory"},
		{"coarse-salt", "in damp and wet", "wet from 75 % of humidity on; dissolves on a top without a skin; draws beads of brine on soap", "read"},
		{"mica-dust", "in damp and wet", "draws no water that makes it weep", "memory"},
		{"lavender-buds", "on fresh soap", "may bleed; will brown; browns in days to weeks, with a brown halo", "common practice"},
		{"nonpareils", "how much", "5 % to 15 % of the top; 5 s a bar; the top must be skinned but still grip; press nothing", "derived"},
		{"mica-dust", "how much", "0.02 g to 0.10 g on a bar; 8 s a bar; a soft brush over dry peaks, no draught; wipe up damp", "common practice"},
	} {
		m, _ := shelf.Topping(c.id)
		ok := false
		for _, f := range m.Behaviour(p.Show, 25) {
			if f.What == c.what {
				if ok = true; f.Says != c.says || f.Source.Confidence != c.source || len(f.Source.Text) < 10 {
					t.Errorf("%s %s: %q, %+v", c.id, c.what, f.Says, f.Source)
				}
			}
		}
		if !ok {
			t.Errorf("%s says nothing %s", c.id, c.what)
		}
	}
}

// What is offered against a warning, in its order.
func TestToppingsAreMendedAsTheMakerWould(t *testing.T) {
	for _, c := range []struct{ code, id, when, want string }{
		{"topping-dissolves", "coarse-salt", pour.StrewWet, "put coarse salt, refined on once the top has skinned"},
		{"topping-bleeds", "nonpareils", pour.StrewSkin, "put nonpareils on the cured bars"},
		{"topping-wire", "coarse-salt", pour.StrewSkin, "cut with the loaf on its side"},
		{"topping-plastic", "polyester-glitter", pour.StrewSkin, "take glitter of plant film in place of glitter of polyester"},
		{"topping-dose", "mineral-glitter", pour.StrewSkin, "strew as much glitter of mica or glass as is usual"},
	} {
		p, shelf := loaf(t, pour.Topping{When: c.when, GPerBar: 3, Parts: made(c.id)})
		s := pour.Work(p, shelf, pour.Hand{})
		offered := ""
		of := func(w pour.Warning) bool { return w.Code == c.code }
		for _, mends := range whatif.MendsOf(s, shelf, pour.Hand{}, of) {
			for _, m := range mends {
				offered += m.Says + "; "
			}
		}
		if !strings.Contains(offered, c.want) {
			t.Errorf("%s: offered are %s, want %s", c.code, offered, c.want)
		}
	}
}

// Two toppings of one name are two tasks, each found by its own key.
func TestToppingsOfOneNameAreTasksOfTheirOwn(t *testing.T) {
	p, shelf := shelved(t)
	sugar := pour.Topping{Name: "snow", When: pour.StrewWet, Parts: []pour.ToppingPart{{Material: "sanding-sugar", Percent: 100}}}
	p.Top.Toppings = []pour.Topping{sugar, sugar, sugar}
	keys := map[string]bool{}
	for _, task := range pour.Weigh(p, shelf).Run {
		if task.Item == "snow" {
			keys[task.Key] = true
		}
	}
	if len(keys) != 3 {
		t.Errorf("three toppings called snow have the keys %v", keys)
	}
}
