package swirl

import "math"

// dollops is batter heaped by the spoonful. Each dollop is a dome that lies on whatever was heaped before it, so a
// point belongs to the first dollop, in the order they fell, whose dome reaches above it. Borders are therefore always
// the rounded back of an earlier dollop, lapped by later ones like scales.
type dollops struct {
	domes []dome
	cell  float64 // mm, mesh by which the dollops that may have a point are found
	n     [3]int
	start []int32 // first entry in near of each mesh cell, and one past the last
	near  []int32
	rest  int     // portion of what no dome reaches
	off   float64 // of the batter: the worst error of a share left by dealing
}

// dome is the back of one dollop: a flattened heap, longer one way, leaning, that slumps over steep places.
type dome struct {
	x, y, top    float64 // mm, its middle and the height there
	xx, xy, yy   float64 // 1/mm², the quadratic form that is 1 at the dollop's edge
	high         float64 // mm, how far it falls from the middle to the edge
	leanX, leanY float64 // rise of the back per mm
	long, short  float64 // mm, its two half widths
	portion      int
}

const (
	domeReach = 1.7 // in half widths: further out a dollop has slumped away altogether
	domeRound = 0.4 // 1 is a parabola; less is flatter on top and steeper at the edge
)

// height is that of the dollop's back at a place.
func (h *dome) height(x, y float64) float64 {
	e, f := x-h.x, y-h.y
	q := h.xx*e*e + h.xy*e*f + h.yy*f*f
	if q > domeReach*domeReach {
		return math.Inf(-1)
	}
	return h.top + h.leanX*e + h.leanY*f - h.high*q*(domeRound+(1-domeRound)*q)
}

// between bounds the height over the places from near to far mm off the middle.
func (h *dome) between(near, far float64) (low, high float64) {
	lean := (math.Abs(h.leanX) + math.Abs(h.leanY)) * far
	fall := func(r float64) float64 { return h.high * r * r * (domeRound + (1-domeRound)*r*r) }
	low, high = math.Inf(-1), math.Inf(-1)
	if near < domeReach*h.long {
		high = h.top + lean - fall(near/h.long)
	}
	if far < domeReach*h.short {
		low = h.top - lean - fall(far/h.short)
	}
	return low, high
}

func (f *dollops) label(x, y, z float64) int {
	i := max(0, min(int(x/f.cell), f.n[0]-1))
	j := max(0, min(int(y/f.cell), f.n[1]-1))
	k := max(0, min(int(z/f.cell), f.n[2]-1))
	c := (i*f.n[1]+j)*f.n[2] + k
	for _, n := range f.near[f.start[c]:f.start[c+1]] {
		if h := &f.domes[n]; z < h.height(x, y) {
			return h.portion
		}
	}
	return f.rest
}

// index lists for every mesh cell the domes that can be the first above a point in it.
func (f *dollops) index(box Box, cell float64) {
	f.cell = cell
	for i, side := range [3]float64{box.L, box.W, box.H} {
		f.n[i] = int(math.Ceil(side / cell))
	}
	f.start = append(f.start[:0], 0)
	var beside, here []int32
	var span []vec2
	for i := range f.n[0] {
		x := float64(i) * cell
		beside = beside[:0]
		for k := range f.domes {
			h := &f.domes[k]
			if max(x-h.x, h.x-x-cell) < domeReach*h.long {
				beside = append(beside, int32(k))
			}
		}
		for j := range f.n[1] {
			here, span = f.spans(beside, x, float64(j)*cell, here[:0], span[:0])
			f.stack(here, span)
		}
	}
}

// spans lists those of the domes that reach into the cell at (x, y), with the least and greatest height of each there.
func (f *dollops) spans(beside []int32, x, y float64, here []int32, span []vec2) ([]int32, []vec2) {
	for _, n := range beside {
		h := &f.domes[n]
		ex, ey := max(x-h.x, h.x-x-f.cell, 0), max(y-h.y, h.y-y-f.cell, 0)
		near, reach := ex*ex+ey*ey, domeReach*h.long
		if near >= reach*reach {
			continue
		}
		fx, fy := max(h.x-x, x+f.cell-h.x), max(h.y-y, y+f.cell-h.y)
		low, high := h.between(math.Sqrt(near), math.Sqrt(fx*fx+fy*fy))
		here, span = append(here, n), append(span, vec2{low, high})
	}
	return here, span
}

// stack lists the domes for the cells above one another at one place.
func (f *dollops) stack(here []int32, span []vec2) {
	for k := range f.n[2] {
		low, high := float64(k)*f.cell, float64(k+1)*f.cell
		for i, n := range here {
			if span[i].z > low {
				f.near = append(f.near, n)
			}
			if span[i].y >= high {
				break
			}
		}
		f.start = append(f.start, int32(len(f.near)))
	}
}
