package colour

import (
	"math"
	"testing"
)

// A pale batter beside a strong one is shown where its line lies, on its own side, whichever of the two it is; the grey of the line is that of a
// mixture worked out here, and lies below both.
func TestAPaleBatterIsShownItsGreyLine(t *testing.T) {
	judge := NewJudge()
	weak, strong := paint(t, jars()["pale pink"]), paint(t, jars()["green"])
	there, err := judge.Mud(weak, strong)
	if err != nil {
		t.Fatal(err)
	}
	back, err := judge.Mud(strong, weak)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [3]float64{0.05, 0.15, 0.5} {
		if math.Abs(there.Parts[i]-want) > 1e-9 || math.Abs(back.Parts[2-i]-(1-want)) > 1e-9 || there.Swatches[i].Hex() != back.Swatches[2-i].Hex() {
			t.Errorf("swatch %d: %g and %g, %s and %s", i, there.Parts[i], back.Parts[2-i], there.Swatches[i].Hex(), back.Swatches[2-i].Hex())
		}
	}
	line := mix(t, []Paint{weak, strong}, []float64{0.95, 0.05}).RGB()
	if there.Swatches[0].Hex() != line.Hex() {
		t.Errorf("the line is %s, its mixture %s", there.Swatches[0].Hex(), line.Hex())
	}
	if c := line.OKLCH().C; c > 0.7*weak.RGB().OKLCH().C {
		t.Errorf("the line has chroma %.3f, the pale batter %.3f: no line", c, weak.RGB().OKLCH().C)
	}
	if there.Cause != GreysOut {
		t.Errorf("the cause is %q", there.Cause)
	}
}

// All other pairs are shown in quarters.
func TestOtherPairsAreShownInQuarters(t *testing.T) {
	judge := NewJudge()
	for _, c := range [][2]string{{"orange", "blue"}, {"pale pink", "mint"}, {"white", "green"}, {"cream", "green"}, {"pale pink", "red"}} {
		m, err := judge.Mud(paint(t, jars()[c[0]]), paint(t, jars()[c[1]]))
		if err != nil || m.Parts != [3]float64{0.25, 0.5, 0.75} {
			t.Errorf("%v: %v, %v", c, m.Parts, err)
		}
	}
}
