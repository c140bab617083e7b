package colour

import (
	"math"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"pgregory.net/rapid"
)

// jars are example batter colours. The first seven were chosen with the constants of the mud score; the
// others stand for their names.
func jars() map[string]string {
	return map[string]string{
		"yellow": "#f2c230", "purple": "#6b3fa0", "aqua": "#5fc9b8", "pink": "#e85c9a", "white": "#f7f3ea",
		"blue": "#2f5fb3", "orange": "#f08a2c",
		"green": "#4f9b4a", "red": "#c8322f", "brown": "#5f3b22", "black": "#2b2b2b", "lime": "#a8d04a",
		"teal": "#2a9494", "peach": "#f5b895", "lilac": "#b79ad6",
		"pale pink": "#f2c6d0", "mint": "#bfe3cf", "sage": "#9db48f", "leaf": "#b5d3a5", "sky": "#a9c8e8", "cream": "#f3ead2",
		"ultramarine": "#5566b0", "dark green": "#2f6b3a", "charcoal": "#3a3a3c",
	}
}

// Regression: mixtures of equal parts as a prototype of the same method gave them.
func TestMixOfEqualPartsGivesTheExampleColours(t *testing.T) {
	for _, c := range [][3]string{
		{"yellow", "purple", "#806164"},
		{"aqua", "yellow", "#9bc15c"},
		{"pink", "yellow", "#eb7c5b"},
		{"white", "blue", "#457ac6"},
		{"aqua", "orange", "#aa9a50"},
		{"aqua", "pink", "#aa79a5"},
		{"orange", "blue", "#586c5a"},
		{"yellow", "blue", "#487b68"},
	} {
		got := mix(t, []Paint{paint(t, jars()[c[0]]), paint(t, jars()[c[1]])}, []float64{1, 1}).RGB()
		want := hex(t, c[2])
		r, g, b := got.Bytes()
		wr, wg, wb := want.Bytes()
		for i, steps := range []int{int(r) - int(wr), int(g) - int(wg), int(b) - int(wb)} {
			if steps < -2 || steps > 2 {
				t.Errorf("%s + %s: %s, want %s within 2 steps (channel %d is %d off)", c[0], c[1], got.Hex(), c[2], i, steps)
			}
		}
	}
}

// Regression for the seven colours the score was fitted with: a prototype gave these scores.
func TestMudReproducesTheScoresItWasFittedTo(t *testing.T) {
	judge := NewJudge()
	for _, c := range []struct {
		a, b  string
		score float64
	}{
		{"orange", "blue", 0.92},
		{"yellow", "purple", 0.89},
		{"orange", "purple", 0.75},
		{"aqua", "orange", 0.74},
		{"yellow", "blue", 0.66},
		{"aqua", "pink", 0.48},
		{"aqua", "yellow", 0.21},
		{"pink", "yellow", 0.20},
		{"pink", "purple", 0.19},
		{"pink", "orange", 0.11},
		{"blue", "aqua", 0.08},
		{"yellow", "orange", 0.04},
		{"purple", "blue", 0.03},
		{"white", "blue", 0},
		{"white", "orange", 0},
		{"white", "yellow", 0},
	} {
		m, err := judge.Mud(paint(t, jars()[c.a]), paint(t, jars()[c.b]))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(m.Score-c.score) > 0.015 {
			t.Errorf("%s + %s: %.3f, want %.2f", c.a, c.b, m.Score, c.score)
		}
	}
}

func TestMudGivesTheVerdictsMakersExpect(t *testing.T) {
	judge := NewJudge()
	for verdict, pairs := range map[Verdict][][2]string{
		Muddy: {
			{"pink", "green"},
			{"orange", "blue"},
			{"green", "purple"},
			{"yellow", "purple"},
			{"brown", "blue"},
			{"orange", "green"},
			{"red", "green"},
			{"orange", "purple"},
			{"aqua", "orange"},
			{"yellow", "blue"},
			{"lime", "pink"},
		},
		Softens: {
			{"teal", "pink"},
			{"peach", "aqua"},
			{"aqua", "pink"},
			{"lilac", "yellow"},
			{"brown", "pink"},
			{"pale pink", "mint"},
			{"pale pink", "sage"},
			{"pale pink", "leaf"},
			{"pale pink", "green"},
			{"dark green", "pale pink"},
			{"pale pink", "teal"},
			{"sky", "orange"},
			{"blue", "peach"},
			{"lilac", "green"},
		},
		Clean: {
			{"red", "aqua"},
			{"lilac", "aqua"},
			{"yellow", "green"},
			{"aqua", "yellow"},
			{"pink", "yellow"},
			{"pink", "purple"},
			{"pink", "orange"},
			{"blue", "aqua"},
			{"yellow", "orange"},
			{"white", "black"},
			{"purple", "blue"},
			{"red", "pink"},
			{"red", "yellow"},
			{"white", "red"},
			{"white", "green"},
			{"white", "brown"},
			{"white", "lilac"},
			{"blue", "green"},
			{"ultramarine", "green"},
			{"blue", "dark green"},
			{"black", "yellow"},
			{"black", "pink"},
			{"black", "orange"},
			{"charcoal", "yellow"},
			{"cream", "sky"},
			{"cream", "mint"},
			{"pale pink", "white"},
			{"pale pink", "red"},
			{"pale pink", "purple"},
			{"pale pink", "blue"},
			{"mint", "green"},
			{"sky", "blue"},
			{"cream", "green"},
			{"white", "dark green"},
			{"pale pink", "peach"},
		},
	} {
		for _, pair := range pairs {
			m, err := judge.Mud(paint(t, jars()[pair[0]]), paint(t, jars()[pair[1]]))
			if err != nil {
				t.Fatal(err)
			}
			if m.Verdict != verdict {
				t.Errorf("%s + %s: %s (%.2f), want %s", pair[0], pair[1], m.Verdict, m.Score, verdict)
			}
		}
	}
}

func TestMudNamesItsCause(t *testing.T) {
	judge := NewJudge()
	for _, c := range [][3]string{
		{"yellow", "purple", GreysOut}, {"aqua", "orange", GoesKhaki}, {"orange", "green", GoesKhaki}, {"pink", "yellow", ""},
	} {
		if m, err := judge.Mud(paint(t, jars()[c[0]]), paint(t, jars()[c[1]])); err != nil || m.Cause != c[2] {
			t.Errorf("%s + %s: %q (grey %.2f, khaki %.2f), %v; want %q", c[0], c[1], m.Cause, m.Grey, m.Khaki, err, c[2])
		}
	}
}

func TestMudIsSymmetricAndBetweenNoneAndOne(t *testing.T) {
	judge := NewJudge()
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPaint(t), drawPaint(t)
		there, err := judge.Mud(a, b)
		if err != nil {
			t.Fatal(err)
		}
		back, _ := judge.Mud(b, a)
		if math.Abs(there.Score-back.Score) > 1e-9 || !(there.Score >= 0 && there.Score <= 1) {
			t.Fatalf("%g one way, %g the other", there.Score, back.Score)
		}
		if self, _ := judge.Mud(a, a); self.Score > 1e-6 {
			t.Fatalf("a batter is muddy by %g with itself", self.Score)
		}
	})
}

func TestMudRefusesWhatIsNoPaint(t *testing.T) {
	if m, err := NewJudge().Table([]Paint{paint(t, "#f2c230"), {}}); err == nil {
		t.Errorf("gave %v", m)
	}
}

// The example palette of nine: white keeps the muddy pairs apart. Regression: a prototype found 0.08.
func TestBestOrderPutsWhiteBetweenWhatWouldGoMuddy(t *testing.T) {
	names := []string{"yellow", "purple", "aqua", "pink", "white", "blue", "orange", "green", "red"}
	var paints []Paint
	for _, name := range names {
		paints = append(paints, paint(t, jars()[name]))
	}
	table, err := NewJudge().Table(paints)
	if err != nil {
		t.Fatal(err)
	}
	order, worst, total, err := BestOrder(OrderProblem{Mud: table, First: None, Last: None, Spacer: None})
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, i := range order {
		said = append(said, names[i])
	}
	t.Logf("%v worst %.2f total %.2f", said, worst, total)
	if worst > 0.1 {
		t.Errorf("%v: worst %.2f, want at most 0.1", said, worst)
	}
}

// Independent library: go-colorful v1.4.1 says what sRGB can show. A colour moved to the lightness of
// its hue's cusp must keep its chroma inside the gamut, else the cusp is not the most colourful.
func TestCuspIsTheMostColourfulOfItsHue(t *testing.T) {
	table := newCusps()
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Custom(drawColour).Filter(func(c RGB) bool {
			h := c.OKLCH().H
			return h >= 45 && h <= 140 // the hues the score looks up
		}).Draw(t, "colour").OKLCH()
		for _, part := range channels(colorful.OkLch(table.at(c.H), 0.98*c.C, c.H)) {
			if part < -0.01 || part > 1.01 {
				t.Fatalf("hue %.1f: lightness %.3f has less chroma than %.3f", c.H, table.at(c.H), c.C)
			}
		}
	})
}

func channels(c colorful.Color) [3]float64 {
	r, g, b := c.LinearRgb()
	return [3]float64{r, g, b}
}

// Cream beside a pastel dilutes it: what little chroma cream has is not missed.
func TestAPastelIsJudgedByItsOwnChromaUnlessDiluted(t *testing.T) {
	of := func(name string) OKLCH { return hex(t, jars()[name]).OKLCH() }
	for _, c := range []struct {
		a, b        string
		least, most float64
	}{{"cream", "sky", 0.09, 0.12}, {"white", "pale pink", 0.12, 0.12}, {"pale pink", "mint", 0.06, 0.07}, {"blue", "orange", 0.12, 0.12}} {
		if got := greyScale(of(c.a), of(c.b)); got < c.least-1e-9 || got > c.most+1e-9 {
			t.Errorf("%s + %s: %.3f, want %g to %g", c.a, c.b, got, c.least, c.most)
		}
	}
}
