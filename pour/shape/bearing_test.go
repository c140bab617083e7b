package shape_test

import (
	"math"
	"testing"

	"pourbench/pour/shape"
)

// printed fails when a figure does not come to the digits a table prints.
func printed(t *testing.T, what string, got, want float64, digits int) {
	t.Helper()
	if math.Abs(got-want) > 0.5000001*math.Pow10(-digits) {
		t.Errorf("%s is %.6f, the table prints %.*f", what, got, digits, want)
	}
}

// T9, density 1.005: the rosette of T3 on its own circle, the cone of T2, the spooned top of T7 with 14 mm on average.
func TestTheBearingOfTheWorkedExample(t *testing.T) {
	rosette := shape.Pressure(0.978017, shape.Disc(11.605))
	printed(t, "the rosette presses", rosette, 22.6687, 4)
	printed(t, "it needs", shape.BedNeeds(rosette, shape.UnderRound), 7.968, 3)
	kiss := 0.71619724 * shape.LayerPressure(34.0/3, 1.005)
	printed(t, "the kiss presses", kiss, 79.998, 3)
	printed(t, "it needs", shape.BedNeeds(kiss, shape.UnderRound), 28.119, 3)
	top := shape.LayerPressure(8+12*shape.Ridges, 1.005)
	printed(t, "the spooned top presses", top, 137.980, 3)
	printed(t, "it needs", shape.BedNeeds(top, shape.UnderStrip), 53.672, 3)
	printed(t, "the factor of a strip", shape.UnderStrip, 5.14, 2)
}

func TestWhatStandsAndWhatIsCarriedByTheTable(t *testing.T) {
	for _, row := range [][4]float64{{10, 2.0, 6.1, 2.6}, {20, 4.1, 12.2, 5.2}, {50, 10.1, 30.4, 13.0}, {100, 20.3, 60.9, 26.1}, {200, 40.6, 121.8, 52.2}, {500, 101.5, 304.4, 130.4}} {
		printed(t, "a column", shape.ColumnStands(row[0], 1.005), row[1], 1)
		printed(t, "a cone", shape.ConeStands(row[0], 1.005), row[2], 1)
		printed(t, "a strip of icing", shape.LayerCarried(row[0], 1.005, shape.UnderStrip), row[3], 1)
	}
}

// The peak rule's two parts, and that it is the strength of the peak's own foot: a peak of 6τ/(ρg) carries what a bed of τ does.
func TestAPeakTellsWhatTheBaseCarries(t *testing.T) {
	printed(t, "under a strip", shape.PeakCarries(1, shape.UnderStrip), 0.428, 3)
	printed(t, "under a round spot", shape.PeakCarries(1, shape.UnderRound), 0.474, 3)
	for _, tau := range []float64{10, 60, 300} {
		peak := shape.ConeStands(tau, 1.005)
		near(t, "carried by the peak rule", shape.PeakCarries(peak, shape.UnderStrip), shape.LayerCarried(tau, 1.005, shape.UnderStrip), 1e-12)
		near(t, "the peak needed", shape.PeakNeeded(shape.PeakCarries(peak, shape.UnderRound), shape.UnderRound), peak, 1e-12)
	}
}

// A cylinder of 50 mm: table of the page; the shortcut reads 54 % too high at 50 Pa and 6 % at 200 Pa.
func TestASlumpByTheTable(t *testing.T) {
	for tau, slump := range map[float64]float64{20: 35.75, 50: 23.67, 100: 11.41, 150: 4.45, 200: 0.95} {
		printed(t, "the slump", shape.Slump(50, tau, 1.005), slump, 2)
	}
	near(t, "a cylinder that is strong enough", shape.Slump(50, 247, 1.005), 0, 0)
	printed(t, "the shortcut at 50 Pa", shape.SlumpYield(50, shape.Slump(50, 50, 1.005), 1.005)/50, 1.54, 2)
	printed(t, "the shortcut at 200 Pa", shape.SlumpYield(50, shape.Slump(50, 200, 1.005), 1.005)/200, 1.06, 2)
}

// A rod of 20 g with a flat end of 10 mm presses 2497 Pa and stands from about 439 Pa on. Pieces do not sink from less than 3 Pa on.
func TestARodStandsAndPiecesAreHeld(t *testing.T) {
	rod := shape.Pressure(20, shape.Disc(5))
	printed(t, "the rod presses", rod, 2497, 0)
	printed(t, "it stands", rod/shape.UnderRound, 439, 0)
	printed(t, "a nonpareil", shape.SphereHeld(2, 0.580), 0.5, 1)
	printed(t, "a ball", shape.SphereHeld(8, 0.580), 2.2, 1)
	printed(t, "an embed", shape.SphereHeld(25, 0.200), 2.3, 1)
}
