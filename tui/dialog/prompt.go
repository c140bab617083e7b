package dialog

import (
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Prompt is one line to type. A refusal stands under it with its reason until something else is typed.
type Prompt struct {
	Title  string
	Text   string   // stands over the line
	Things []string // what the line can be about; Tab goes round them
	At     int      // the thing it is about
	Typed  entry.Entry
	Done   func(typed string) (tea.Cmd, error) // takes the line without blanks at its ends; an error keeps the prompt open

	still
	refused string
	chosen  bool // in plain lines, the thing is known
}

// Keys lists the keys of the footer.
func (p *Prompt) Keys() []keys.Binding {
	return slices.DeleteFunc(keys.Footer(keys.Line, 0), func(b keys.Binding) bool { return b.ID == keys.NextThing && len(p.Things) == 0 })
}

// Paste puts text into the line.
func (p *Prompt) Paste(text string) { p.Typed.Insert(strings.TrimSpace(text)); p.refused = "" }

// Press types, keeps or leaves the line.
func (p *Prompt) Press(k tea.KeyPressMsg, _ Frame) Result {
	switch b, _ := keys.Lookup(keys.Line, 0, k.String()); b.ID {
	case keys.Close:
		return Result{Close: true}
	case keys.Commit:
		cmd, err := p.Done(strings.TrimSpace(p.Typed.Text()))
		if err != nil {
			p.refused = err.Error()
			return Result{}
		}
		return Result{Close: true, Do: func() tea.Cmd { return cmd }}
	case keys.NextThing:
		p.turn(1)
	case keys.PrevThing:
		p.turn(-1)
	default:
		typed(&p.Typed, k)
	}
	p.refused = ""
	return Result{}
}

func (p *Prompt) turn(by int) {
	if n := len(p.Things); n > 0 {
		p.At = (p.At + by + n) % n
	}
}

// Draw draws the line, what it is about, and why it was refused.
func (p *Prompt) Draw(a screen.Area, f Frame, l look.Look) {
	text, st := screen.Wrap(p.Text, f.room()), l.Quiet
	if len(p.Things) > 0 {
		text, st = []string{screen.Clip(p.Things[p.At], f.room())}, l.Strong
	}
	var refused []string
	if p.refused != "" {
		refused = screen.Wrap("× "+p.refused, f.room())
	}
	in := boxed(a, f.box(f.room()+4, len(text)+1+len(refused)+2), p.Title, l)
	for y, line := range text {
		in.Text(0, y, line, st)
	}
	p.Typed.Draw(in, 0, len(text), in.W(), l.Typing)
	for y, line := range refused {
		in.Text(0, len(text)+1+y, line, l.Wrong)
	}
}
