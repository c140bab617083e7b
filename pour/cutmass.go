package pour

// barPart is one usual bar's part of the loaf, as a fraction of its length or, in a slab, of its area. Where no bar comes out it is the mould's own.
func (s *Sheet) barPart() float64 {
	if len(s.Cut.Bars) == 0 {
		return s.Plan.Mould.barPart()
	}
	return s.partOf(s.Cut.UsualMM, s.Cut.usualWideMM())
}

// sides reports whether bars stand side by side.
func (c *CutSheet) sides() bool { return len(c.AcrossMM) > 0 || c.SideMM > 0 }

// usualWideMM is how wide the bars are on average: what is left over across a slab may widen those at one side.
func (c *CutSheet) usualWideMM() float64 {
	return mean(len(c.Bars), func(i int) float64 { return c.Bars[i].WideMM() })
}

// weighCut works out what every piece of the cut loaf weighs. The base, less what embeds take the place of, is as deep everywhere; an icing piped onto
// the bars stands on them alone, any other lies evenly along the loaf. What a cut takes goes as crumbs.
func (s *Sheet) weighCut() {
	c := &s.Cut
	w := s.weights()
	for i := range c.Bars {
		b := &c.Bars[i]
		part := s.partOf(b.ThicknessMM(), b.WideMM())
		in := s.embedded(i)
		g := w.piece(part, in)
		if w.onBars != nil {
			g.icing = w.all.icing * w.onBars[i]
		}
		b.BaseG, b.IcingG, b.EmbedG, b.ToppingG = AsFigure(g.base), AsFigure(g.icing), AsFigure(g.embed), AsFigure(g.topping)
		b.CutG = AsFigure(g.sum())
		b.CuredG = AsFigure(g.base*w.baseDries + g.icing*w.icingDries + in.curedG + g.topping + w.strewnLate)
		c.LightG, c.HeavyG = lighter(c.LightG, b.CutG), heavier(c.HeavyG, b.CutG)
	}
	if len(c.Bars) == 0 {
		return
	}
	r := s.rests()
	c.TrimAG, c.TrimBG, c.SidesG = w.rest(s, r.trimA), w.rest(s, r.trimB), w.rest(s, r.sides)
	c.SliceG, c.KerfG = w.rest(s, r.slice), w.rest(s, r.kerf)
	c.TrimsG = AsFigure(c.TrimAG.orUnknown() + c.TrimBG.orUnknown() + c.SidesG.orUnknown())
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

// cutRest is a piece that is no bar: its part of the loaf, and from where to where it goes where it is one stretch of it; others says that it has
// the embeds that stand neither in a bar nor in such a stretch.
type cutRest struct {
	part, from, to float64
	length         float64 // its part of the loaf's length
	others         bool
}

// cutRests are all pieces that are no bars. A slab's ends are cut off before its sides.
type cutRests struct{ trimA, trimB, slice, sides, kerf cutRest }

func (s *Sheet) rests() cutRests {
	c, m := &s.Cut, s.Plan.Mould
	stretch := func(from, length float64) cutRest {
		return cutRest{part: length / m.AlongMM(), length: length / m.AlongMM(), from: from, to: from + length}
	}
	r := cutRests{trimA: stretch(0, c.TrimAMM), trimB: stretch(m.AlongMM()-c.TrimBMM, c.TrimBMM), slice: stretch(c.SliceAt, c.SliceMM)}
	columns := c.columnsMM() / m.AlongMM()
	r.kerf.length = float64(len(c.CutsMM)) * c.KerfMM / m.AlongMM()
	r.kerf.part = r.kerf.length + columns*float64(len(c.AcrossMM))*c.KerfMM/m.WidthMM
	if c.sides() {
		r.sides.part = columns * c.SideMM / m.WidthMM
	}
	r.sides.others, r.kerf.others = r.sides.part > 0, r.sides.part == 0
	return r
}

// columnsMM is the length of all bars, one beside the other counting once.
func (c *CutSheet) columnsMM() float64 {
	sum := 0.0
	for _, b := range c.Columns() {
		sum += b.ThicknessMM()
	}
	return sum
}

// inRow reports whether a rod lies in any row of bars.
func (s *Sheet) inRow(p EmbedPiece) bool {
	for i, b := range s.Cut.Bars {
		if b.StartMM != s.Cut.Bars[0].StartMM {
			break
		}
		if s.rodIn(p, i) {
			return true
		}
	}
	return false
}

// rest is the mass of a piece that is no bar.
func (w *weights) rest(s *Sheet, r cutRest) Figure {
	g := w.piece(r.part, w.standsIn(s, r))
	if w.onBars != nil {
		g.icing = 0
	}
	return AsFigure(g.sum())
}

// standsIn is what embeds bring into a piece that is no bar.
func (w *weights) standsIn(s *Sheet, r cutRest) inBar {
	in := inBar{g: w.rod.g * r.length, displacedMM3: w.rod.displacedMM3 * r.length}
	if r.to > r.from || r.others {
		in.add(s.astray(r))
	}
	return in
}

// astray is what embeds that stand in no bar bring into a piece that is none.
func (s *Sheet) astray(r cutRest) inBar {
	var in inBar
	c, long := &s.Cut, s.Plan.Mould.AlongMM()
	for i := range s.Embeds {
		k := &s.Embeds[i]
		for _, p := range k.Pieces {
			at := p.CentreMM
			stretch := at < c.TrimAMM || at >= long-c.TrimBMM && c.TrimBMM > 0 || at >= c.SliceAt && at < c.SliceAt+c.SliceMM
			switch {
			case k.Rod && r.others && len(c.Bars) > 0 && !s.inRow(p):
				part := c.columnsMM() / long
				in.add(inBar{g: k.PieceG.orUnknown() * part, displacedMM3: k.SubmergedMM3.V * part})
			case k.Rod || p.Bar != 0 || at < 0 || at > long:
			case r.others && !stretch, !r.others && at >= r.from && (at < r.to || r.to >= long-noise):
				in.add(inBar{g: k.PieceG.orUnknown(), displacedMM3: k.SubmergedMM3.V})
			}
		}
	}
	return in
}

func (b *inBar) add(o inBar) {
	b.g, b.curedG, b.displacedMM3 = b.g+o.g, b.curedG+o.curedG, b.displacedMM3+o.displacedMM3
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

// weights is what the loaf is made of.
type weights struct {
	all                   cutMass // base, icing and toppings of the whole loaf
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
	w.onBars = s.units()
	for i := range s.Embeds {
		if k := &s.Embeds[i]; k.Rod {
			n := float64(k.inLoaf(s.Plan.Mould.AlongMM()))
			w.rod.add(inBar{g: n * k.PieceG.orUnknown(), displacedMM3: n * k.SubmergedMM3.V})
		}
	}
	return w
}

// piece is a part of the loaf with what stands in it.
func (w *weights) piece(part float64, in inBar) cutMass {
	g := cutMass{base: w.all.base * part, icing: w.all.icing * part, embed: in.g, topping: w.all.topping * part}
	if w.displacedMM3 > 0 {
		g.base += (w.displacedMM3*part - in.displacedMM3) / 1000 * w.gml
	}
	return g
}

// icingPart is the part of all icing that one usual bar gets: of what is piped onto the bars, each as much; of any other, its part of the loaf.
func (s *Sheet) icingPart() float64 {
	p, n := &s.Plan.Piping, len(s.Cut.Bars)
	switch {
	case !p.Shaped() || p.Spoons() || p.Along == PipeLoaf || s.Piping.Lacks != "" || n == 0:
		return s.barPart()
	case s.Plan.Mould.Shape == ShapeTube:
		return 1
	}
	return 1 / float64(n)
}

// units is the part of the icing's units that stands on every bar where each is meant for one; nil where the icing lies along the loaf. A tube's stand
// on its top, which is its last round.
func (s *Sheet) units() []float64 {
	at := s.Piping.At
	if len(at) == 0 || at[0].Bar == 0 || len(s.Cut.Bars) == 0 {
		return nil
	}
	on := make([]float64, len(s.Cut.Bars))
	for _, x := range at {
		bar := x.Bar - 1
		if s.Plan.Mould.Shape == ShapeTube {
			bar = len(on) - 1
		}
		if len(at) < s.Piping.Units { // more than have a place: as many on each
			return evenly(on)
		}
		on[bar] += 1 / float64(len(at))
	}
	return on
}

func evenly(parts []float64) []float64 {
	for i := range parts {
		parts[i] = 1 / float64(len(parts))
	}
	return parts
}
