package tui

import (
	"fmt"
	"image/color"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/keys"
	"pourbench/tui/lines"
	"pourbench/tui/look"
	"pourbench/tui/panel"
	"pourbench/tui/screen"
)

// rows is the grid of the panel in focus as it is told.
func (t *talk) rows() []lines.Row { return lines.Rows(t.m.grids[t.m.at().ID]) }

// tellPanel tells the panel in focus.
func (t *talk) tellPanel(whole bool) {
	p := t.m.at()
	t.out.Gap()
	t.out.Say(t.place() + t.others())
	told, rows := p.Told(t.m.facts), t.rows()
	switch {
	case p.Easel:
		t.tellFace()
	case told != nil:
		for i, l := range told {
			l = t.m.fill(l)
			if len(rows) == len(told) {
				l = fmt.Sprintf("%d %s", i+1, l)
			}
			t.out.Say(l)
		}
	case len(rows) == 0:
		t.out.Say(t.m.grids[p.ID].Empty)
	}
	if told != nil {
		return
	}
	cut := false
	for _, r := range rows {
		if r.N == 0 {
			t.out.Say(r.Name + ":")
			continue
		}
		if b := r.Brief(); !whole {
			r, cut = b, cut || len(b.Parts) < len(r.Parts)
		}
		t.out.Sayf("%d %s", r.N, r.Line())
	}
	if cut {
		t.out.Say("There is more: " + sayList + " tells every figure of every row, a number all of its row.")
	}
}

// others names the other panels of the station.
func (t *talk) others() string {
	var out []string
	for _, p := range t.m.panels {
		if p != t.m.at() {
			out = append(out, string(p.ID))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return " (also here: " + strings.Join(out, ", ") + ")"
}

// goes goes to the station or panel that a line names, and says whether it names one. Panels of the station come before those of others.
func (t *talk) goes(name string) bool {
	name = strings.ToLower(name)
	icing := t.m.facts.Plan.Icing != nil
	for s := range t.m.stations {
		if strings.EqualFold(t.m.stations[s].Name, name) {
			t.m.station = panel.Place(s)
			t.m.focus[s] = t.m.stations[s].Panels(icing)[0]
			t.arrive()
			return true
		}
	}
	at := int(t.m.station)
	for i := range t.m.stations {
		s := (at + i) % len(t.m.stations)
		for _, p := range t.m.stations[s].Panels(icing) {
			if id := strings.ToLower(string(p.ID)); id == name || i == 0 && strings.HasPrefix(id, name+" ") {
				t.m.station, t.m.focus[s] = panel.Place(s), p
				t.arrive()
				return true
			}
		}
	}
	return false
}

// arrive lets what the station shows be worked out.
func (t *talk) arrive() {
	t.update(func() tea.Cmd { return nil })
	t.told.panel = "" // tell it even where it is the same
}

// tellPlaces lists every station with its panels.
func (t *talk) tellPlaces() {
	for s := range t.m.stations {
		var names []string
		for _, p := range t.m.stations[s].Panels(t.m.facts.Plan.Icing != nil) {
			names = append(names, string(p.ID))
		}
		t.out.Sayf("%s: %s", t.m.stations[s].Name, strings.Join(names, ", "))
	}
}

// tellFace tells the swirl in words: what is looked at, who is in it, and what is done, in order.
func (t *talk) tellFace() {
	m := t.m
	t.out.Say(m.caption())
	if m.studio.problem != "" {
		t.out.Say(m.studio.problem)
		return
	}
	for i, x := range m.legend() {
		t.out.Say(x.ink.Letter + " " + x.name + ", " + x.aside + ", " + t.inkWord(i))
	}
	if k := m.studio.kept; k != nil {
		t.out.Say("kept: " + strings.Join(k.price[:], ", "))
		now := m.price()
		t.out.Say("now: " + strings.Join(now[:], ", "))
	}
	t.out.Say("pairs tells who touches whom, measures what this bar shows, orders what else could be poured first, " + string(keys.Replay) + " every step.")
}

// inkWord is the colour of a jug of the legend in words, as the picture has it.
func (t *talk) inkWord(i int) string {
	d, order := t.m.studio.design, t.m.inPourOrder()
	colours := d.Palette
	if t.m.studio.weeks {
		colours = d.Weeks
	}
	if i < len(order) {
		return colourWords(colours[order[i]])
	}
	return colourWords(d.Top[i-len(order)])
}

func colourWords(c color.NRGBA) string {
	return fmt.Sprintf("%s (#%02x%02x%02x)", look.ColourWord(screen.From(c)), c.R, c.G, c.B)
}
