package tui

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/planfile"
)

// A cut across a slab of 300 × 200 in bars of 60 × 50 goes through four bars side by side: what is drawn is none of their faces, and says so. Its bars
// have no icing.
func TestACutAcrossASlabIsNamedForTheBarsItGoesThrough(t *testing.T) {
	shelf, plan := built(t)
	plan.Icing, plan.Swirl.Technique = nil, "layers"
	plan.Mould = pour.Mould{Shape: pour.ShapeSlab, LengthMM: 300, WidthMM: 200, HeightMM: 40, FillMM: 36, BarMM: 60, BarWidthMM: 50}
	m := newModel(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, Background: "dark"})
	finish(m, m.Init())
	resize(m, 120, 36)
	drive(m, "f4")
	if got := frame(m); !strings.Contains(got, "The cut through bars 1 to 4") || strings.Contains(got, "The face of a bar") {
		t.Errorf("the picture is named otherwise:\n%s", got)
	}
	m.studio.bar = 4
	if got := m.caption(); !strings.HasPrefix(got, "cut through bars 17 to 20 of 20") {
		t.Errorf("the last cut is told as %q", got)
	}
	drive(m, "f2")
	if got := frame(m); !strings.Contains(got, "a bar as cut") || strings.Contains(got, "with its icing") {
		t.Errorf("a bar without icing has one:\n%s", got)
	}
}
