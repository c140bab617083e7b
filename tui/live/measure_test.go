package live

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// alpine opens a live run of the example plan with its icing.
func alpine(t *testing.T) *kitchen {
	t.Helper()
	return opened(t, t.TempDir(), func(o *Options) {
		text, err := presets.Plan("alpine-meadow")
		must(t, err)
		plan, err := planfile.Read("alpine-meadow", strings.NewReader(string(text)), o.Shelf)
		must(t, err)
		o.Sheet = pour.Work(plan, o.Shelf, pour.Hand{})
	})
}

// asked is the things that the line for measuring goes through, first to last, without what is planned of them.
func (b *kitchen) asked() []string {
	b.Helper()
	b.press("w")
	defer b.press("esc")
	var out []string
	for range 99 {
		_, after, _ := strings.Cut(b.frame(), "What it really weighs")
		_, after, _ = strings.Cut(after, "│ ")
		name, _, _ := strings.Cut(after, " in ")
		if len(out) > 0 && out[0] == name {
			return out
		}
		out = append(out, name)
		b.press("tab")
	}
	b.Fatal("the things to measure do not come round")
	return nil
}

// Each batch's alkali stands by itself with its own figure, never the two added up; a step's own things come first.
func TestEachBatchIsMeasuredByItselfAtItsOwnStep(t *testing.T) {
	b := alpine(t)
	sheet := b.m.sheet()
	base, icing := sheet.Base.Lye.NaOH.ToWeighG, sheet.Icing.Lye.NaOH.ToWeighG
	show := sheet.Plan.Show
	for thing, g := range map[string]float64{"base " + pour.NameNaOH: base, "icing " + pour.NameNaOH: icing} {
		b.measure(thing)
		b.shows(thing + " in g, planned " + show.Dose(g))
		b.hides(show.Dose(base + icing))
		b.press("esc")
	}
	first := func(step string, want ...string) {
		t.Helper()
		if step != "" {
			b.until(step)
		}
		got := b.asked()
		if len(got) < len(want) || strings.Join(got[:len(want)], ", ") != strings.Join(want, ", ") {
			t.Errorf("after %q the first to measure are %q, want %q", step, got, want)
		}
	}
	now, _ := b.m.now()
	n := string(now.Batch)
	first("", n+" "+pour.NameWater, n+" "+pour.NameNaOH)
	first("base make the lye", "base lye", "base oils")
	first("base cool the lye", "icing "+pour.NameWater, "icing "+pour.NameNaOH)
	first("icing cool the lye", "base lye", "base oils")
	first("base lye in", "base batter")
	first("base mix", "base pot batter", "base gentian batter", "base poppy batter", "base buttercup batter", "base fern batter")
	first("base split", "base pot titanium white, oil-dispersible", "base pot high-oleic sunflower oil")
}

// What is measured goes to its own batch and jug in the log, is not asked for again first, and is taken back by u.
func TestWhatIsMeasuredIsOfItsBatchAndJug(t *testing.T) {
	b := alpine(t)
	b.until("base mix")
	b.press("w")
	b.write("480,5 L3")
	b.press("enter w")
	b.shows("base gentian batter in ", "planned "+b.m.sheet().Plan.Show.Weight(b.m.sheet().Base.Jugs[1].BatterWeighG))
	b.press("esc")
	b.measure("base pot batter")
	b.shows("measured 480.5 g")
	b.press("esc")
	p, err := b.book.Read(b.m.ID(), b.shelf)
	must(t, err)
	e := p.Events[len(p.Events)-1]
	if e.Kind != logbook.Weighed || e.Batch != pour.Base || e.Jug != "pot" || e.What != pour.WeighBatter || e.Value != 480.5 || e.Lot != "L3" {
		t.Errorf("journaled: %+v", e)
	}
	b.press("u")
	b.shows("taken back: base pot batter 480.50 g")
	b.measure("base pot batter")
	b.hides("measured")
}

// Planned is 86.2 g: 254.1 ÷ 86.2 is 2.9 and 43.1 half of it; 20 % of it is 17.2 g, so that 103 g is near enough, and of 0.5 g the three
// steps of 0.1 g are more than 20 %.
func TestAWeightFarFromItsPlanIsSaid(t *testing.T) {
	for _, x := range []struct {
		planned, g float64
		want       string
	}{
		{86.2, 254.1, "2.9 times the plan"},
		{86.2, 43.1, "0.5 times the plan"},
		{86.2, 103, ""},
		{86.2, 69.2, ""},
		{86.2, 68.9, "0.8 times the plan"},
		{.5, .8, ""},
		{.5, .9, "1.8 times the plan"},
		{100, 2, "0.02 times the plan"},
		{100, 0, "nothing of the plan"},
	} {
		thing := underway.Thing{Event: logbook.Event{Kind: logbook.Weighed}, Planned: pour.Know(x.planned)}
		if got := farWords(thing, x.g, .1); got != x.want {
			t.Errorf("%v g for %v g is %q, want %q", x.g, x.planned, got, x.want)
		}
	}
	if got := farWords(underway.Thing{Event: logbook.Event{Kind: logbook.Read}, Planned: pour.Know(30)}, 60, .1); got != "" {
		t.Errorf("a temperature is %q", got)
	}
	if got := farWords(underway.Thing{Event: logbook.Event{Kind: logbook.Weighed}}, 60, .1); got != "" {
		t.Errorf("without a plan it is %q", got)
	}
	b := alpine(t)
	b.measure("base " + pour.NameNaOH)
	b.write("999")
	b.press("enter")
	b.shows("! that is ", " times the plan; u takes it back: base ")
	b.press("u")
	b.shows("taken back: base " + pour.NameNaOH)
}

// What is weighed by the paper is offered in the paper's order, oil after oil, then the lye; once a step is done its own things come first again, and the
// jugs' batter one after the other.
func TestTheNextThingOfThePaperIsOfferedNext(t *testing.T) {
	b := alpine(t)
	offered := func() string {
		t.Helper()
		b.press("w")
		defer b.press("esc")
		_, after, _ := strings.Cut(b.frame(), "What it really weighs")
		_, after, _ = strings.Cut(after, "│ ")
		name, _, _ := strings.Cut(after, " in ")
		return name
	}
	var paper []string
	sheet := b.m.sheet()
	for _, o := range sheet.Base.Oils {
		paper = append(paper, "base "+o.Name)
	}
	for _, x := range sheet.Base.ExtrasJoining(pour.JoinsOils) {
		paper = append(paper, "base "+x.Name)
	}
	paper = append(paper, "base "+pour.NameWater, "base "+pour.NameNaOH)
	if got := offered(); got != "base "+pour.NameWater && got != "icing "+pour.NameWater {
		t.Errorf("before anything %q is offered", got)
	}
	for i, name := range paper {
		if i > 0 && offered() != name {
			t.Fatalf("after %q %q is offered, want %q", paper[i-1], offered(), name)
		}
		if i == 0 {
			b.weigh(name, "100")
			continue
		}
		b.press("w")
		b.write("100")
		b.press("enter")
		if e := b.logged(); "base "+e.What != name {
			t.Fatalf("%q was weighed as %q", name, e.What)
		}
	}
	b.weigh(paper[1], "101") // again
	if got := offered(); got == paper[2] || !strings.HasPrefix(got, "base ") {
		t.Errorf("after a slip was put right %q is offered", got)
	}
	b.press("u")
	b = alpine(t)
	b.until("base mix")
	b.weigh("base poppy batter", "150")
	if got := offered(); got != "base buttercup batter" {
		t.Errorf("after the batter of one jug %q is offered", got)
	}
	b.until("base split")
	if got := offered(); !strings.HasPrefix(got, "base pot titanium white") {
		t.Errorf("once it is split %q is offered", got)
	}
}
