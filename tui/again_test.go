package tui

import (
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/again"
	"pourbench/pour/logbook"
	"pourbench/pour/planfile"
	"pourbench/tui/grid"
	"pourbench/tui/panel"
)

// poured is the workbench on a plan that pours one again whose oils were 4 °C too warm and whose poppy seized.
func poured(t *testing.T, w, h int) *model {
	t.Helper()
	shelf, plan := built(t)
	at := time.Date(2026, 12, 5, 9, 0, 0, 0, time.UTC)
	mark := func(min int, e logbook.Event) logbook.Event {
		e.Run = time.Duration(min) * time.Minute
		e.Wall, e.ID = at.Add(e.Run), e.Run.String()
		return e
	}
	p := logbook.Pour{ID: "2026-12-05-meadow", Name: plan.Name, Opened: at, Plan: plan, Events: []logbook.Event{
		mark(1, logbook.Event{Kind: logbook.Read, Batch: pour.Base, What: logbook.ReadOils, Value: plan.Base.OilsC + 4}),
		mark(2, logbook.Event{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)}),
		mark(11, logbook.Event{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Seizes}),
	}}
	past, err := again.Of(p, shelf, pour.Hand{})
	if err != nil {
		t.Fatal(err)
	}
	m := newModel(Options{
		Document: planfile.Document{Plan: past.Plan()}, Shelf: shelf, Background: "dark",
		Past: func(id string) (again.Past, []again.Past, error) {
			if id != p.ID {
				return again.Past{}, nil, errors.New("read the pour " + id + ": there is none")
			}
			return past, nil, nil
		},
		Pours: func() ([]Past, error) { return []Past{{ID: p.ID, Name: p.Name, Day: "2026-12-05"}}, nil },
		PourAgain: func(string) (Poured, error) {
			plan := past.Plan()
			return Poured{Plan: &plan, Said: "a new plan of it; {what happened} tells"}, nil
		},
	})
	finish(m, m.Init())
	resize(m, w, h)
	return m
}

// marked finds a marked cell by its figure or field.
func marked(m *model, path string) (grid.Cell, bool) {
	for _, g := range m.grids {
		for _, r := range g.Rows {
			for _, c := range r.Cells {
				if c.Marked && (c.Figure == path || c.Field == path) {
					return c, true
				}
			}
		}
	}
	return grid.Cell{}, false
}

func TestWhatHappenedStandsBesideTheFiguresOfAPlanThatPoursAgain(t *testing.T) {
	m := poured(t, 120, 36)
	c, ok := marked(m, "base.jug[2].name")
	if !ok || !strings.HasPrefix(c.Hint, "* seized 9 min after lye-in | about #") {
		t.Errorf("poppy is marked %v: %q", ok, c.Hint)
	}
	if f := frame(m); !strings.Contains(f, "poppy") || !strings.Contains(f, "*") {
		t.Errorf("no sign stands beside poppy:\n%s", f)
	}
	visit(m, panel.Batch)
	drive(m, "tab tab tab")
	for range 8 {
		if _, ok = marked(m, "base.oils_c"); ok {
			break
		}
		drive(m, "tab")
	}
	if c, _ := marked(m, "base.oils_c"); !strings.HasPrefix(c.Hint, "* planned ") {
		t.Errorf("the oils' temperature says %q", c.Hint)
	}
	plain := opened(t, 120, 36)
	if _, ok := marked(plain, "base.jug[2].name"); ok || !strings.Contains(plain.cannot("what happened"), "pours no pour again") {
		t.Error("a plan that pours nothing again tells of it")
	}
}

func TestEnterMakesASuggestionAndUndoTakesItBack(t *testing.T) {
	m := poured(t, 120, 36)
	before := m.session.Plan()
	drive(m, "H")
	f := frame(m)
	for _, want := range []string{"What happened, and what the logbook suggests", "make →", "as they really were", "why: planned"} {
		if !strings.Contains(f, want) {
			t.Errorf("the page lacks %q:\n%s", want, f)
		}
	}
	drive(m, "enter")
	if got := m.session.Plan().Base.OilsC; got != before.Base.OilsC+4 || !strings.Contains(m.status.Text(), "u takes it back") {
		t.Errorf("oils at %v, said %q", got, m.status.Text())
	}
	drive(m, "u")
	if !reflect.DeepEqual(before, m.session.Plan()) {
		t.Error("one u does not take it back")
	}
}

// The page says in what the plan differs from the one that was poured, and brings both pictures up side by side.
func TestThePlanAndThePouredOneAreSeenSideBySide(t *testing.T) {
	m := poured(t, 120, 36)
	if err := m.edit("dose", pour.SetNumber("base.jug[1].colourant[0].dose_percent", 2)); err != nil {
		t.Fatal(err)
	}
	before := m.session.Plan().Base.Jugs[1]
	told := strings.Join(m.linesOfPast(), "\n")
	for _, want := range []string{"base jug " + before.Name + " colourant " + before.Colourants[0].Colourant + ": dose: ", " → 2 %", "figures differ", `name: "`} {
		if !strings.Contains(told, want) {
			t.Errorf("told is not %q:\n%s", want, told)
		}
	}
	drive(m, "esc")
	m.keepPast()
	m.settle()
	finish(m, m.develop())
	if f := frame(m); m.studio.kept == nil || m.station != panel.Swirl || !strings.Contains(f, "kept: ") || !strings.Contains(f, "now: ") {
		t.Errorf("the pictures do not stand side by side:\n%s", f)
	}
	if m.studio.kept.design.Palette[1] == m.studio.design.Palette[1] && before.BatterColour == "" {
		t.Error("both pictures have the colours of today")
	}
}

func TestAPourIsOpenedFromTheList(t *testing.T) {
	m := poured(t, 80, 24)
	drive(m, "o")
	if f := frame(m); !strings.Contains(f, "poured 2026-12") {
		t.Fatalf("no pour in the list:\n%s", f)
	}
	finish(m, m.openPlan(pourPrefix+"2026-12-05-meadow"))
	if m.session.Plan().AgainOf != "2026-12-05-meadow" || !m.session.Dirty() || m.file.path != "" || !strings.Contains(m.status.Text(), "H tells") {
		t.Errorf("on the bench is a plan of %q, dirty %v, said %q", m.session.Plan().AgainOf, m.session.Dirty(), m.status.Text())
	}
}

func TestAPourThatIsGoneIsSaidOnceAndTheBenchGoesOn(t *testing.T) {
	m := poured(t, 80, 24)
	gone := m.session.Plan()
	gone.AgainOf = "2020-01-01-gone"
	m.bring(gone, true, "", planfile.Stamp{})
	finish(m, m.lookBack())
	if got := m.status.Text(); !strings.Contains(got, "what happened at 2020-01-01-gone is not told: ") || !strings.Contains(m.cannot("what happened"), "there is none") {
		t.Errorf("said %q, and H: %q", got, m.cannot("what happened"))
	}
	if m.lookBack() != nil {
		t.Error("it is read again and again")
	}
}

// In lines too: what happened is told, and a suggestion is made by its number or its words.
func TestPouringAgainInLines(t *testing.T) {
	m := poured(t, 80, 24)
	got := strings.Join(m.linesOfPast(), "\n")
	for _, want := range []string{"as they really were", "poppy of the base: seized"} {
		if !strings.Contains(got, want) {
			t.Errorf("told is not %q:\n%s", want, got)
		}
	}
}

// linesOfPast tells the page of what happened as plain mode does.
func (m *model) linesOfPast() []string {
	drive(m, "H")
	var out []string
	for _, l := range m.dialogs.Top().Tell().Lines {
		out = append(out, l.Lead+" "+l.Text+" "+l.Under)
	}
	return out
}
