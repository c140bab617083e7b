package dialog

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
)

// toldItems is how many entries of a list are told at once, and toldFirst how many of a longer one that was not searched yet: what ends
// a row of choices stands first.
const (
	toldItems = 20
	toldFirst = 2
)

// Tell numbers the entries that match what was typed last; of a long list that was not searched yet it tells how long it is.
func (l *List) Tell() Told {
	found := l.matches()
	t := Told{Title: l.Title, Ask: "number, or words to search by"}
	if l.Free != "" {
		t.Ask = "number, words to search by, or: " + l.Free
	}
	switch n := len(found); {
	case n > toldItems && l.search.Text() == "" && !l.whole:
		t.Lines = append(toldOf(found[:toldFirst]), Line{Text: fmt.Sprintf("%d entries in all. Type a part of a name, or * for all of them.", n)})
		return t
	case n > toldItems && !l.whole:
		found = found[:toldItems]
		defer func() {
			t.Lines = append(t.Lines, Line{Text: fmt.Sprintf("and %d more; more words narrow the search", n-toldItems)})
		}()
	}
	t.Lines = toldOf(found)
	if len(found) > 0 {
		t.Lines = append(t.Lines, Line{Text: "? and a number tells more of an entry."})
	}
	return t
}

// toldOf numbers entries.
func toldOf(items []Item) []Line {
	var out []Line
	for i, it := range items {
		text := it.Name
		if it.Aside != "" {
			text += ", " + it.Aside
		}
		if it.Not != "" {
			text += " (not now: " + it.Not + ")"
		}
		out = append(out, Line{Lead: strconv.Itoa(i + 1), Text: text})
	}
	return out
}

// Hear takes the number of an entry, "?" and a number to tell all about one, or words to search by; when one entry alone has them in
// its name, it is taken.
func (l *List) Hear(text string) Result {
	found := l.matches()
	if i, ok := entryAt(text, len(found)); ok {
		return l.choose(found[i].ID)
	}
	if rest, ok := strings.CutPrefix(text, "?"); ok {
		if i, ok := entryAt(strings.TrimSpace(rest), len(found)); ok {
			return Result{Told: &Told{Title: found[i].Name, Lines: paragraphs(found[i].Detail)}}
		}
		return Result{Refused: fmt.Sprintf("? tells more of an entry by its number, 1 to %d", len(found))}
	}
	l.whole = text == "*"
	l.search, l.At = entry.Entry{}, 0
	if l.whole || text == "" {
		return Result{}
	}
	l.search.Insert(text)
	found = l.matches()
	if i := slices.IndexFunc(found, func(it Item) bool { return strings.EqualFold(it.Name, text) || it.ID == text }); i >= 0 {
		return l.choose(found[i].ID)
	}
	switch named := inName(found, text); {
	case len(named) == 1:
		return l.choose(named[0].ID)
	case len(found) == 0 && l.Free != "":
		return l.choose(text)
	case len(found) == 0:
		l.search = entry.Entry{}
		return Result{Refused: "nothing matches " + text + "; * tells the whole list"}
	}
	return Result{}
}

// inName is the entries that have every word of a text in their name.
func inName(items []Item, text string) []Item {
	return slices.DeleteFunc(slices.Clone(items), func(it Item) bool {
		for w := range strings.FieldsSeq(strings.ToLower(text)) {
			if !strings.Contains(strings.ToLower(it.Name), w) {
				return true
			}
		}
		return false
	})
}

func paragraphs(texts []string) []Line {
	var out []Line
	for _, t := range texts {
		if t != "" {
			out = append(out, Line{Text: t})
		}
	}
	return out
}

func (l *List) choose(id string) Result {
	return Result{Close: true, Do: func() tea.Cmd { return l.Choose(id) }}
}

// Tell tells what is asked for: first, where there are several, which of the things the line is about.
func (p *Prompt) Tell() Told {
	t := Told{Title: p.Title, Lines: paragraphs([]string{p.Text}), Ask: "type it"}
	switch start := p.Typed.Text(); {
	case len(p.Things) > 0 && !p.chosen:
		for _, i := range p.matches(p.narrowed) {
			t.Lines = append(t.Lines, Line{Lead: strconv.Itoa(i + 1), Text: p.Things[i].text()})
		}
		t.Ask = "which, by its number or a part of its name"
	case len(p.Things) > 0:
		t.Lines, t.Ask = nil, p.Things[p.At].text()
	case start != "":
		t.Ask = "type it, or Enter for " + start
	}
	return t
}

// Hear takes the line. Nothing typed keeps what stands there; where the line can be about several things, the number of one comes first, or words of
// its name, with or without the line behind it. Words that several have leave those to be told.
func (p *Prompt) Hear(text string) Result {
	if len(p.Things) > 0 && !p.chosen {
		rest, r := p.hearThing(text)
		if !p.chosen || rest == "" {
			return r
		}
		text = rest
	}
	switch text {
	case "":
		text = p.Typed.Text()
	case Nothing:
		text = ""
	}
	cmd, err := p.Done(strings.TrimSpace(text))
	if err != nil {
		return Result{Refused: err.Error()}
	}
	return Result{Close: true, Do: func() tea.Cmd { return cmd }}
}

// hearThing takes which thing a line is about, and returns what stands behind that.
func (p *Prompt) hearThing(text string) (rest string, r Result) {
	first, behind, _ := strings.Cut(text, " ")
	if i, ok := entryAt(first, len(p.Things)); ok {
		p.At, p.chosen = i, true
		return strings.TrimSpace(behind), Result{}
	}
	words, value := p.parts(text)
	found := p.matches(words)
	for _, i := range found { // one that is called so altogether
		if strings.EqualFold(p.Things[i].Name, words) {
			found = []int{i}
		}
	}
	switch {
	case words == "":
		return "", Result{Refused: fmt.Sprintf("give a number from 1 to %d, or a part of a name", len(p.Things))}
	case len(found) == 0:
		return "", Result{Refused: fmt.Sprintf("nothing here is called %s; give a number from 1 to %d", words, len(p.Things))}
	case len(found) > 1:
		p.narrowed = words
		return "", Result{Refused: fmt.Sprintf("%d are called %s: give the number of one", len(found), words)}
	}
	p.At, p.chosen = found[0], true
	return value, Result{}
}
