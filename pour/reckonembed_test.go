package pour_test

import (
	"fmt"
	"math"

	"pgregory.net/rapid"

	"pourbench/pour"
)

// reckonedKind is a kind of embed by plain arithmetic.
type reckonedKind struct {
	e            pour.Embed
	extent       float64
	wide         float64 // across the loaf as it lies
	below, whole float64 // of one piece, mm³
	g, cured     float64 // of one piece
	rod          bool
	along        []float64 // centres
	across       []float64 // centres across, from the middle, by row of bars
}

// wideOf is how much of the loaf's width an embed takes: as long as the same piece turned by a quarter takes of its length; what any turn may bring
// takes alike both ways.
func wideOf(e pour.Embed) float64 {
	switch e.Outline {
	case "rod":
		if e.WidthMM > 0 {
			return e.WidthMM
		}
		return e.LengthMM
	default:
		e.TurnDeg += 90
		_, wide := areaAndExtent(e, 0)
		return wide
	}
}

// areaAndExtent is the area of an embed's outline, its length along the loaf as it lies, and the length of its edge.
func areaAndExtent(e pour.Embed, loaf float64) (area, extent float64) {
	sin, cos := math.Abs(math.Sin(e.TurnDeg*math.Pi/180)), math.Abs(math.Cos(e.TurnDeg*math.Pi/180))
	a, b := e.LengthMM, e.WidthMM
	if b == 0 {
		b = a
	}
	switch e.Outline {
	case "box":
		area, extent = a*b, a*cos+b*sin
		if e.AnyTurn {
			extent = math.Hypot(a, b)
		}
	case "ellipse":
		area, extent = math.Pi*a*b/4, math.Sqrt(a*a*cos*cos+b*b*sin*sin)
		if e.AnyTurn {
			extent = math.Max(a, b)
		}
	case "rod":
		area, extent = loaf*b, loaf
	case "own":
		area, extent = triangle(e)
	default:
		area, extent = math.Pi*a*a/4, a
	}
	return area, extent
}

// triangle is what the three corners drawn come to: 7 wide as drawn, from 0 to the larger of 1 and the last high.
func triangle(e pour.Embed) (area, extent float64) {
	k := e.LengthMM / 7
	m := k
	if e.WidthMM > 0 {
		m = e.WidthMM / math.Max(1, e.Corners[5])
	}
	x := [3]float64{0, 7 * k, 5 * k}
	y := [3]float64{0, m, e.Corners[5] * m}
	sin, cos := math.Sincos(e.TurnDeg * math.Pi / 180)
	low, high := math.Inf(1), math.Inf(-1)
	for i := range x {
		along := x[i]*cos - y[i]*sin
		low, high = math.Min(low, along), math.Max(high, along)
	}
	extent = high - low
	area = math.Abs(x[1]*y[2]-x[2]*y[1]) / 2
	if e.AnyTurn {
		side := [3]float64{math.Hypot(x[1], y[1]), math.Hypot(x[2]-x[1], y[2]-y[1]), math.Hypot(x[2], y[2])}
		longest := max(side[0], side[1], side[2])
		extent = side[0] * side[1] * side[2] / (2 * area) // twice the radius of the circle through all three
		if rest := side[0]*side[0] + side[1]*side[1] + side[2]*side[2] - longest*longest; longest*longest >= rest {
			extent = longest
		}
	}
	return area, extent
}

// reckonKind works one kind out; base is what the base comes to.
func reckonKind(p pour.Plan, e pour.Embed, dryPart float64) reckonedKind {
	k := reckonedKind{e: e, rod: e.Outline == "rod"}
	m := p.Mould
	area, extent := areaAndExtent(e, m.LengthMM)
	k.extent, k.wide = extent, wideOf(e)
	high := e.HeightMM
	if high == 0 || e.Outline == "ball" {
		high = e.LengthMM
	}
	deep := math.Min(math.Max(high-e.OutMM, 0), m.FillMM)
	r := e.LengthMM / 2
	switch {
	case e.Outline == "ball": // the ball to the depth that it is below: π·d²·(3R − d)/3 from its bottom
		k.whole, k.below = 4*math.Pi*r*r*r/3, math.Pi*deep*deep*(3*r-deep)/3
	case k.rod && e.WidthMM == 0 && e.HeightMM == 0:
		k.whole = math.Pi * r * r * m.LengthMM
		k.below = (r*r*math.Acos((r-deep)/r) - (r-deep)*math.Sqrt(2*r*deep-deep*deep)) * m.LengthMM
	default:
		k.whole, k.below = area*high, area*deep
	}
	density := e.DensityGML
	if density == 0 {
		density = map[string]float64{"": 1.05, "melt_and_pour": 1.12, "dried": 0.4, "other": 1}[e.Material]
	}
	if k.g = e.G; k.g == 0 {
		k.g = k.whole / 1000 * density
	}
	k.cured = k.g
	if e.Material == "" {
		age := e.MadeDays
		if age == 0 {
			age = 3
		}
		left := 1 - 0.1*math.Sqrt(math.Min(age/28, 1))
		k.cured = k.g * math.Min(1, dryPart/left*100/(100-p.Base.FinalMoisturePercent))
	}
	return k
}

// reckonEmbeds works all kinds out, with the places of their pieces between the cuts that the sheet has.
func reckonEmbeds(p pour.Plan, s pour.Sheet, base *reckoned) []reckonedKind {
	var out []reckonedKind
	for _, e := range p.Top.Embeds {
		k := reckonKind(p, e, base.dry/base.poured)
		rows := [][2]float64{{0, p.Mould.WidthMM}}
		if p.Mould.Shape == "slab" && p.Mould.BarWidthMM > 0 && len(s.Cut.Bars) > 0 {
			rows = nil
			for _, b := range s.Cut.Bars {
				if b.StartMM == s.Cut.Bars[0].StartMM {
					rows = append(rows, [2]float64{b.LeftMM, b.RightMM})
				}
			}
		}
		for _, row := range rows {
			n := math.Max(float64(e.PerBar), 1)
			for i := range int(n) {
				k.across = append(k.across, row[0]+(row[1]-row[0])*(float64(i)+0.5)/n+e.AcrossMM-p.Mould.WidthMM/2)
			}
		}
		switch {
		case k.rod:
			k.along = []float64{p.Mould.LengthMM / 2}
		case e.In == "at":
			k.along = e.AtMM
		default:
			for i, b := range s.Cut.Columns() {
				if i%max(e.Every, 1) == 0 {
					k.along = append(k.along, (b.StartMM+b.EndMM)/2+e.AlongMM)
				}
			}
		}
		out = append(out, k)
	}
	return out
}

// inLoaf is how many pieces stand in the loaf.
func (k reckonedKind) inLoaf(p pour.Plan) float64 {
	n := 0.0
	for _, x := range k.along {
		if x >= 0 && x <= p.Mould.LengthMM {
			n += float64(len(k.across))
		}
	}
	return n
}

// displacedBy is the volume of base that embeds take the place of, mm³.
func displacedBy(p pour.Plan, kinds []reckonedKind) float64 {
	all := sumOf(kinds, func(k reckonedKind) float64 { return k.below * k.inLoaf(p) })
	return math.Min(all, 0.9*p.Mould.LengthMM*p.Mould.WidthMM*p.Mould.FillMM)
}

// embedLeaves puts what the figures have to say of embeds into want.
func embedLeaves(t *rapid.T, p pour.Plan, s pour.Sheet, kinds []reckonedKind, got, want leaves) {
	t.Helper()
	n := 0
	if len(kinds) == 0 {
		want["embed_kinds"] = ""
	}
	defer func() {
		if n == 0 {
			want["embeds"] = ""
		}
	}()
	gml := s.Base.Size.PouredG / s.Base.Size.PouredML
	rim := p.Cut.RimMM
	if rim == 0 {
		rim = math.Max(p.Mould.HeightMM-p.Mould.FillMM, 0)
	}
	for i, k := range kinds {
		at := fmt.Sprintf("embed_kinds[%d].", i)
		worst, need := math.NaN(), math.NaN()
		for _, along := range k.along {
			for _, across := range k.across {
				leaf := fmt.Sprintf("embeds[%d].", n)
				n++
				sight := rim * math.Tan(p.Cut.SightDeg*math.Pi/180)
				if p.Cut.EyeMM > 0 {
					sight = rim / p.Cut.EyeMM * math.Abs(along-p.Mould.LengthMM/2)
					if len(s.Cut.AcrossMM) > 0 {
						sight = math.Max(sight, rim/p.Cut.EyeMM*math.Abs(across))
					}
				}
				kerf := 0.3
				if p.Cut.KerfMM > 0 {
					kerf = 0
				}
				sum := p.Cut.PlaceMM + p.Cut.WanderMM + sight + kerf
				want[leaf+"kind"] = k.e.Name
				want[leaf+"centre_mm"], want[leaf+"across_mm"] = along, across
				want[leaf+"place_mm"], want[leaf+"wander_mm"], want[leaf+"sight_mm"], want[leaf+"half_kerf_mm"] = p.Cut.PlaceMM, p.Cut.WanderMM, sight, kerf
				want[leaf+"need_mm"], want[leaf+"usual_mm"] = sum, math.Sqrt(p.Cut.PlaceMM*p.Cut.PlaceMM+p.Cut.WanderMM*p.Cut.WanderMM+sight*sight+kerf*kerf)
				if !(math.Abs(need) >= math.Max(sum, p.Cut.ClearMM)) {
					need = math.Max(sum, p.Cut.ClearMM)
				}
				mark := got.number(t, leaf+"mark_mm")
				if !k.rod && (math.Abs(mark-along) > 0.25+1e-9 || math.Abs(mark*2-math.Round(mark*2)) > 1e-9) {
					t.Errorf("%s: %v is marked at %v", leaf, along, mark)
				}
				want[leaf+"mark_mm"] = mark
				if v := k.room(t, leaf, along, across, s, got, want); !math.IsNaN(v) && !(worst <= v) {
					worst = v
				}
			}
		}
		want[at+"name"], want[at+"material"] = k.e.Name, k.e.Material
		if k.e.Material == "" {
			want[at+"material"] = "cold_process"
		}
		want[at+"piece_g"], want[at+"all_g"], want[at+"cured_g"] = k.g, k.g*float64(len(k.along)*len(k.across)), k.cured
		want[at+"whole_ml"], want[at+"submerged_ml"], want[at+"displaces_g"] = k.whole/1000, k.below/1000, k.below*k.inLoaf(p)/1000*gml
		want[at+"extent_mm"], want[at+"extent_across_mm"], want[at+"clear_mm"], want[at+"need_mm"] = k.extent, k.wide, worst, need
		want[at+"hold_n"], want[at+"buried_percent"] = got[at+"hold_n"], got[at+"buried_percent"] // held by the shape's own tests
	}
}

// room reckons what is clear of one piece on all its sides, and its verdict; it gives the nearest side.
func (k reckonedKind) room(t *rapid.T, leaf string, along, across float64, s pour.Sheet, got, want leaves) float64 {
	t.Helper()
	nearer, bar := math.NaN(), math.NaN()
	sides := [4]float64{math.NaN(), math.NaN(), math.NaN(), math.NaN()}
	slab := s.Plan.Mould.Shape == "slab" && s.Plan.Mould.BarWidthMM > 0
	for i, b := range s.Cut.Bars {
		half, x := s.Plan.Cut.KerfMM/2+1e-6, across+s.Plan.Mould.WidthMM/2
		if k.rod || along < 0 || along > s.Plan.Mould.LengthMM || along < b.StartMM-half || along > b.EndMM+half || slab && (x < b.LeftMM-half || x > b.RightMM+half) {
			continue
		}
		bar = float64(i + 1)
		for side, face := range [4]float64{b.StartMM, b.EndMM, b.LeftMM, b.RightMM} {
			cuts, at, takes := s.Cut.CutsMM, along, k.extent
			if side > 1 {
				cuts, at, takes = s.Cut.AcrossMM, x, k.wide
			}
			for _, c := range cuts {
				if math.Abs(c-face) <= half {
					sides[side] = math.Abs(at-face) - takes/2
					if (side%2 == 0) != (at >= face) {
						sides[side] = -math.Abs(at-face) - takes/2
					}
				}
			}
			if !(nearer <= sides[side]) && !math.IsNaN(sides[side]) {
				nearer = sides[side]
			}
		}
		break
	}
	want[leaf+"bar"], want[leaf+"clear_a_mm"], want[leaf+"clear_b_mm"], want[leaf+"clear_mm"] = bar, sides[0], sides[1], nearer
	want[leaf+"clear_left_mm"], want[leaf+"clear_right_mm"] = sides[2], sides[3]
	need, usual, wanted := got.number(t, leaf+"need_mm"), got.number(t, leaf+"usual_mm"), s.Plan.Cut.ClearMM
	verdict := "clear"
	switch {
	case k.rod:
		verdict = "cut through"
	case math.IsNaN(bar):
		verdict = "in no bar"
	case nearer < usual || nearer <= 0:
		verdict = "will be cut"
	case nearer < need || nearer < wanted:
		verdict = "tight"
	}
	want[leaf+"verdict"] = verdict
	return nearer
}

// embedBars changes what the bars are reckoned to weigh without embeds into what they weigh with them: less base, and the pieces, on average.
func embedBars(p pour.Plan, s pour.Sheet, base *reckoned, kinds []reckonedKind, want leaves) {
	n := float64(len(s.Cut.Bars))
	if n == 0 || len(kinds) == 0 {
		return
	}
	ml, _ := want["base.batter_ml"].(float64)
	ml = (ml + sumOf(base.jugs, func(j reckonedJug) float64 { return j.mlOnTopOf })) * base.kept
	gml := base.poured * base.kept / ml
	dries := base.dry / base.poured * 100 / (100 - p.Base.FinalMoisturePercent)
	slab := p.Mould.Shape == "slab" && p.Mould.BarWidthMM > 0
	cut, cured := 0.0, 0.0
	for _, b := range s.Cut.Bars {
		part := (b.EndMM - b.StartMM) / p.Mould.LengthMM
		if slab {
			part *= (b.RightMM - b.LeftMM) / p.Mould.WidthMM
		}
		less := -base.displaced * part
		for _, k := range kinds {
			m := k.inBar(b, p, slab)
			less += m * k.below
			cut += m * k.g
			cured += m * k.cured
		}
		cut -= less / 1000 * gml
		cured -= less / 1000 * gml * dries
	}
	for key, more := range map[string]float64{"bars.cut_g": cut / n, "bars.cured_g": cured / n} {
		was, _ := want[key].(float64)
		want[key] = was + more
	}
}

// inBar is how many pieces stand in a bar, each in the first it touches: of a rod so much as is as long as the bar.
func (k reckonedKind) inBar(b pour.BarPiece, p pour.Plan, slab bool) float64 {
	n := 0.0
	for _, along := range k.along {
		for _, across := range k.across {
			x, half := across+p.Mould.WidthMM/2, p.Cut.KerfMM/2
			if k.rod {
				half = 0
			}
			if slab && (x < b.LeftMM-half || x > b.RightMM+half) {
				continue
			}
			switch {
			case k.rod:
				n += (b.EndMM - b.StartMM) / p.Mould.LengthMM
			case along < 0 || along > p.Mould.LengthMM: // beside the loaf
			case along >= b.StartMM-p.Cut.KerfMM/2 && along <= b.EndMM+p.Cut.KerfMM/2:
				n++
			}
		}
	}
	return n
}
