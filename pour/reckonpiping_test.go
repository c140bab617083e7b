package pour_test

import (
	"math"
	"strings"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// reckonedPiping is the icing as it is piped, worked out a second time: by elementary solids and by sums along strands.
type reckonedPiping struct {
	volume, wide, along, high, foot, carries float64 // one unit, mm, mm², mm³; how many times its strength the base carries
	units, counts                            float64
	density, net, made, need, left, rest     float64
	bags, fills, spoons                      float64 // spoons: jugs that are spooned on
}

// along is the length of a curve from 0, by Simpson's rule over its speed.
func along(speed func(float64) float64, to float64) float64 {
	const steps = 20000
	sum, h := speed(0)+speed(to), to/steps
	for i := 1; i < steps; i++ {
		sum += speed(float64(i)*h) * float64(2+2*(i%2))
	}
	return sum * h / 3
}

// tipReckoned is the area of the opening and what part of its circle that is.
func tipReckoned(p pour.Piping) (area, part float64) {
	r := p.TipMM / 2
	area = math.Pi * r * r
	switch p.Tip {
	case "star": // as many pairs of triangles as points
		area = float64(p.Points) * 2 * (r * p.ValleyMM / 2 * math.Sin(math.Pi/float64(p.Points)) / 2)
	case "slot":
		area = p.TipMM*p.NarrowMM + p.TipMM*(p.WideMM-p.NarrowMM)/2
	default:
		return area, 1
	}
	return area, area / (math.Pi * r * r)
}

// reckonPiece works one unit out, of a border as long as length.
func reckonPiece(p pour.Piping, length, width float64) reckonedPiping {
	swell, pull := p.Swell, p.Pull
	if swell == 0 {
		swell = 1
	}
	if pull == 0 {
		pull = 1
	}
	area, part := tipReckoned(p)
	strand, w := area*swell*swell/pull, p.TipMM*swell
	switch p.Shape {
	case "dollop":
		power := p.Profile
		if power == 0 {
			power = 1
		}
		v := along(func(z float64) float64 { return part * math.Pi * p.WidthMM * p.WidthMM / 4 * z * z }, 1) * p.HeightMM
		if power != 1 { // the cone is summed, any other profile is its closed form
			v = part * math.Pi * p.WidthMM * p.WidthMM / 4 * p.HeightMM / (1 + 2*power)
		}
		return reckonedPiping{volume: v, wide: p.WidthMM, along: p.WidthMM, high: p.HeightMM, foot: math.Pi * p.WidthMM * p.WidthMM / 4, carries: 5.69}
	case "rosette":
		v, tiers := 0.0, max(1, p.Tiers)
		ends := func(i int) float64 { return math.Max(p.CoilFromMM, p.CoilMM-float64(i)*w/2) }
		for i := range tiers {
			// the coil as r over the angle, once round at least
			from, to := p.CoilFromMM, ends(i)
			angle := 2 * math.Pi * math.Max(1, (to-from)/(w*(1-p.OverlapPercent/100)))
			coil := along(func(at float64) float64 { return math.Hypot((to-from)/angle, from+(to-from)*at/angle) }, angle)
			// and the body under the next coil, slice by slice, where no hole is left
			top := 0.0
			if i+1 < tiers {
				top = ends(i+1) + w/2
			}
			body := 0.0
			if 2*from <= w {
				body = along(func(z float64) float64 {
					r := (to+w/2)*(1-z/w) + top*z/w
					return strand / (w * w) * 4 * r * r
				}, w)
			}
			v += math.Max(strand*coil, body)
		}
		d := 2*p.CoilMM + w
		return reckonedPiping{volume: v, wide: d, along: d, high: w * float64(tiers), foot: math.Pi * d * d / 4, carries: 5.69}
	case "shells":
		v := part*(4.0/3*math.Pi*p.HeadMM*p.WidthMM/2*p.HeightMM)/4 + part*(math.Pi*p.WidthMM/2*p.HeightMM*p.TailMM/3)/2
		return reckonedPiping{volume: v, wide: p.WidthMM, along: p.HeadMM + p.TailMM, high: p.HeightMM, foot: math.Pi*p.HeadMM*p.WidthMM/4 + p.WidthMM*p.TailMM/2, carries: 5.69}
	case "rope":
		longer := 1.0
		if p.WindMM > 0 {
			longer = along(func(float64) float64 { return math.Hypot(1, 2*math.Pi*p.WindMM/p.PitchMM) }, 1)
		}
		d := w + 2*p.WindMM
		return reckonedPiping{volume: strand * length * longer, wide: d, along: length, high: d, foot: d * length, carries: 2 + math.Pi}
	case "ruffle":
		steep := 2 * math.Pi * p.SwingMM / p.WaveMM
		longer := along(func(x float64) float64 { return math.Hypot(1, steep*math.Cos(2*math.Pi*x)) }, 1)
		d := w + 2*p.SwingMM
		if p.Tip == "slot" {
			d = p.WideMM + 2*p.SwingMM
		}
		return reckonedPiping{volume: strand * length * longer, wide: d, along: length, high: w, foot: d * length, carries: 2 + math.Pi}
	}
	mean := map[string]float64{"": 0.5, "waves": 0.5, "swoops": 1.0 / 3, "points": math.Pi / 12}[p.Relief]
	return reckonedPiping{volume: length * width * (p.LayerMM + mean*p.ReliefMM), wide: width, along: length, high: p.LayerMM + p.ReliefMM, foot: length * width, carries: 2 + math.Pi}
}

// reckonLay counts units: so many on every bar, or rows along the loaf.
func reckonLay(p pour.Piping, m pour.Mould, wide float64, bars int) reckonedPiping {
	border, long := p.Shape == "rope" || p.Shape == "ruffle", m.LengthMM
	if m.Shape == "cavity" {
		long *= float64(m.Cavities)
	}
	switch {
	case p.Shape == "spooned":
		r := reckonPiece(p, reckonedArea(m)/m.WidthMM, m.WidthMM)
		r.units = 1
		return r
	case p.Along == "loaf":
		r := reckonPiece(p, long, m.WidthMM)
		r.units, r.counts = math.Max(1, float64(p.Rows)), math.Max(1, float64(p.Rows))*long/100
		if !border {
			step, fit := r.along, 0.0
			if p.Shape == "shells" {
				step *= 1 - p.OverlapPercent/100
			}
			for end := r.along; end <= long+1e-9; end += step { // laid one after the other
				fit++
			}
			r.units *= fit
			r.counts = r.units
		}
		return r
	}
	width := m.WidthMM
	if m.Shape == "slab" && m.BarWidthMM > 0 {
		width = m.BarWidthMM
		if bars > 0 { // what is left over across may go to the bars, or to one of them
			width = wide
		}
	}
	r := reckonPiece(p, width, width)
	r.units = float64(bars) * math.Max(1, float64(p.PerBar))
	if r.counts = r.units; border {
		r.counts *= width / 100
	}
	return r
}

// reckonPiping sizes an icing that has a shape and says how it is piped; one is a gram of all its oils and ml how much room that gram's batter takes.
// It gives the grams of all oils. false: the shape cannot be worked out.
func reckonPiping(s pour.Sheet, one *reckoned, mlPerG float64) (r reckonedPiping, all float64, ok bool) {
	p, m := s.Plan.Piping, s.Plan.Mould
	if r = reckonLay(p, m, cutOf(s).wide(), len(s.Cut.Bars)); r.units == 0 {
		return r, 0, false
	}
	r.density = p.CupG / p.CupML
	if p.CupML == 0 {
		r.density = one.poured / mlPerG / (1 + p.OverrunPercent/100)
	}
	r.net = r.units * r.volume / 1000 * r.density
	parts := []float64{1}
	if s.Plan.Icing.Bags != "one" {
		sum := sumOf(s.Plan.Icing.Jugs, func(j pour.Jug) float64 { return j.SharePercent })
		parts = nil
		for _, j := range s.Plan.Icing.Jugs {
			if j.SharePercent > 0 {
				parts = append(parts, j.SharePercent/sum)
			}
		}
	}
	r.bags = float64(len(parts))
	byBag := p.ResidueBagG > 0 && p.Shape != "spooned"
	from := func(net float64) float64 {
		if byBag {
			return net + r.bags*p.ResidueBagG
		}
		return net * 100 / (100 - p.ResiduePercent)
	}
	r.need = from(r.net)
	switch s.Plan.Icing.Size {
	case "oils":
		r.made = one.poured * s.Plan.Icing.OilsG
	case "bar":
		cut := cutOf(s)
		share := cut.part(m)
		if cut.count() > 0 { // else the mould's own bar counts
			share = cut.icingShare(s)
		}
		r.made = from(s.Plan.Icing.PerBarG / share)
	case "layer":
		r.made = from(reckonedArea(m) * s.Plan.Icing.LayerMM / 1000 * r.density)
	case "shape":
		r.made = math.Max(r.need, p.LeastG)
		r.rest, r.left = r.made-r.need, r.need-r.net
	}
	if s.Plan.Icing.Size != "shape" {
		if r.left = r.made * p.ResiduePercent / 100; byBag {
			r.left = r.bags * p.ResidueBagG
		}
	}
	for _, part := range parts {
		r.fills += math.Ceil((r.made-r.rest)*part/p.BagG - 1e-9)
	}
	if p.Shape == "spooned" {
		r.bags, r.fills = 0, 0
		for _, j := range s.Plan.Icing.Jugs {
			if j.SharePercent > 0 {
				r.spoons++
			}
		}
	}
	return r, r.made / one.poured, true
}

// pipingLeaves puts what a script reads of the piping into want.
func (r reckonedPiping) leaves(s pour.Sheet, want leaves) {
	put := func(key string, v float64) { want["piping."+key] = v }
	p := s.Plan.Piping
	put("units", r.units)
	put("unit_ml", r.volume/1000)
	put("density_g_ml", r.density)
	put("net_g", r.net)
	put("need_g", r.need)
	put("left_g", r.left)
	put("rest_g", r.rest)
	put("bags", r.bags)
	put("fills", r.fills)
	put("across_mm", r.wide)
	put("high_mm", r.high)
	put("mean_mm", r.volume/r.foot)
	put("peak_needed_mm", r.volume/r.foot*12/r.carries)
	if put("lane_mm", s.Plan.Cut.KerfMM+2+2*s.Plan.Cut.WanderMM); s.Plan.Mould.Shape == "cavity" {
		want["piping.lane_mm"] = nil
	}
	if put("pipe_min", r.counts*p.UnitS/60+r.fills*p.FillMin); p.Shape == "spooned" {
		put("pipe_min", r.spoons*s.Plan.Run.PipeMin)
	}
	gap := math.Inf(1)
	for i, bar := range s.Cut.Bars {
		if i > 0 && bar.StartMM > s.Cut.Bars[i-1].StartMM {
			gap = math.Min(gap, (bar.StartMM+bar.EndMM)/2-(s.Cut.Bars[i-1].StartMM+s.Cut.Bars[i-1].EndMM)/2)
		}
	}
	takes := r.along
	if p.Shape == "rope" || p.Shape == "ruffle" {
		takes = r.wide * math.Max(1, float64(p.PerBar))
	}
	if want["piping.gap_mm"] = gap - takes; p.Along == "loaf" || p.Shape == "spooned" || math.IsInf(gap, 1) || s.Plan.Mould.Shape == "cavity" {
		want["piping.gap_mm"] = nil
	}
	want["piping.window_from_min"], want["piping.window_to_min"] = nil, nil
	want["icing.shape_g"] = r.volume / 1000 * r.density
}

// pipingReckoned sets what of an icing comes to stand on the loaf and how much more room it takes whipped, and puts what a script reads into want.
func (r *reckoned) pipingReckoned(t *rapid.T, s pour.Sheet, got, want leaves) {
	t.Helper()
	want["icing.made_g"], want["icing.shape_g"], want["piping"] = r.poured, nil, nil
	if s.Plan.Piping.Shape == "" || s.Plan.Piping.Shape == "free" {
		return
	}
	delete(want, "piping")
	ml := got.number(t, "icing.batter_ml") + sumOf(r.jugs, func(j reckonedJug) float64 { return j.mlOnTopOf })
	one := *r
	one.poured = r.poured / r.all
	p, all, ok := reckonPiping(s, &one, ml/r.all)
	if !ok { // none of it fits
		for path := range got {
			if key, ok := strings.CutPrefix(path, "piping."); ok && key != "density_g_ml" {
				want[path] = nil
			}
		}
		if want["piping.density_g_ml"] = got.number(t, "piping.density_g_ml"); s.Piping.Lacks == "" {
			t.Error("not one unit fits, which is not said")
		}
		r.kept, r.air = 1-s.Plan.Piping.ResiduePercent/100, r.poured/ml/got.number(t, "piping.density_g_ml")
		return
	}
	if !near(all, r.all, 1e-9) {
		t.Errorf("of the piped icing's oils there are %v g, reckoned %v", r.all, all)
	}
	r.kept, r.air = 1-(p.left+p.rest)/p.made, r.poured/ml/p.density
	p.leaves(s, want)
}
