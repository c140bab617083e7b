package tui

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/whatif"
)

func TestASuggestionIsMadeOnAKeyAndUndoneOnAnother(t *testing.T) {
	m := opened(t, 120, 36)
	before := m.session.Plan()
	lower := pour.SetNumber("base.oils_c", 30)
	m.suggested(suggestedMsg{m.session.Revision(), []whatif.Suggestion{{What: []string{"work 6 °C cooler"}, Edit: lower, Solves: true}}, nil})
	drive(m, "enter")
	if got := m.session.Plan().Base.OilsC; got != 30 {
		t.Errorf("oils at %v, want 30", got)
	}
	drive(m, "u")
	if got := m.session.Plan().Base.OilsC; got != before.Base.OilsC {
		t.Errorf("undone: oils at %v, want %v", got, before.Base.OilsC)
	}
}

func TestSuggestionsForAPlanThatHasChangedAreDropped(t *testing.T) {
	m := opened(t, 120, 36)
	m.suggested(suggestedMsg{m.session.Revision() - 1, []whatif.Suggestion{{What: []string{"old"}, Edit: pour.SetNumber("base.oils_c", 30)}}, nil})
	if m.dialogs.Top() != nil {
		t.Error("a list for an older plan was opened")
	}
}

func TestWithoutALogbookTheKeysSayWhy(t *testing.T) {
	m := opened(t, 120, 36)
	for _, key := range []string{"L", "P"} {
		drive(m, key)
		if !strings.Contains(m.status.Text(), "was opened with this bench") {
			t.Errorf("%s: the status line says %q", key, m.status.Text())
		}
	}
}

// A key that lists nothing must say which it is: that nothing is wrong, or that nothing helps, and whom.
func TestWhatNothingHelpsIsNamed(t *testing.T) {
	down := []whatif.Effect{{Jug: "pot", LateBefore: pour.AsFigure(92), LateAfter: pour.AsFigure(80)}}
	for want, msg := range map[string]suggestedMsg{
		"every jug with a time is likely inside its window":     {},
		"no single change and no pair of them helps pot, poppy": {outside: []string{"pot", "poppy"}},
		"nothing that was tried helps poppy":                    {outside: []string{"pot", "poppy"}, list: []whatif.Suggestion{{Jugs: down}}},
		"likely outside as it is: pot":                          {outside: []string{"pot"}, list: []whatif.Suggestion{{Jugs: down}}},
	} {
		m := opened(t, 120, 36)
		msg.rev = m.session.Revision()
		m.suggested(msg)
		if !strings.Contains(m.status.Text(), want) || (m.dialogs.Top() != nil) != (len(msg.list) > 0) {
			t.Errorf("it says %q, want %q", m.status.Text(), want)
		}
	}
}
