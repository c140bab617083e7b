package command_test

import (
	"fmt"
	"image/png"
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/pour/drying"
)

// dried is a maker whose loaf was poured on 5 December 2026 and cut on the 6th, and whose bars 2 and 5 lose what the invented data of the
// reference loses, a bar of 125 g: it lists 125.0, 122.1, 120.9, 119.5, 117.9, 117.0, 116.0 and 114.6 g on days 0, 1, 2, 4, 7, 10, 14 and 21.
func dried(t *testing.T, weighings int) (*maker, string) {
	t.Helper()
	m := newMaker(t)
	m.now = func() time.Time { return time.Date(2026, 12, 29, 9, 0, 0, 0, time.UTC) }
	id := m.pours(time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC))
	m.says("logbook", "slice", id, "--count", "10", "--day", "2026-12-06")
	days := []int{0, 1, 2, 4, 7, 10, 14, 21}
	for i, g := range []float64{125, 122.1, 120.9, 119.5, 117.9, 117, 116, 114.6}[:weighings] {
		day := time.Date(2026, 12, 6+days[i], 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
		m.says("logbook", "weigh", id, fmt.Sprintf("%.1f", g-2), fmt.Sprintf("%.1f", g+2), "--bars", "2 5", "--day", day)
	}
	return m, id
}

func TestHowABatchDriesIsTold(t *testing.T) {
	m, id := dried(t, 8)
	text := m.says("cure", id)
	if strings.Contains(text, "Read to") || strings.Contains(text, "No day") {
		t.Errorf("of bars weighed to a tenth:\n%s", text)
	}
	for _, want := range []string{
		"cut on 2026-12-06; today is day 23, 29 Dec", "the mean of bars 2 and 5, weighed 8 times", "day 21, 27 Dec    114.6 g", "LATELY As weighed it lost 1.2 %, give or take 0.2, in the 7 days to day 21", "FIT ", "TODAY ", "in the week from now",
		"READY ", "when it loses less than 0.5 % a week; 80 % band 31 Dec to 6 Jan; 5 days left", "Summed over all that could be", "common practice, no source", "lean early", "Dry is not safe",
	} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(want), " ")) {
			t.Errorf("%q is not told:\n%s", want, text)
		}
	}
	file := m.path("cure.png")
	m.says("cure", id, "-o", file)
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close() //nolint:errcheck // it was read
	img, err := png.Decode(f)
	if err != nil || img.Bounds().Dx() != drying.WidePX || img.Bounds().Dy() != drying.HighPX {
		t.Errorf("the picture is %v, %v", img.Bounds(), err)
	}
	if code, _, errs := m.types("cure", id, "-o", m.path("cure.jpg")); code == 0 || !strings.Contains(errs, ".png") {
		t.Errorf("another ending: exit %d, %s", code, errs)
	}
}

func TestBeforeWeighingsThereIsAForecastAndWithOddOnesARefusal(t *testing.T) {
	m, id := dried(t, 0)
	text := m.says("cure", id)
	for _, want := range []string{"WEIGHED", "nothing yet: pourbench logbook weigh", "FORECAST  a bar of", "READY"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told:\n%s", want, text)
		}
	}
	m.says("logbook", "weigh", id, "120", "--day", "2026-12-07")
	if code, _, errs := m.types("logbook", "weigh", id, "127", "--day", "2026-12-20"); code != 0 || !strings.Contains(errs, "heavier") {
		t.Fatalf("exit %d, %s", code, errs)
	}
	text = m.says("cure", id)
	if !strings.Contains(text, "FORECAST  none: ") || !strings.Contains(text, "damper than the bar") || strings.Contains(text, "\nREADY ") || !strings.Contains(text, "day 14, 20 Dec    127.0 g") {
		t.Errorf("of a bar that gains:\n%s", text)
	}
	if flat := strings.Join(strings.Fields(text), " "); !strings.Contains(flat, "Read to 1 g: each can be half of that off") || !strings.Contains(flat, "LATELY As weighed it gained 5.8 %, give or take 0.5, in the 13 days to day 14; under 0.5 % a week you call it dry. No day is given.") {
		t.Errorf("of a bar that gains, read in whole grams:\n%s", text)
	}
	file := m.path("odd.png")
	m.says("cure", id, "-o", file)
	if _, err := os.Stat(file); err != nil {
		t.Errorf("what was weighed is not drawn: %v", err)
	}
	own := m.path("mine.png")
	if err := os.WriteFile(own, []byte("no picture"), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, _, errs := m.types("cure", id, "-o", own); code == 0 || !strings.Contains(errs, "is no picture") {
		t.Errorf("over a file of hers: exit %d, %s", code, errs)
	}
	if code, _, errs := m.types("cure", "nothing"); code == 0 || !strings.Contains(errs, "nothing") {
		t.Errorf("of no pour: exit %d, %s", code, errs)
	}
}

// The page of a scent follows what is logged by commands.
func TestAScentsPageFollowsTheLogbook(t *testing.T) {
	m, id := dried(t, 0)
	m.says("logbook", "sniff", id, "3", "--scent", "alp-rose", "sharp, of roses", "--day", "2026-12-06")
	m.now = func() time.Time { return time.Date(2027, 2, 2, 9, 0, 0, 0, time.UTC) }
	m.says("logbook", "sniff", id, "1", "--scent", "alp-rose", "--day", "2027-02-01")
	m.says("logbook", "look", id, "browning", "2", "--jug", "poppy", "--day", "2026-12-20")
	m.says("logbook", "lot", id, "L1", "--count", "5")
	m.says("logbook", "sell", id, "3", "--to", "bright")
	text := m.says("scent", "Alp Rose")
	for _, want := range []string{"strong at week 0, faint by week 8", "week 0          ###############", "Your words: of roses, sharp.", "seen 2 of 4 in", "bright: 3 bars sold, of 1 pour"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told:\n%s", want, text)
		}
	}
	if list := m.says("scent"); !strings.Contains(list, "alp-rose: poured once: ") || !strings.Contains(list, "meadow-hay: poured once") {
		t.Errorf("the list:\n%s", list)
	}
}

// A batch that failed is not forecast.
func TestAFailedBatchIsNotForecast(t *testing.T) {
	m, id := dried(t, 0)
	before := m.says("cure", id)
	m.says("logbook", "fail", id, "orange spots")
	if got := m.says("cure", id); strings.Contains(before, "failed") || !strings.Contains(got, "none: the batch is logged as failed") || strings.Contains(got, "READY") {
		t.Errorf("%s\n%s", before, got)
	}
	if code, _, errs := m.types("logbook", "sniff", id, ""); code != 2 || !strings.Contains(errs, "strength") {
		t.Errorf("exit %d, %s", code, errs)
	}
}

// A weighing of other bars is left out, and said.
func TestAWeighingOfOtherBarsIsLeftOut(t *testing.T) {
	m, id := dried(t, 3)
	if _, _, errs := m.types("logbook", "weigh", id, "121", "122", "--bars", "1 2", "--day", "2026-12-12"); !strings.Contains(errs, "the bars weighed on 2026-12-08 were 2 5, not 1") {
		t.Errorf("%s", errs)
	}
	if got := m.says("cure", id); !strings.Contains(got, "LEFT OUT  the weighing of 2026-12-12") {
		t.Errorf("%s", got)
	}
}
