package tui

import (
	"errors"
	"strings"
	"testing"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/planfile"
)

// quick is the hand of a maker whose pours all thicken sooner than the model has it.
func quick(pours int) pour.Hand {
	return pour.Hand{Clock: clock.Hand{Traits: []clock.Trait{{Kind: clock.PaceTrait, Mean: 0.5, Pours: pours}}, Covariance: [][]float64{{0.01}}, Pours: pours}}
}

// Screen, paper and the next run must agree: what a pour from the bench has taught counts there as after a fresh start.
func TestWhatAPourHasTaughtCountsOnTheOpenBench(t *testing.T) {
	for name, back := range map[string]func(m *model){
		"back from a pour":   func(m *model) { _, cmd := m.Update(pouredMsg{}); finish(m, cmd) },
		"after a failed one": func(m *model) { _, cmd := m.Update(pouredMsg{err: errors.New("no room")}); finish(m, cmd) },
		"what was learned":   func(m *model) { drive(m, "esc L") },
	} {
		m := opened(t, 120, 36)
		before := m.session.Sheet().Base.Jugs[0].Clock.LateChancePercent
		m.opt.ReadHand = func() (pour.Hand, error) { return quick(1), nil }
		m.opt.Learned = func() (string, error) { return "much", nil }
		back(m)
		fresh := newModel(Options{Document: planfile.Document{Plan: m.session.Plan()}, Shelf: m.session.Shelf(), Hand: quick(1), Background: "dark"})
		got, want := m.session.Sheet().Base.Jugs[0].Clock.LateChancePercent, fresh.session.Sheet().Base.Jugs[0].Clock.LateChancePercent
		if !got.Known || got != want || got == before {
			t.Errorf("%s: late %v %%, a fresh start has %v, before %v", name, got, want, before)
		}
		if !strings.Contains(m.status.Text(), "the clock knows 1 pour more") {
			t.Errorf("%s: it says %q", name, m.status.Text())
		}
		if m.session.Dirty() || m.session.CanUndo() != "" {
			t.Errorf("%s: a lesson counts as an edit", name)
		}
		m.opt.ReadHand = func() (pour.Hand, error) { return pour.Hand{}, errors.New("the logbook is locked") }
		back(m)
		if m.session.Hand().Clock.Pours != 1 || !strings.Contains(m.status.Text(), "the logbook is locked") {
			t.Errorf("%s: with a logbook that cannot be read it knows %d pours and says %q", name, m.session.Hand().Clock.Pours, m.status.Text())
		}
	}
}

// In plain mode it is said, once.
func TestPlainModeTellsWhatAPourHasTaught(t *testing.T) {
	s := spokenTo(t)
	s.m.opt.Pour = func(pour.Plan) error { return nil }
	s.m.opt.ReadHand = func() (pour.Hand, error) { return quick(2), nil }
	s.hears("P", "back from the run", "the clock knows 2 pours more")
	if s.m.session.Hand().Clock.Pours != 2 {
		t.Error("the lesson was not taken")
	}
}
