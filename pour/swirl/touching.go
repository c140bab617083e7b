package swirl

const (
	touchFaces  = 6   // cuts the boundary is looked for on, evenly along the loaf
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
	share(touchFaces, func(k int) bool {
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
	walk := func(lines, steps int, weight float64, at func(line, step float64) (y, z float64)) {
		for l := range lines {
			before := Empty
			for k := range steps {
				label := f.Label(at((float64(l)+0.5)/float64(lines), (float64(k)+0.5)/float64(steps)))
				if label != Empty && before != Empty {
					out[before][label] += weight
				}
				before = label
			}
		}
	}
	w, h := f.box.W, f.box.H
	across, up := max(2, int(h/touchLineMM)), max(2, int(w/touchLineMM))
	walk(across, max(8, int(w/touchStepMM)), h/float64(across), func(line, step float64) (float64, float64) { return step * w, line * h })
	walk(up, max(8, int(h/touchStepMM)), w/float64(up), func(line, step float64) (float64, float64) { return line * w, step * h })
	return out
}
