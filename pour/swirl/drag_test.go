package swirl

import (
	"math"
	"testing"
)

// A blade that goes from the left to the right drags black over white, in streaks along its way that are gone DragMM behind the border, and nothing over
// what it came from.
func TestABladeDragsOnePortionOverTheNext(t *testing.T) {
	const px, drag = 16, 2.0
	plain, dragged, streaks, most := finished(t, px, Material{BleedMM: 0.2}, blackWhite()...), 0, 0, 0.0
	for cut := range 3 { // soap is soft here and there: one face may have little of it
		m := Material{BleedMM: 0.2, DragMM: drag, CutMM: float64(cut)}
		img := finished(t, px, m, blackWhite()...)
		for y := range img.Rect.Dy() {
			last := 1.0
			for x := range img.Rect.Dx() {
				mm := (float64(x)+0.5)/px - 10
				v, was := float64(linear(img.NRGBAAt(x, y).R)), float64(linear(plain.NRGBAAt(x, y).R))
				switch {
				case mm < -0.2 && v != was, mm > drag+0.1 && v != 1:
					t.Fatalf("cut %d: %.2f mm behind the border it is %.3f, undragged %.3f", cut, mm, v, was)
				case v < was-0.01:
					dragged++
					if mm > 0.2 {
						most = max(most, 1-v)
					}
				}
				if mm > 0.5 && mm < 0.5+1./px {
					last = v
				}
			}
			if y > 0 && math.Abs(last-float64(linear(img.NRGBAAt(int(10.5*px), y-1).R))) > 0.02 {
				streaks++ // the next row is another one
			}
		}
	}
	if part := float64(dragged) / (3 * drag * px * 10 * px); part < 0.1 || part > 0.8 || most < 0.1 || most > dragMost+0.1 || streaks < 10 {
		t.Errorf("%.2f of what may be is dragged over, by %.2f at most, in %d steps across", part, most, streaks)
	}
}

// What is dragged comes from before it, the way the blade went, not from behind.
func TestABladeDragsTheWayItGoes(t *testing.T) {
	const px = 16
	m := Material{BleedMM: 0.2, DragMM: 2}
	m.CutMM = 1
	p := m.planing(1. / px)
	forth, back := 0.0, 0.0
	for _, turn := range []bool{false, true} {
		if turn {
			p.sx, p.sy = -p.sx, -p.sy
		}
		b := newBleeding(sides(px), newInks(blackWhite(), white()[0]), p)
		for y := range 10 * px {
			forth += float64(1 - b.at(11*px, y).g)
			back += float64(b.at(9*px, y).g)
		}
		if turn && (back < 1 || forth < 1) || !turn && (back > 0 || forth < 1) {
			t.Errorf("turned %v: %.1f before the border, %.1f behind it", turn, back, forth)
		}
	}
}

// Over portions that lie thin beside each other a blade drags little: of what it would over one border, a ninth over three.
func TestABladeDragsLittleOverThinPortions(t *testing.T) {
	const px = 16
	p := Material{BleedMM: 0.2, DragMM: 2, CutMM: 1}.planing(1. / px)
	dragged := func(portion func(i int) uint8) (sum float64) {
		pic := sides(px)
		for k := range pic.Pixels {
			pic.Pixels[k].Portion[0] = portion(k % pic.W)
		}
		b := newBleeding(pic, newInks(blackWhite(), white()[0]), p)
		for y := range pic.H {
			for x := range pic.W {
				if portion(x) == 1 { // white
					sum += float64(1 - b.dragged(light{1, 1, 1}, x, y).g)
				}
			}
		}
		return sum
	}
	const wide, thin = 10 * px, px / 3
	one := dragged(func(i int) uint8 { return uint8(i/wide) % 2 }) / (2 * px) // over so many white pixels of a row at most
	many := dragged(func(i int) uint8 { return uint8(i/thin) % 2 }) / (10 * px)
	if one < 1 || many > one/4 {
		t.Errorf("%.2f is dragged over a place behind one border, %.2f over one among many", one, many)
	}
}
