package colour

import (
	"math"
	"strings"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"pgregory.net/rapid"
)

func TestParseHexReadsWhatHexWrites(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawColour(t)
		back, err := ParseHex(c.Hex())
		if err != nil || back != c {
			t.Fatalf("%v became %q and then %v, %v", c, c.Hex(), back, err)
		}
	})
}

func TestParseHexRefusesWithTheSpellingMeant(t *testing.T) {
	for text, mend := range map[string]string{
		"f2c230": `"#f2c230"`, "#fc3": `"#ffcc33"`, "fc3": `"#ffcc33"`, "": `"#f2c230"`, "red": `"#f2c230"`,
		"#12345": `"#f2c230"`, "#1234567": `"#f2c230"`, "#12g456": `"#f2c230"`, "#+12345": `"#f2c230"`,
		" #123456": `"#f2c230"`, "#12_456": `"#f2c230"`, "#ééé": `"#f2c230"`,
	} {
		_, err := ParseHex(text)
		if err == nil || !strings.Contains(err.Error(), mend) {
			t.Errorf("%q: error %v does not offer %s", text, err, mend)
		}
	}
	if c, err := ParseHex("#F2C230"); err != nil || c.Hex() != "#f2c230" {
		t.Errorf("capitals: %v, %v", c, err)
	}
}

func TestColourThatIsNoNumberIsNeverSpelled(t *testing.T) {
	for _, c := range []RGB{{math.NaN(), 0, 0}, {0, math.Inf(1), 0}, {0, 0, math.Inf(-1)}, {255, 0, 0}} {
		if c.Valid() == nil || c.Hex() != "" {
			t.Errorf("%v is spelled %q", c, c.Hex())
		}
	}
}

// Independent library: go-colorful v1.4.1.
func TestSpacesAgreeWithAnIndependentLibrary(t *testing.T) {
	worstLab, worstOK := 0.0, 0.0
	for r := 0; r < 256; r += 15 {
		for g := 0; g < 256; g += 15 {
			for b := 0; b < 256; b += 15 {
				ours := FromBytes(uint8(r), uint8(g), uint8(b))
				theirs := colorful.Color{R: float64(r) / 255, G: float64(g) / 255, B: float64(b) / 255}
				l, a, bb := theirs.Lab()
				lab := ours.Lab()
				worstLab = max(worstLab, math.Abs(lab.L-100*l), math.Abs(lab.A-100*a), math.Abs(lab.B-100*bb))
				l, a, bb = theirs.OkLab()
				ok := ours.OKLab()
				worstOK = max(worstOK, math.Abs(ok.L-l), math.Abs(ok.A-a), math.Abs(ok.B-bb))
			}
		}
	}
	t.Logf("worst difference: Lab %.2g, OKLab %.2g", worstLab, worstOK)
	// The library goes to both spaces through XYZ with matrices rounded otherwise.
	if worstLab > 0.02 || worstOK > 2e-4 {
		t.Errorf("Lab is off by up to %g (limit 0.02), OKLab by %g (limit 2e-4)", worstLab, worstOK)
	}
}

func TestWhiteIsWhiteInEverySpace(t *testing.T) {
	white := RGB{1, 1, 1}
	lab, ok := white.Lab(), white.OKLCH()
	if math.Abs(lab.L-100) > 1e-4 || math.Hypot(lab.A, lab.B) > 0.02 {
		t.Errorf("white is %+v in CIELAB", lab)
	}
	if math.Abs(ok.L-1) > 1e-6 || ok.C > 1e-6 || math.Abs(white.Luminance()-1) > 1e-6 {
		t.Errorf("white is %+v in OKLCH", ok)
	}
}

// Values of the sRGB primaries as OKLab implementations print them, from memory.
func TestOKLabOfThePrimariesIsAsPublished(t *testing.T) {
	for text, want := range map[string]OKLab{
		"#ff0000": {0.62796, 0.22486, 0.12585},
		"#00ff00": {0.86644, -0.23389, 0.17950},
		"#0000ff": {0.45201, -0.03246, -0.31153},
	} {
		got := hex(t, text).OKLab()
		if math.Abs(got.L-want.L) > 2e-5 || math.Abs(got.A-want.A) > 2e-5 || math.Abs(got.B-want.B) > 2e-5 {
			t.Errorf("%s is %+v, want %+v", text, got, want)
		}
	}
}
