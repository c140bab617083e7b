package paper

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
)

// topped is the example with an embed in every bar, grains strewn on the fresh top, and the second worked example of the cuts: 250 mm, a wire of
// 0.6, a sample slice of 5 at end A, trims of 3, the rest to nine bars of 25.8222.
func topped(t *testing.T) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := demo(t)
	p.Mould.LengthMM, p.Mould.BarMM = 250, 25
	c := &p.Cut
	c.KerfMM, c.TrimAMM, c.TrimBMM, c.SliceMM, c.Left, c.Lay = 0.6, 3, 3, 5, pour.LeftBars, pour.LaySide
	p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 12, HeightMM: 10, OutMM: 3, MadeDays: 7}}
	p.Top.Toppings = []pour.Topping{{Name: "seeds", GPerBar: 0.5, When: pour.StrewWet, Parts: []pour.ToppingPart{{Material: "poppy-seeds", Percent: 100}}}}
	return p, shelf
}

func TestThePapersTellWhatIsMadeMarkedAndCut(t *testing.T) {
	p, shelf := topped(t)
	s := pour.Work(p, shelf, pour.Hand{})
	full, bench := flat(Checklist(s, shelf)), flat(Bench(s, shelf, false))
	const cuts = "3.5 9.0 35.5 61.5 88.0 114.5 141.0 167.5 194.0 220.5 246.5"
	const middles = "22.0 48.5 75.0 101.5 128.0 154.0 180.5 207.0 233.5"
	for _, want := range []string{
		"2 MADE DAYS BEFORE", "9 moon, cold-process soap, made 7 d before the pour", "LAY OUT FOR THE TOP", "seeds, on the fresh top", "Strips of paper to lay over every cut",
		"middles of moon come, mm from end A, or the ruler laid on it", middles, "Cuts marked, mm from end A", cuts, "a cut takes 0.6 mm", "It lies on its side",
		"[ ] bar 9", "[ ] sample slice 3.6 mm 8.6 mm", "[ ] trims together", "[ ] crumbs",
	} {
		if !strings.Contains(full, want) {
			t.Errorf("the full paper does not say %q", want)
		}
	}
	for _, want := range []string{"FOR THE TOP", "9 moon", "middles, mm from end A: " + middles, "seeds, on the fresh top", "Cuts marked, mm from end A: " + cuts} {
		if !strings.Contains(bench, want) {
			t.Errorf("the bench paper does not say %q", want)
		}
	}
}

// What goes on after the cut and on the cured bar stands there, each once, in its place.
func TestWhatIsStrewnAfterTheCutStandsThere(t *testing.T) {
	p, shelf := topped(t)
	seeds := p.Top.Toppings[0]
	after, last := seeds, seeds
	after.Name, after.When, last.Name, last.When = "late", pour.StrewCut, "last", pour.StrewCure
	p.Top.Toppings = append(p.Top.Toppings, after, last)
	full := flat(Checklist(pour.Work(p, shelf, pour.Hand{}), shelf))
	_, cut, _ := strings.Cut(full, "trims together")
	late, last2, cure := strings.Index(cut, "Strew late"), strings.Index(cut, "Strew last"), strings.Index(cut, "Cure until")
	if late < 0 || last2 < 0 || !(late < cure && cure < last2) || strings.Contains(cut, "Strew seeds") {
		t.Errorf("late at %d, cure at %d, last at %d: %s", late, cure, last2, cut)
	}
}

// Bags are laid out before the pour: 30 g rosettes in fills of 150 g, worked out by whoever owns the piping.
func TestThePapersTellTheBags(t *testing.T) {
	p, shelf := demo(t)
	p.Icing.Size = pour.SizeShape
	p.Piping.Shape, p.Piping.Tip, p.Piping.Points, p.Piping.TipMM, p.Piping.ValleyMM, p.Piping.Swell, p.Piping.OverlapPercent, p.Piping.CoilMM, p.Piping.PerBar = pour.PipeRosette, pour.TipStar, 6, 12, 8, 1, 20, 20, 1
	p.Piping.BagG = 150
	s := pour.Work(p, shelf, pour.Hand{})
	if s.Piping.Lacks != "" || s.Piping.Bags == 0 {
		t.Fatalf("%+v", s.Piping)
	}
	fills := strconv.Itoa(s.Piping.Fills)
	full, bench := flat(Checklist(s, shelf)), flat(Bench(s, shelf, false))
	if !strings.Contains(full, "Piping bags, each with its tip, filled "+fills+" times in all") || strings.Contains(full, "icing that is over") || !strings.Contains(full, "a seam that gives throws raw soap") {
		t.Error("the full paper does not lay the bags out")
	}
	if !strings.Contains(bench, "piping bags with their tips, filled "+fills+" times") {
		t.Error("the bench paper does not lay the bags out")
	}
}

// A piece of a day and a plan with a moment says by when it is made: seven days before 1 December is 24 November.
func TestAPieceIsMadeByADay(t *testing.T) {
	p, shelf := topped(t)
	p.PourAt = time.Date(2026, 12, 1, 10, 0, 0, 0, time.UTC)
	if full := flat(Checklist(pour.Work(p, shelf, pour.Hand{}), shelf)); !strings.Contains(full, "made 7 d before the pour, by 2026-11-24") {
		t.Error("no day is said")
	}
}

// With none of the new tables a paper has none of their lines.
func TestAnOlderPlanPrintsNothingOfTopAndCut(t *testing.T) {
	p, shelf := demo(t)
	s := pour.Work(p, shelf, pour.Hand{})
	for name, text := range map[string]string{"full": Checklist(s, shelf), "bench": Bench(s, shelf, false)} {
		for _, word := range []string{"MADE DAYS BEFORE", "FOR THE TOP", "Cuts marked", "[ ] bar 1", "ruler"} {
			if strings.Contains(text, word) {
				t.Errorf("the %s paper of the example says %q", name, word)
			}
		}
	}
}

// What a vessel blends no less of is told where it goes, and no dose is told that no scale shows.
func TestTheIcingThatIsOverHasAMouldAndAPinchIsTold(t *testing.T) {
	p, shelf := demo(t)
	p.Icing.Size = pour.SizeShape
	p.Piping = pour.Piping{Shape: pour.PipeDollop, TipMM: 10, WidthMM: 14, HeightMM: 10, ResiduePercent: 7, BagG: 500, LeastG: 300}
	p.Top.Toppings = []pour.Topping{{Name: "petals", GPerBar: 0.004, Parts: []pour.ToppingPart{{Material: "calendula-petals", Percent: 100}}}}
	s := pour.Work(p, shelf, pour.Hand{})
	// Ten cones of 14 mm by 10 mm are 10 · π · 49 · 10 / 3 = 5.13 mL, about 5 g and with what stays in the bag under 6: some 294 g are over.
	if v := s.Piping.RestG.V; v < 293 || v > 296 {
		t.Fatalf("%g g of 300 are over", v)
	}
	over := "a small mould, for the icing that is over"
	for name, text := range map[string]string{"full": flat(Checklist(s, shelf)), "bench": flat(Bench(s, shelf, false))} {
		for _, want := range []string{over, "filled 2 times", "what is over into the small mould", "lay petals, 0.04 g in all, evenly over the bars"} {
			if !strings.Contains(text, want) {
				t.Errorf("the %s paper lacks %q", name, want)
			}
		}
	}
}

// A rod has no mark on the rim and a piece in a single mould none either: they are laid out by name and number all the same, so that the section
// of the top never is a heading with nothing under it.
func TestEveryEmbedIsLaidOut(t *testing.T) {
	p, shelf := topped(t)
	p.Top.Toppings = nil
	p.Top.Embeds = []pour.Embed{{Name: "stem", Outline: pour.OutlineRod, LengthMM: 12}}
	full := Checklist(pour.Work(p, shelf, pour.Hand{}), shelf)
	_, section, found := strings.Cut(full, "LAY OUT FOR THE TOP")
	section, _, _ = strings.Cut(section, "THE POUR, IN ORDER")
	if !found || !strings.Contains(flat(section), "[ ] stem, dry and not warm, within reach of the mould 1 ") {
		t.Errorf("the rod is not laid out:\n%s", section)
	}
	p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 12, HeightMM: 10}}
	full = flat(Checklist(pour.Work(p, shelf, pour.Hand{}), shelf))
	if !strings.Contains(full, "[ ] moon, dry and not warm, within reach of the mould 9 ") {
		t.Error("nine moons are not laid out")
	}
}
