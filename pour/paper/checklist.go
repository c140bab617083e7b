package paper

import (
	"fmt"

	"pourbench/pour"
)

// Checklist writes the full paper a pour is made from: sheets of at most 66 lines of 80 columns, a form feed between two, ASCII but for the
// letters of names. With a stop on the lye it says DO NOT MIX and holds neither lye amounts nor the pour. The shelf says how the technique
// is done and which colourants dust.
func Checklist(s pour.Sheet, shelf pour.Shelf) string {
	d := newDesk(s, shelf, fullFormat())
	d.title()
	if !worked(s) {
		d.cautions()
		d.nothingToWeigh()
		return d.printed(d.name("pour checklist"))
	}
	d.sections = d.planned()
	d.cautions()
	if len(s.Embeds) > 0 {
		d.ahead()
	}
	d.gather()
	d.mould()
	for _, n := range d.batches() {
		d.weigh(d.batch(n))
	}
	if d.topped() {
		d.ready()
	}
	d.pour()
	d.bed()
	d.clean()
	d.cut()
	return d.printed(d.name("pour checklist"))
}

// desk is a page with what is drawn on it.
type desk struct {
	page
	sheet    *pour.Sheet
	show     pour.Show
	shelf    pour.Shelf
	sections []section
	said     map[string]bool // warnings that stand on the page
	stopped  bool            // DO NOT MIX: no lye amounts, no pour
}

func newDesk(s pour.Sheet, shelf pour.Shelf, f format) *desk {
	return &desk{page: page{format: f}, sheet: &s, show: s.Plan.Show, shelf: shelf, said: map[string]bool{}, stopped: s.LyeStopped() || !worked(s)}
}

// name is the title of a paper, which stands on each of its sheets.
func (d *desk) name(paper string) string { return d.sheet.Plan.Name + ": " + paper }

// begin opens the section of a step of a batch, or of a place that both share.
func (d *desk) begin(n pour.BatchName, s step) {
	at := d.sections[d.number(n, s)-1]
	d.heading(d.of(at.batch, at.title), "planned", "actual")
}

// batch is one batch with its part of the plan.
type batch struct {
	*pour.BatchSheet
	plan *pour.Batch
}

func (d *desk) batch(n pour.BatchName) batch {
	b := batch{BatchSheet: &d.sheet.Base, plan: d.sheet.Plan.Batch(n)}
	if n == pour.Icing {
		b.BatchSheet = d.sheet.Icing
	}
	if b.plan == nil {
		b.plan = &pour.Batch{}
	}
	return b
}

// title says what is poured, and when.
func (d *desk) title() {
	if full := d.name("pour checklist"); width(full) > d.wide-len("page 99 of 99")-gap {
		d.wrapped("", d.sheet.Plan.Name)
	}
	d.day()
	if notes := d.sheet.Plan.Notes; notes != "" {
		d.wrapped("", "Notes: "+notes)
	}
	if worked(*d.sheet) {
		d.made()
		d.wrapped("", "Scales: batter, oils and water in steps of "+d.show.Weight(d.show.ScaleStepG)+", lye, extras, colours and scents in steps of "+
			d.show.Dose(d.show.LyeStepG)+". A dash stands where a figure could not be worked out.")
	}
	d.banner()
}

// day is the room for who pours when.
func (d *desk) day() {
	day, at := "____-__-__", "__:__"
	if t := d.sheet.Plan.PourAt; !t.IsZero() {
		day, at = t.Format("2006-01-02"), t.Format("15:04")
	}
	if line := fmt.Sprintf("Pour day %s   lye meets oil at %s   batch __________   by __________", day, at); len(line) <= d.wide {
		d.raw(line)
		return
	}
	d.raw("Pour day " + day)
	d.raw("Lye meets oil at " + at)
	d.raw("Batch __________   by __________")
}

// made is how much is made, and what times mean.
func (d *desk) made() {
	bars := fmt.Sprintf("%d bars of %s", d.sheet.Bars.Count, d.thick())
	if !d.stopped {
		bars += ", base batter " + d.show.Weight(d.sheet.Base.Size.BatterWeighG)
		if d.sheet.Icing != nil {
			bars += ", icing " + d.show.Weight(d.sheet.Icing.Size.BatterWeighG)
		}
	}
	d.wrapped("", bars+". Times are minutes:seconds from the base's lye-in, 0:00, when its lye meets its oils.")
}

// banner stands on the first page where anything stops the pour, with all that does.
func (d *desk) banner() {
	stops := ofSeverity(d.sheet.Warnings, pour.Stop)
	if len(stops) == 0 && !d.stopped {
		return
	}
	d.raw("")
	d.keep(func() {
		d.rule("#")
		if d.stopped {
			d.wrapped("", "DO NOT MIX. A stop stands on the lye: no lye amounts are printed.")
		} else {
			d.wrapped("", "STOP. Put this right before you pour.")
		}
		for _, w := range stops {
			d.said[once(w)] = true
			d.wrapped("  ", told(w))
		}
		d.rule("#")
	})
}

// nothingToWeigh stands in place of all sections of a plan that could not be worked out.
func (d *desk) nothingToWeigh() {
	d.raw("")
	d.wrapped("", "No figure of this plan could be worked out, so there is nothing to weigh. Put right what is named above and print again.")
}

// withheld stands in a section that must not be carried out.
func (d *desk) withheld() {
	d.wrapped(d.under(), "DO NOT MIX. Withheld until the stop on the lye is put right.")
}
