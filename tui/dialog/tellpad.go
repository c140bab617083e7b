package dialog

import (
	"strings"

	"pourbench/tui/entry"
)

// What is said on a pad besides its lines.
const (
	padMeant = "yes" // takes what may be meant in the place of the last line
	padDrop  = "-"   // takes the last line away
)

// Tell tells what to write while nothing is; what is made of every line is told as it comes.
func (p *Pad) Tell() Told {
	t := Told{Ask: "next line, or Enter to take them"}
	if strings.TrimSpace(p.text()) == "" {
		t.Title, t.Ask = p.Title, "first line"
		t.Lines = []Line{{Text: p.Hint}, {Text: "Each line is answered with what is made of it; " + padDrop + " takes the last one away, an empty line takes them all."}}
	}
	return t
}

// Hear takes one more line and tells what is made of it; an empty one takes the text.
func (p *Pad) Hear(text string) Result {
	last := len(p.lines) - 1
	for last > 0 && p.lines[last].Text() == "" {
		last--
	}
	switch meant, could := p.read.Instead[last]; {
	case text == "":
		p.at = len(p.lines) - 1
		if p.lines[p.at].Text() != "" {
			p.open()
		}
		r := p.enter()
		r.Refused = p.refused
		return r
	case text == padDrop:
		p.lines = append(p.lines[:last], entry.Entry{})
		p.at = last
		p.changed()
		return Result{Told: &Told{Lines: p.read.Sum}}
	case could && strings.EqualFold(text, padMeant):
		p.lines[last] = entry.New(meant)
		p.changed()
	default:
		p.at = len(p.lines) - 1
		if p.lines[p.at].Text() != "" {
			p.open()
		}
		last = p.at
		p.lines[last].Insert(text)
		p.changed()
	}
	return Result{Told: p.madeOf(last)}
}

// madeOf tells what is made of a line and of all of them.
func (p *Pad) madeOf(line int) *Told {
	t := &Told{}
	if line < len(p.read.Beside) {
		t.Lines = append(t.Lines, p.read.Beside[line])
	}
	if meant, ok := p.read.Instead[line]; ok {
		t.Lines = append(t.Lines, Line{Text: padMeant + " takes it as " + meant})
	}
	t.Lines = append(t.Lines, p.read.Sum...)
	return t
}
