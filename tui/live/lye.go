package live

import (
	"errors"
	"fmt"
	"slices"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
)

// superfat is what a batch's superfat is by what was weighed of it; false where nothing was that matters.
func (m *Model) superfat(n pour.BatchName) (underway.Superfat, bool) {
	i := slices.IndexFunc(m.superfats, func(f underway.Superfat) bool { return f.Batch == n })
	if i < 0 {
		return underway.Superfat{}, false
	}
	return m.superfats[i], true
}

// stopped says whether a batch is lye-heavy as weighed and nobody has said why.
func (m *Model) stopped(n pour.BatchName) (underway.Superfat, bool) {
	f, ok := m.superfat(n)
	return f, ok && f.Stops()
}

// anyStopped is the first batch that is.
func (m *Model) anyStopped() (underway.Superfat, bool) {
	for _, f := range m.superfats {
		if f.Stops() {
			return f, true
		}
	}
	return underway.Superfat{}, false
}

// lyeWords says that a batch has less superfat as weighed than planned, or is lye-heavy; "" where it is as planned or better.
func (m *Model) lyeWords(n pour.BatchName) string {
	f, ok := m.superfat(n)
	if !ok {
		return ""
	}
	return f.Words(m.sheet().Plan.Show)
}

// lyeNotices says of every batch that is leaner as weighed than planned what that means now. It stands until a weight or a word changes it.
func (m *Model) lyeNotices() []string {
	var out []string
	for _, f := range m.superfats {
		words := m.lyeWords(f.Batch)
		switch {
		case words == "":
		case f.Stops():
			out = append(out, fmt.Sprintf("■ %s: %s. %s; %s says why", m.stopTitle(f), words, m.missing(f), m.key(keys.Rescue)))
		case f.Why != "":
			out = append(out, "! "+words+": “"+f.Why+"”")
		default:
			out = append(out, "! "+words+m.fill(": {measure} corrects a weight"))
		}
	}
	return out
}

// stopTitle is what a stop says first.
func (m *Model) stopTitle(f underway.Superfat) string {
	if f.LyeIn {
		return "LYE-HEAVY"
	}
	return "DO NOT MIX"
}

// missing is what would put it right.
func (m *Model) missing(f underway.Superfat) string {
	if f.LyeIn {
		return "Goggles and gloves stay on, and its bars stay with you"
	}
	text := "Weigh its lye anew"
	if f.MoreOilsG > 0 {
		text += ", or about " + m.sheet().Plan.Show.Weight(f.MoreOilsG) + " more of its oils"
	}
	return text
}

// askLye asks what is to be done with a batch that is lye-heavy as weighed. Neither Space nor Enter answers it.
func (m *Model) askLye(f underway.Superfat) {
	n := f.Batch
	m.dialogs.Open(&dialog.Question{Title: m.stopTitle(f) + ": " + m.lyeWords(n), Text: m.missing(f) + ".", At: -1, Answers: []dialog.Answer{
		{Keys: "w", Text: "Type a weight again: it was a slip, or I have weighed anew.", Do: func() tea.Cmd {
			m.typeMeasureOf(n)
			return nil
		}},
		{Keys: "y", Text: "Go on with it as it is, and say why.", Do: func() tea.Cmd {
			m.sayWhy(n)
			return nil
		}},
		{Keys: "n", Text: "Stop here: nothing is mixed."},
	}})
}

// sayWhy keeps why a batch goes on although it is lye-heavy as weighed.
func (m *Model) sayWhy(n pour.BatchName) {
	m.dialogs.Open(&dialog.Prompt{Title: "Why the " + string(n) + " goes on lye-heavy", Done: func(typed string) (tea.Cmd, error) {
		if typed == "" {
			return nil, errors.New(m.opt.Keys.Fill(keys.Line, "there is nothing in it; {close} leaves it"))
		}
		return nil, m.told(m.run.Mark(logbook.Event{Kind: logbook.Noted, Batch: n, What: logbook.LyeHeavy, Text: typed}), "kept: "+typed)
	}})
}
