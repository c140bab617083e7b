package pour

import "math"

// barPart is one usual bar's part of the loaf, as a fraction of its length or, in a slab, of its area. Where no bar comes out it is the mould's own.
func (s *Sheet) barPart() float64 {
	if len(s.Cut.Bars) == 0 {
		return s.Plan.Mould.barPart()
	}
	return s.partOf(s.Cut.UsualMM, s.Cut.Bars[0].WideMM())
}

// partOf is the part of all that is poured which a bar of a thickness and a width is.
func (s *Sheet) partOf(thick, wide float64) float64 {
	m := s.Plan.Mould
	part := thick / m.AlongMM()
	if s.Cut.sides() {
		part *= wide / m.WidthMM
	}
	return part
}

// sides reports whether bars stand side by side.
func (c *CutSheet) sides() bool { return len(c.AcrossMM) > 0 || c.SideMM > 0 }

// weighCut works out what every piece of the cut loaf weighs. The base, less what embeds take the place of, is as deep everywhere; an icing piped onto
// the bars stands on them alone, any other lies evenly along the loaf. What a cut takes goes as crumbs.
func (s *Sheet) weighCut() {
	c, m := &s.Cut, s.Plan.Mould
	w := s.weights()
	rest := w.all
	left := 1.0
	for i := range c.Bars {
		b := &c.Bars[i]
		part := s.partOf(b.ThicknessMM(), b.WideMM())
		in := s.embedded(i)
		g := w.piece(part, in)
		if w.onBars != nil {
			g.icing = w.all.icing * w.onBars[i]
		}
		b.BaseG, b.IcingG, b.EmbedG, b.ToppingG = AsFigure(g.base), AsFigure(g.icing), AsFigure(g.embed), AsFigure(g.topping)
		b.CutG, b.CuredG = AsFigure(g.sum()), AsFigure(g.base*w.baseDries+g.icing*w.icingDries+in.curedG+g.topping+w.strewnLate)
		rest.less(g)
		left -= part
		c.LightG, c.HeavyG = lighter(c.LightG, b.CutG), heavier(c.HeavyG, b.CutG)
	}
	slice := c.SliceMM / m.AlongMM()
	kerf := float64(len(c.CutsMM)) * c.KerfMM / m.AlongMM()
	kerf += float64(len(c.AcrossMM)) * c.KerfMM / m.WidthMM * (1 - kerf)
	trims := left - slice - kerf
	if trims*m.AlongMM() < noise {
		trims = 0
	}
	for _, x := range []struct {
		at   *Figure
		part float64
	}{{&c.SliceG, slice}, {&c.KerfG, kerf}} {
		g := w.piece(x.part, w.rods(x.part))
		rest.less(g)
		*x.at = AsFigure(g.sum())
	}
	c.TrimsG = AsFigure(rest.sum())
	if trims == 0 && math.Abs(rest.sum()) < 1e-6*w.all.sum() {
		c.TrimsG = Know(0)
	}
}

// lighter and heavier are the one of two figures; one that is not known yet gives way.
func lighter(a, b Figure) Figure {
	if !a.Known || b.Known && b.V < a.V {
		return b
	}
	return a
}

func heavier(a, b Figure) Figure {
	if !a.Known || b.Known && b.V > a.V {
		return b
	}
	return a
}

// cutMass is what makes up the mass of a piece, g.
type cutMass struct{ base, icing, embed, topping float64 }

func (g cutMass) sum() float64 { return g.base + g.icing + g.embed + g.topping }

func (g *cutMass) less(o cutMass) {
	g.base, g.icing, g.embed, g.topping = g.base-o.base, g.icing-o.icing, g.embed-o.embed, g.topping-o.topping
}

// weights is what the loaf is made of.
type weights struct {
	all                   cutMass // what stands in the mould and on it
	gml                   float64 // density of the base
	displacedMM3          float64 // by all embeds
	rod                   inBar   // all rods, which every cut goes through
	baseDries, icingDries float64 // cured mass by mass as cut
	onBars                []float64
	strewnLate            float64 // on every bar, after the cut
}

func (s *Sheet) weights() weights {
	base := &s.Base
	w := weights{gml: base.gml(), displacedMM3: s.displaced()}
	w.all.base = base.Size.PouredG
	w.baseDries = base.curedG(s.Plan.Base.FinalMoisturePercent) / w.all.base
	if s.Icing != nil {
		w.all.icing = s.Icing.Size.PouredG
		w.icingDries = s.Icing.curedG(s.Plan.Icing.FinalMoisturePercent) / w.all.icing
	}
	for _, l := range s.Toppings {
		if l.OnLoaf() {
			w.all.topping += l.AddsG.orUnknown() / s.barPart()
		} else {
			w.strewnLate += l.AddsG.orUnknown()
		}
	}
	for i := range s.Embeds {
		k := &s.Embeds[i]
		n := float64(k.inLoaf(s.Plan.Mould.AlongMM()))
		w.all.embed += n * k.PieceG.orUnknown()
		if k.Rod {
			w.rod.g += n * k.PieceG.orUnknown()
			w.rod.displacedMM3 += n * k.SubmergedMM3.V
		}
	}
	return w
}

// rods is a part of all rods.
func (w *weights) rods(part float64) inBar {
	return inBar{g: w.rod.g * part, displacedMM3: w.rod.displacedMM3 * part}
}

// piece is a part of the loaf with what stands in it.
func (w *weights) piece(part float64, in inBar) cutMass {
	g := cutMass{base: w.all.base * part, icing: w.all.icing * part, embed: in.g, topping: w.all.topping * part}
	if w.displacedMM3 > 0 {
		g.base += (w.displacedMM3*part - in.displacedMM3) / 1000 * w.gml
	}
	return g
}
