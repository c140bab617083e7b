package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// Bench writes what hangs at the bench during the pour: what is weighed, the jugs, the acts in their order, the cautions that bear on them,
// cut and cure. It takes at most two sheets of 66 lines and 80 columns for a plan of a usual size, a form feed between them; one that holds
// more goes on over as many as it wants and says so on its first. Large, it stands on sheets of 33 lines and 40 columns, to be printed at
// twice the size and read from the table. With a stop on the lye it says DO NOT MIX and nothing to weigh or do.
func Bench(s pour.Sheet, shelf pour.Shelf, large bool) string {
	f := benchFormat()
	if large {
		f = largeFormat()
	}
	d := newDesk(s, shelf, f)
	title := d.name("bench paper")
	d.day()
	if worked(s) {
		d.made()
	}
	note := len(d.lines)
	d.banner()
	d.short()
	if d.stopped {
		d.raw("")
		d.wrapped("", "Nothing to weigh or to do is printed until that is put right.")
		return d.printed(title)
	}
	for _, n := range d.batches() {
		d.weighTable(d.batch(n))
	}
	d.topBench()
	jugs := len(d.lines)
	d.jugTable()
	d.fresh = []int{len(d.lines), jugs}
	d.actTable()
	d.after()
	if n := len(d.sheets()); d.most > 0 && n > d.most {
		d.insert(note, fmt.Sprintf("There is too much in this plan for %d pages: it takes %d.", d.most, n))
	}
	return d.printed(title)
}

// benchSheets is how many sheets the bench paper of a plan of a usual size takes at most.
const benchSheets = 2

// short is the emergency lines and the cautions in a few words, this plan's own among them.
func (d *desk) short() {
	d.heading("emergency", "", "")
	for _, text := range emergency() {
		d.keep(func() { d.wrapped("", text) })
	}
	d.heading("cautions", "", "")
	d.tick(row{text: "Goggles, gloves, sleeves, closed shoes, to the end of washing-up. No children, pets or food; no aluminium, zinc or tin; air moving."})
	text := "Lye into cold water, never water onto it."
	if d.powders() {
		text += " Powders: mask, no draught, wetted at once."
	}
	if d.scented() {
		text += " Scents: gloves, lids, no flame."
	}
	d.tick(row{text: text})
	d.tick(row{text: "Labels and safety data sheets come first, then local rules and licensed advice: this paper cannot say that a batch is safe."})
	if d.stopped {
		return
	}
	d.own()
}

// own is what this plan was warned of, as far as it bears on what the hands do: cautions with their reason and, where it is handled in the
// pour and not decided before, what to do. All others are counted.
func (d *desk) own() {
	var list, others []pour.Warning
	for _, w := range d.sheet.Warnings {
		switch {
		case d.said[once(w)]:
		case w.Severity == pour.Note || !d.bears(w):
			others = append(others, w)
		default:
			list = append(list, w)
			d.said[once(w)] = true
		}
	}
	for _, w := range list {
		d.tick(row{text: d.bearing(w)})
	}
	if len(others) > 0 {
		d.wrapped(strings.Repeat(" ", len(box)), "On the full paper besides: "+tally(others)+".")
	}
}

// bears says whether a warning bears on what the hands weigh and do: not on which colours and scents were chosen, how they look and what is sold.
func (d *desk) bears(w pour.Warning) bool {
	switch d.placeOf(w) {
	case stepOils: // what is weighed, not which colour an extra has
		return placeOf(w.Code) == stepOils
	case stepColours, stepScents, placeCut:
		return false
	}
	return w.Code != "muddy-neighbours"
}

// bearing is a warning in the few words the bench needs.
func (d *desk) bearing(w pour.Warning) string {
	text := sentence(w.Told())
	switch {
	case d.sheet.Icing == nil:
		text = sentence(w.Text)
	case d.ofBoth(w):
		text = "Base and icing: " + sentence(w.Text)
	}
	if at := d.placeOf(w); at == stepLye || at == stepScent || placeOf(w.Code) == stepLye {
		text += " " + sentence(w.Do)
	}
	return text
}
