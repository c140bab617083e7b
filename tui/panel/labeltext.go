package panel

import (
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// labelTextLines is about how many lines a printed list takes.
const labelTextLines = 6

// labelText is the list as it is printed, and as it would be with a scent that is tried.
func labelText() Panel {
	return Panel{
		ID: "printed list", Title: "The list as it is printed",
		want: func(f *Facts) int { return labelTextLines * (1 + len(f.triedText())) },
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

// tellLabelText is the printed list in paragraphs, each behind what it is.
func (f *Facts) tellLabelText() []string {
	l := f.labelled()
	if why := f.noFigures(l); why != "" {
		if f.Plan.Label.Market == "" {
			why = "no label is asked for: choose a market in the form of the label"
		}
		return []string{why}
	}
	out := []string{l.Text}
	for _, text := range f.triedText() {
		out = append(out, "with "+f.scentName(f.Trial.Swap.ID)+":", text)
	}
	return append(out, askLocally)
}

func (f *Facts) drawLabelText(a screen.Area, _ grid.Cursor, _ bool) {
	paragraphs := f.tellLabelText()
	y := 0
	for i, par := range paragraphs {
		st := screen.Style{}
		switch {
		case len(paragraphs) == 1 || i == 1 && len(paragraphs) > 2 || i == len(paragraphs)-1:
			st = f.Look.Quiet
		case !f.Fresh:
			st = f.Look.Stale
		}
		for _, line := range screen.Wrap(par, a.W()-2) {
			a.Text(1, y, line, st)
			y++
		}
	}
}
