package dialog

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
)

// Told is a dialog in plain lines, for a maker who hears or prints her screen.
type Told struct {
	Title string
	Lines []Line
	Ask   string // what is asked for; empty: nothing, it is read and done with
}

// LeaveIt is what is typed in place of an answer to leave a dialog, and Nothing what stands for no text at all.
const (
	LeaveIt = "cancel"
	Nothing = `""`
)

// Hear gives a typed line to the topmost dialog, and returns what is to be told of it besides, or nil. Where nothing came of it, refuse
// is told why.
func (s *Stack) Hear(text string, refuse func(why string)) (tea.Cmd, *Told) {
	top := len(s.open) - 1
	var r Result
	if strings.EqualFold(text, LeaveIt) {
		r = s.open[top].Act(keys.Close, s.Frame)
	} else {
		r = s.open[top].Hear(text)
	}
	return s.take(top, r, refuse), r.Told
}

// Tell tells the whole page. Where its lines can be done, they are numbered; else there is nothing to answer.
func (p *Page) Tell() Told {
	t := Told{Title: p.Title, Lines: slices.Clone(p.Lines)}
	n := 0
	for i, l := range t.Lines {
		if p.Picks && l.Do != nil {
			n++
			t.Lines[i].Lead = strings.TrimSpace(strconv.Itoa(n) + " " + strings.TrimSpace(l.Lead))
		}
	}
	if n > 0 {
		t.Ask = "number of what to do, or Enter to go on"
	}
	return t
}

// Hear does the line of a number, or closes the page.
func (p *Page) Hear(text string) Result {
	can := slices.DeleteFunc(slices.Clone(p.Lines), func(l Line) bool { return !p.Picks || l.Do == nil })
	i, ok := entryAt(text, len(can))
	switch {
	case text == "" || len(can) == 0:
		return Result{Close: true}
	case !ok:
		return Result{Refused: fmt.Sprintf("give a number from 1 to %d, or Enter to go on", len(can))}
	}
	return Result{Close: true, Do: can[i].Do}
}

// Holding is a page with what holds a text: of a page in paragraphs, set apart by empty lines, whole paragraphs.
func (p *Page) Holding(text string) *Page {
	out := &Page{Title: p.Title, LeadW: p.LeadW, Picks: p.Picks}
	apart := slices.ContainsFunc(p.Lines, empty)
	for from := 0; from < len(p.Lines); {
		to := from + 1
		for apart && to < len(p.Lines) && !empty(p.Lines[to-1]) {
			to++
		}
		holds := func(l Line) bool {
			return strings.Contains(strings.ToLower(l.Lead+" "+l.Text+" "+l.Under), strings.ToLower(text))
		}
		if slices.ContainsFunc(p.Lines[from:to], holds) {
			out.Lines = append(out.Lines, p.Lines[from:to]...)
		}
		from = to
	}
	if len(out.Lines) == 0 {
		out.Lines = []Line{{Text: "nothing in it holds " + text}}
	}
	return out
}

func empty(l Line) bool { return l.Lead == "" && l.Text == "" }

// Tell tells the question and numbers its answers.
func (q *Question) Tell() Told {
	t := Told{Title: q.Title, Ask: "answer by number"}
	if q.Text != "" {
		t.Lines = append(t.Lines, Line{Text: q.Text})
	}
	for i, a := range q.Answers {
		t.Lines = append(t.Lines, Line{Lead: strconv.Itoa(i + 1), Text: a.Text})
	}
	return t
}

// Hear takes the number of an answer, its letter, or its beginning.
func (q *Question) Hear(text string) Result {
	if i, ok := entryAt(text, len(q.Answers)); ok {
		return q.give(i)
	}
	low, found := strings.ToLower(text), -1
	for i, a := range q.Answers {
		switch {
		case low == "":
		case len(low) == 1 && strings.Contains(a.Keys, low):
			return q.give(i)
		case strings.HasPrefix(strings.ToLower(a.Text), low):
			if found >= 0 {
				return Result{Refused: text + " could be answer " + strconv.Itoa(found+1) + " or " + strconv.Itoa(i+1) + ": give its number"}
			}
			found = i
		}
	}
	if found >= 0 {
		return q.give(found)
	}
	return Result{Refused: fmt.Sprintf("answer with a number from 1 to %d", len(q.Answers))}
}

// entryAt reads the number of one of n entries, counted from 1, as its place.
func entryAt(text string, n int) (int, bool) {
	i, err := strconv.Atoi(text)
	return i - 1, err == nil && i >= 1 && i <= n
}
