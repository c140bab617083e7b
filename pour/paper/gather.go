package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// gather lists what has to be on the bench, with room for the lot of everything that goes into a bar.
func (d *desk) gather() {
	d.heading("gather", "in all", "lot")
	for _, tool := range []string{
		"Goggles, gloves, sleeves, dust mask; running water within reach",
		"Scales, thermometer, stick blender, lye jug that stands heat, pots, spatulas, strainer",
		"Mould, liner, cover or wrapping; this paper, a pen, a clock that shows seconds",
	} {
		d.tick(row{text: tool, write: true})
	}
	for _, n := range d.batches() {
		b := d.batch(n)
		for i := range b.Jugs {
			d.vessel(b, i)
		}
	}
	for _, w := range d.sheet.Totals {
		if d.stopped && d.forLye(w) {
			continue
		}
		text := w.Name
		switch w.Kind {
		case pour.WeighWater:
			text += ", for the lye"
		case pour.WeighCarrier:
			text += ", to wet the colours"
		}
		d.tick(row{text: text, figure: d.weighed(w.Kind, w.G), write: true})
	}
	d.info("In all, for having enough: weigh by the sections below.")
}

// vessel is the row of one jug: how much goes into it; it is larger than that, so that there is room to stir.
func (d *desk) vessel(b batch, i int) {
	text, goes := d.of(b.Name, "jug "+b.Jugs[i].Name), ", larger than what goes in"
	if i < len(b.plan.Jugs) && b.plan.Jugs[i].CapacityML > 0 {
		text += " of " + d.show.VolumeApart(b.plan.Jugs[i].CapacityML).String()
		goes = "; what goes in"
	}
	if d.stopped {
		d.tick(row{text: text, write: true})
		return
	}
	d.tick(row{text: text + goes, figure: d.show.Volume(b.Jugs[i].VesselML), write: true})
}

// forLye says whether a weighing is alkali, water or anything else that goes into the lye.
func (d *desk) forLye(w pour.Weighing) bool {
	if w.Kind == pour.WeighAlkali || w.Kind == pour.WeighWater {
		return true
	}
	for _, b := range d.sheet.Batches() {
		for _, x := range b.Extras {
			if w.Kind == pour.WeighExtra && x.Name == w.Name && x.InTheLye() {
				return true
			}
		}
	}
	return false
}

// weighed draws a weight on the scale its kind is weighed on: oils and water on the kitchen scale, lye and small doses on the finer one.
func (d *desk) weighed(kind string, g float64) string {
	if kind == pour.WeighOil || kind == pour.WeighWater {
		return d.show.Weight(g)
	}
	return d.show.Dose(g)
}

// mould is lining the mould, with its measures and what is planned to stand in it.
func (d *desk) mould() {
	m := d.sheet.Plan.Mould
	d.begin("", placeMould)
	d.alerts(placeMould, anywhere)
	d.tick(row{text: d.line(), write: true})
	height := row{text: "Mark how high the base will stand", figure: d.show.LenTold(d.sheet.Base.Size.HeightMM), write: true}
	if len(d.sheet.Embeds) > 0 {
		height.text += ", its embeds in it: it is lower before they are set"
	}
	if d.stopped {
		height.figure = ""
	}
	d.tick(height)
	if s := d.sheet; s.Icing != nil && !d.stopped && pour.AsFigure(s.Bars.StandsMM).Known {
		d.info("With its icing it stands " + d.show.Len(s.Bars.StandsMM) + " high on average, " + d.show.Rim(s.Bars.OverRimMM) + "; peaks stand higher.")
	}
	if text := endMarked(m); text != "" {
		d.tick(row{text: text, write: true})
	}
}

// line is how the mould is made ready.
func (d *desk) line() string {
	m := d.sheet.Plan.Mould
	size := strings.Join([]string{d.show.Len(m.LengthMM), d.show.Len(m.WidthMM), d.show.Len(m.HeightMM)}, " x ")
	switch m.Shape {
	case pour.ShapeTube:
		return fmt.Sprintf("Line the tube, inside %s across and %s high, close its foot so that nothing runs out, and stand it upright where it can stay", d.show.Len(m.LengthMM), d.show.Len(m.HeightMM))
	case pour.ShapeCavity:
		return fmt.Sprintf("Set out %d single moulds, each inside %s, level and where they can stay", m.Cavities, size)
	}
	return fmt.Sprintf("Line the %s mould, inside %s, and stand it level where the loaf can stay", m.Shape, size)
}

// endMarked is which end of the mould is told from the other; single moulds have none.
func endMarked(m pour.Mould) string {
	switch m.Shape {
	case pour.ShapeTube:
		return "Its lower end is end A: the rounds count from there; mark it on the soap as it comes out"
	case pour.ShapeCavity:
		return ""
	}
	return "Mark one end of the mould: left, right and the order of the bars count from there"
}
