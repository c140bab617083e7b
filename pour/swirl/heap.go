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

// add takes the heap as it stands after an act.
func (h *heap) add(z []float64, portion, act int) {
	high := make([]float32, len(z))
	for i, v := range z {
		high[i] = float32(v)
	}
	h.high, h.portion, h.act = append(h.high, high), append(h.portion, portion), append(h.act, act)
	h.done = len(h.act)
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
