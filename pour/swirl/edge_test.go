package swirl

import (
	"image"
	"math"
	"testing"

	"pourbench/pour/script"
)

// crossing is where a row of two sides goes from black to white, mm, and over how far: the light that is missing on the right and that of a straight
// ramp of the same spread.
func crossing(img *image.NRGBA, y, px int) (at, wide float64) {
	const low, high = 0.1, 0.9
	at, from, to := 20.0, 0.0, 0.0
	for x := range img.Rect.Dx() {
		v := float64(linear(img.NRGBAAt(x, y).R))
		at -= v / float64(px)
		if v < low {
			from = float64(x)
		}
		if v < high {
			to = float64(x)
		}
	}
	return at, (to - from) / float64(px) / (high - low)
}

// A border wavers to both sides of where it was drawn, no further than it may, and smoothly; without it, it is straight.
func TestABorderWavers(t *testing.T) {
	const px, most = 20, 0.8
	for _, m := range []Material{{BleedMM: 0.2, WaverMM: most}, {BleedMM: 0.2}} {
		img := finished(t, px, m, blackWhite()...)
		low, high, last := 20.0, 0.0, 0.0
		for y := range img.Rect.Dy() {
			at, _ := crossing(img, y, px)
			if math.Abs(at-10) > (1+waverPart)*m.WaverMM+0.05 || y > 0 && math.Abs(at-last) > 2.5/px {
				t.Fatalf("%g mm: at row %d the border lies at %.2f mm, one row before at %.2f", m.WaverMM, y, at, last)
			}
			low, high, last = min(low, at), max(high, at), at
		}
		if straight := high-low < 0.01; straight != (m.WaverMM == 0) || !straight && (low > 9.9 || high < 10.1) {
			t.Errorf("%g mm: the border lies between %.2f and %.2f mm", m.WaverMM, low, high)
		}
	}
}

// A blade tears a border that stands across its way in scratches, in some places, no further than it may and as crisply as it was; one that lies along
// its way it does not.
func TestABladeTearsABorderAcrossItsWay(t *testing.T) {
	const px, most = 20, 0.8
	e := newEdges(Material{BleedMM: 0.2, TearMM: most}.planing(1. / px))
	far, jump, calm := 0.0, 0.0, 0
	for cut := range 6 {
		img := finished(t, px, Material{BleedMM: 0.2, TearMM: most, CutMM: 40 * float64(cut)}, blackWhite()...)
		last := 10.0
		for y := range img.Rect.Dy() {
			at, wide := crossing(img, y, px)
			if math.Abs(at-10) > most || wide > 0.7 {
				t.Fatalf("cut %d, row %d: the border lies at %.2f mm and fades over %.2f", cut, y, at, wide)
			}
			far = max(far, math.Abs(at-10))
			if y > 0 {
				jump = max(jump, math.Abs(at-last))
			}
			if math.Abs(at-10) < 0.1 {
				calm++
			}
			last = at
		}
	}
	if far < 0.25*most || jump < 0.06 || calm < 6*10*px*6/10 {
		t.Errorf("a border is torn by %.2f mm, from row to row by %.2f, %d rows are calm", far, jump, calm)
	}
	for k := range 50 { // a step along its way moves no border that lies so
		x, y, _ := e.at(float64(3*k), float64(5*k))
		if aside := (y-float64(5*k))*e.way.y - (x-float64(3*k))*e.way.z; math.Abs(aside) > 1e-9 {
			t.Errorf("at %d: %g pixels aside of its way", k, aside)
		}
	}
}

// A border is crisp in some places and feathered in others, never less than its bleed nor more than its feather.
func TestABorderFeathersInPlaces(t *testing.T) {
	const px = 24
	m := Material{BleedMM: 0.4, FeatherMM: 2}
	p := sides(px)
	var narrow, broad float64 = 9, 0
	for cut := range 12 { // they are uneven over some 9 mm: one face has few of them
		m.CutMM = 40 * float64(cut)
		img := finished(t, px, m, blackWhite()...)
		for y := 0; y < p.H; y += 12 {
			_, wide := crossing(img, y, px)
			narrow, broad = min(narrow, wide), max(broad, wide)
		}
	}
	if narrow < 0.3 || narrow > 0.6 || broad < 1 || broad > 2.1 {
		t.Errorf("borders fade over %.2f to %.2f mm, may over %g to %g", narrow, broad, m.BleedMM, m.FeatherMM)
	}
}

// Which pixels a border is near to, against looking round every one of them.
func TestWhereABorderIsNear(t *testing.T) {
	d := script.NewDice(5, 1)
	for _, reach := range []int{1, 2, 5} {
		p := &Picture{}
		p.Reset(37, 23)
		for i := range p.Pixels {
			p.Pixels[i] = Pixel{Part: [3]uint8{255}}
			switch v := d.Between(0, 1); {
			case v < 0.005:
				p.Pixels[i] = Pixel{Portion: [3]uint8{1, 0}, Part: [3]uint8{200, 55}}
			case v < 0.01:
				p.Pixels[i].Portion[0] = 2
			case v < 0.015:
				p.Pixels[i].Part[0] = 0 // above the batter
			}
		}
		got := p.borders(reach)
		for j := range p.H {
			for i := range p.W {
				want := false
				for b := max(0, j-reach); b <= min(j+reach, p.H-1); b++ {
					for a := max(0, i-reach); a <= min(i+reach, p.W-1); a++ {
						want = want || p.bordered(a, b)
					}
				}
				if got[j*p.W+i] != want {
					t.Fatalf("within %d of %d,%d: %v, want %v", reach, i, j, got[j*p.W+i], want)
				}
			}
		}
	}
	p := sides(1) // what a border is: right of the ninth column and nowhere else
	for i := range p.W {
		if p.bordered(i, 3) != (i == 9) {
			t.Errorf("column %d: %v", i, p.bordered(i, 3))
		}
	}
}
