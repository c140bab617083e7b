package tui

import (
	"fmt"
	"strings"
	"testing"

	"pourbench/pour"
)

func TestEightJugsOnASmallScreenKeepTheClockInSight(t *testing.T) {
	m := opened(t, 80, 24)
	for i := range 3 {
		if err := m.session.Apply("jug", pour.AddJug(pour.Base, i+4, fmt.Sprintf("jug %d", i+6))); err != nil {
			t.Fatal(err)
		}
	}
	resize(m, 80, 24)
	f := frame(m)
	for _, want := range []string{"─ Clock ─", "minutes", "jug 8", "A    pot       ·", "↓"} {
		if !strings.Contains(f, want) {
			t.Errorf("%q is not in sight:\n%s", want, f)
		}
	}
}
