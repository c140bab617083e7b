package swirl

import "math"

// Measure is what can be counted in a picture.
type Measure struct {
	Shares  []float64   // of the batter shown, by portion
	Borders [][]float64 // mm of border between two portions, either way round; 0 for a portion with itself
}

// Measure counts a picture that shows w by h mm for n portions. Borders are counted between neighbouring pixels and
// shortened by π/4, which is right on average for borders of every direction (Cauchy and Crofton); detail under
// about two pixels is missed, so draw at 3 pixels per mm or more.
func (p *Picture) Measure(w, h float64, n int) Measure {
	m := Measure{Shares: make([]float64, n), Borders: make([][]float64, n)}
	for i := range m.Borders {
		m.Borders[i] = make([]float64, n)
	}
	if p.W == 0 || p.H == 0 {
		return m
	}
	across, down := w/float64(p.W), h/float64(p.H)
	total := 0.0
	for j := range p.H {
		for i := range p.W {
			total += m.addShares(&p.Pixels[j*p.W+i])
			if i > 0 {
				m.addBorder(p.Label(i-1, j), p.Label(i, j), down*math.Pi/4)
			}
			if j > 0 {
				m.addBorder(p.Label(i, j-1), p.Label(i, j), across*math.Pi/4)
			}
		}
	}
	if total > 0 {
		for i := range m.Shares {
			m.Shares[i] /= total
		}
	}
	return m
}

func (m *Measure) addShares(px *Pixel) (sum float64) {
	for k, part := range px.Part {
		if label := int(px.Portion[k]); part > 0 && label < len(m.Shares) {
			m.Shares[label] += float64(part) / 255
			sum += float64(part) / 255
		}
	}
	return sum
}

func (m *Measure) addBorder(a, b int, mm float64) {
	if a == b || a < 0 || b < 0 || a >= len(m.Borders) || b >= len(m.Borders) {
		return
	}
	m.Borders[a][b] += mm
	m.Borders[b][a] += mm
}

// Vote reduces a picture to a grid of cells, each with the portion that shows most in it or [Empty]; equal votes go to
// the lower portion. It is for screens that draw letters. Draw the picture with 3 pixels or more to a cell each way.
func (p *Picture) Vote(columns, rows int) []int {
	grid := make([]int, max(0, columns)*max(0, rows))
	for c := range grid {
		col, row := c%columns, c/columns
		var votes [MaxPortions]int
		empty := 0
		for j := row * p.H / rows; j < max((row+1)*p.H/rows, row*p.H/rows+1) && j < p.H; j++ {
			for i := col * p.W / columns; i < max((col+1)*p.W/columns, col*p.W/columns+1) && i < p.W; i++ {
				px := &p.Pixels[j*p.W+i]
				if px.Part[0] == 0 {
					empty += 255
				}
				for k, part := range px.Part {
					votes[px.Portion[k]%MaxPortions] += int(part)
				}
			}
		}
		grid[c] = Empty
		most := empty
		for label, n := range votes {
			if n > most {
				grid[c], most = label, n
			}
		}
	}
	return grid
}
