package paper

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	underway "pourbench/pour/logbook/live"
)

// BatchRecord writes the record of a batch by the fields that good practice for cosmetics asks for (ISO 22716, clauses 7, 13 and 17; what to write is from
// memory of it): what went in with its lots and masses, how it went, deviations, bars, cure, checks, release to be signed, where it went. What
// was not logged has room to be written in. Its label is told where its plan names a market. The sheet is that of the plan as poured, with times. It claims of no batch that it is safe.
func BatchRecord(record logbook.Pour, sheet pour.Sheet, b life.Batch, l Label) string {
	r := &batchRecord{
		page: &page{format: format{wide: 80, high: 66, blank: "__________", most: benchSheets}}, record: record, sheet: &sheet, batch: b,
		show: sheet.Plan.Show, state: underway.Replay(sheet, record.Events),
	}
	r.whose()
	for _, n := range sheet.Batches() {
		r.materials(n)
	}
	r.toppings()
	r.course()
	r.deviations()
	r.bars()
	r.cure()
	r.checks()
	r.labelled(&l)
	r.release()
	r.gone()
	return r.printed("batch record: " + record.Name)
}

// batchRecord is a batch record being written.
type batchRecord struct {
	*page
	record logbook.Pour
	sheet  *pour.Sheet
	batch  life.Batch
	show   pour.Show
	state  underway.State
}

// line is a thing and what is known of it, or room to write it.
func (r *batchRecord) line(what, known string) {
	if known == "" {
		known = strings.Repeat("_", r.wide-width(what)-gap)
	}
	r.wrapped(what+": ", known)
}

// whose says which batch it is: number, product, plan, day, who made it, with what.
func (r *batchRecord) whose() {
	var lots []string
	for _, l := range r.batch.Lots {
		lots = append(lots, l.Lot)
	}
	r.line("Batch number", r.record.ID)
	r.line("Label lot", strings.Join(lots, ", "))
	r.line("Product", fmt.Sprintf("%s, made by the plan kept with it, digest %s", r.record.Name, r.record.Digest()))
	r.line("Poured on", r.batch.Poured.String())
	r.line("Maker", "")
	r.line("Equipment", fmt.Sprintf("the %s mould; scales that step %s and %s; thermometer, blender, cutter:", r.sheet.Plan.Mould.Shape, r.show.Weight(r.show.ScaleStepG), r.show.Dose(r.show.LyeStepG)))
	r.line("  their numbers, cleaned by", "")
}

// materials is what went into a batch and its portions: lot, planned and actual mass.
func (r *batchRecord) materials(b *pour.BatchSheet) {
	columns := []column{{}, {head: "lot", figure: true}, {head: "planned", figure: true}, {head: "actual", figure: true}}
	var rows [][]string
	list := b.Weighings()
	slices.SortStableFunc(list, func(x, y pour.Weighing) int { return portion(b, x.Jug) - portion(b, y.Jug) })
	jug := ""
	for _, w := range list {
		if w.Jug != jug {
			jug = w.Jug
			rows = append(rows, []string{"into " + jug, "", "", ""})
		}
		planned := pour.AsFigure(w.G)
		if r.sheet.LyeStopped() {
			planned = pour.Figure{}
		}
		lot, actual := r.weighed(b.Name, w)
		if r.state.Omitted.Thing(b.Name, w.Jug, w.Kind) {
			lot, actual = "-", "left out"
		}
		name := w.Name
		if w.Kind == pour.WeighBatter {
			name, lot = "batter", "-"
		}
		rows = append(rows, []string{name, lot, r.show.Figure(planned, r.grams(w)), actual})
	}
	r.table("raw materials: "+string(b.Name), columns, rows)
}

// portion is the place of a jug among those of its batch, from 1; 0 is the batch as a whole.
func portion(b *pour.BatchSheet, jug string) int {
	return 1 + slices.IndexFunc(b.Jugs, func(j pour.JugSheet) bool { return j.Name == jug })
}

// grams draws a mass as its scale weighs it.
func (r *batchRecord) grams(w pour.Weighing) func(float64) string {
	if w.Fine() {
		return r.show.Dose
	}
	return r.show.Weight
}

// weighed is the lot and the mass that were logged of something, or room to write them. Lots that were drawn of packs for it stand where none was typed.
func (r *batchRecord) weighed(n pour.BatchName, w pour.Weighing) (lot, actual string) {
	lot, actual = r.blank, r.blank
	var drawn []string
	for _, e := range r.state.Marks {
		if e.Kind == logbook.Weighed && e.What == w.Name && e.Jug == w.Jug && (e.Batch == n || e.Batch == "") {
			actual = r.grams(w)(e.Value)
			if e.Lot != "" {
				lot = e.Lot
			}
		}
		if e.Kind == logbook.Drew && e.What == w.Name && e.Jug == w.Jug && (e.Batch == n || e.Batch == "") && e.Lot != "" && !slices.Contains(drawn, e.Lot) {
			drawn = append(drawn, e.Lot)
		}
	}
	if lot == r.blank && len(drawn) > 0 {
		lot = strings.Join(drawn, ", ")
	}
	return lot, actual
}

// toppings is what is strewn on loaf and bars.
func (r *batchRecord) toppings() {
	var rows [][]string
	for _, l := range r.sheet.Toppings {
		for _, part := range l.Parts {
			w := pour.Weighing{Name: part.Name, Kind: pour.WeighTopping}
			lot, actual := r.weighed("", w)
			rows = append(rows, []string{part.Name, lot, r.show.Figure(part.G, r.grams(w)), actual})
		}
	}
	if len(rows) > 0 {
		r.table("raw materials: toppings", []column{{}, {head: "lot", figure: true}, {head: "planned", figure: true}, {head: "actual", figure: true}}, rows)
	}
}

// course is temperatures and trace.
func (r *batchRecord) course() {
	r.heading("temperatures and trace", "planned", "actual")
	read := map[string]string{}
	for _, e := range r.state.Marks {
		if e.Kind == logbook.Read {
			read[string(e.Batch)+" "+e.What] = r.show.Temp(e.Value)
		}
	}
	for _, b := range r.sheet.Batches() {
		plan := r.sheet.Plan.Batch(b.Name)
		for _, x := range []struct {
			what    string
			planned pour.Figure
		}{{logbook.ReadLye, pour.Know(plan.LyeC)}, {logbook.ReadOils, pour.Know(plan.OilsC)}, {logbook.ReadBatter, pour.AsFigure(b.Heat.MixC)}} {
			key := string(b.Name) + " " + x.what
			r.pair(key, r.show.Figure(x.planned, r.show.Temp), read[key])
		}
	}
	for _, x := range r.state.Sightings {
		if x.Reached {
			of := x.Jug
			if x.Whole {
				of = "all of the " + string(x.Batch)
			}
			r.pair(fmt.Sprintf("%s: %s, from lye-in", of, x.Stage), r.expected(x), r.show.Minutes(x.Min))
		}
	}
	if len(r.state.Sightings) == 0 {
		r.pair("trace when it was split, and minutes from lye-in", "", "")
	}
}

// expected is when the clock expects a stage.
func (r *batchRecord) expected(x underway.Sighting) string {
	b := r.sheet.Batch(x.Batch)
	if b == nil || int(x.Stage) >= chem.Stages {
		return "-"
	}
	for _, j := range b.Jugs {
		if j.Name == x.Jug {
			return r.show.Figure(j.Clock.Stages[x.Stage].Mid, r.show.Predicted)
		}
	}
	return "-"
}

// pair is a planned figure and what it was, or room to write it.
func (r *batchRecord) pair(what, planned, actual string) {
	if actual == "" {
		actual = r.blank
	}
	right := strings.Repeat(" ", gap) + plain(planned) + strings.Repeat(" ", gap+max(0, len(r.blank)-width(plain(actual)))) + plain(actual)
	lines := trail(plain(what), r.wide, r.wide-width(right)-gap)
	last := len(lines) - 1
	lines[last] = leader(lines[last], r.wide-width(right)) + right
	for _, l := range lines {
		r.raw(l)
	}
}

// deviations is what differed, worked out of the marks, and room for what nobody marked.
func (r *batchRecord) deviations() {
	r.heading("deviations, by what was marked", "", "")
	list := deviations(r.record, r.sheet, r.batch)
	if len(list) == 0 {
		r.wrapped("", "None was found among what was marked.")
	}
	for _, text := range list {
		r.keep(func() { r.wrapped("- ", sentence(text)) })
	}
	r.line("Others, and what was done", "")
}
