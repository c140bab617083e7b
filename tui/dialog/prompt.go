package dialog

import (
	"fmt"
	"image"
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
	Text   string  // stands over the line; below the list of things, where there is one
	Things []Thing // what the line can be about; letters search them, Tab goes round them, and keeps what was typed where it was typed
	At     int     // the thing it is about
	Typed  entry.Entry
	Done   func(typed string) (tea.Cmd, error) // takes the line without blanks at its ends; an error keeps the prompt open
	Leave  func() tea.Cmd                      // what leaving it goes back to; nil: nothing

	still
	refused  string
	chosen   bool   // in plain lines, the thing is known
	narrowed string // in plain lines, words that several things have
	touched  bool   // something was typed into it
	picked   string // the words for which she went to a thing by a key
}

// Keys lists the keys of the footer.
func (p *Prompt) Keys(f Frame) []keys.Binding {
	return slices.DeleteFunc(goingBack(f.Keys.Footer(keys.Line, 0), p.Leave != nil), func(b keys.Binding) bool { return b.ID == keys.NextThing && len(p.Things) == 0 })
}

// Paste puts text into the line.
func (p *Prompt) Paste(text string) {
	p.Typed.Insert(strings.TrimSpace(text))
	p.refused, p.touched = "", true
	p.seek()
}

// Press types, keeps or leaves the line.
func (p *Prompt) Press(k tea.KeyPressMsg, f Frame) Result {
	if b, ok := f.Keys.Lookup(keys.Line, 0, k.String()); ok {
		return p.Act(b.ID, f)
	}
	if typed(&p.Typed, k) {
		p.touched = true
		p.seek()
	}
	p.refused = ""
	return Result{}
}

// Act does what a key of the line comes to.
func (p *Prompt) Act(id keys.ID, f Frame) Result {
	switch id {
	case keys.Close:
		return Result{Close: true, Do: p.Leave}
	case keys.Commit:
		words, value := p.parts(p.Typed.Text())
		switch {
		case words != "" && len(p.matches(words)) == 0:
			p.refused = nothingMatches(words)
			return Result{}
		case value != "" && p.either(words) != "":
			p.refused = f.Keys.Fill(keys.Line, p.either(words)+"? {next thing} goes to the one that is meant, {commit} keeps it there")
			return Result{}
		case words != "" && value == "": // it is chosen; what is typed of it comes next
			p.Typed, p.refused = entry.Entry{}, ""
			return Result{}
		}
		cmd, err := p.Done(value)
		if err != nil {
			p.refused = err.Error()
			return Result{}
		}
		return Result{Close: true, Do: func() tea.Cmd { return cmd }}
	case keys.NextThing:
		return p.next(1)
	case keys.PrevThing:
		return p.next(-1)
	}
	p.refused = ""
	return Result{}
}

// next goes on to another thing. What was typed is kept for the one it was typed at, as in a cell of the workbench: it never comes along, where
// it would be taken for another thing's. What is refused stays.
func (p *Prompt) next(by int) Result {
	var do func() tea.Cmd
	words, value := p.parts(p.Typed.Text())
	if words != "" && len(p.matches(words)) == 0 {
		p.refused = nothingMatches(words)
		return Result{}
	}
	if value != "" && p.either(words) != "" { // what was typed waits for the one that is meant
		p.refused = ""
		p.turn(by)
		p.picked = words
		return Result{}
	}
	if value != "" && len(p.Things) > 1 && (words == "" || p.picked != words) {
		cmd, err := p.Done(value)
		if err != nil {
			p.refused = err.Error()
			return Result{}
		}
		p.Typed, p.touched, do = entry.Entry{}, false, func() tea.Cmd { return cmd }
	}
	p.refused = ""
	p.turn(by)
	return Result{Do: do}
}

// keptTyped is said where a click beside what is typed would throw it away.
const keptTyped = "what was typed stays until it is kept or left: {close} leaves it"

// Away leaves the line as long as nothing was typed into it.
func (p *Prompt) Away(f Frame) Result {
	if p.touched {
		return Result{Refused: f.Keys.Fill(keys.Line, keptTyped)}
	}
	return Result{Close: true}
}

// lines are what stands in the box: the text over the line, or the thing it is about; and why what was typed was refused.
func (p *Prompt) lines(f Frame) (text, refused []string) {
	text = screen.Wrap(p.Text, f.room())
	if len(p.Things) > 0 {
		text = []string{screen.Clip(p.Things[p.At].text(), f.room())}
	}
	if p.refused != "" {
		refused = screen.Wrap("× "+p.refused, f.room())
	}
	return text, refused
}

// Box is where the line stands.
func (p *Prompt) Box(f Frame) image.Rectangle {
	text, refused := p.lines(f)
	return f.box(f.room()+4, len(text)+1+len(refused)+p.listed(f, len(refused))+2)
}

// Draw draws the line, what it is about, why it was refused, and what else it can be about.
func (p *Prompt) Draw(a screen.Area, f Frame, l look.Look) {
	st := l.Quiet
	if len(p.Things) > 0 {
		st = l.Strong
	}
	text, refused := p.lines(f)
	title := p.Title
	if n := len(p.Things); n > 0 {
		title = fmt.Sprintf("%s, %d of %d", title, p.At+1, n)
	}
	in := boxed(a, p.Box(f), title, l)
	for y, line := range text {
		in.Text(0, y, line, st)
	}
	p.Typed.Draw(in, 0, len(text), in.W(), l.Typing)
	y := len(text) + 1
	for i, line := range refused {
		in.Text(0, y+i, line, l.Wrong)
	}
	y += len(refused)
	p.drawThings(in.Cut(0, y, in.W(), max(in.H()-y, 0)), l)
}
