package pour_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
)

func closeTo(t rapid.TB, what string, got pour.Figure, want float64) {
	t.Helper()
	if !got.Known || math.Abs(got.V-want) > 1e-6*math.Max(1, math.Abs(want)) {
		t.Errorf("%s is %.9g (%v), want %.9g", what, got.V, got.Known, want)
	}
}
