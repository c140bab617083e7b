package tui

import (
	"fmt"
	"image"
	"slices"

	"pourbench/pour"
	"pourbench/tui/picture"
	"pourbench/tui/screen"
)

// kept is a picture that is kept beside the present one, with what its order costs.
type kept struct {
	design pour.Drawing
	price  [2]string
}

// price says what the planned order costs in mud and in time, in two lines.
func (m *model) price() [2]string {
	return m.priceOf(m.facts.Colours.Mingling.Orders, m.facts.ColoursFresh)
}

// priceOf is what the first of some orders costs; what is not fresh is being worked out again.
func (m *model) priceOf(orders []pour.Order, fresh bool) [2]string {
	f := m.facts
	if len(orders) == 0 {
		return [2]string{"mud …", "late …"}
	}
	own := orders[0]
	late := "late " + f.Show.Figure(own.LatePercent, func(v float64) string { return f.Show.Percent(v, 0) })
	if own.LateJug != "" {
		late += " at most: " + own.LateJug
	}
	mud := fmt.Sprintf("mud %s at worst, %s in all", f.Show.Number(own.Worst, 2), f.Show.Number(own.Total, 2))
	if !fresh {
		mud, late = mud+" …", late+" …"
	}
	return [2]string{mud, late}
}

// compare keeps the picture as it is now beside the one that is designed on, or lets the kept one go.
func (m *model) compare() {
	if m.studio.kept != nil {
		m.studio.kept = nil
		m.say("the picture beside is let go")
		return
	}
	m.studio.kept, m.studio.other = &kept{design: m.studio.design, price: m.price()}, false
	if e, ok := m.easel(); ok && e.kept.Empty() {
		m.say("kept: change anything; {the other picture} shows the one or the other, {compare} lets it go")
		return
	}
	m.say("kept at the left: change anything and see both; {compare} lets it go")
}

// drawCompared names the two pictures, with their colours in pour order, and says what each costs.
func (m *model) drawCompared(a screen.Area, e easel) {
	for place, at := range [places]image.Rectangle{placeNow: e.now, placeKept: e.kept} {
		if at.Empty() {
			continue
		}
		name, st, price, design := "now", m.look.Strong, m.price(), m.studio.design
		if place == placeKept {
			name, st, price, design = "kept", m.look.Quiet, m.studio.kept.price, m.studio.kept.design
		}
		box := a.At(image.Rect(at.Min.X, at.Min.Y-1, at.Max.X, at.Max.Y+figuresH-1))
		name = fmt.Sprintf("%s: %s, face %d", name, m.techniqueName(string(design.Recipe.Script.Brief.Technique)), design.Recipe.Script.Brief.Seed)
		end := box.Text(1, 0, screen.Clip(name, box.W()-1), st)
		if p := m.studio.mounts[place].print; p != nil && end+1+inkW*len(p.Base) <= box.W() {
			x := box.W() - inkW*len(p.Base)
			for _, k := range p.Base {
				x = m.drawInk(box, x, k)
			}
		}
		for i, line := range price {
			box.Text(1, box.H()-len(price)+i, screen.Clip(line, box.W()-1), screen.Style{})
		}
	}
}

// reroll pours another of the faces a design can have.
func (m *model) reroll() {
	plan := m.session.Plan()
	if m.edit("another face", pour.Reseed(plan.Swirl.Seed+1)) == nil {
		m.say(fmt.Sprintf("face %d; {undo} brings the one before back", plan.Swirl.Seed+1))
	}
}

// browns says whether any colour changes over some weeks.
func (m *model) browns() bool {
	return !slices.Equal(m.studio.design.Palette, m.studio.design.Weeks)
}

// turnBar looks at another bar, round and round.
func (m *model) turnBar(by int) {
	n := m.bars()
	m.studio.bar = ((m.studio.bar+by)%n + n) % n
}

// bars is how many faces the loaf on show has along it: a slab is cut across too, and those bars share a face.
func (m *model) bars() int {
	if p := m.studio.mounts[placeNow].print; p != nil {
		return p.Plate.Bars
	}
	return 1
}

// barsShown says whether the view has single bars to step through.
func (m *model) barsShown() bool {
	return m.studio.view == picture.Bar || m.studio.view == picture.Bars || m.studio.view == picture.Slice
}

// techniqueName is what the shelf calls a technique by what is drawn.
func (m *model) techniqueName(drawn string) string {
	for _, t := range m.session.Shelf().Techniques {
		if string(t.Drawn()) == drawn {
			return t.Name
		}
	}
	return drawn
}
