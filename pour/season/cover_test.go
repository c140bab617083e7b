package season_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
)

// again is a batch of a plan that poured the design again.
func again(s season.Standing) season.Standing {
	s.Name += ", again 2"
	return s
}

// Shared out by hand: 8 bars left of a pour that is for none and 10 of the one that is for the fair. The fair, which comes first, wants 12: its own
// 10, and 2 of the others, so that 6 are left for the market, which wants 9. What the inn has planned later is not touched.
func TestBarsAreSharedOutFromTheEarliestDateOn(t *testing.T) {
	wants := func(n int) []season.Want { return []season.Want{{"rose", n}} }
	f := season.Facts{Today: on(t, "2026-11-20"), File: season.File{
		Dates: []season.Date{
			{Name: "market", Day: on(t, "2026-12-20"), Wants: wants(9)},
			{Name: "inn", Day: on(t, "2027-03-01"), Wants: wants(4)},
			{Name: "fair", Day: on(t, "2026-12-13"), Wants: wants(12)},
		},
		Pours: []season.Planned{{Pour: "own", For: "fair"}, {Plan: "rose.toml", For: "inn"}},
	}}
	d := meadow()
	d.Name = "Rose"
	f.Designs = map[string]season.Design{"rose.toml": d}
	f.Standing = []season.Standing{
		stands(t, "own", "2026-11-07", "2026-11-08", life.Curing, less(0)), again(stands(t, "spare", "2026-10-01", "2026-10-02", life.Ready, less(2))),
		stands(t, "wet", "2026-12-01", "2026-12-02", life.Curing, less(0)), stands(t, "uncounted", "2026-10-01", "2026-10-02", life.Ready, life.Account{}),
	}
	b := season.Of(f)
	got := map[string]season.Cover{}
	from := map[string]string{}
	for _, d := range b.Dates {
		got[d.Name] = d.Covers[0]
		for _, s := range d.Covers[0].From {
			from[d.Name] += b.Rows[s.Row].Key + " " + strings.Repeat("|", s.Bars) + " "
		}
	}
	if diff := cmp.Diff(map[string]string{
		"fair": "own |||||||||| spare || ", "market": "spare |||||| ", "inn": "rose.toml for inn |||| ",
	}, from); diff != "" {
		t.Error(diff)
	}
	// The fair's own pour was cut on 8 November: dry 28 November to 14 December, about the 6th, so its 10 bars are likely and not sure.
	if c := got["fair"]; c.Short != 0 || c.Unsure != 10 || c.Unknown != 1 {
		t.Errorf("%+v", c)
	}
	if c := got["market"]; c.Short != 3 || c.Unsure != 0 || c.Wanted != 9 {
		t.Errorf("%+v", c)
	}
	said := ""
	for _, c := range b.Collisions {
		said += c.Text + "; " + c.Help + "\n"
	}
	if !strings.Contains(said, "market wants 9 bars of rose and gets 6: 3 short; of 1 pour of it nobody knows") {
		t.Errorf("said:\n%s", said)
	}
}

// A pour that is too late for a market that has all it wants of bars that stand is not needed for it, and it says so.
func TestAPourThatIsNotNeededSaysSo(t *testing.T) {
	f := oneDate(season.Date{Name: "market", Day: on(t, "2026-12-19"), LabelDays: 2, Wants: []season.Want{{"Alpine Meadow", 6}}}, on(t, "2026-11-28"))
	dry := stands(t, "dry", "2026-10-01", "2026-10-02", life.Ready, less(2))
	dry.Name = "Alpine Meadow"
	const says = "it is not needed for market, which has all it wants of it from bars that stand"
	for _, bars := range []int{6, 9} { // of 8 that stand
		f.File.Dates[0].Wants[0] = season.Want{Design: "Alpine Meadow", Bars: bars}
		f.Standing = []season.Standing{dry}
		said := strings.Join(season.Of(f).TellCollisions(), "\n")
		if !strings.Contains(said, "too late for market") || strings.Contains(said, says) != (bars <= 8) {
			t.Errorf("%d wanted: %s", bars, said)
		}
		f.File.Dates[0].Wants[0].Design = "Alpine Meadow, again" // the same design, whatever plan of it is named
		if again := strings.Join(season.Of(f).TellCollisions(), "\n"); strings.ReplaceAll(again, ", again", "") != said {
			t.Errorf("%d of it again wanted: %s", bars, again)
		}
	}
}

// Bars that are dry at the latest on the very day of the labels are sure for it; those that may be dry a day after it are not.
func TestBarsThatAreDryByTheDayOfTheLabelsAreSure(t *testing.T) {
	poured := on(t, "2026-11-21")
	of := func(market day.Day) (season.Board, season.Cover) {
		b := season.Of(season.Facts{Today: on(t, "2026-11-20"), Designs: map[string]season.Design{"a": meadow()}, File: season.File{
			Dates: []season.Date{{Name: "fair", Day: market, Wants: []season.Want{{Design: meadow().Name, Bars: 3}}}},
			Pours: []season.Planned{{Plan: "a", For: "fair", Day: &poured}},
		}})
		return b, b.Dates[0].Covers[0]
	}
	b, _ := of(on(t, "2027-09-01"))
	late := b.Rows[0].Ready.Late
	if _, c := of(late); c.Unsure != 0 || c.Short != 0 {
		t.Errorf("dry by the day itself: %+v", c)
	}
	if _, c := of(late - 1); c.Unsure != 3 {
		t.Errorf("dry a day after it: %+v", c)
	}
}
