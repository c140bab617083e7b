package paper

import (
	"fmt"
	"slices"

	"pourbench/pour"
)

// topBench is what lies ready for the top, with the marks for embeds, in as few words as the bench has room for.
func (d *desk) topBench() {
	s := d.sheet
	if !d.topped() {
		return
	}
	d.heading("for the top", "planned", "actual")
	if d.piped() {
		d.tick(row{text: "piping bags with their tips, filled " + pour.Times(s.Piping.Fills), figure: fmt.Sprint(s.Piping.Bags), write: true})
		d.smallMould()
	}
	for i := range s.Embeds {
		k := &s.Embeds[i]
		d.tick(row{text: fmt.Sprintf("%d %s", len(k.Pieces), k.Name), figure: d.show.Figure(k.AllG, d.show.Weight), write: true})
		if at := d.marksOf(k); len(at) > 0 {
			d.info("middles, " + d.show.LenUnit() + " from end A: " + d.distances(at))
		}
		if at := d.sheet.AcrossMarks(k); len(at) > 0 {
			d.info("middles across, " + d.show.LenUnit() + " from the left wall seen from end A: " + d.distances(at))
		}
	}
	for _, t := range s.Toppings {
		d.tick(row{text: t.Name + ", " + strewn(t.When), figure: d.show.Figure(t.AllG, d.show.Dose), write: true})
	}
}

// marksOf are the marks of a kind's middles on the rim, each once; none where nothing is cut or it lies along the whole loaf.
func (d *desk) marksOf(k *pour.EmbedSheet) []float64 {
	var marks []float64
	for _, p := range k.Pieces {
		if d.sheet.Plan.Mould.IsCut() && p.Verdict != pour.VerdictThrough && !slices.Contains(marks, p.MarkMM) {
			marks = append(marks, p.MarkMM)
		}
	}
	slices.Sort(marks)
	return marks
}

// cutsBench is where the loaf is cut.
func (d *desk) cutsBench() {
	c := d.sheet.Cut
	if !d.dressed() || len(c.MarksMM) == 0 {
		return
	}
	d.tick(row{text: "Cuts marked, " + d.show.LenUnit() + " from end A: " + d.distances(c.MarksMM)})
	if len(c.AcrossMarkMM) > 0 {
		d.info("from its left side: " + d.distances(c.AcrossMarkMM))
	}
}
