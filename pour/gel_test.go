package pour_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pourbench/chem/clock"
	"pourbench/pour"
)

// gelling is the demo plan's loaf without icing and scents, of a balanced blend, at a warmth, a lye strength and in a bed.
func gelling(t testing.TB, batterC, lyePercent float64, keep string) pour.Sheet {
	t.Helper()
	p, shelf := plainBase(t, batterC, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	p.Room.TemperatureC, p.Base.LyeConcentrationPercent, p.Bed.Keep = 22, lyePercent, keep
	return pour.Work(p, shelf, pour.Hand{})
}

func TestGelFollowsLyeStrengthHeatAndBed(t *testing.T) {
	for _, c := range []struct {
		batterC, lyePercent float64
		keep, word          string
	}{
		{48, 28, pour.BedInsulate, pour.GelLikely},
		{48, 33, pour.BedInsulate, pour.GelLikely},
		{37, 33, pour.BedInsulate, pour.GelLikely},   // two in three
		{28, 38, pour.BedInsulate, pour.GelUnlikely}, // wrapped, but cool and strong: gel lies at 82 °C
		{32, 33, pour.BedInsulate, pour.GelInPart},
		{50, 28, pour.BedBare, pour.GelInPart},
		{30, 33, pour.BedBare, pour.GelUnlikely},
		{38, 33, pour.BedChill, pour.GelUnlikely},
	} {
		s := gelling(t, c.batterC, c.lyePercent, c.keep)
		if s.Gel.Word != c.word {
			t.Errorf("%v °C, %v %%, %s: %q, want %q: %+v", c.batterC, c.lyePercent, c.keep, s.Gel.Word, c.word, s.Gel)
		}
		w, ok := found(s, "gel")
		say := map[string]string{pour.GelLikely: "likely gel", pour.GelInPart: "may gel", pour.GelUnlikely: "likely not gel"}[c.word]
		if !ok || !strings.Contains(w.Text, say) {
			t.Errorf("%v °C, %v %%, %s: %+v", c.batterC, c.lyePercent, c.keep, w)
		}
	}
}

func TestGelBeginsWhereTheLyeSays(t *testing.T) {
	// Trace model 2.1: 71 + (c - 0.33)·16/0.07 °C, c of the pure alkali and all water; nothing else is in this batch.
	for percent, want := range map[float64]float64{26: 55, 33: 71, 36.5: 79} {
		s := gelling(t, 38, percent, pour.BedInsulate)
		c := s.Base.Lye.NaOH.PureG / (s.Base.Lye.NaOH.WeighedG + s.Base.Lye.WaterToAddG.V)
		equal(t, "lye", c*100, percent, 1)
		equal(t, "gel", s.Gel.FromC.V, min(100, max(55, 71+(c-0.33)*16/0.07)), 0.5)
		equal(t, "gel, as the plan says it", s.Gel.FromC.V, want, 3)
	}
}

func TestMoreBedMoreHeat(t *testing.T) {
	chilled, bare, wrapped := gelling(t, 40, 33, pour.BedChill).Gel, gelling(t, 40, 33, pour.BedBare).Gel, gelling(t, 40, 33, pour.BedInsulate).Gel
	if !(chilled.MiddleC.Mid.V <= bare.MiddleC.Mid.V && bare.MiddleC.Mid.V < wrapped.MiddleC.Mid.V) {
		t.Errorf("the middle comes to %v chilled, %v bare, %v wrapped", chilled.MiddleC.Mid.V, bare.MiddleC.Mid.V, wrapped.MiddleC.Mid.V)
	}
	for _, g := range []pour.Gel{chilled, bare, wrapped} {
		if g.EdgeC.V > g.MiddleC.Mid.V || g.MiddleC.Low.V > g.MiddleC.Mid.V || g.MiddleC.Mid.V > g.MiddleC.High.V || g.EdgePercent.V > g.MiddlePercent.V {
			t.Errorf("%+v", g)
		}
	}
}

func TestTheClockIsToldTheLoafAsItLies(t *testing.T) {
	p, shelf := plainBase(t, 40, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	p.Base.Jugs[0].SharePercent, p.Base.Jugs = 60, p.Base.Jugs[:2]
	p.Base.Jugs[1].SharePercent, p.Base.Jugs[0].Colourants, p.Base.Jugs[1].Colourants = 40, nil, nil
	p.Mould.LossPercent, p.Room.TemperatureC, p.Swirl.First, p.Swirl.Last, p.Run.Order = 3, 19, "", "", nil
	p.Base.Scents = []pour.ScentPart{{Scent: "alp-rose", PercentOfOils: 2, Into: []string{p.Base.Jugs[1].Name}}}
	for _, c := range []struct {
		keep          string
		cooling, airC float64 // W/K at 1 kg (trace model 2.3), °C: a refrigerator's 5
	}{{pour.BedInsulate, 0.10, 19}, {pour.BedBare, 0.35, 19}, {pour.BedChill, 0.35, 5}} {
		p.Bed.Keep = c.keep
		s := pour.Work(p, shelf, pour.Hand{})
		batter, ok := s.ClockBatter(pour.Base, shelf)
		jug, ok2 := s.ClockJug(pour.Base, p.Base.Jugs[1].Name, shelf)
		if !ok || !ok2 || len(jug.Scents) != 1 {
			t.Fatal("the clock is told nothing")
		}
		scent := jug.Scents[0]
		equal(t, "load in the jug", scent.LoadPercent, 2/0.4, 1e-9)
		scent.LoadPercent = 2 // of all the oils
		bedded := 0.0
		for _, task := range s.Run {
			if task.Kind == pour.TaskBed {
				bedded = task.StartMin
			}
		}
		m, h := p.Mould, s.Base.Size.HeightMM
		k, err := clock.New(batter, clock.Hand{})
		if err != nil {
			t.Fatal(err)
		}
		want, err := k.Heat(clock.Bed{
			Loaf: clock.Jug{Fraction: 0.97, Scents: []clock.Scent{scent}}, FromMin: bedded, AirC: c.airC, Cooling: c.cooling,
			AreaM2: (2*m.LengthMM*m.WidthMM + 2*m.LengthMM*h + 2*m.WidthMM*h) / 1e6, HalfMM: min(m.WidthMM, h) / 2,
		})
		if err != nil || bedded < 1 {
			t.Fatal(err, bedded)
		}
		equal(t, c.keep+" middle", s.Gel.MiddleC.Mid.V, want.Mid, 1e-9)
		equal(t, c.keep+" edge", s.Gel.EdgeC.V, want.EdgeC, 1e-9)
		equal(t, c.keep+" quick", s.Gel.MiddleC.High.V, want.High, 1e-9)
		equal(t, c.keep+" when", s.Gel.PeakAtMin.V, want.PeakMin, 1e-9)
	}
}

func TestSugarsOwnHeatIsSaid(t *testing.T) {
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	p.Bed.Keep = pour.BedInsulate
	plain := pour.Work(p, shelf, pour.Hand{})
	p.Base.Extras = []pour.ExtraPart{{Extra: "honey", PercentOfOils: 2}}
	sweet := pour.Work(p, shelf, pour.Hand{})
	if w, _ := found(sweet, "gel"); !strings.Contains(w.Text, "honey heats it beyond that") {
		t.Errorf("%+v", w)
	}
	if sweet.Gel.MiddleC.Mid.V <= plain.Gel.MiddleC.Mid.V {
		t.Errorf("honey: %v °C after %v", sweet.Gel.MiddleC.Mid.V, plain.Gel.MiddleC.Mid.V)
	}
}

func TestGelIsUnknownWhereTheClockRefuses(t *testing.T) {
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	p.Base.KOHSharePercent = 50
	s := pour.Work(p, shelf, pour.Hand{})
	if s.Gel != (pour.Gel{}) {
		t.Errorf("%+v", s.Gel)
	}
	if w, ok := found(s, "gel"); !ok || !strings.Contains(w.Text, "cannot be worked out") {
		t.Errorf("%+v, %v", w, ok)
	}
	if s = pour.Weigh(p, shelf); s.Gel != (pour.Gel{}) {
		t.Errorf("without the clock: %+v", s.Gel)
	}
}

func TestTheLoafTakesAScentOnceAndTheWaterOfItsColours(t *testing.T) {
	p, shelf := plainBase(t, 40, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	p.Base.Jugs = p.Base.Jugs[:2]
	p.Base.Jugs[0].SharePercent, p.Base.Jugs[1].SharePercent = 60, 40
	p.Base.Jugs[0].Colourants = []pour.Dose{{Colourant: "titanium-white-water", DosePercent: 2, CarrierParts: 3}}
	p.Base.Jugs[1].Colourants = nil
	p.Mould.LossPercent, p.Swirl.First, p.Swirl.Last, p.Run.Order = 3, "", "", nil
	names := []string{p.Base.Jugs[0].Name, p.Base.Jugs[1].Name}
	p.Base.Scents = []pour.ScentPart{{Scent: "alp-rose", PercentOfOils: 2, Into: names}}
	p.Room.TemperatureC = 3 // colder than a refrigerator
	p.Bed.Keep = pour.BedChill
	s := pour.Work(p, shelf, pour.Hand{})
	batter, _ := s.ClockBatter(pour.Base, shelf)
	var scent clock.Scent
	first, bedded := 1e9, 0.0
	for _, name := range names {
		jug, ok := s.ClockJug(pour.Base, name, shelf)
		if !ok || len(jug.Scents) != 1 {
			t.Fatalf("%s: %+v", name, jug)
		}
		scent, first = jug.Scents[0], min(first, jug.Scents[0].AtMin)
	}
	if scent.AtMin == first {
		t.Fatal("both jugs are scented at once: the test looks at nothing")
	}
	scent.LoadPercent, scent.AtMin = 2, first // all of it, from when the first of it went in
	for _, task := range s.Run {
		if task.Kind == pour.TaskBed {
			bedded = task.StartMin
		}
	}
	m, h := p.Mould, s.Base.Size.HeightMM
	// The white's water: 2 % of its jug's batter, three times as much water, less the 3 % that stays in pots.
	water := s.Base.Jugs[0].BatterG * 0.02 * 3 * 0.97
	k, err := clock.New(batter, clock.Hand{})
	if err != nil {
		t.Fatal(err)
	}
	want, err := k.Heat(clock.Bed{
		Loaf: clock.Jug{Fraction: 0.97, ExtraWaterG: water, Scents: []clock.Scent{scent}}, FromMin: bedded, AirC: 3, Cooling: 0.35,
		AreaM2: (2*m.LengthMM*m.WidthMM + 2*m.LengthMM*h + 2*m.WidthMM*h) / 1e6, HalfMM: min(m.WidthMM, h) / 2,
	})
	if err != nil || water < 10 {
		t.Fatal(err, water)
	}
	equal(t, "middle", s.Gel.MiddleC.Mid.V, want.Mid, 1e-9)
	equal(t, "quick", s.Gel.MiddleC.High.V, want.High, 1e-9)
	equal(t, "gel", s.Gel.FromC.V, want.GelC, 1e-9)
	// Lye at 33 % holds 1/0.33 of its alkali; the colour's water is on top (trace model 2.1).
	c := s.Base.Lye.NaOH.PureG / (s.Base.Lye.NaOH.PureG/0.33 + water/0.97)
	equal(t, "gel, by the water", s.Gel.FromC.V, 71+(c-0.33)*16/0.07, 0.3)
}

// The rule of the words, written again: the edge in six of ten is likely, the middle in under three of ten is not, between is in part.
func TestTheWordFollowsBothChances(t *testing.T) {
	middleOnly, nearly := false, false
	for _, lye := range []float64{28, 33, 38} {
		for _, warmth := range []float64{30, 34, 38, 45, 48} {
			for _, keep := range []string{pour.BedBare, pour.BedInsulate, pour.BedChill} {
				s := gelling(t, warmth, lye, keep)
				g, want := s.Gel, "in part"
				if g.EdgePercent.V >= 60 {
					want = "likely"
				} else if g.MiddlePercent.V < 30 {
					want = "not likely"
				}
				if g.Word != want {
					t.Errorf("%v %%, %v °C, %s: %q of %+v", lye, warmth, keep, g.Word, g)
				}
				tenths := func(percent float64) float64 { return min(9, max(1, math.Round(percent/10))) }
				say := fmt.Sprintf("its chance is about %v in 10 in the middle, about %v in 10 at the edge", tenths(g.MiddlePercent.V), tenths(g.EdgePercent.V))
				if w, _ := found(s, "gel"); !strings.Contains(w.Text, say) {
					t.Errorf("%q does not say %q", w.Text, say)
				}
				middleOnly = middleOnly || g.MiddlePercent.V >= 60 && g.EdgePercent.V < 60
				nearly = nearly || g.MiddlePercent.V > 20 && g.MiddlePercent.V < 30
			}
		}
	}
	if !middleOnly || !nearly {
		t.Errorf("the test does not look at the borders: %v, %v", middleOnly, nearly)
	}
}

func TestTheAdviceIsNeverTheBedItHas(t *testing.T) {
	seen := map[string]bool{}
	for _, lye := range []float64{24, 28, 33, 38} {
		for _, warmth := range []float64{28, 34, 48, 60} {
			for keep, has := range map[string]string{pour.BedInsulate: "wrap it warm", pour.BedChill: "or chill it so"} {
				s := gelling(t, warmth, lye, keep)
				seen[keep+" "+s.Gel.Word] = true
				if w, ok := found(s, "gel"); !ok || strings.Contains(w.Do, has) {
					t.Errorf("%s, %s: %+v", keep, s.Gel.Word, w)
				}
			}
		}
	}
	for _, k := range []string{"insulate likely", "insulate in part", "insulate not likely", "chill in part", "chill not likely"} {
		if !seen[k] {
			t.Errorf("no loaf is %s: %v", k, seen)
		}
	}
}

func TestGelOfATrialIsNotAsked(t *testing.T) {
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	p.Trial = true
	s := pour.Work(p, shelf, pour.Hand{})
	if _, ok := found(s, "gel"); ok || s.Gel != (pour.Gel{}) {
		t.Errorf("a trial is put to bed: %+v", s.Gel)
	}
}
