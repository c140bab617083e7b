package panel

import (
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// labelTextLines is about how many lines a printed list takes.
const labelTextLines = 6

// sameSoapLines is about how many lines it takes to say which embeds are counted as the base's own soap.
const sameSoapLines = 3

// labelText is the list as it is printed, and as it would be with a scent that is tried.
func labelText() Panel {
	return Panel{
		ID: "printed list", Title: "The list as it is printed",
		want: func(f *Facts) int {
			n := labelTextLines * (1 + len(f.triedText()))
			if len(f.labelled().AsBase) > 0 {
				n += sameSoapLines
			}
			return n
		},
		Draw: (*Facts).drawLabelText, tell: (*Facts).tellLabelText,
	}
}

// triedText is the printed list with a scent that is tried; none where nothing is.
func (f *Facts) triedText() []string {
	if f.Trial == nil || f.Trial.Sheet == nil || f.Trial.Sheet.Label.Text == "" {
		return nil
	}
	return []string{f.Trial.Sheet.Label.Text}
}

// paragraph is one of a panel that draws words: quiet where it is about what is printed and not printed itself.
type paragraph struct {
	text  string
	quiet bool
}

// labelParagraphs is the printed list, each behind what it is, and what the list counts unasked.
func (f *Facts) labelParagraphs() []paragraph {
	l := f.labelled()
	if why := f.noFigures(l); why != "" {
		if f.Plan.Label.Market == "" {
			why = "no label is asked for: choose a market in the form of the label"
		}
		return []paragraph{{why, true}}
	}
	out := []paragraph{{text: l.Text}}
	if text := l.SameSoapWhy(); text != "" {
		out = append(out, paragraph{text, true})
	}
	for _, text := range f.triedText() {
		out = append(out, paragraph{"with " + f.scentName(f.Trial.Swap.ID) + ":", true}, paragraph{text: text})
	}
	return append(out, paragraph{askLocally, true})
}

// tellLabelText is the paragraphs in lines.
func (f *Facts) tellLabelText() []string {
	var out []string
	for _, par := range f.labelParagraphs() {
		out = append(out, par.text)
	}
	return out
}

func (f *Facts) drawLabelText(a screen.Area, _ grid.Cursor, _ bool) {
	y := 0
	for _, par := range f.labelParagraphs() {
		st := screen.Style{}
		switch {
		case par.quiet:
			st = f.Look.Quiet
		case !f.Fresh:
			st = f.Look.Stale
		}
		for _, line := range screen.Wrap(par.text, a.W()-2) {
			a.Text(1, y, line, st)
			y++
		}
	}
}
