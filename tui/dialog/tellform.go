package dialog

import (
	"strconv"
	"strings"
)

// Tell tells every line with its number and what stands in it; what is asked for is the line with the cursor.
func (d *Form) Tell() Told {
	t := Told{Title: d.Title, Lines: paragraphs([]string{d.Text})}
	for i := range d.Fields {
		t.Lines = append(t.Lines, d.told(i))
	}
	f := d.Fields[d.at]
	if f.Hint != "" {
		t.Lines = append(t.Lines, Line{Text: f.Label + ": " + f.Hint})
	}
	if len(f.Words) > 0 {
		t.Lines = append(t.Lines, Line{Text: "usual: " + strings.Join(f.Words, ", ")})
	}
	t.Ask = f.Label + " (or NUMBER: TEXT for another line, Enter keeps the form)"
	if d.refused != "" {
		t.Lines = append(t.Lines, Line{Lead: "×", Text: d.refused})
	}
	return t
}

func (d *Form) told(i int) Line {
	text := d.text(i)
	switch {
	case text == "" && d.Fields[i].Need:
		text = "nothing yet, it is needed"
	case text == "":
		text = "nothing"
	}
	return Line{Lead: strconv.Itoa(i + 1), Text: d.Fields[i].Label + ": " + text}
}

// Hear takes the text of the line that is asked for and goes on to the next empty one; "2: text" is another line's, by its number or its
// label, nothing at all keeps the form, and [Nothing] empties the line.
func (d *Form) Hear(text string) Result {
	if text == "" {
		r := d.keep(Frame{})
		r.Refused, d.refused = d.refused, ""
		return r
	}
	at := d.at
	if before, rest, ok := strings.Cut(text, ":"); ok {
		if i, found := d.named(strings.TrimSpace(before)); found {
			at, text = i, strings.TrimSpace(rest)
		}
	}
	if text == Nothing {
		text = ""
	}
	d.set(at, text)
	d.goTo(d.emptyAfter(at))
	return Result{Told: &Told{Lines: []Line{d.told(at)}}}
}

// emptyAfter is the next line in which nothing stands, going round; the same where all are filled.
func (d *Form) emptyAfter(at int) int {
	for n := 1; n < len(d.Fields); n++ {
		if i := (at + n) % len(d.Fields); d.text(i) == "" {
			return i
		}
	}
	return at
}

// named finds a line by its number or its label.
func (d *Form) named(text string) (int, bool) {
	if i, ok := entryAt(text, len(d.Fields)); ok {
		return i, true
	}
	for i, f := range d.Fields {
		if strings.EqualFold(f.Label, text) || strings.EqualFold(f.Key, text) {
			return i, true
		}
	}
	return 0, false
}
