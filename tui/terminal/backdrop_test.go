package terminal

import (
	"image/color"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	uv "github.com/charmbracelet/ultraviolet"

	"pourbench/tui/look"
)

func TestTheLookFollowsWhatTheTerminalSays(t *testing.T) {
	for _, c := range []struct {
		what  string
		asked string
		env   []string
		said  []tea.Msg
		want  look.Look
		again bool
	}{
		{"it has said nothing", "auto", nil, nil, look.Own(), false},
		{"only its environment is known", "auto", []string{"COLORFGBG=0;15"}, nil, look.New(false), false},
		{"it answers after its environment", "auto", []string{"COLORFGBG=0;15"}, []tea.Msg{tea.BackgroundColorMsg{Color: color.Black}}, look.New(true), false},
		{"an answer without a colour", "auto", nil, []tea.Msg{tea.BackgroundColorMsg{}}, look.Own(), false},
		{"it turns light", "auto", nil, []tea.Msg{tea.BackgroundColorMsg{Color: color.Black}, uv.LightColorSchemeEvent{}}, look.New(false), true},
		{"it turns dark", "auto", nil, []tea.Msg{tea.BackgroundColorMsg{Color: color.White}, uv.DarkColorSchemeEvent{}}, look.New(true), true},
		{"light was said by hand", "light", nil, []tea.Msg{tea.BackgroundColorMsg{Color: color.Black}}, look.New(false), false},
		{"light by hand, and it turns dark", "light", nil, []tea.Msg{uv.DarkColorSchemeEvent{}}, look.New(false), true},
		{"it was left waiting", "dark", nil, []tea.Msg{tea.ResumeMsg{}}, look.New(true), true},
		{"sixteen colours", "dark", nil, []tea.Msg{tea.ColorProfileMsg{Profile: colorprofile.ANSI}}, look.Sixteen(true), false},
		{"more of them", "dark", nil, []tea.Msg{tea.ColorProfileMsg{Profile: colorprofile.ANSI256}}, look.New(true), false},
	} {
		b, again := NewBackdrop(c.asked, c.env), tea.Cmd(nil)
		for _, msg := range c.said {
			b, again = b.Hear(msg)
		}
		if b.Look() != c.want || (again != nil) != c.again {
			t.Errorf("%s: the look is another, or it is asked again: %v", c.what, again != nil)
		}
	}
}
