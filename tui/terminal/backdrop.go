package terminal

import (
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi"

	"pourbench/tui/look"
)

// Backdrop is what is known of the terminal that colours are chosen for: its background and how many colours it has.
type Backdrop struct {
	ground look.Ground
	fixed  bool // said by hand: the terminal is not listened to
	few    bool // sixteen colours
}

// NewBackdrop is what is known before the terminal has answered: what was asked for, "dark", "light" or "auto", and the environment.
func NewBackdrop(asked string, environ []string) Backdrop {
	return Backdrop{ground: look.Before(asked, environ), fixed: asked == "dark" || asked == "light"}
}

// Ask asks the terminal for its background, and to say when its colours change to dark or to light (mode 2031).
func (b Backdrop) Ask() tea.Cmd {
	return tea.Batch(tea.RequestBackgroundColor, tea.Raw(ansi.SetModeLightDark))
}

// Hear takes what the terminal says of itself. The command asks for the background again where it has changed.
func (b Backdrop) Hear(msg tea.Msg) (Backdrop, tea.Cmd) {
	ground, again := b.ground, tea.Cmd(nil)
	switch msg := msg.(type) {
	case tea.BackgroundColorMsg:
		if msg.Color != nil {
			ground = look.OfDark(msg.IsDark())
		}
	case uv.DarkColorSchemeEvent:
		ground, again = look.Dark, tea.RequestBackgroundColor
	case uv.LightColorSchemeEvent:
		ground, again = look.Light, tea.RequestBackgroundColor
	case tea.ResumeMsg: // it may have changed meanwhile
		again = b.Ask()
	case tea.ColorProfileMsg:
		b.few = msg.Profile == colorprofile.ANSI
	}
	if !b.fixed {
		b.ground = ground
	}
	return b, again
}

// Look is the look for it.
func (b Backdrop) Look() look.Look { return look.On(b.ground, b.few) }

// Dark says whether the background is dark, or may be.
func (b Backdrop) Dark() bool { return b.ground != look.Light }
