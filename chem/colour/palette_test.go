package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestQuantiseNeverSharesAnIndex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([]int{Palette16, Palette256}).Draw(t, "size")
		colours := rapid.SliceOfN(rapid.Custom(drawColour), 0, 16).Draw(t, "colours")
		picked, err := Quantise(colours, size)
		if err != nil || len(picked) != len(colours) {
			t.Fatalf("%d of %d indices, %v", len(picked), len(colours), err)
		}
		seen := map[uint8]bool{}
		for _, index := range picked {
			if seen[index] || int(index) >= size || (size == Palette256 && index < 16) {
				t.Fatalf("index %d is shared or out of place in %v", index, picked)
			}
			seen[index] = true
		}
	})
}

func TestQuantiseGivesPaletteColoursTheirOwnIndex(t *testing.T) {
	for _, index := range []uint8{16, 46, 137, 196, 208, 231, 232, 255} {
		picked, err := Quantise([]RGB{Terminal(index)}, Palette256)
		if err != nil || picked[0] != index {
			t.Errorf("index %d became %v, %v", index, picked, err)
		}
	}
}

func TestQuantiseKeepsTwelveEqualBattersApart(t *testing.T) {
	colours := make([]RGB, 12)
	for i := range colours {
		colours[i] = hex(t, "#f2c230")
	}
	picked, err := Quantise(colours, Palette16)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[uint8]bool{}
	for _, index := range picked {
		seen[index] = true
	}
	if len(seen) != 12 {
		t.Errorf("%d indices for 12 batters: %v", len(seen), picked)
	}
}

func TestQuantiseRefusesWhatDoesNotFit(t *testing.T) {
	for name, try := range map[string]func() ([]uint8, error){
		"palette of 8":       func() ([]uint8, error) { return Quantise(nil, 8) },
		"17 colours into 16": func() ([]uint8, error) { return Quantise(make([]RGB, 17), Palette16) },
		"not a number":       func() ([]uint8, error) { return Quantise([]RGB{{R: math.NaN()}}, Palette256) },
	} {
		if picked, err := try(); err == nil {
			t.Errorf("%s gave %v", name, picked)
		}
	}
}

// Regression: the least sum is found, not the first come first served one.
func TestAssignFindsTheLeastSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.IntRange(1, 5).Draw(t, "rows")
		columns := rapid.IntRange(rows, 6).Draw(t, "columns")
		cost := make([][]float64, rows)
		for i := range cost {
			cost[i] = make([]float64, columns)
			for k := range cost[i] {
				cost[i][k] = float64(rapid.IntRange(0, 50).Draw(t, "cost"))
			}
		}
		got := 0.0
		for i, k := range assign(cost) {
			got += cost[i][k]
		}
		if want := cheapest(cost, 0, map[int]bool{}); got != want {
			t.Fatalf("%v costs %g, want %g", cost, got, want)
		}
	})
}

func cheapest(cost [][]float64, row int, taken map[int]bool) float64 {
	if row == len(cost) {
		return 0
	}
	least := math.Inf(1)
	for k, c := range cost[row] {
		if !taken[k] {
			taken[k] = true
			least = min(least, c+cheapest(cost, row+1, taken))
			taken[k] = false
		}
	}
	return least
}

// The fixed part of the 256 colours as xterm's 256colres.pl lays it out (memory): a cube with levels 0, 95, 135, 175, 215 and 255, then greys from 8 in
// steps of 10.
func TestTheFixedTerminalColoursAreThoseOfTheCubeAndTheGreys(t *testing.T) {
	for index, want := range map[uint8]string{
		16: "#000000", 17: "#00005f", 22: "#005f00", 52: "#5f0000", 67: "#5f87af", 231: "#ffffff", 196: "#ff0000", 232: "#080808", 244: "#808080", 255: "#eeeeee",
	} {
		if got := Terminal(index).Hex(); got != want {
			t.Errorf("%d is %s, want %s", index, got, want)
		}
	}
	if _, err := Quantise(make([]RGB, 240), Palette256); err != nil {
		t.Errorf("240 colours have 240 places: %v", err)
	}
	if _, err := Quantise(make([]RGB, 241), Palette256); err == nil {
		t.Error("241 colours fit into 240 places")
	}
}
