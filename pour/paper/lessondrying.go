package paper

import (
	"fmt"
	"math"

	"pourbench/chem/cure"
	"pourbench/pour/logbook/learn"
)

// lessonDrying says what batches that were weighed as they dried have taught; nothing where none was weighed twice.
func lessonDrying(p *page, l learn.Lesson) {
	if len(l.Dried) == 0 {
		return
	}
	p.raw("")
	p.wrapped("", "HOW YOUR BARS DRY")
	if r := l.Rack; !r.LnD.Known() && !r.Moisture.Known() {
		p.wrapped("", fmt.Sprintf("%d batches have told something so far; from %d on they forecast the next one.", max(r.LnD.Batches, r.Moisture.Batches), cure.LeastBatches))
	}
	if d := l.Rack.LnD; d.Known() {
		p.wrapped("", fmt.Sprintf("Water goes through your soap at %.2g m2/s in your room (%.2g to %.2g for the next batch), from %d batches: a bar of 25 x 80 x 62 mm has lost nine tenths of what it will in %.0f days.",
			d.Diffusivity(), math.Exp(d.Mean-cure.Band80*d.SD), math.Exp(d.Mean+cure.Band80*d.SD), d.Batches, nineTenths*tableBar().TauDays(d.Diffusivity())))
	}
	if m := l.Rack.Moisture; m.Known() {
		p.wrapped("", fmt.Sprintf("Your bars end at %.1f %% of water (%.1f to %.1f for the next batch), from %d batches; a plan's own moisture after cure still counts beside it.",
			100*m.Mean, 100*max(0, m.Mean-cure.Band80*m.SD), 100*(m.Mean+cure.Band80*m.SD), m.Batches))
	}
	for _, d := range l.Dried {
		switch {
		case d.Why != "":
			p.wrapped("", fmt.Sprintf("%s, %s of %s: %s", d.Pour, counted(d.Weighings, "weighing"), counted(d.Bars, "bar"), d.Why))
		default:
			p.wrapped("", fmt.Sprintf("%s, %s of %s: tau %.1f days, %.1f of %.1f g a bar will go", d.Pour, counted(d.Weighings, "weighing"), counted(d.Bars, "bar"), d.TauDays, d.LossG, d.FirstG))
		}
	}
}

// nineTenths is after how many tau a bar of the table's size has lost nine tenths of what it will (derived: f of the block is 0.1 at 1.730065).
const nineTenths = 1.730065

// tableBar is a usual bar, for telling a diffusivity in days.
func tableBar() cure.Box { return cure.Box{ThickMM: 25, WideMM: 80, HighMM: 62} }
