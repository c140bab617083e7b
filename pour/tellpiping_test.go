package pour_test

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// What is piped stands in the words of its act, by hand from the measures of the worked examples: 80 mm in three are 26.7 mm; of rows as wide as their
// shells, 16 mm, the middles of the outermost are 64 mm apart on a loaf of 80.
func TestThePipingIsToldWithTipSizeNumberAndPlace(t *testing.T) {
	shells := pour.Piping{Shape: pour.PipeShells, Tip: pour.TipStar, Points: 8, TipMM: 10, ValleyMM: 8, HeadMM: 9, TailMM: 12, WidthMM: 16, HeightMM: 11, OverlapPercent: 25, Along: pour.PipeLoaf, Rows: 2}
	dollop := pour.Piping{Shape: pour.PipeDollop, WidthMM: 36, HeightMM: 34}
	rope := pour.Piping{Shape: pour.PipeRope, TipMM: 8, WindMM: 5, PitchMM: 14}
	for _, c := range []struct {
		with pour.Piping
		bags string
		want []string
	}{
		{rosette(), pour.BagOne, []string{"30 rosettes of 1.0 g, 23 mm wide", "star tip of 6 points, 7 mm open", "3 in a row across every bar, middles 27 mm apart"}},
		{dollop, pour.BagOne, []string{"10 dollops of ", "36 mm wide and 34 mm high, round tip, one on every bar's middle"}},
		{dollop, pour.BagEach, []string{"one on every bar's middle, the bags in turn"}},
		{shells, pour.BagOne, []string{"30 shells of 1.1 g", "16 mm wide and 11 mm high", "in 2 rows along the loaf, middles 64 mm apart"}},
		{rope, pour.BagOne, []string{"10 ropes of ", "round tip, 8 mm open, one across every bar, edge to edge"}},
	} {
		plan, shelf := iced(t, c.with)
		plan.Icing.Bags = c.bags
		sheet := pour.Weigh(plan, shelf)
		told := ""
		for _, st := range sheet.Stints() {
			if st.Kind == pour.TaskPipe {
				told = sheet.Tell(st)
				break
			}
		}
		for _, want := range c.want {
			if !strings.Contains(told, want) {
				t.Errorf("%s: %q lacks %q", c.with.Shape, told, want)
			}
		}
	}
}
