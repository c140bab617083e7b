package tui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/panel"
)

// A batch that cannot be mixed has dashes where its weights would stand, at every station.
func TestNoStationShowsAWeightThatCannotBeWorkedOut(t *testing.T) {
	for what, spoil := range map[string]func(*pour.Plan){
		"carriers": func(p *pour.Plan) {
			p.Base.Carrier, p.Base.CarrierOil = pour.CarrierBatch, p.Base.Oils[0].Oil
			p.Base.Oils[0].Percent, p.Base.Oils[1].Percent = 0.1, p.Base.Oils[0].Percent+p.Base.Oils[1].Percent-0.1
			p.Base.Jugs[0].Colourants[0].DosePercent = 5
		},
		"stock": func(p *pour.Plan) { p.Icing.StockLyePercent, p.Icing.LyeConcentrationPercent = 20, 40 },
	} {
		shelf, plan := built(t)
		spoil(&plan)
		m := newModel(Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, Background: "dark"})
		finish(m, m.Init())
		refused := 0
		for _, b := range m.facts.Sheet.Batches() {
			if b.Refused.Masses != "" {
				refused++
			}
		}
		if refused == 0 {
			t.Fatalf("%s: everything can be mixed: %v", what, m.facts.Warnings)
		}
		for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
			resize(m, size[0], size[1])
			for s := range panel.Places {
				visit(m, panel.Place(s))
				text := frame(m)
				if bad := regexp.MustCompile(`-\d+(\.\d+)? +(g|mL)\b`).FindString(text); bad != "" || strings.Contains(text, "NaN") || !strings.Contains(text, "batter – ") {
					t.Errorf("%s, %v at %v shows %q or no dash for the batter", what, m.stations[s].Name, fmt.Sprint(size), bad)
				}
			}
		}
	}
}
