package terminal

import (
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// Suspend goes back to the shell and leaves the model waiting. A terminal that tells when its colours change would tell the shell.
func Suspend() tea.Cmd { return tea.Sequence(tea.Raw(ansi.ResetModeLightDark), tea.Suspend) }

// NoSuspend says why a program cannot be left waiting for the shell on an operating system, named as Go names it; empty: it can.
func NoSuspend(system string) string {
	if system != "windows" {
		return ""
	}
	return "Windows cannot leave a program waiting; open another window or tab for the shell"
}
