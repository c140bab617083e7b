package relief

import (
	"testing"
)

// A form fades all the way from the side that faces the sun to the one that faces away: no part of it is one flat grey.
func TestAFormFadesRoundToItsDarkSide(t *testing.T) {
	before := 9.0
	for _, slope := range []float64{-0.5, 0, 0.5, 1, 1.5, 2} { // down to the right, away from the sun
		if now := sunlit(-slope, 0); now > before-0.015 {
			t.Errorf("at a slope of %g it is %.3f bright, before that %.3f", slope, now, before)
		} else {
			before = now
		}
	}
	if level := sunlit(0, 0); level != flatBright {
		t.Errorf("level icing is %.3f bright, want %.3f", level, flatBright)
	}
}

// Between two kisses the sky is half hidden; on a level top it is open, and so is a peak's.
func TestGroovesAreDarkFromAbove(t *testing.T) {
	kiss := units()["a kiss, round"].icing
	kiss.Points = 0
	kiss.Spots = []Spot{{30, 40}, {60.5, 40}}
	f := New(Recipe{L: 100, W: 80, H: 50, Icing: kiss})
	p := looked(t, f.Above(), 2)
	peak, groove, bare := p.Dots[80*p.W+60], p.Dots[80*p.W+90], p.Dots[4*p.W+4]
	if float64(groove.Bright) > 0.55*float64(peak.Bright) {
		t.Errorf("the groove is %d bright, the peak %d", groove.Bright, peak.Bright)
	}
	if bare.Shade > 5 || bare.Part[0] != 0 {
		t.Errorf("the bare top far from both is %+v", bare)
	}
	if foot := p.Dots[80*p.W+160]; foot.Shade < 20 { // 2 mm beside the foot, away from the sun
		t.Errorf("beside a kiss the top lacks %d of 255 of its light", foot.Shade)
	}
}

// What the plane cuts is marked as cut, turns away at its rim, and is brighter than what is close behind it.
func TestACutStandsOutFromWhatIsBehind(t *testing.T) {
	f := New(full(false, 1))
	v := f.Face(100, 125)
	p := looked(t, v, 3)
	cut, behind, rim, deep, n, m := 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
	for i := range p.W {
		last := -1 // the lowest row of skin
		for j := range p.H {
			switch d := p.Dots[j*p.W+i]; {
			case int(d.Part[0])+int(d.Part[1]) < 255:
			case d.Cut == 0:
				behind, m, last = behind+float64(d.Bright), m+1, j
			case d.Cut == 255 && last == j-2:
				rim, n = rim+float64(d.Bright), n+1
				deep += float64(p.Dots[(j+9)*p.W+i].Bright)
				cut++
			}
		}
	}
	if cut < 60 || m < 1000 {
		t.Fatalf("only %g columns show a cut before %g pixels of skin", cut, m)
	}
	if rim/n > 0.95*deep/n {
		t.Errorf("its rim is %.1f bright, inside it is %.1f", rim/n, deep/n)
	}
	if behind/m > 0.93*deep/n {
		t.Errorf("what is behind is %.1f bright, the cut %.1f", behind/m, deep/n)
	}
}
