package presets

import (
	"math"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/strict"
)

// readMould reads a [[mould]].
func readMould(r *row, m *pour.MouldEntry) {
	r.need("name", "length_mm", "width_mm", "height_mm")
	if r.fresh {
		m.Mould.Shape, m.Mould.BarMM, m.Mould.LossPercent = pour.ShapeLoaf, 25, 1.5
	}
	m.Own = m.Own || r.own != ""
	r.name(&m.Name)
	b := &m.Mould
	r.word("shape", &b.Shape, pour.ShapesMean, pour.ShapeLoaf, pour.ShapeSlab, pour.ShapeTube, pour.ShapeCavity)
	r.number("length_mm", &b.LengthMM, 20, 3000, "inside length")
	r.number("width_mm", &b.WidthMM, 20, 2000, "inside width")
	r.number("height_mm", &b.HeightMM, 10, 1000, "inside height to the rim")
	if r.fresh {
		b.FillMM = b.HeightMM * 5 / 6 // room for a swirl and a topping
	}
	r.number("fill_mm", &b.FillMM, 5, 1000, "usual fill height; left out: five sixths of the height")
	r.number("bar_mm", &b.BarMM, 5, 1000, "thickness of a bar along the length")
	r.number("bar_width_mm", &b.BarWidthMM, 0, 2000, "slab: width of a bar across the slab; 0: the whole width")
	cavities := float64(b.Cavities)
	r.number("cavities", &cavities, 0, 500, "cavity: how many single moulds there are, a whole number")
	if cavities != math.Trunc(cavities) {
		r.fault("cavities", strict.Short(cavities), "is not a whole number", "count the single moulds")
	}
	b.Cavities = int(cavities)
	r.number("cavity_ml", &b.CavityML, 0, 2000, "cavity: mL in one filled to fill_mm; 0: length by width by fill_mm")
	r.number("loss_percent", &b.LossPercent, 0, 50, "of what is mixed, stays in pots, jugs and spoons")
	r.ordered("fill_mm", b.FillMM, "height_mm", b.HeightMM)
	switch b.Shape {
	case pour.ShapeTube:
		r.ordered("bar_mm", b.BarMM, "fill_mm", b.FillMM)
		if b.WidthMM != b.LengthMM {
			r.fault("width_mm", strict.Short(b.WidthMM), "is another diameter than length_mm = "+strict.Short(b.LengthMM), "a tube is round: write its inside diameter as both")
		}
	case pour.ShapeCavity:
		if b.Cavities < 1 {
			r.fault("cavities", strict.Short(cavities), "is no single mould", "write how many there are")
		}
	default:
		r.ordered("bar_mm", b.BarMM, "length_mm", b.LengthMM)
	}
	r.ordered("bar_width_mm", b.BarWidthMM, "width_mm", b.WidthMM)
	r.source("source", &m.Source, "length_mm", "width_mm", "height_mm", "fill_mm", "bar_mm", "bar_width_mm", "cavities", "cavity_ml", "loss_percent")
}

// kinds lists what a technique can be.
func kinds() []string {
	return []string{"layers", "drop", "column", "pot", "hanger", "comb", "spoon"}
}

// readTechnique reads a [[technique]].
func readTechnique(r *row, t *pour.Technique) {
	r.need("name", "kind", "from", "to")
	r.name(&t.Name)
	r.word("kind", &t.Kind, "how the jugs meet", kinds()...)
	r.stage("from", &t.From, "thinnest stage of trace the batter suits")
	r.stage("to", &t.To, "the last stage it suits")
	if t.From > t.To {
		r.fault("from", t.From.String(), "comes after to = "+t.To.String(), "put the thinner stage first")
	}
	passes := float64(t.Passes)
	r.number("passes", &passes, 0, 60, "rounds, ways over the mould or strokes of the comb, a whole number")
	if passes != float64(int(passes)) {
		r.fault("passes", strict.Short(passes), "is not a whole number", "count whole pours, strokes or drops")
	}
	t.Passes = int(passes)
	r.number("turns", &t.Turns, 0, 20, "turns of the tool")
	r.number("height_mm", &t.HeightMM, 0, 1000, "height poured from")
	r.text("do", &t.Do, 200, "how it is done")
	r.source("source", &t.Source, "from", "to", "passes", "turns", "height_mm", "do")
}

// stage reads the word of a stage of trace.
func (r *row) stage(key string, to *chem.Stage, means string) {
	words := make([]string, chem.Stages)
	for i := range words {
		words[i] = chem.Stage(i).String()
	}
	word := to.String()
	r.word(key, &word, means, words...)
	for i, w := range words {
		if w == word {
			*to = chem.Stage(i)
		}
	}
}
