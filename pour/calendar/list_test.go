package calendar_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/calendar"
	"pourbench/pour/logbook/life"
)

func TestTheListHasWhatIsToComeAndWhatHoldsEverythingUp(t *testing.T) {
	l := meadow(t)
	const toCome = `Sun 2026-12-27                 Weigh bars, day 21 (forecast): Alpine Meadow of 5 Dec
Sun 2026-12-27                 Turn bars (forecast): Alpine Meadow of 5 Dec
Sun 2027-01-03                 Weigh bars, day 28 (forecast): Alpine Meadow of 5 Dec
Sun 2027-01-03                 Ready (forecast, 3 Jan to 7 Jan): Alpine Meadow of 5 Dec
`
	const late = `Sun 2026-12-06  04:00 to 10:00 Unmould: Alpine Meadow of 5 Dec, not done
Sun 2026-12-06  04:00 to 10:00 Cut window: Alpine Meadow of 5 Dec, not done
`
	if d := cmp.Diff(late+toCome, calendar.List(l.Entries(), on(t, "2026-12-27"))); d != "" {
		t.Error(d)
	}
	l.Course.Cut = life.Happened{Yes: true, Day: on(t, "2026-12-06")}
	if d := cmp.Diff(strings.ReplaceAll(toCome, " (forecast):", ":"), calendar.List(l.Entries(), on(t, "2026-12-27"))); d != "" {
		t.Error(d)
	}
	if got := calendar.List(l.Entries(), on(t, "2027-01-04")); got != "" {
		t.Error(got)
	}
}

func TestWhatWasHandedOutIsCounted(t *testing.T) {
	entries := sampleEntries()
	entries[1].Cancelled = true
	if d := cmp.Diff(calendar.Told{Entries: 3, New: 1, Moved: 1, Cancelled: 1}, calendar.Count(entries)); d != "" {
		t.Error(d)
	}
}
