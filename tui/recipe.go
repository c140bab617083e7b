package tui

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/recipe"
	"pourbench/tui/dialog"
	"pourbench/tui/layout"
	"pourbench/tui/panel"
	"pourbench/tui/screen"
)

// recipeHint says what to write on the page of a recipe.
const recipeHint = "Paste or type a line for each oil: its name and its amount in %, g, kg, oz or lb, as in \"olive oil 35 %\" or \"350 g olive oil\". Water, lye and superfat need not be there: they are worked out."

// writeRecipe opens the page of a recipe on a text, for the batch of the station.
func (m *model) writeRecipe(text string) {
	n := pour.Base
	if m.station == panel.Icing && m.session.Plan().Icing != nil {
		n = pour.Icing
	}
	m.dialogs.Open(dialog.NewPad(dialog.Pad{
		Title: "A recipe for the " + string(n), Hint: recipeHint,
		Read: func(text string) dialog.Reading { return m.readRecipe(n, text) },
		Take: func(text string) (tea.Cmd, error) { return nil, m.askRecipe(n, text) },
	}, text))
}

// askRecipe takes a recipe that was understood whole, and asks once about one of which lines were not: they would be lost.
func (m *model) askRecipe(n pour.BatchName, text string) error {
	r := recipe.Read(text, m.session.Shelf())
	odd := unread(&r)
	if len(odd) == 0 || len(r.Parts()) == 0 {
		return m.takeRecipe(n, text)
	}
	m.ask("Take it without "+counted(len(odd), "line")+"?", "Not understood: "+strings.Join(odd, "; ")+".",
		dialog.Answer{Text: "back to the recipe, to mend them", Keys: "b", Do: func() tea.Cmd { m.writeRecipe(text); return nil }},
		dialog.Answer{Text: "take it without them", Keys: "t", Do: func() tea.Cmd {
			if err := m.takeRecipe(n, text); err != nil {
				m.refuse(err.Error())
			}
			return nil
		}})
	return nil
}

// unread are the lines of a recipe that were not understood, as they are written, each cut to a few words.
func unread(r *recipe.Recipe) []string {
	const letters = 40
	var out []string
	for _, l := range r.Lines {
		if l.Kind == recipe.Odd {
			out = append(out, "“"+screen.Clip(l.Text, letters)+"”")
		}
	}
	return out
}

// withUnread says beside a blend that is made whole which lines of its recipe were left out of it.
func (m *model) withUnread(do panel.Do) string {
	if left := m.leftOut; do.Name == panel.SpreadName && len(left) > 0 {
		return "without " + strings.Join(left, "; ") + ", not understood: " + do.Said
	}
	return do.Said
}

// pasteRecipe opens the page of a recipe on pasted text that has several lines and an oil on one of them, and says whether it has.
func (m *model) pasteRecipe(text string) bool {
	if !strings.ContainsAny(strings.TrimSpace(text), "\n\r") {
		return false
	}
	r := recipe.Read(text, m.session.Shelf())
	if r.Count(recipe.Taken) == 0 {
		return false
	}
	m.writeRecipe(text)
	return true
}

// readRecipe says what is understood of a recipe, line by line and altogether.
func (m *model) readRecipe(n pour.BatchName, text string) dialog.Reading {
	r := recipe.Read(text, m.session.Shelf())
	out := dialog.Reading{Instead: map[int]string{}}
	for i, l := range r.Lines {
		out.Beside = append(out.Beside, m.understood(l))
		if l.Kind == recipe.Odd && len(l.Near) > 0 {
			out.Instead[i] = l.Renamed(l.Near[0])
		}
	}
	if strings.TrimSpace(text) == "" {
		return out
	}
	out.Sum = m.recipeSum(n, &r)
	return out
}

// understood is what stands beside a line of a recipe.
func (m *model) understood(l recipe.Line) dialog.Line {
	switch show := m.session.Plan().Show; l.Kind {
	case recipe.Taken:
		text := l.Name + " " + show.Plain(l.Percent, pour.UnitPercent) + " %"
		if l.G > 0 {
			text = l.Name + " " + show.Weight(l.G) + " = " + show.Percent(l.Percent, 2)
		}
		if l.Why != "" {
			return dialog.Line{Lead: "→", Style: m.look.Caution, Text: text + "; " + l.Why}
		}
		return dialog.Line{Lead: "→", Style: m.look.Good, Text: text}
	case recipe.Odd:
		return dialog.Line{Lead: "×", Style: m.look.Wrong, Text: cmp.Or(l.Meant(), l.Why)}
	default:
		return dialog.Line{Lead: map[bool]string{true: "·"}[l.Why != ""], Style: m.look.Quiet, Text: l.Why, Quiet: true}
	}
}

// recipeSum says what a recipe comes to and what taking it does.
func (m *model) recipeSum(n pour.BatchName, r *recipe.Recipe) []dialog.Line {
	parts := r.Parts()
	p := m.session.Plan()
	text, st := fmt.Sprintf("%s take the place of the blend, each held as written: 100 %%", counted(len(parts), "oil")), m.look.Good
	if so := r.Unfinished(); so != "" {
		text, st = fmt.Sprintf("%s: %s", counted(len(parts), "oil"), so), m.look.Caution
	}
	if r.OilsG > 0 {
		text += "; " + p.Show.Weight(r.OilsG) + " in all"
		if p.Batch(n).Size != pour.SizeOils {
			text += ", taken as parts: the batch keeps its size"
		}
	}
	out := []dialog.Line{{Text: text, Style: st}}
	if odd := r.Count(recipe.Odd); odd > 0 {
		text := "× " + counted(odd, "line") + " not understood and not taken"
		if slices.ContainsFunc(r.Lines, func(l recipe.Line) bool { return len(l.Near) > 0 }) {
			text += m.fill(": mend, or {pad take what may be meant} takes what may be meant")
		}
		if r.Open > 0 {
			text += "; without its weight the others come out larger than written"
		}
		out = append(out, dialog.Line{Text: text, Style: m.look.Caution})
	}
	if r.Cut > 0 {
		out = append(out, dialog.Line{Text: fmt.Sprintf("× %s beyond what a recipe holds are left out", counted(r.Cut, "line")), Style: m.look.Caution})
	}
	return out
}

// counted is a number of things, "1 line" or "3 lines".
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// takeRecipe puts a recipe in the place of a batch's blend, as one edit, and goes to its oils.
func (m *model) takeRecipe(n pour.BatchName, text string) error {
	r := recipe.Read(text, m.session.Shelf())
	if err := m.session.Apply("recipe", r.Edit(n)); err != nil {
		return errors.New(reason(err))
	}
	said := counted(len(r.Parts()), "oil") + " taken, each held as written; {undo} takes them back"
	if so := r.Unfinished(); so != "" {
		said = so + "; {spread} makes it 100 %, {undo} takes it all back"
	}
	if m.leftOut = unread(&r); len(m.leftOut) > 0 {
		m.status.Warn(m.fill("left out: " + strings.Join(m.leftOut, "; ") + ". " + said))
	} else {
		m.say(said)
	}
	m.station = panel.Batch
	id := layout.ID("oils")
	if n == pour.Icing {
		m.station, id = panel.Icing, "oils of the icing"
	}
	for _, p := range m.here().Panels(m.session.Plan().Icing != nil) {
		if p.ID == id {
			m.focus[m.station] = p
		}
	}
	return nil
}
