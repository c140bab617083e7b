package swirl

const (
	touchFaces  = 4   // cuts the boundary is looked for on, evenly along the loaf: about as near to a fine count as six
	touchLineMM = 6   // between two lines of sight across a face, and between two up it
	touchStepMM = 0.6 // between two looks along a line; finer filaments are missed
)

// Touching measures who lies beside whom: each pair's part of all boundary between portions on faces along the loaf; the parts of all
// pairs sum to 1, or are 0 everywhere where nothing touches. A boundary's length is in proportion to how often it is crossed by lines laid
// evenly across and up the face (Cauchy and Crofton); lines of two directions see a slanted boundary up to a fifth too often, whichever
// colours it parts.
func (s *Swirl) Touching() [][]float64 {
	n := len(s.recipe.Script.Brief.Shares)
	counts := make([][][]float64, touchFaces)
	Share(touchFaces, func(k int) bool {
		x := s.recipe.Box.L * (float64(k) + 0.5) / touchFaces
		counts[k] = s.Face(x).crossings(n)
		return true
	})
	of, sum := make([][]float64, n), 0.0
	for a := range of {
		of[a] = make([]float64, n)
		for b := range of[a] {
			for _, c := range counts {
				of[a][b] += c[a][b] + c[b][a]
			}
			if a < b {
				sum += of[a][b]
			}
		}
	}
	for a := range of {
		for b := range of[a] {
			if a == b || sum == 0 {
				of[a][b] = 0
				continue
			}
			of[a][b] /= sum
		}
	}
	return of
}

// crossings counts how much boundary lines across and up the face cross: rows are the portion before, columns the one after. Lines are
// weighed by the room between them, so that both directions count alike.
func (f *Face) crossings(n int) [][]float64 {
	out := make([][]float64, n)
	for i := range out {
		out[i] = make([]float64, n)
	}
	w, h := f.box.W, f.box.H
	across, up := max(2, int(h/touchLineMM)), max(2, int(w/touchLineMM))
	for l := range across {
		z := h * (float64(l) + 0.5) / float64(across)
		s := sight{f: f, s: make([]sample, max(8, int(w/touchStepMM))), at: func(t float64) (float64, float64) { return t * w, z }}
		s.count(out, h/float64(across))
	}
	for l := range up {
		y := w * (float64(l) + 0.5) / float64(up)
		s := sight{f: f, s: make([]sample, max(8, int(h/touchStepMM))), at: func(t float64) (float64, float64) { return y, t * h }}
		s.count(out, w/float64(up))
	}
	return out
}

// sight is a line of sight through a face.
type sight struct {
	f  *Face
	s  []sample
	at func(part float64) (y, z float64)
}

// touchStride is how many looks apart are first compared, before those in between are taken.
const touchStride = 4

// count looks along the line and adds a weight to every two portions it passes between.
func (l *sight) count(out [][]float64, weight float64) {
	n := len(l.s)
	l.touch(0)
	for last := 0; last < n-1; {
		next := min(last+touchStride, n-1)
		l.touch(next)
		l.between(last, next)
		last = next
	}
	for i := 1; i < n; i++ {
		if a, b := &l.s[i-1], &l.s[i]; !a.empty && !b.empty {
			out[a.label][b.label] += weight
		}
	}
}

func (l *sight) touch(i int) {
	y, z := l.at((float64(i) + 0.5) / float64(len(l.s)))
	s := &l.s[i]
	if s.empty = len(l.f.tracer.slabs) == 0 || z > l.f.level; s.empty {
		return
	}
	s.origin = l.f.tracer.trace(y, z)
	s.label = l.f.tracer.label(&s.origin)
	s.empty = s.label == none
}

// between fills in what lies between two looks: themselves again where both come from one place, else the middle and its two halves.
func (l *sight) between(from, to int) {
	if to-from < 2 {
		return
	}
	if !l.s[from].differs(&l.s[to]) {
		for k := from + 1; k < to; k++ {
			l.s[k] = l.s[from]
		}
		return
	}
	mid := (from + to) / 2
	l.touch(mid)
	l.between(from, mid)
	l.between(mid, to)
}
