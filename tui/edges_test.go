package tui

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"pourbench/pour"
	"pourbench/pour/cost"
	"pourbench/tui/screen"
)

// On 80 columns the name's beginning, the bars, what one costs and the warnings stay in the title; oils and batter give way. With more room they stand.
func TestTheTitleKeepsTheNameBesideWhatABarCosts(t *testing.T) {
	for wide, want := range map[int][]string{80: {"pourbench  Alpine Mead", "10 bars  a good bar —"}, 120: {"Alpine Meadow", "oils ", "batter ", "10 bars  a good bar —"}} {
		m := opened(t, wide, 24)
		sheet := *m.facts.Sheet
		sheet.Cost = pour.CostSheet{Stated: true, Bill: cost.Bill{Currency: "EUR"}}
		m.facts.Sheet = &sheet
		s := screen.New(wide, 1)
		m.drawTitle(s.Area())
		title := ansi.Strip(s.String())
		for _, text := range want {
			if text = strings.ReplaceAll(text, "—", m.facts.Show.Number(pour.Unknown(), 0)); !strings.Contains(title, text) {
				t.Errorf("%q is not in %q", text, title)
			}
		}
	}
}
