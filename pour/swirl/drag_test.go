package swirl

import (
	"math"
	"testing"
)

// A blade that goes from the left to the right drags black over white here and there, not further than DragMM behind the border and nothing over what it
// came from; soft across as well: a row next to another is no tooth beside it.
func TestABladeDragsOnePortionOverTheNext(t *testing.T) {
	const px, drag, cuts = 16, 2.0, 12
	plain := finished(t, px, Material{BleedMM: 0.2}, blackWhite()...)
	dragged, most, tooth := 0, 0.0, 0.0
	for cut := range cuts { // a face may have few strokes
		img := finished(t, px, Material{BleedMM: 0.2, DragMM: drag, CutMM: 40 * float64(cut)}, blackWhite()...)
		light := func(x, y int) float64 { return float64(linear(img.NRGBAAt(x, y).R)) }
		for y := range img.Rect.Dy() {
			for x := range img.Rect.Dx() {
				mm := (float64(x)+0.5)/px - 10
				v, was := light(x, y), float64(linear(plain.NRGBAAt(x, y).R))
				switch {
				case mm < -0.2 && v != was, mm > drag+0.1 && v != 1:
					t.Fatalf("cut %d: %.2f mm behind the border it is %.3f, undragged %.3f", cut, mm, v, was)
				case mm > 0.2 && v < was-0.01:
					dragged++
					most = max(most, 1-v)
				}
				if mm > 0.3 && y > 0 {
					tooth = max(tooth, math.Abs(v-light(x, y-1)))
				}
			}
		}
	}
	if part := float64(dragged) / (cuts * drag * px * 10 * px); part < 0.03 || part > 0.4 || most < 0.15 || most > dragMost || tooth > 0.12 {
		t.Errorf("%.2f of what may be is dragged over, by %.2f at most, rows differ by %.3f", part, most, tooth)
	}
}

// What is dragged comes from before it, the way the blade went, not from behind.
func TestABladeDragsTheWayItGoes(t *testing.T) {
	const px = 16
	for _, turn := range []bool{false, true} {
		forth, back := 0.0, 0.0
		for cut := range 12 { // a face may have few strokes
			p := Material{BleedMM: 0.2, DragMM: 2, CutMM: 40 * float64(cut)}.planing(1. / px)
			if turn {
				p.sx, p.sy = -p.sx, -p.sy
			}
			b := newBleeding(sides(px), newInks(blackWhite(), white()[0]), p)
			for y := range 10 * px {
				forth += float64(1 - b.at(10.5*px, y).g)
				back += float64(b.at(9.5*px, y).g)
			}
		}
		if turn {
			forth, back = back, forth
		}
		if back > 0 || forth < 10 {
			t.Errorf("turned %v: %.1f before the border, %.1f behind it", turn, back, forth)
		}
	}
}

// Over portions that lie thin beside each other a blade drags little: of what it would over one border, a ninth where a second lies half way.
func TestABladeDragsLittleOverThinPortions(t *testing.T) {
	const px = 16
	dragged := func(portion func(i int) uint8) (sum float64) {
		pic := sides(px)
		for k := range pic.Pixels {
			pic.Pixels[k].Portion[0] = portion(k % pic.W)
		}
		for cut := range 12 { // a face may have few strokes
			b := newBleeding(pic, newInks(blackWhite(), white()[0]), Material{BleedMM: 0.2, DragMM: 2, CutMM: 40 * float64(cut)}.planing(1./px))
			for y := 0; y < pic.H; y += 4 {
				for x := range pic.W {
					if portion(x) == 1 { // white
						sum += float64(1 - b.dragged(light{1, 1, 1}, x, y).g)
					}
				}
			}
		}
		return sum
	}
	const wide, thin = 10 * px, px / 3
	one := dragged(func(i int) uint8 { return uint8(i/wide) % 2 }) / (2 * px) // over so many white pixels of a row at most
	many := dragged(func(i int) uint8 { return uint8(i/thin) % 2 }) / (10 * px)
	if one < 1 || many > one/3 {
		t.Errorf("%.2f is dragged over a place behind one border, %.2f over one among many", one, many)
	}
}
