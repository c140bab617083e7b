// Package lines is plain mode: screens told in lines and answered in lines, for a maker who hears her screen, for a teletype, for a log.
//
// What is said is ASCII, without boxes, without escape sequences, and never said again at another place. It serves the workbench and the
// live run and knows neither: how lines come in ([Open]), how text goes out ([Paper]), what a line asks for ([Match]), how a grid is told
// ([Tell]) and how the commands of a model are carried out one after the other ([Finish]).
package lines

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"pourbench/tui/dialog"
	"pourbench/tui/screen"
)

// wide is how many signs a line holds: one less than the narrowest terminals, which break a full line themselves.
const wide = 78

// Paper is where lines go. Once one cannot be written no other is tried, and [Paper.Err] says why.
type Paper struct {
	out io.Writer
	err error
}

// NewPaper returns the paper that writes to out.
func NewPaper(out io.Writer) *Paper { return &Paper{out: out} }

// Err is why nothing more can be written, or nil.
func (p *Paper) Err() error { return p.err }

func (p *Paper) write(text string) {
	if p.err == nil {
		_, p.err = io.WriteString(p.out, text)
	}
}

// Say writes a text as one paragraph; one that is too wide goes on in lines that are set in. An empty text writes nothing.
func (p *Paper) Say(text string) {
	for i, l := range wrap(ASCII(text)) {
		if i > 0 {
			l = "  " + l
		}
		p.write(l + "\n")
	}
}

// wrap breaks a text into lines, but no word: the path of a file that is longer than a line stays whole.
func wrap(text string) []string {
	var out, words []string
	for _, w := range append(strings.Fields(text), "") {
		if len(w) <= wide-2 && w != "" {
			words = append(words, w)
			continue
		}
		out = append(out, screen.Wrap(strings.Join(words, " "), wide-2)...)
		if words = nil; w != "" {
			out = append(out, w)
		}
	}
	return out
}

// Sayf is [Paper.Say] with a format.
func (p *Paper) Sayf(format string, args ...any) { p.Say(fmt.Sprintf(format, args...)) }

// Gap leaves a line empty.
func (p *Paper) Gap() { p.write("\n") }

// Prompt writes what a line is waited for with, and stays on that line.
func (p *Paper) Prompt(text string) { p.write(ASCII(text) + "> ") }

// Status says what was said last at the bench or in the run, and whether that was a reason why not.
func (p *Paper) Status(text string) (refused bool) {
	why, refused := strings.CutPrefix(text, "× ")
	if refused {
		text = "No: " + why
	}
	p.Say(text)
	return refused
}

// lead is a line of a dialog with what stands in front of it: words with a colon, a number without, a mark not at all but for a refusal's
// and an equation's.
func lead(l dialog.Line) string {
	var before []string
	for w := range strings.FieldsSeq(l.Lead) {
		switch {
		case w == "×":
			before = append(before, "No")
		case w == "=" || strings.ContainsFunc(w, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }):
			before = append(before, w)
		}
	}
	text, front := strings.TrimSpace(l.Text), strings.Join(before, " ")
	if text != "" && letters(front) > 1 && !strings.HasSuffix(front, ":") {
		front += ":"
	}
	return strings.TrimSpace(front + " " + text)
}

// Tell writes a dialog: its title, its lines.
func (p *Paper) Tell(t dialog.Told) {
	p.Say(t.Title)
	blank := true // no two empty lines on end, and none at the start
	for _, l := range t.Lines {
		text := lead(l)
		if text == "" {
			if !blank {
				p.Gap()
			}
			blank = true
			continue
		}
		blank = false
		p.Say(text)
		p.Say(l.Under)
	}
}
