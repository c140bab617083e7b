package tui

import (
	"errors"
	"strings"
	"testing"

	"pourbench/pour"
)

func TestAPourThatIsPouredAgainComesOntoTheBench(t *testing.T) {
	m := opened(t, 120, 36)
	told(t, m, "B", "no logbook was opened with this bench")
	m.opt.Batches = func() (Poured, error) { return Poured{}, nil }
	if m.goBatches() == nil {
		t.Fatal("B goes nowhere")
	}
	m.Update(batchesMsg{err: errors.New("no terminal")})
	if m.status.Text() != "× no terminal" {
		t.Errorf("said is %q", m.status.Text())
	}
	m.Update(batchesMsg{})
	if !strings.Contains(m.status.Text(), "back from the batches") {
		t.Errorf("said is %q", m.status.Text())
	}
	next := m.session.Plan().Clone()
	next.Name = "Meadow again"
	m.Update(batchesMsg{poured: Poured{&next, "was 38 °C"}})
	if m.session.Plan().Name != "Meadow again" || m.status.Text() != "was 38 °C" {
		t.Errorf("on the bench is %s, said is %q", m.session.Plan().Name, m.status.Text())
	}
	_ = m.edit("name", pour.SetName("changed"))
	m.Update(batchesMsg{poured: Poured{&next, "again"}})
	if m.session.Plan().Name != "changed" || m.dialogs.Top() == nil {
		t.Error("an unsaved plan gives way without a question")
	}
}
