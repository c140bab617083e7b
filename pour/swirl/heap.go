package swirl

import "math"

const (
	heapMesh    = 3    // meshes to a dollop's half width, for the surface of the heap
	volumeMesh  = 5    // the same for the volumes that are dealt to portions
	leastMeshes = 24   // for the volumes, along and across a mould hardly wider than a dollop
	mostDomes   = 4000 // ends a heap that will not close; what is left open is dealt like a dollop
	dealError   = 2e-4 // of the batter: the worst share error that ends the dealing
	domeShape   = 0.21 // height against width
	domeOverlap = 1.12 // dollops are so much larger than their share of the mould: the last ones are levelled off
)

// heap is the batter while it is spooned into the mould.
type heap struct {
	d       *dice
	box     Box
	half    float64 // mm, half the width of a usual dollop
	volume  float64 // mm³, of a usual dollop
	surface mesh
	room    []float64 // kept from dollop to dollop
}

// mesh is a level grid of places, each in the middle of its cell.
type mesh struct {
	nx, ny     int
	perX, perY float64   // mm
	z          []float64 // mm
}

func newMesh(box Box, cell float64) mesh {
	nx, ny := max(1, int(math.Ceil(box.L/cell))), max(1, int(math.Ceil(box.W/cell)))
	return mesh{nx, ny, box.L / float64(nx), box.W / float64(ny), make([]float64, nx*ny)}
}

// window is the part of the mesh that a dome can reach.
func (m *mesh) window(h *dome) window {
	reach := domeReach * h.long
	i0, i1 := max(0, int((h.x-reach)/m.perX)), min(m.nx, int((h.x+reach)/m.perX)+1)
	j0, j1 := max(0, int((h.y-reach)/m.perY)), min(m.ny, int((h.y+reach)/m.perY)+1)
	return window{i0, i1, j0, j1}
}

type window struct{ i0, i1, j0, j1 int }

func (w window) and(o window) window {
	return window{max(w.i0, o.i0), min(w.i1, o.i1), max(w.j0, o.j0), min(w.j1, o.j1)}
}

// heap raises the places in the window to a dome's back, at most to level, and returns by how many mm in all.
func (m *mesh) heap(h *dome, w window, level float64) (sum float64) {
	for i := w.i0; i < w.i1; i++ {
		x := (float64(i) + 0.5) * m.perX
		row := m.z[i*m.ny : (i+1)*m.ny]
		for j := w.j0; j < w.j1; j++ {
			if to := min(level, h.height(x, (float64(j)+0.5)*m.perY)); to > row[j] {
				sum += to - row[j]
				row[j] = to
			}
		}
	}
	return sum
}

// room lists for each place under a dome how far the dome must rise, from a top at 0, before it covers the place.
func (m *mesh) room(h *dome, dst []float64) []float64 {
	at := *h
	at.top = 0
	w := m.window(h)
	for i := w.i0; i < w.i1; i++ {
		for j := w.j0; j < w.j1; j++ {
			z := at.height((float64(i)+0.5)*m.perX, (float64(j)+0.5)*m.perY)
			if !math.IsInf(z, -1) {
				dst = append(dst, m.z[i*m.ny+j]-z)
			}
		}
	}
	return dst
}

// rise finds the top between low and high from which a dome with that room holds want mm in all.
func rise(room []float64, want, low, high float64) float64 {
	for range 16 {
		top, sum := 0.5*(low+high), 0.0
		for _, v := range room {
			sum += max(0, top-v)
		}
		if sum < want {
			low = top
		} else {
			high = top
		}
	}
	return 0.5 * (low + high)
}

// newDollops heaps about count dollops until the mould is full, and deals them to the portions by their shares.
func newDollops(d *dice, box Box, shares []float64, count int) *dollops {
	p := &heap{d: d, box: box, volume: domeOverlap * box.L * box.W * box.H / float64(count)}
	p.half = math.Cbrt(p.volume / (2 * domeShape * math.Pi * 0.6))
	p.surface = newMesh(box, p.half/heapMesh)
	f := &dollops{}
	for len(f.domes) < mostDomes {
		at, open := p.lowest()
		if !open {
			break
		}
		f.domes = append(f.domes, p.drop(at))
	}
	deal := newDeal(f, box, shares, p.half)
	deal.byTheSpoon(d)
	f.off = deal.settle()
	f.rest = deal.portion[len(deal.portion)-1]
	f.index(box, 0.5*p.half)
	return f
}

// lowest picks a place for the next dollop, the lowest of some tried at random; open is false when the mould is full.
func (p *heap) lowest() (at int, open bool) {
	const tries = 24
	z, low := p.surface.z, p.box.H
	for range tries {
		if i := int(p.d.Next() % uint64(len(z))); z[i] < low {
			at, low, open = i, z[i], true
		}
	}
	for i := 0; i < len(z) && !open; i++ {
		if z[i] < p.box.H {
			at, open = i, true
		}
	}
	return at, open
}

// drop lets a dollop fall on a place and finds how high it comes to stand by its volume.
func (p *heap) drop(at int) dome {
	m := &p.surface
	long, thin := p.half*p.d.Between(0.85, 1.25), p.d.Between(0.68, 1)
	turn := p.d.Between(0, math.Pi)
	c, s := math.Cos(turn), math.Sin(turn)
	a, b := 1/(long*long), 1/(long*thin*long*thin)
	h := dome{
		x: (float64(at/m.ny) + p.d.Float()) * m.perX, y: (float64(at%m.ny) + p.d.Float()) * m.perY,
		xx: a*c*c + b*s*s, xy: 2 * (a - b) * c * s, yy: a*s*s + b*c*c,
		high: 2 * domeShape * p.half * p.d.Between(0.8, 1.3), long: long, short: long * thin,
		leanX: p.d.Between(-0.25, 0.25), leanY: p.d.Between(-0.35, 0.35),
	}
	want := p.volume * p.d.Between(0.6, 1.4) / (m.perX * m.perY)
	p.room = m.room(&h, p.room[:0])
	h.top = max(m.z[at]+0.4*h.high, rise(p.room, want, m.z[at], m.z[at]+3*h.high))
	m.heap(&h, m.window(&h), p.box.H)
	return h
}
