package tui

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/planfile"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
)

// marketed is the bench with a label in a market of the test's own.
func marketed(t testing.TB, w, h int) *model {
	t.Helper()
	shelf, plan := built(t)
	shelf.Markets = []label.Market{{ID: "vale", Name: "The vale", Heading: "Ingredients:", ScentWord: "Parfum", FreePercent: 1, Allergens: label.AllergensLong, OverPercent: 0.01}}
	shelf.Allergens = []label.Allergen{{Name: "Citronellol"}, {Name: "Geraniol"}, {Name: "Linalool"}, {Name: "Coumarin"}}
	shelf, err := shelf.Prepared()
	if err != nil {
		t.Fatal(err)
	}
	m := newModel(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, Background: "dark"})
	finish(m, m.Init())
	resize(m, w, h)
	return m
}

func TestAMarketIsChosenWhereNoLabelIsAskedFor(t *testing.T) {
	m := marketed(t, 80, 24)
	drive(m, "E")
	if f := frame(m); !strings.Contains(f, "Enter chooses the market") {
		t.Fatalf("the station says\n%s", f)
	}
	drive(m, "enter")
	typeText(m, "vale")
	drive(m, "enter")
	if m.session.Plan().Label.Market != "vale" || m.facts.Timed.Label.Text == "" {
		t.Fatalf("the market is %q, the list %q", m.session.Plan().Label.Market, m.facts.Timed.Label.Text)
	}
	if f := frame(m); !strings.Contains(f, "Linalool") || !strings.Contains(f, "by mass") || !strings.Contains(f, askLocally) {
		t.Errorf("at 80×24 list and allergens are not in sight together:\n%s", f)
	}
	before := m.facts.Timed.Label.Text
	goTo(t, m, panel.Batch, "oils") // a key on another station changes the list
	drive(m, "5 enter")
	if m.facts.Timed.Label.Text == before {
		t.Error("the list does not follow the plan")
	}
}

const askLocally = "check the current text, ask locally"

func TestAScentIsTriedOnTheBenchTakenAndTakenBack(t *testing.T) {
	m := marketed(t, 120, 36)
	if m.edit("market", pour.SetText("label.market", "vale")) != nil {
		t.Fatal("no market")
	}
	finish(m, m.workFigures())
	goTo(t, m, panel.Label, "another scent")
	before := m.session.Revision()
	drive(m, "down enter")
	typeText(m, "gentian root")
	drive(m, "enter")
	if m.facts.Trial == nil || m.facts.Trial.Sheet == nil || !m.facts.Trial.Fresh {
		t.Fatalf("the trial is %+v", m.facts.Trial)
	}
	if m.session.Revision() != before {
		t.Fatal("trying changed the plan")
	}
	if f := frame(m); !strings.Contains(f, "− Citronellol") || !strings.Contains(f, "allergens named") {
		t.Errorf("what it changes is not in sight:\n%s", f)
	}
	rev := m.facts.Trial.Sheet.Label.MadeG
	if m.edit("more loss", pour.SetNumber("base.superfat_percent", 9)) != nil {
		t.Fatal("no edit")
	}
	_, cmd := m.Update(changingMsg{m.workFigures})
	if m.facts.Trial.Fresh {
		t.Error("a trial of the plan before counts as fresh")
	}
	finish(m, cmd)
	if !m.facts.Trial.Fresh || m.facts.Trial.Sheet.Label.MadeG == rev {
		t.Error("the trial does not follow the plan")
	}
	seekTaking(t, m)
	drive(m, "enter")
	if got := m.session.Plan().Base.Scents[1].Scent; got != "gentian-root" || m.facts.Trial != nil {
		t.Errorf("taking it left %s, trial %v", got, m.facts.Trial)
	}
	drive(m, "u")
	if got := m.session.Plan().Base.Scents[1].Scent; got != "alp-rose" {
		t.Errorf("taking it back left %s", got)
	}
}

// seekTaking puts the cursor on the row that takes what is tried.
func seekTaking(t *testing.T, m *model) {
	t.Helper()
	for range m.grids[layout.ID("another scent")].Rows {
		if cell, _, _ := m.cell(); cell.Flip != nil {
			return
		}
		drive(m, "down")
	}
	t.Fatalf("no row takes it:\n%s", frame(m))
}

func TestATrialEndsWithItsScentAndWithItsPlan(t *testing.T) {
	m := marketed(t, 80, 24)
	m.trying = trying{of: &panel.Swap{Batch: pour.Base, At: 1, ID: "gentian-root"}, opened: m.file.opened}
	if m.edit("no scent", pour.RemoveScent(pour.Base, 1)) != nil {
		t.Fatal("no edit")
	}
	if m.tried() != nil || m.trying.of != nil {
		t.Error("it goes on without its scent")
	}
	m.trying = trying{of: &panel.Swap{Batch: pour.Base, At: 0, ID: "gentian-root"}, opened: m.file.opened}
	m.file.opened++
	if m.tried() != nil {
		t.Error("it goes on beside another plan")
	}
	m.trying = trying{of: &panel.Swap{Batch: pour.Base, At: 0, ID: "gentian-root"}, opened: m.file.opened}
	m.tryDone(triedMsg{of: panel.Swap{Batch: pour.Base, At: 0, ID: "alp-rose"}, rev: m.session.Revision()})
	m.tryDone(triedMsg{of: *m.trying.of, rev: m.session.Revision() - 1})
	if m.trying.sheet != nil {
		t.Error("what was worked out for another trial or plan is taken")
	}
}

// The tabs of all stations are on every screen that the bench works on.
func TestEveryTabIsOnTheNarrowestScreen(t *testing.T) {
	for _, w := range []int{layout.MinW, 70, 80, 90, 120} {
		m := opened(t, w, 24)
		for s := range panel.Places {
			m.station = panel.Place(s)
			row := strings.Split(frame(m), "\n")[1]
			for i := range m.stations {
				if !strings.Contains(row, m.stations[i].Name) {
					t.Errorf("%d wide, at %s: no tab of %s in %q", w, m.here().Name, m.stations[i].Name, row)
				}
			}
			m.clickTab(m.tabs()[s] + 1)
			if m.station != panel.Place(s) {
				t.Errorf("%d wide: a click on %s goes to %s", w, m.stations[s].Name, m.here().Name)
			}
		}
	}
}

// In plain lines a trial is told as it is seen, and what follows from an answer in a list is worked out as after a key.
func TestAScentIsTriedInPlainLines(t *testing.T) {
	m := marketed(t, 80, 24)
	plan := m.session.Plan()
	plan.Label.Market = "vale"
	s := speaking(t, Options{Document: planfile.Document{Plan: plan}, Shelf: m.session.Shelf()})
	s.say("go another scent", "change 2", "gentian root")
	s.hears("list", "gentian root in place of alp rose", "allergens named", "Citronellol")
	s.hears("change take it", "done: gentian root in place of alp rose")
	if got := s.m.session.Plan().Base.Scents[1].Scent; got != "gentian-root" {
		t.Errorf("the scent is %s", got)
	}
	s.hears("undo", "undone")
	for _, cell := range []string{"█", "░", "threshold"} {
		if told := s.say("go allergens"); strings.Contains(told, cell) {
			t.Errorf("a bar is told: %s", told)
		}
	}
}
