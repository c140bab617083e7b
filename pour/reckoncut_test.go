package pour_test

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
)

// laid is a length as it is cut: what is laid end to end, with a cut between every two.
type laid struct {
	kerf, at float64
	begun    bool
	cuts     []float64
}

func (l *laid) piece(length float64) [2]float64 {
	if l.begun {
		l.cuts = append(l.cuts, l.at+l.kerf/2)
		l.at += l.kerf
	}
	from := l.at
	l.at, l.begun = from+length, true
	return [2]float64{from, l.at}
}

// cutLaid is where a loaf is cut.
type cutLaid struct {
	bars                 [][2]float64
	cuts                 []float64
	trimA, trimB, slice  [2]float64
	rows                 [][2]float64 // across
	acrossCuts           []float64
	sides                float64
	length, width, thick float64
}

// lengthwise lays bars of a thickness into a length by plain arithmetic: so many, or as many as there is room for.
func lengthwise(c pour.Cut, length, bar float64, count int) (r cutLaid) {
	k := c.KerfMM
	cutA, cutB := c.TrimAMM > 0 || c.Left == "trims", c.TrimBMM > 0 || c.Left == "trims"
	trimA, trimB := c.TrimAMM, c.TrimBMM
	room := length
	for _, x := range []struct {
		there bool
		mm    float64
	}{{cutA, trimA}, {cutB, trimB}, {c.SliceMM > 0, c.SliceMM}} {
		if x.there {
			room -= x.mm + k
		}
	}
	n := count
	if n == 0 {
		n = max(0, int(math.Floor((room+k)/(bar+k)+1e-9)))
	}
	left := room - float64(n)*bar - float64(n-1)*k
	toBars := c.Left == "bars" || c.By == "count" && c.Left == ""
	if c.By == "count" && left < 0 {
		toBars, cutA, cutB = true, c.TrimAMM > 0, c.TrimBMM > 0
		room = length
		if cutA {
			room -= trimA + k
		}
		if cutB {
			room -= trimB + k
		}
		if c.SliceMM > 0 {
			room -= c.SliceMM + k
		}
	}
	even := (room - float64(n-1)*k) / float64(n)
	if n == 0 || toBars && even <= 0 {
		return cutLaid{}
	}
	first, last := bar, bar
	switch {
	case toBars:
		bar, first, last = even, even, even
	case c.Left == "trims":
		trimA, trimB = trimA+left/2, trimB+left/2
	case c.Left == "a" && cutA:
		trimA += left
	case c.Left == "a" && left > k+1e-9:
		cutA, trimA = true, left-k
	case c.Left == "a":
		first += left
	case cutB:
		trimB += left
	case left > k+1e-9:
		cutB, trimB = true, left-k
	default:
		last += left
	}
	l := laid{kerf: k}
	if cutA {
		r.trimA = l.piece(trimA)
	}
	if c.SliceMM > 0 && c.SliceAt != "b" {
		r.slice = l.piece(c.SliceMM)
	}
	for i := range n {
		t := bar
		if i == n-1 {
			t = last
		}
		if i == 0 {
			t = first + t - bar
		}
		r.bars = append(r.bars, l.piece(t))
	}
	if c.SliceMM > 0 && c.SliceAt == "b" {
		r.slice = l.piece(c.SliceMM)
	}
	if cutB {
		r.trimB = l.piece(trimB)
	}
	r.cuts = l.cuts
	return r
}

// cutOf is how the loaf of a sheet is cut. What is looked for, bars of one mass, own wires and marks and the best plan, is taken from the sheet: tests
// of their own hold that.
func cutOf(s pour.Sheet) cutLaid {
	p, m := s.Plan, s.Plan.Mould
	var r cutLaid
	long := m.LengthMM
	if m.Shape == "tube" {
		long = m.FillMM
	}
	switch by := p.Cut.By; {
	case m.Shape == "cavity": // no cut: a bar in each, as if they stood end to end
		for i := range m.Cavities {
			r.bars = append(r.bars, [2]float64{float64(i) * m.LengthMM, float64(i+1) * m.LengthMM})
		}
		long *= float64(m.Cavities)
	case by == "" || by == "bars":
		r = lengthwise(p.Cut, long, m.BarMM, 0)
	case by == "count":
		r = lengthwise(p.Cut, long, m.BarMM, p.Cut.Count)
	default:
		for _, b := range s.Cut.Columns() {
			r.bars = append(r.bars, [2]float64{b.StartMM, b.EndMM})
		}
		r.cuts = s.Cut.CutsMM
		r.trimA, r.trimB = [2]float64{0, s.Cut.TrimAMM}, [2]float64{long - s.Cut.TrimBMM, long}
		r.slice = [2]float64{s.Cut.SliceAt, s.Cut.SliceAt + s.Cut.SliceMM}
	}
	r.rows = [][2]float64{{0, m.WidthMM}}
	if m.Shape == "slab" && m.BarWidthMM > 0 {
		side := pour.Cut{KerfMM: p.Cut.KerfMM, Left: p.Cut.Left}
		if p.Cut.By == "count" && side.Left == "" {
			side.Left = "bars"
		}
		across := lengthwise(side, m.WidthMM, m.BarWidthMM, 0)
		r.rows, r.acrossCuts = across.bars, across.cuts
		r.sides = across.trimA[1] - across.trimA[0] + across.trimB[1] - across.trimB[0]
	}
	r.length, r.width = long, m.WidthMM
	for _, b := range r.bars {
		r.thick += (b[1] - b[0]) / float64(len(r.bars))
	}
	return r
}

// count is how many bars there are.
func (r cutLaid) count() float64 { return float64(len(r.bars) * len(r.rows)) }

// wide is the width of a bar, on average.
func (r cutLaid) wide() float64 {
	return sumOf(r.rows, func(w [2]float64) float64 { return w[1] - w[0] }) / float64(len(r.rows))
}

// part is a usual bar's part of the loaf; where no bar comes out it is the mould's.
func (r cutLaid) part(m pour.Mould) float64 {
	if r.count() > 0 {
		return r.thick * r.wide() / (r.length * r.width)
	}
	if m.Shape == "slab" && m.BarWidthMM > 0 {
		return m.BarMM * m.BarWidthMM / (r.length * r.width)
	}
	return m.BarMM / r.length
}

// brought is what toppings bring, g: onto the whole loaf, and onto every bar after the cut.
type brought struct{ loaf, later float64 }

// leaves puts what the cut must be into want: positions, and masses of a base and an icing that lie evenly.
func (r cutLaid) leaves(s pour.Sheet, base, icing *reckoned, kinds []reckonedKind, top brought, got, want leaves) {
	if r.count() == 0 {
		want["cut"] = nil
		return
	}
	put := func(key string, v any) { want["cut."+key] = v }
	list := func(key string, v []float64) {
		if len(v) == 0 {
			put(key, "")
		}
		for i, x := range v {
			put(fmt.Sprintf("%s[%d]", key, i), x)
		}
	}
	rounded := func(v []float64) (out []float64) {
		for _, x := range v {
			out = append(out, math.Round(2*x)/2)
		}
		return out
	}
	list("cuts_mm", r.cuts)
	list("marks_mm", rounded(r.cuts))
	list("across_mm", r.acrossCuts)
	list("across_marks_mm", rounded(r.acrossCuts))
	k, lane := s.Plan.Cut.KerfMM, s.Plan.Cut.KerfMM+2+2*s.Plan.Cut.WanderMM
	if s.Plan.Mould.Shape == "cavity" {
		k, lane = 0, 0
	}
	put("kerf_mm", k)
	put("lane_mm", lane)
	baseG, icingG, baseDry, icingDry := base.poured*base.kept, 0.0, base.dry*base.kept/(1-base.b.FinalMoisturePercent/100), 0.0
	if icing != nil {
		icingG, icingDry = icing.poured*icing.kept, icing.dry*icing.kept/(1-icing.b.FinalMoisturePercent/100)
	}
	area := r.length * r.width
	slab := len(r.rows) > 1 || r.sides > 0
	ml, _ := want["base.batter_ml"].(float64)
	ml = (ml + sumOf(base.jugs, func(j reckonedJug) float64 { return j.mlOnTopOf })) * base.kept
	gml := baseG / ml / 1000 // g/mm³
	more := func(part float64, in func(k reckonedKind) float64) (baseMore, embed, cured float64) {
		baseMore = base.displaced * part * gml
		for _, k := range kinds {
			n := in(k)
			baseMore, embed, cured = baseMore-n*k.below*gml, embed+n*k.g, cured+n*k.cured
		}
		return baseMore, embed, cured
	}
	onBars := icing != nil && r.piped(s)
	light, heavy := math.Inf(1), math.Inf(-1)
	for i, b := range r.bars {
		for j, w := range r.rows {
			part := (b[1] - b[0]) * (w[1] - w[0]) / area
			at := func(key string, v float64) { put(fmt.Sprintf("bars[%d].%s", i*len(r.rows)+j, key), v) }
			at("start_mm", b[0])
			at("end_mm", b[1])
			at("left_mm", w[0])
			at("right_mm", w[1])
			baseMore, embed, embedCured := more(part, func(k reckonedKind) float64 {
				return k.inBar(pour.BarPiece{StartMM: b[0], EndMM: b[1], LeftMM: w[0], RightMM: w[1]}, s.Plan, slab)
			})
			at("base_g", baseG*part+baseMore)
			icingPart := part
			if onBars {
				icingPart = 1 / r.count()
			}
			at("icing_g", icingG*icingPart)
			at("embed_g", embed)
			at("topping_g", top.loaf*part)
			g := (baseG+top.loaf)*part + icingG*icingPart + baseMore + embed
			at("cut_g", g)
			at("cured_g", (baseDry+top.loaf)*part+icingDry*icingPart+top.later+baseMore*baseDry/baseG+embedCured)
			light, heavy = math.Min(light, g), math.Max(heavy, g)
		}
	}
	put("lightest_g", light)
	put("heaviest_g", heavy)
	rest := func(part, length, from, to float64) float64 {
		baseMore, embed, _ := more(part, func(k reckonedKind) float64 { return r.astray(k, length, from, to, s.Plan) })
		if !onBars {
			baseMore += icingG * part
		}
		return (baseG+top.loaf)*part + baseMore + embed
	}
	trims := 0
	for _, t := range [][2]float64{r.trimA, r.trimB} {
		if t[1]-t[0] > 0 {
			put(fmt.Sprintf("trims[%d].start_mm", trims), t[0])
			put(fmt.Sprintf("trims[%d].end_mm", trims), t[1])
			put(fmt.Sprintf("trims[%d].g", trims), rest((t[1]-t[0])/r.length, (t[1]-t[0])/r.length, t[0], t[1]))
			trims++
		}
	}
	if trims == 0 {
		put("trims", "")
	}
	put("sample", nil)
	if r.slice[1] > r.slice[0] {
		delete(want, "cut.sample")
		put("sample.start_mm", r.slice[0])
		put("sample.end_mm", r.slice[1])
		put("sample.g", rest((r.slice[1]-r.slice[0])/r.length, (r.slice[1]-r.slice[0])/r.length, r.slice[0], r.slice[1]))
	}
	long := r.thick * float64(len(r.bars))
	sides := long * r.sides / area
	others := [2]float64{-2, -2} // from and to of what stands in no piece that is a stretch
	if sides > 0 {
		others[0] = -1
	} else {
		others[1] = -1
	}
	put("sides_g", rest(sides, 0, others[0], others[0]))
	put("kerf_g", rest((k*float64(len(r.cuts))*r.width+k*float64(len(r.acrossCuts))*long)/area, k*float64(len(r.cuts))/r.length, others[1], others[1]))
	for _, key := range []string{"gang_at_mm", "gang_pitch_mm", "gang_worst_mm"} {
		put(key, got["cut."+key])
	}
	opening, bed := any(nil), any(nil)
	if s.Plan.Mould.Shape == "loaf" {
		deep := (ml*1000 + base.displaced) / area
		stands, _ := want["bars.stands_mm"].(float64)
		tall := stands - deep // of the icing
		for _, x := range kinds {
			tall = max(tall, x.e.OutMM)
		}
		tall += deep
		opening, bed = tall, r.width
		if s.Plan.Cut.Lay == "side" {
			opening, bed = bed, opening
		}
	}
	put("opening_need_mm", opening)
	put("bed_need_mm", bed)
}

// astray is how many pieces of a kind stand between two places in no bar; of rods, the part.
func (r cutLaid) astray(k reckonedKind, part, from, to float64, p pour.Plan) float64 {
	slab := len(r.rows) > 1 || r.sides > 0
	n := 0.0
	if k.rod {
		for _, across := range k.across {
			n += part
			if x := across + r.width/2; from == -1 && slab && !slices.ContainsFunc(r.rows, func(w [2]float64) bool { return x >= w[0] && x < w[1] }) {
				n += r.thick * float64(len(r.bars)) / r.length
			}
		}
		return n
	}
	within := func(at, from, to float64) bool { // what stands on its end belongs to what comes after it
		return at >= from && (at < to || at <= to && to >= r.length-1e-9)
	}
	for _, along := range k.along {
		for _, across := range k.across {
			held := 0.0
			for _, b := range r.bars {
				for _, w := range r.rows {
					one := k
					one.along, one.across = []float64{along}, []float64{across}
					held += one.inBar(pour.BarPiece{StartMM: b[0], EndMM: b[1], LeftMM: w[0], RightMM: w[1]}, p, slab)
				}
			}
			stretch := false
			for _, x := range [][2]float64{r.trimA, r.trimB, r.slice} {
				stretch = stretch || x[1] > x[0] && within(along, x[0], x[1])
			}
			if held == 0 && along >= 0 && along <= r.length && (within(along, from, to) || from == -1 && !stretch) {
				n++
			}
		}
	}
	return n
}

// piped says whether the icing is piped onto each bar.
func (r cutLaid) piped(s pour.Sheet) bool {
	p := s.Plan.Piping
	return p.Shape != "" && p.Shape != "free" && p.Shape != "spooned" && p.Along != "loaf" && s.Piping.Lacks == "" && r.count() > 0
}

// icingShare is the part of the icing that one bar gets on average.
func (r cutLaid) icingShare(s pour.Sheet) float64 {
	if r.piped(s) {
		return 1 / r.count()
	}
	if r.count() == 0 {
		return math.NaN()
	}
	return r.part(s.Plan.Mould)
}
