package presets

import (
	"pourbench/chem"
	"pourbench/pour"
)

// readMould reads a [[mould]].
func readMould(r *row, m *pour.MouldEntry) {
	r.need("name", "length_mm", "width_mm", "height_mm")
	if r.fresh {
		m.Mould.Shape, m.Mould.BarMM, m.Mould.LossPercent = "loaf", 25, 1.5
	}
	r.name(&m.Name)
	b := &m.Mould
	r.word("shape", &b.Shape, "loaf", "slab")
	r.number("length_mm", &b.LengthMM, 20, 3000)
	r.number("width_mm", &b.WidthMM, 20, 2000)
	r.number("height_mm", &b.HeightMM, 10, 1000)
	if r.fresh {
		b.FillMM = b.HeightMM * 5 / 6 // room for a swirl and a topping
	}
	r.number("fill_mm", &b.FillMM, 5, 1000)
	r.number("bar_mm", &b.BarMM, 5, 1000)
	r.number("bar_width_mm", &b.BarWidthMM, 0, 2000)
	r.number("loss_percent", &b.LossPercent, 0, 50)
	r.ordered("fill_mm", b.FillMM, "height_mm", b.HeightMM)
	r.ordered("bar_mm", b.BarMM, "length_mm", b.LengthMM)
	r.ordered("bar_width_mm", b.BarWidthMM, "width_mm", b.WidthMM)
	r.source("source", &m.Source, "length_mm", "width_mm", "height_mm", "fill_mm", "bar_mm", "bar_width_mm", "loss_percent")
}

// kinds lists what a technique can be.
func kinds() []string {
	return []string{"layers", "drop", "column", "pot", "hanger", "comb", "spoon"}
}

// readTechnique reads a [[technique]].
func readTechnique(r *row, t *pour.Technique) {
	r.need("name", "kind", "from", "to")
	r.name(&t.Name)
	r.word("kind", &t.Kind, kinds()...)
	r.stage("from", &t.From)
	r.stage("to", &t.To)
	if t.From > t.To {
		r.fault("from", t.From.String(), "comes after to = "+t.To.String(), "put the thinner stage first")
	}
	passes := float64(t.Passes)
	r.number("passes", &passes, 0, 60)
	if passes != float64(int(passes)) {
		r.fault("passes", short(passes), "is not a whole number", "count whole pours, strokes or drops")
	}
	t.Passes = int(passes)
	r.number("turns", &t.Turns, 0, 20)
	r.number("height_mm", &t.HeightMM, 0, 1000)
	r.text("do", &t.Do, 200)
	r.source("source", &t.Source, "from", "to", "passes", "turns", "height_mm", "do")
}

// stage reads the word of a stage of trace.
func (r *row) stage(key string, to *chem.Stage) {
	words := make([]string, chem.Stages)
	for i := range words {
		words[i] = chem.Stage(i).String()
	}
	word := to.String()
	r.word(key, &word, words...)
	for i, w := range words {
		if w == word {
			*to = chem.Stage(i)
		}
	}
}
