package pour_test

import (
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
	return pour.Work(p, shelf, clock.Hand{})
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
		c := s.Base.NaOHPureG / (s.Base.NaOHWeighedG + s.Base.WaterToAddG.V)
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
		s := pour.Work(p, shelf, clock.Hand{})
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
		m, h := p.Mould, s.Base.HeightMM
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
	plain := pour.Work(p, shelf, clock.Hand{})
	p.Base.Extras = []pour.ExtraPart{{Extra: "honey", PercentOfOils: 2}}
	sweet := pour.Work(p, shelf, clock.Hand{})
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
	s := pour.Work(p, shelf, clock.Hand{})
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
