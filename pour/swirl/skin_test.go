package swirl

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"math"
	"testing"

	"pourbench/pour/script"
)

// A fresh top is no plane, but level in the mean, steeper in thicker batter, and never so steep that it would run.
func TestAFreshTopIsRough(t *testing.T) {
	for _, technique := range []script.Technique{script.Layers, script.Drop, script.Hanger, script.Spooned} {
		steep := map[float64]float64{}
		for _, thick := range []float64{0.1, 0.8} {
			r := loaf(technique, 3)
			r.Thickness = thick
			s := mustPour(t, r)
			mean, most, n := 0.0, 0.0, 0.0
			for x := 2.0; x < r.Box.L; x += 3.1 {
				for y := 2.0; y < r.Box.W; y += 2.7 {
					along, across := s.Slope(x, y)
					mean, most, n = mean+along, max(most, math.Hypot(along, across)), n+1
				}
			}
			if mean = math.Abs(mean / n); mean > 0.02 || most < 0.03 || most > 0.9 {
				t.Errorf("%s at %g: it slopes by %.3f in the mean and %.2f at the most", technique, thick, mean, most)
			}
			steep[thick] = most
		}
		if steep[0.8] < 1.3*steep[0.1] {
			t.Errorf("%s: thick batter slopes by %.2f, thin by %.2f", technique, steep[0.8], steep[0.1])
		}
	}
}

// Two portions side by side stand as two ropes with a groove between: deepest at the border, gone at three times its half width, alike on both sides.
func TestAGrooveLiesBetweenTwoPortions(t *testing.T) {
	const px = 8
	p := sides(px)
	g := p.grooves(1. / px)
	row := g.deep[5*px*g.w:][:g.w]
	for i, v := range row {
		mm := (float64(i)+0.5)/px - 10 + 0.5/px // the border is told by the pixel before it
		switch {
		case v > row[10*px-1]+1e-6, math.Abs(mm) > 3*grooveMM+0.3 && v > 1e-4:
			t.Errorf("%.2f mm from the border it is %.3f deep, at it %.3f", mm, v, row[10*px-1])
		case math.Abs(mm) < 3 && !near(float64(v), float64(row[20*px-2-i]), 1e-4):
			t.Errorf("%.2f mm from the border it is %.3f deep, on the other side %.3f", mm, v, row[20*px-2-i])
		}
	}
	if v := row[10*px-1]; v < 0.5 || v > 1 {
		t.Errorf("one groove is %.2f deep, want most of 1", v)
	}
	left, _ := g.slope(10*px-1-px, 5*px)
	right, down := g.slope(10*px-1+px, 5*px)
	if left < 0.1 || !near(left, -right, 1e-3) || down != 0 {
		t.Errorf("1 mm from the border it falls by %.3f and %.3f", left, -right)
	}
}

// A running mean, against the mean of every place anew.
func TestSmearIsTheMeanOfWhatIsNear(t *testing.T) {
	const w, h, reach = 9, 6, 2
	from, across, down := make([]float32, w*h), make([]float32, w*h), make([]float32, w*h)
	for i := range from {
		from[i] = float32(i * i % 17)
	}
	smear(across, from, h, w, 1, w, reach)
	smear(down, from, w, h, w, 1, reach)
	for j := range h {
		for i := range w {
			a, b := 0.0, 0.0
			for k := -reach; k <= reach; k++ {
				if i+k >= 0 && i+k < w {
					a += float64(from[j*w+i+k])
				}
				if j+k >= 0 && j+k < h {
					b += float64(from[(j+k)*w+i])
				}
			}
			if c := j*w + i; !near(float64(across[c]), a/(2*reach+1), 1e-5) || !near(float64(down[c]), b/(2*reach+1), 1e-5) {
				t.Errorf("%d,%d: %g across, %g down, want %g and %g", i, j, across[c], down[c], a/(2*reach+1), b/(2*reach+1))
			}
		}
	}
}

// The fresh top is lit from the upper left and shows no streaks of a blade; a cut at the same depth shows them and no slopes; a bare one shows neither.
func TestAFreshTopIsLit(t *testing.T) {
	r := loaf(script.Layers, 3)
	r.Thickness = 0.6
	s := mustPour(t, r)
	grey := []color.NRGBA{{150, 150, 150, 255}, {150, 150, 150, 255}, {150, 150, 150, 255}, {150, 150, 150, 255}, {150, 150, 150, 255}}
	draw := func(l *Long, m Material) *image.NRGBA {
		img, err := RenderLong(context.Background(), l, grey, 240, 80, Finish{Material: m})
		if err != nil {
			t.Fatal(err)
		}
		return img
	}
	m := Material{Relief: 1, Streaks: 0.3}
	fresh, cut, bare := draw(s.Skim(), m), draw(s.Top(r.Box.H-SkimMM), m), draw(s.Skim(), Material{})
	same, toward, n := 0, 0.0, 0.0
	for y := 2; y < 78; y++ {
		for x := 2; x < 238; x++ {
			along, across := s.Slope(r.Box.L*(float64(x)+0.5)/240, r.Box.W*(float64(y)+0.5)/80)
			toward += (float64(fresh.NRGBAAt(x, y).R) - 150) * (0.56*along + 0.83*across)
			n += math.Abs(0.56*along + 0.83*across)
			if cut.NRGBAAt(x, y).R == fresh.NRGBAAt(x, y).R {
				same++
			}
			if bare.NRGBAAt(x, y).R != 150 {
				t.Fatalf("bare, %d,%d is %v", x, y, bare.NRGBAAt(x, y))
			}
		}
	}
	if toward/n < 3 || same > 76*236/3 {
		t.Errorf("what slopes toward the light is brighter by %.2f; %d pixels are as bright as in a cut", toward/n, same)
	}
	if unplaned := draw(s.Skim(), Material{Relief: 1}); !bytes.Equal(fresh.Pix, unplaned.Pix) || bytes.Equal(fresh.Pix, bare.Pix) {
		t.Error("the fresh top shows streaks of the blade")
	}
	for name, c := range map[string]struct {
		cut  *Long
		want *image.NRGBA
	}{"fresh": {s.Skim(), fresh}, "cut": {s.Top(r.Box.H - SkimMM), cut}} { // traced once and finished later, as on the screen
		pic, later := &Picture{}, image.NewNRGBA(image.Rect(0, 0, 240, 80))
		if err := c.cut.Refine(context.Background(), pic, 240, 80); err != nil {
			t.Fatal(err)
		}
		if err := pic.Finish(context.Background(), grey, later, Finish{Material: m}, r.Box.L, r.Box.W); err != nil || !bytes.Equal(later.Pix, c.want.Pix) {
			t.Errorf("%s: finished later it looks otherwise, %v", name, err)
		}
	}
	if above := draw(s.Above(), m); bytes.Equal(above.Pix, draw(s.Above(), Material{}).Pix) {
		t.Error("the top as it stands is not lit")
	}
	if p := Planed().Fresh(); p.Streaks != 0 || p.TearMM != 0 || p.Relief != Planed().Relief || Planed().Relief == 0 || p.Veins != Planed().Veins {
		t.Errorf("fresh: %+v", p)
	}
}

// A wet top throws most light back where it faces half way between the lamp and the eye, little where it is level, and none to speak of where it falls
// away from the lamp.
func TestAWetTopShines(t *testing.T) {
	const steep = 1 / 1.7 // of the half way, beside how far to the side it stands: a top is square to it that rises so away from the lamp
	most := gloss(-lampRight*steep, -lampDown*steep)
	if !near(most, 0.45, 1e-3) {
		t.Errorf("at its brightest it throws back %.3f", most)
	}
	for _, d := range [][2]float64{{0.3, 0}, {0, 0.3}, {-0.3, 0}, {0, -0.3}} {
		if v := gloss(-lampRight*steep+d[0], -lampDown*steep+d[1]); v > most {
			t.Errorf("turned by %v it throws back %.3f", d, v)
		}
	}
	if level, away := gloss(0, 0), gloss(lampRight*steep, lampDown*steep); level > 0.05*most || away > level/10 {
		t.Errorf("level it throws back %.4f, away from the lamp %.5f", level, away)
	}
	r := loaf(script.Hanger, 3)
	r.Thickness = 0.8
	pour := mustPour(t, r)
	img, err := RenderLong(context.Background(), pour.Skim(), []color.NRGBA{{20, 20, 20, 255}, {20, 20, 20, 255}, {20, 20, 20, 255}, {20, 20, 20, 255}, {20, 20, 20, 255}}, 240, 80, Finish{Material: Material{Relief: 1}})
	if err != nil {
		t.Fatal(err)
	}
	bright, dry, wet := uint8(0), uint8(0), 0
	for k := range len(img.Pix) / 4 {
		x, y := r.Box.L*(float64(k%240)+0.5)/240, r.Box.W*(float64(k/240)+0.5)/80
		switch pour.wet(x, y) {
		case 0:
			dry = max(dry, img.Pix[4*k])
		case 1:
			wet++
		}
		bright = max(bright, img.Pix[4*k])
	}
	if bright < 60 || dry > 23 || wet < 240*80/20 || wet > 240*80/2 { // 1.15 of its light is 22
		t.Errorf("the brightest place of a dark wet top is %d, where it is dry %d; %d places are wet", bright, dry, wet)
	}
}

// What is wet fills the groove between two portions: its sides shine less than slopes so steep would.
func TestAWetGrooveShinesLittle(t *testing.T) {
	steep := 1 / 1.7 // square to half way between the lamp and the eye
	if side, slope := gloss(-wetEdge*lampRight*steep, -wetEdge*lampDown*steep), gloss(-lampRight*steep, -lampDown*steep); side > slope/2 {
		t.Errorf("the side of a groove throws back %.3f, a slope so steep %.3f", side, slope)
	}
	const side = 120
	r := loaf(script.Layers, 3)
	r.Thickness = 0.8
	l := mustPour(t, r).Skim().Part(20, 20+r.Box.W)
	pic, img, most := &Picture{}, image.NewNRGBA(image.Rect(0, 0, side, side)), uint8(0)
	pic.Reset(side, side)
	for k := range pic.Pixels {
		pic.Pixels[k] = Pixel{Portion: [3]uint8{uint8((k%side + k/side) / 6 % 2)}, Part: [3]uint8{255}}
		copy(img.Pix[4*k:], []uint8{20, 20, 20, 255})
	}
	l.emboss(img, pic, Material{Relief: 1})
	for k := range pic.Pixels {
		most = max(most, img.Pix[4*k])
	}
	if most < 50 || most > 70 { // 20 is what the soap is of itself
		t.Errorf("the brightest side of a groove in dark soap is %d", most)
	}
}

// The light comes from above and the left: where a rope falls into the groove under it it is darker than a top without, where the next rises out of it
// lighter, and so to the left and the right of one that lies across.
func TestAGrooveIsDarkBeforeItAndLightBehind(t *testing.T) {
	r := loaf(script.Layers, 3)
	l := mustPour(t, r).Skim()
	const side = 80 // pixels; the part of the loaf that is drawn is a square
	l = l.Part(20, 20+r.Box.W)
	shade := func(portion func(i, j int) int) *image.NRGBA {
		pic := &Picture{}
		pic.Reset(side, side)
		img := image.NewNRGBA(image.Rect(0, 0, side, side))
		for k := range pic.Pixels {
			pic.Pixels[k] = Pixel{Portion: [3]uint8{uint8(portion(k%side, k/side))}, Part: [3]uint8{255}}
			copy(img.Pix[4*k:], []uint8{150, 150, 150, 255})
		}
		l.emboss(img, pic, Material{Relief: 1})
		return img
	}
	plain := shade(func(int, int) int { return 0 })
	for name, at := range map[string]func(along, beside int) (x, y int){
		"down":   func(along, beside int) (x, y int) { return beside, along },
		"across": func(along, beside int) (x, y int) { return along, beside },
	} {
		groove := shade(func(i, j int) int {
			along, _ := at(i, j) // it is its own inverse
			return along * 2 / side
		})
		before, behind := 0, 0
		for k := 5; k < side-5; k += 5 {
			x, y := at(side/2-2, k)
			before += int(groove.NRGBAAt(x, y).R) - int(plain.NRGBAAt(x, y).R)
			x, y = at(side/2+1, k)
			behind += int(groove.NRGBAAt(x, y).R) - int(plain.NRGBAAt(x, y).R)
		}
		if n := side/5 - 2; before > -n || behind < n {
			t.Errorf("%s: before the groove it is lighter by %d, behind it by %d, of %d places", name, before, behind, n)
		}
	}
}
