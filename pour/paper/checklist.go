package paper

import (
	"fmt"

	"pourbench/pour"
)

// Checklist writes the paper a pour is made from: plain text of at most 80 columns, ASCII but for the letters of names. Section numbers
// are the same for every plan. With a stop on the lye it says DO NOT MIX and holds neither lye amounts nor the run. The shelf says how the
// technique is done and which colourants dust.
func Checklist(s pour.Sheet, shelf pour.Shelf) string {
	d := &desk{sheet: &s, show: s.Plan.Show, shelf: shelf, stopped: s.LyeStopped() || !worked(s)}
	d.title()
	d.cautions()
	if !worked(s) {
		d.raw("")
		d.wrapped("", "No figure of this plan could be worked out, so there is nothing to weigh. Put right what is named above and print again.")
		return d.out.String()
	}
	d.gather()
	d.mould()
	d.melt()
	d.weigh(d.batch(pour.Base))
	d.run()
	d.make(d.batch(pour.Base))
	if s.Icing == nil {
		d.absent(icingSections(), "icing", "none in this plan.")
	} else {
		d.weigh(d.batch(pour.Icing))
		d.make(d.batch(pour.Icing))
	}
	d.bed()
	d.clean()
	d.cut()
	return d.out.String()
}

// desk is a page with what is drawn on it.
type desk struct {
	page
	sheet   *pour.Sheet
	show    pour.Show
	shelf   pour.Shelf
	stopped bool // DO NOT MIX: no lye amounts, no run
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

func (d *desk) title() {
	d.rule("=")
	d.wrapped("", "POUR CHECKLIST: "+d.sheet.Plan.Name)
	d.rule("=")
	if at := d.sheet.Plan.PourAt; at.IsZero() {
		d.raw("Pour day ____-__-__   lye meets oil at __:__   batch __________  by __________")
	} else {
		d.raw("Pour day " + at.Format("2006-01-02") + "   lye meets oil at " + at.Format("15:04") + "   batch __________  by __________")
	}
	if notes := d.sheet.Plan.Notes; notes != "" {
		d.wrapped("", "Notes: "+notes)
	}
	d.wrapped("", "Times count from the base's lye-in (0 min): the moment its lye meets its oils.")
	if !worked(*d.sheet) {
		d.banner()
		return
	}
	bars := fmt.Sprintf("%d bars of %s", d.sheet.Bars.Count, d.show.Len(d.sheet.Bars.ThicknessMM))
	if !d.stopped {
		bars = "Base batter " + d.show.Weight(d.sheet.Base.Size.BatterWeighG) + ", " + bars
		if d.sheet.Icing != nil {
			bars += ", icing " + d.show.Weight(d.sheet.Icing.Size.BatterWeighG)
		}
	}
	d.wrapped("", sentence(bars))
	d.wrapped("", "Scales: batter, oils and water in steps of "+d.show.Weight(d.show.ScaleStepG)+", lye, extras, colours and scents in steps of "+
		d.show.Dose(d.show.LyeStepG)+". A dash stands where a figure could not be worked out.")
	d.banner()
}

// banner stands on the first page and wherever lye would be weighed or mixed.
func (d *desk) banner() {
	stops := ofSeverity(d.sheet.Warnings, pour.Stop)
	if len(stops) == 0 && !d.stopped {
		return
	}
	d.raw("")
	d.rule("#")
	if d.stopped {
		d.raw("DO NOT MIX. A stop stands on the lye: no lye amounts are printed.")
	} else {
		d.raw("STOP. Put this right before you pour.")
	}
	for _, w := range stops {
		if w.Lye || !d.stopped {
			d.wrapped("  ", told(w))
		}
	}
	d.rule("#")
}

// withheld stands in place of a section that must not be carried out.
func (d *desk) withheld(section int, title string) {
	d.absent(fmt.Sprint(section), title, "DO NOT MIX. Withheld until the stop on the lye is put right.")
}
