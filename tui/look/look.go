// Package look holds the roles that things on screen play and the few colours that go with them.
//
// Text keeps the terminal's own colour; colour only ever adds to a mark, a word or a letter that says the same.
package look

import (
	"pourbench/chem"
	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/tui/screen"
)

// Look is a style for each role.
type Look struct {
	Text    screen.Style // what is read
	Strong  screen.Style // what is read first
	Quiet   screen.Style // labels, units and hints
	Rule    screen.Style // borders and rules
	Focus   screen.Style // border and title of the panel that has the keys
	Accent  screen.Style // keys, marks and the brand
	Typing  screen.Style // a cell being typed in
	Wrong   screen.Style // a cell whose text is refused, and the reason
	Good    screen.Style // something done
	Note    screen.Style
	Caution screen.Style
	Stop    screen.Style
	Stale   screen.Style // a figure that is being worked out again
	Stages  [chem.Stages]screen.Style
}

// New returns the look for a dark or a light background.
func New(dark bool) Look {
	p := palette(dark)
	return p.look(p.honey, p.amber, p.clay, p.brick)
}

// Sixteen returns the look for a terminal of sixteen colours.
func Sixteen(dark bool) Look {
	p := sixteen(dark)
	if !dark {
		return p.look(0, p.honey, p.amber, p.brick)
	}
	return p.look(p.sage, p.honey, p.amber, p.brick)
}

// Own returns the look for a background that nothing is known of: the terminal's own colour for everything, told apart by signs,
// bold, underlined and reversed text alone.
func Own() Look { return colours{}.look(0, 0, 0, 0) }

// look gives the roles their colours, the stages from light to stiff each its own.
func (p colours) look(light, medium, thick, stiff screen.Colour) Look {
	fg := func(c screen.Colour) screen.Style { return screen.Style{Fg: c} }
	return Look{
		Strong:  screen.Style{Attr: screen.Bold},
		Quiet:   fg(p.quiet),
		Rule:    fg(p.rule),
		Focus:   fg(p.honey).With(screen.Bold),
		Accent:  fg(p.honey),
		Typing:  fg(p.honey).With(screen.Bold | screen.Underline),
		Wrong:   fg(p.brick).With(screen.Bold),
		Good:    fg(p.sage),
		Note:    fg(p.rain),
		Caution: fg(p.amber).With(screen.Bold),
		Stop:    fg(p.brick).With(screen.Bold | screen.Reverse),
		Stale:   fg(p.quiet).With(screen.Italic),
		Stages:  [chem.Stages]screen.Style{fg(p.quiet), fg(light), fg(medium), fg(thick), fg(stiff)},
	}
}

// Severity returns the style of a warning's severity.
func (l Look) Severity(s pour.Severity) screen.Style {
	switch s {
	case pour.Stop:
		return l.Stop
	case pour.Caution:
		return l.Caution
	default:
		return l.Note
	}
}

// Mark returns the sign that stands beside a warning, so that its severity never hangs on colour.
func Mark(s pour.Severity) string {
	switch s {
	case pour.Stop:
		return "■"
	case pour.Caution:
		return "!"
	default:
		return "·"
	}
}

// Letter returns the letter of a jug, as paper has it.
func Letter(jug int) string { return pour.Letter(jug) }

// StageGlyph returns the shading of a stage on a clock bar; before the first stage a bar shows a dot.
func StageGlyph(s chem.Stage) string {
	return [chem.Stages]string{"·", "░", "▒", "▓", "█"}[s]
}

// ColourWord names a colour, for who cannot see it.
func ColourWord(c screen.Colour) string {
	r, g, b := c.Channels()
	return colour.FromBytes(r, g, b).Word()
}

// Readable returns black or white, whichever reads better on a background.
func Readable(bg screen.Colour) screen.Colour {
	if luminance(bg) > 0.18 { // where black and white text contrast equally, WCAG 2.2 definition of contrast
		return screen.RGB(0, 0, 0)
	}
	return screen.RGB(255, 255, 255)
}
