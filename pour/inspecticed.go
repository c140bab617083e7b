package pour

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pourbench/pour/shape"
)

// leastIcedMM is from how much of a piece under the edge of a unit it is worth a word, mm: less is what the turned outlines are out by.
const leastIcedMM = 0.1

// inspectIced says which embeds lie where icing is piped or spooned: they are set into the base before it, so that it covers them, or the tip runs into
// what stands out. A tube's stand up its height while its icing is piped on its upper end, and what is set into the icing is put on after it.
func (s *Sheet) inspectIced() {
	if s.Icing == nil || len(s.Piping.At) == 0 || s.Plan.Mould.Shape == ShapeTube {
		return
	}
	units := s.Piping.inOrder()
	for i := range s.Embeds {
		switch k := &s.Embeds[i]; {
		case k.OutMM >= k.HeightMM || k.Rod && k.OutMM == 0: // set into the icing, or laid through the loaf
		case s.Plan.Piping.Spoons():
			s.inspectSpooned(k)
		default:
			s.inspectPiped(i, units)
		}
	}
}

// inOrder are the units in their order along the loaf.
func (p *PipingSheet) inOrder() []PipedAt {
	units := slices.Clone(p.At)
	slices.SortFunc(units, func(a, b PipedAt) int { return cmp.Compare(a.AlongMM, b.AlongMM) })
	return units
}

// free is how far off the middle across its bars a kind lies under no unit that is piped, the nearest such place in steps of half a millimetre, at most so
// far; false: there is none. The sheet needs no more than its cuts.
func (s *Sheet) free(e Embed, mostMM float64) (acrossMM float64, ok bool) {
	p := &s.Plan.Piping
	if s.Plan.Icing == nil || !p.Shaped() || p.Spoons() || p.Lacks() != "" || s.Plan.Mould.Shape == ShapeTube {
		return 0, true
	}
	l := p.lay(s.Plan.Mould, s.Cut)
	t := Sheet{Plan: s.Plan, Cut: s.Cut, Piping: PipingSheet{At: l.at, WidthMM: AsFigure(l.wide), AlongMM: AsFigure(l.along)}}
	units := t.Piping.inOrder()
	for off := 0.0; off <= max(mostMM, 0); off += markStepMM {
		for _, e.AcrossMM = range [...]float64{off, -off} {
			t.Plan.Top.Embeds, t.Embeds = []Embed{e}, nil
			t.embed()
			if n, _, _ := t.under(0, units); n == 0 {
				return e.AcrossMM, true
			}
		}
	}
	return 0, false
}

// inspectSpooned says where a spooned top is on average as high as what stands out of the base.
func (s *Sheet) inspectSpooned(k *EmbedSheet) {
	show, high := s.Plan.Show, s.Piping.MeanMM
	if !high.Known || k.OutMM > high.V-leastIcedMM || len(k.Pieces) == 0 {
		return
	}
	s.warn(warning("embed-iced", embedPlace(k.Name), fmt.Sprintf("%s: it stands %s out of the base, and the icing spooned over it lies %s high on average: it disappears", k.Name,
		show.LenNear(k.OutMM), show.LenNear(high.V)), "let it stand further out, spoon a lower top, or set it into the icing"))
}

// inspectPiped says how many pieces of a kind lie under units, which are in their order along the loaf, and of the one that lies furthest under, how far.
func (s *Sheet) inspectPiped(i int, units []PipedAt) {
	k, show, what := &s.Embeds[i], s.Plan.Show, s.Plan.Piping.called()
	n, most, at := s.under(i, units)
	if n == 0 {
		return
	}
	where := ""
	switch shown, turn := s.shown(i); {
	case k.Rod:
		where = fmt.Sprintf("a %s reaches %s over it", what, show.LenNear(most))
	case most >= min(shown.Extent(turn), shown.ExtentAcross(turn)):
		where = fmt.Sprintf("a %s covers the one at %s from end A", what, show.LenNear(at))
	default:
		where = fmt.Sprintf("a %s reaches %s over the one at %s from end A", what, show.LenNear(most), show.LenNear(at))
	}
	s.warn(warning("embed-iced", embedPlace(k.Name), fmt.Sprintf("%s: %d of %d pieces lie where icing is piped: %s, and %s", k.Name, n, len(k.Pieces), where, s.becomes(k)),
		"set it beside the icing, or pipe fewer, smaller or otherwise placed units"))
}

// under is how many pieces of a kind lie under units, how far under the one that lies furthest is, mm, and where along the loaf its middle is.
func (s *Sheet) under(i int, units []PipedAt) (n int, most, atMM float64) {
	shown, turn := s.shown(i)
	if min(shown.Extent(turn), shown.ExtentAcross(turn)) < leastIcedMM {
		return 0, 0, 0 // it lies wholly below the surface
	}
	unit := s.Plan.Piping.outline(&s.Piping)
	reach := (math.Hypot(shown.Extent(turn), shown.ExtentAcross(turn)) + math.Hypot(unit.Extent(0), unit.ExtentAcross(0))) / 2
	known := map[shape.Point]float64{} // most pieces stand to the units of their bar as the ones before
	for _, p := range s.Embeds[i].Pieces {
		under := 0.0
		first, _ := slices.BinarySearchFunc(units, p.CentreMM-reach, func(u PipedAt, x float64) int { return cmp.Compare(u.AlongMM, x) })
		for _, u := range units[first:] {
			if u.AlongMM > p.CentreMM+reach {
				break
			}
			apart := shape.Point{X: round3(u.AlongMM - p.CentreMM), Y: round3(u.AcrossMM - p.AcrossMM)}
			if math.Hypot(apart.X, apart.Y) >= reach {
				continue
			}
			if _, ok := known[apart]; !ok {
				known[apart] = -shape.Gap(shown, turn, unit, 0, apart)
			}
			under = max(under, known[apart])
		}
		if under < leastIcedMM {
			continue
		}
		if n++; under > most {
			most, atMM = under, p.CentreMM
		}
	}
	return n, most, atMM
}

// becomes words what becomes of a piece under a unit.
func (s *Sheet) becomes(k *EmbedSheet) string {
	switch {
	case k.OutMM == 0:
		return "what lies under it is not seen"
	case k.OutMM < s.Piping.HighMM.V:
		return "what stands out is in the tip's way or disappears"
	}
	return "what stands out is in the tip's way"
}

// shown is what a kind of embed covers of the base's surface or above it, and by how much it is turned: a ball or a round rod of which less than half
// stands out is narrower there than it is, and one that may lie any way round counts as the circle around it.
func (s *Sheet) shown(i int) (shape.Outline, float64) {
	k, e := &s.Embeds[i], &s.Plan.Top.Embeds[i]
	half := k.HeightMM / 2
	if k.OutMM < half {
		half = math.Sqrt(k.OutMM * (k.HeightMM - k.OutMM)) // r² = c² + (r − out)²
	}
	switch {
	case e.Outline == OutlineBall:
		return shape.RoundOutline(2 * half), 0
	case k.RoundRod:
		return shape.BoxOutline(k.ExtentMM, 2*half), 0
	case e.AnyTurn && !k.Rod:
		return shape.RoundOutline(k.ExtentMM), 0
	}
	return k.Outline, k.TurnRad
}

// outline is what one unit covers of the base, about the middle by which it stands: a disc, a strip as long as its row or across its bar, or a shell, half
// an oval for its head towards end A and a tail that ends in a point.
func (p *Piping) outline(unit *PipingSheet) shape.Outline {
	wide, along := unit.WidthMM.V, unit.AlongMM.V
	switch {
	case p.border() && p.Along == PipeLoaf:
		return shape.BoxOutline(along, wide)
	case p.border():
		return shape.BoxOutline(wide, along)
	case p.Shape == PipeShells:
		const steps = 24 // of the half oval
		o := shape.Outline{Corners: []shape.Point{{X: along / 2}}}
		for i := range steps + 1 {
			sin, cos := math.Sincos(math.Pi * (0.5 + float64(i)/steps))
			o.Corners = append(o.Corners, shape.Point{X: p.HeadMM*(1+cos) - along/2, Y: wide / 2 * sin})
		}
		return o
	}
	return shape.RoundOutline(wide)
}
