package swirl

import "math"

// heap is batter spooned into the mould: how high it stands after every act, over a mesh of places. A point belongs to the first act whose
// batter reaches above it. In every cross-section each act lays its share exactly; in between, heights are taken in proportion, which
// keeps that.
type heap struct {
	box        Box
	nx, ny     int
	perX, perY float64     // meshes per mm
	high       [][]float32 // mm, after each act
	portion    []int
	act        []int // of the script, rising
	done       int   // how many of them are laid
}

const (
	heapAcross = 64  // meshes of a heap across the mould
	heapLong   = 1.6 // a mesh is so much longer along the loaf
	mostAlong  = 400 // meshes along the loaf
)

func newHeap(box Box) *heap {
	along := int(math.Ceil(box.L / box.W * heapAcross / heapLong))
	h := &heap{box: box, nx: min(max(along, 1), mostAlong) + 1, ny: heapAcross + 1}
	h.perX, h.perY = float64(h.nx-1)/box.L, float64(h.ny-1)/box.W
	return h
}

// level taps a pile of spoonfuls level: what stands high runs out to the sides, and what lies low is narrowed as what is beside it comes. In every
// cross-section the column that had so much of the pile on its left has it there when it is level too, and grows as much lower as it grows wider:
// so each act keeps its area. piled is how high the pile stands after each act, mm.
func (h *heap) level(piled [][]float64) {
	h.high, h.done = make([][]float32, len(piled)), len(piled)
	for k := range piled {
		h.high[k] = make([]float32, h.nx*h.ny)
	}
	if len(piled) == 0 {
		return
	}
	from, thick := make([]float64, h.ny), make([]float64, h.ny)
	last := len(piled) - 1
	for i := range h.nx {
		at := i * h.ny
		top := piled[last][at : at+h.ny]
		total := h.came(top, from)
		sum := make([]float64, h.ny)
		before := 0.0
		for k := range last {
			pile := piled[k][at : at+h.ny]
			was, below := 0.0, []float64(nil)
			if k > 0 {
				below = piled[k-1][at : at+h.ny]
			}
			for j, u := range from {
				t, all := between(pile, u), between(top, u)
				if below != nil {
					t -= between(below, u)
				}
				thick[j] = max(0, t) * h.box.H / max(all, 1e-9)
				was += h.weight(j) * thick[j]
			}
			area := h.area(pile)
			by := (area - before) / total * h.box.H * float64(h.ny-1) / max(was, 1e-9)
			before = area
			for j := range sum {
				sum[j] = min(sum[j]+by*thick[j], h.box.H)
				h.high[k][at+j] = float32(sum[j])
			}
		}
		for j := range h.ny {
			h.high[last][at+j] = float32(h.box.H)
		}
	}
}

// came is where in a cross-section of a pile every place of it lay before it was tapped level, in meshes; and the pile's area, in mm times meshes.
func (h *heap) came(top, from []float64) (total float64) {
	total = h.area(top)
	sum, k := 0.0, 0
	for j := range from {
		want := total * float64(j) / float64(h.ny-1)
		for k < h.ny-2 && sum+0.5*(top[k]+top[k+1]) < want {
			sum += 0.5 * (top[k] + top[k+1])
			k++
		}
		a, b := top[k], top[k+1]-top[k] // a·f + b·f²/2 is what is left of it
		left := max(0, want-sum)
		from[j] = float64(k) + clamp(2*left/max(a+math.Sqrt(max(0, a*a+2*b*left)), 1e-9), 0, 1)
	}
	return total
}

// between is a height at a place in meshes.
func between(z []float64, u float64) float64 {
	k := min(int(u), len(z)-2)
	return z[k] + (u-float64(k))*(z[k+1]-z[k])
}

// area is that of a cross-section under heights, in mm times meshes.
func (h *heap) area(z []float64) (sum float64) {
	for j, v := range z {
		sum += h.weight(j) * v
	}
	return sum
}

// weight is how much of a mesh a place stands for.
func (h *heap) weight(j int) float64 {
	if j == 0 || j == h.ny-1 {
		return 0.5
	}
	return 1
}

// upto is the heap after the first n acts of the script.
func (h *heap) upto(n int) filling {
	part := *h
	for part.done = 0; part.done < len(h.act) && h.act[part.done] < n; {
		part.done++
	}
	return &part
}

func (h *heap) label(x, y, z float64) int {
	i, _ := h.found(x, y, z)
	if i >= h.done {
		return Empty
	}
	return h.portion[i]
}

// grain is along the top of what an act laid: it slumps as one.
func (h *heap) grain(x, y, z float64) (along, across float64) {
	_, top := h.found(x, y, z)
	return y + veinDrift*x, z - top
}

// found is the act, counted from the first, whose batter lies at a place, and how high that reaches there, mm.
func (h *heap) found(x, y, z float64) (act int, top float64) {
	u, v := x*h.perX, y*h.perY
	i, j := min(int(u), h.nx-2), min(int(v), h.ny-2)
	fu, fv := float32(u-float64(i)), float32(v-float64(j))
	a, b, c, d := (1-fu)*(1-fv), (1-fu)*fv, fu*(1-fv), fu*fv
	k, up := i*h.ny+j, float32(z)
	low, high := 0, len(h.high)-1 // the last fills the mould
	top = h.box.H
	for low < high {
		mid := (low + high) / 2
		s := h.high[mid]
		if here := a*s[k] + b*s[k+1] + c*s[k+h.ny] + d*s[k+h.ny+1]; up < here {
			high, top = mid, float64(here)
		} else {
			low = mid + 1
		}
	}
	return low, top
}
