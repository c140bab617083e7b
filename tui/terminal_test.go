package tui

import (
	"bytes"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"
)

func TestTheRealRendererRunsTheBenchAndGivesTheScreenBack(t *testing.T) {
	m := opened(t, 100, 30)
	var out bytes.Buffer
	program := tea.NewProgram(m, tea.WithInput(nil), tea.WithOutput(&out), tea.WithWindowSize(100, 30),
		tea.WithColorProfile(colorprofile.TrueColor), tea.WithoutSignals(), tea.WithEnvironment([]string{"TERM=xterm-256color"}))
	done := make(chan error, 1)
	go func() { _, err := program.Run(); done <- err }()
	for _, k := range strings.Fields("4 1 , 5 enter q d") {
		program.Send(key(k))
	}
	select {
	case err := <-done:
		if err != nil {
			t.Fatal(err)
		}
	case <-time.After(20 * time.Second):
		program.Kill()
		t.Fatal("the bench was not left")
	}
	if got := base(m).Jugs[0].SharePercent; got != 41.5 {
		t.Errorf("the pot has %v %%, want 41.5", got)
	}
	text := out.String()
	if !strings.Contains(text, ansi.SetModeAltScreenSaveCursor) || !strings.Contains(text, ansi.ResetModeAltScreenSaveCursor) {
		t.Error("the alternate screen was not taken and given back")
	}
}
