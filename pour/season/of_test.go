package season_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
	"pourbench/pour/season"
)

// loaf is a mould that designs of the tests are poured in.
func loaf() pour.Mould {
	return pour.Mould{Shape: pour.ShapeLoaf, LengthMM: 250, WidthMM: 80, HeightMM: 70}
}

// meadow is a design whose cure has a band.
func meadow() season.Design {
	return season.Design{
		Name: "Alpine Meadow", Mould: loaf(), Bars: 10, BarsKnown: true, CutDays: 1, Cure: season.Span{Early: 21, Middle: 28, Late: 40},
		Embeds: []season.Embed{{"petals", 14}},
	}
}

// oneDate is the season of one date and one pour for it, whose day is not fixed.
func oneDate(d season.Date, today day.Day) season.Facts {
	return season.Facts{
		File:    season.File{Dates: []season.Date{d}, Pours: []season.Planned{{Plan: "meadow.toml", For: d.Name}}},
		Designs: map[string]season.Design{"meadow.toml": meadow()}, Today: today,
	}
}

// The days are counted off a calendar by hand.
func TestADateIsWorkedBackwardsToThePour(t *testing.T) {
	for name, c := range map[string]struct {
		market string
		label  int
		cure   season.Span
		cut    int
		bench  []time.Weekday
		want   [3]string // by the early end, the middle, the late end
		embeds string
	}{
		"over the end of November":          {"2026-12-19", 2, season.Span{21, 28, 40}, 1, nil, [3]string{"2026-11-25", "2026-11-18", "2026-11-06"}, "2026-10-23"},
		"on Saturdays and Sundays alone":    {"2026-12-19", 2, season.Span{21, 28, 40}, 1, []time.Weekday{time.Saturday, time.Sunday}, [3]string{"2026-11-22", "2026-11-15", "2026-11-01"}, "2026-10-18"},
		"over the end of the year":          {"2027-01-10", 0, season.Span{28, 28, 28}, 2, nil, [3]string{"2026-12-11", "2026-12-11", "2026-12-11"}, "2026-11-27"},
		"over 29 February":                  {"2028-03-10", 1, season.Span{14, 14, 14}, 1, nil, [3]string{"2028-02-23", "2028-02-23", "2028-02-23"}, "2028-02-09"},
		"over the end of February":          {"2027-03-10", 1, season.Span{14, 14, 14}, 1, nil, [3]string{"2027-02-22", "2027-02-22", "2027-02-22"}, "2027-02-08"},
		"over the beginning of summer time": {"2027-04-02", 0, season.Span{7, 7, 7}, 1, nil, [3]string{"2027-03-25", "2027-03-25", "2027-03-25"}, "2027-03-11"},
		"over the end of summer time":       {"2026-11-01", 3, season.Span{7, 7, 7}, 0, nil, [3]string{"2026-10-22", "2026-10-22", "2026-10-22"}, "2026-10-08"},
		"a century that has no 29 February": {"2100-03-05", 0, season.Span{5, 5, 5}, 1, nil, [3]string{"2100-02-27", "2100-02-27", "2100-02-27"}, "2100-02-13"},
	} {
		f := oneDate(season.Date{Name: "market", Day: on(t, c.market), LabelDays: c.label}, on(t, "2026-09-01"))
		d := meadow()
		d.Cure, d.CutDays = c.cure, c.cut
		f.Designs["meadow.toml"] = d
		f.File.House.BenchDays = c.bench
		r := season.Of(f).Rows[0]
		if got := [3]string{r.By.Early.String(), r.By.Middle.String(), r.By.Late.String()}; got != c.want {
			t.Errorf("%s: pour by %v, want %v", name, got, c.want)
		}
		if r.Pour != r.By.Late || r.Fixed || r.Verdict != season.InTime || len(r.Embeds) != 1 || r.Embeds[0].By.String() != c.embeds {
			t.Errorf("%s: poured %s, %s, embeds by %v", name, r.Pour, r.Verdict, r.Embeds)
		}
	}
}

// From whatever hour of a day on which the clock is put forward or back the season is the same.
func TestTheHourOfTodayMovesNothing(t *testing.T) {
	there, err := time.LoadLocation("Europe/Vienna")
	if err != nil {
		t.Skip("this machine has no table of zones")
	}
	for _, d := range []string{"2027-03-28", "2026-10-25"} {
		for hour := range 24 {
			today := day.Of(on(t, d).At(hour, 30, there))
			f := oneDate(season.Date{Name: "market", Day: on(t, d) + 30}, today)
			if r := season.Of(f).Rows[0]; r.Pour != on(t, d) || r.LateDays != -1 {
				t.Errorf("%s %d:30: poured %s, %d days late", d, hour, r.Pour, r.LateDays)
			}
		}
	}
}

// A market of 19 December 2026 with two days of labelling wants dry bars on the 17th. Poured on the day in question the loaf is cut a day
// later, and dry 21 to 40 days after that, about 28.
func TestAPourThatIsTooLateSaysByHowMuch(t *testing.T) {
	for _, c := range []struct {
		today   string
		verdict season.Verdict
		late    int
		says    string
	}{
		{"2026-11-06", season.InTime, -12, ""},
		{"2026-11-07", season.Likely, -11, ""},
		{"2026-11-18", season.Likely, 0, ""},
		{"2026-11-19", season.Luck, 1, "Alpine Meadow, if it is poured on Thu 19 Nov, is dry about Fri 18 Dec (Fri 11 Dec to Wed 30 Dec): 1 day too late for market; poured by Wed 25 Nov it would do"},
		{"2026-11-26", season.TooLate, 8, "8 days too late for market; take bars that are dry already"},
		{"2026-12-20", season.Gone, 32, ""},
	} {
		b := season.Of(oneDate(season.Date{Name: "market", Day: on(t, "2026-12-19"), LabelDays: 2}, on(t, c.today)))
		r := b.Rows[0]
		if r.Verdict != c.verdict || r.LateDays != c.late || r.Pour != on(t, c.today) {
			t.Errorf("%s: %s, %d days, poured %s", c.today, r.Verdict, r.LateDays, r.Pour)
		}
		said := ""
		for _, k := range b.Collisions {
			if k.Kind == season.Late {
				said = k.Text + "; " + k.Help
			}
		}
		if !strings.Contains(said, c.says) || (said == "") != (c.says == "") {
			t.Errorf("%s: it says %q, want %q", c.today, said, c.says)
		}
	}
}

// stands is a pour of the logbook.
func stands(t *testing.T, id, poured, cut string, state life.State, bars life.Account) season.Standing {
	s := season.Standing{ID: id, Name: "Rose", Poured: on(t, poured), Cut: on(t, cut), State: state, Mould: loaf(), Bars: bars}
	s.Ready = season.Band{s.Cut + 20, s.Cut + 28, s.Cut + 36}
	return s
}

// less is an account of ten bars of which some are gone.
func less(gone int) life.Account {
	return life.Account{Known: true, Bars: 10, Sold: gone, Left: 10 - gone}
}

// A pour that stands goes forward from what happened: cut late it is dry late, and what still dries is not dry yet.
func TestAPourThatStandsGoesForwardFromWhatHappened(t *testing.T) {
	f := season.Facts{Today: on(t, "2026-12-20"), File: season.File{
		Dates: []season.Date{{Name: "fair", Day: on(t, "2026-12-31"), LabelDays: 1}}, Pours: []season.Planned{{Pour: "a", For: "fair"}, {Pour: "nowhere"}},
	}}
	f.Standing = []season.Standing{
		stands(t, "a", "2026-11-28", "2026-12-02", life.Curing, less(0)),
		stands(t, "slow", "2026-10-01", "2026-10-02", life.Curing, less(2)),
		stands(t, "sold", "2026-10-01", "2026-10-02", life.SoldOut, less(10)),
		stands(t, "empty", "2026-10-01", "2026-10-02", life.Labelled, less(10)),
		stands(t, "failed", "2026-10-01", "2026-10-02", life.Failed, life.Account{}),
		stands(t, "uncounted", "2026-10-01", "2026-10-02", life.Ready, life.Account{}),
		stands(t, "long ago", "2025-10-01", "2025-10-02", life.Ready, life.Account{}),
	}
	b := season.Of(f)
	row := map[string]season.Row{}
	for _, r := range b.Rows {
		row[r.ID] = r
	}
	if len(row) != 4 {
		t.Errorf("rows: %v", row)
	}
	if a := row["a"]; a.Ready.Middle != on(t, "2026-12-30") || a.Ready.Early != on(t, "2026-12-22") || a.Ready.Late != on(t, "2027-01-07") || a.Verdict != season.Likely || a.LateDays != 0 || a.Bars != 10 {
		t.Errorf("%+v", a)
	}
	if s := row["slow"]; s.Ready != (season.Band{f.Today, f.Today, f.Today}) || s.Bars != 8 {
		t.Errorf("%+v", s)
	}
	if u := row["uncounted"]; u.BarsKnown || !u.Placed {
		t.Errorf("%+v", u)
	}
	if n := row["nowhere"]; n.Fault == nil || n.Placed {
		t.Errorf("%+v", n)
	}
}

// Two pours of one plan for one date have names of their own, which stay.
func TestEveryRowHasANameOfItsOwn(t *testing.T) {
	f := oneDate(season.Date{Name: "market", Day: on(t, "2026-12-19")}, on(t, "2026-09-01"))
	f.File.Pours = append(f.File.Pours, f.File.Pours[0], season.Planned{Plan: "meadow.toml"})
	f.Standing = []season.Standing{stands(t, "a", "2026-08-28", "2026-08-29", life.Curing, less(0))}
	var keys []string
	for _, r := range season.Of(f).Rows {
		keys = append(keys, r.Key)
	}
	if want := []string{"meadow.toml for market", "meadow.toml for market, 2", "a", "meadow.toml for "}; !slices.Equal(keys, want) {
		t.Errorf("%q", keys)
	}
}

// The dates of a plan are those its sheet has: 20 hours in the mould are a day, 25 two.
func TestADesignIsTakenFromItsSheet(t *testing.T) {
	s := pour.Sheet{Plan: pour.Plan{Name: "Rose", Mould: loaf(), Bed: pour.Bed{CutAfterH: 25, CureDays: 27.5}}}
	s.Cut.Bars = make([]pour.BarPiece, 9)
	s.Embeds = []pour.EmbedSheet{{Name: "petals", MadeDays: 2, HardDays: 6.2}, {Name: "foil"}}
	d := season.DesignOf(s)
	if d.CutDays != 2 || d.Cure != (season.Span{28, 28, 28}) || d.Bars != 9 || len(d.Embeds) != 1 || d.Embeds[0].Days != 7 {
		t.Errorf("%+v", d)
	}
	s.Cure.ReadyDay = pour.Band{Low: pour.Know(11.6), Mid: pour.Know(25.4), High: pour.Know(38)}
	for planned, want := range map[float64]season.Span{10: {12, 25, 38}, 20.5: {21, 25, 38}, 42: {42, 42, 42}} { // dry, and its plan's cure over
		if s.Plan.Bed.CureDays = planned; season.DesignOf(s).Cure != want {
			t.Errorf("cure of %g days: %+v, want %+v", planned, season.DesignOf(s).Cure, want)
		}
	}
	if s.Plan.Bed.CutAfterH = 20; season.DesignOf(s).CutDays != 1 {
		t.Errorf("%+v", season.DesignOf(s))
	}
}

// What was planned for a day and poured on it, or a day beside it, is one pour and not two; each pour is that of one entry alone.
func TestAPlannedPourThatWasPouredIsOne(t *testing.T) {
	f := oneDate(season.Date{Name: "market", Day: on(t, "2027-01-19")}, on(t, "2026-12-01"))
	at := on(t, "2026-11-28")
	next := at + 1
	f.File.Pours = []season.Planned{
		{Plan: "meadow.toml", For: "market", Day: &at}, {Plan: "meadow.toml", For: "market", Day: &next}, {Plan: "meadow.toml", For: "market"},
	}
	f.Standing = []season.Standing{stands(t, "a", "2026-11-29", "2026-11-30", life.Curing, less(0)), stands(t, "rose", "2026-11-28", "2026-11-30", life.Curing, less(0))}
	f.Standing[0].Name = "Alpine meadow, again "
	ids := map[int]string{}
	for _, r := range season.Of(f).Rows {
		ids[r.Entry] += r.ID
	}
	if ids[1] != "a" || ids[2] != "" || ids[3] != "" || ids[0] != "rose" {
		t.Errorf("%v", ids)
	}
	f.Standing[0].State = life.Failed
	if r := season.Of(f).Rows; len(r) != 4 || r[0].ID != "a" || r[0].Bars != 0 || !r[0].BarsKnown {
		t.Errorf("%+v", r[0])
	}
}

// A pour that was planned for a day that is over was poured, and then it stands in the logbook, or was not: it gives no bars, whatever the day
// it would have been dry.
func TestAPlannedPourWhoseDayIsPastCoversNothing(t *testing.T) {
	f := oneDate(season.Date{Name: "snow fair", Day: on(t, "2027-02-10"), LabelDays: 2, Wants: []season.Want{{"Alpine Meadow", 6}}}, on(t, "2026-11-28"))
	past := on(t, "2026-01-02")
	f.File.Pours[0].Day = &past
	b := season.Of(f)
	if r := b.Rows[0]; r.Verdict != season.Past || r.Verdict.Sign() == "✓" || !r.Missed || len(r.Embeds) != 0 {
		t.Errorf("%+v", r)
	}
	if c := b.Dates[0].Covers[0]; c.Short != 6 || len(c.From) != 0 {
		t.Errorf("%+v", c)
	}
	// Poured on 28 November it is cut on the 29th and dry 28 days later, on 27 December, 43 days before labels begin on 8 February.
	said := strings.Join(b.Tell(0), "\n")
	for _, want := range []string{
		"planned for Fri 2 Jan 2026, which is past; if poured Sat 28 Nov, cut Sun 29 Nov, dry about Sun 27 Dec", ": 43 days to spare",
		"! day past: ", "if it was poured, name its pour of the logbook; else the next free day is Sat 28 Nov, which is still in time for snow fair",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is missing in\n%s", want, said)
		}
	}
	if strings.Contains(said, "in time, ") {
		t.Error(said)
	}
	marks := b.Strip(0, season.Monday(past), 60)
	for _, m := range marks {
		if m == season.CutMark || m == season.DryingMark || m == season.BandMark {
			t.Errorf("the strip draws %q for a loaf that is not there", m.Sign())
		}
	}
}

// What is told of a pour says no more than is known: a loaf that is whole is yet to be cut, and bars whose weighings follow no law dry as the plan says.
func TestWhatIsNotKnownOfAPourIsNotToldAsAFact(t *testing.T) {
	f := season.Facts{Today: on(t, "2026-11-28")}
	whole, soon, odd := stands(t, "whole", "2026-11-26", "2026-11-28", life.Unmoulded, less(0)), stands(t, "soon", "2026-11-28", "2026-11-30", life.InMould, less(0)), stands(t, "odd", "2026-11-01", "2026-11-02", life.Curing, less(0))
	odd.Ready, odd.Lawless = season.Band{odd.Cut + 40, odd.Cut + 40, odd.Cut + 40}, true
	f.Standing = []season.Standing{whole, soon, odd}
	b := season.Of(f)
	for i, r := range b.Rows {
		want := map[string]string{
			"whole": "poured Thu 26 Nov, to be cut, today at the earliest, dry about", "soon": "poured Sat 28 Nov, to be cut Mon 30 Nov, dry about",
			"odd": "poured Sun 1 Nov, cut Mon 2 Nov, dry about Sat 12 Dec by the plan; its weighings follow no drying law",
		}[r.ID]
		if said := strings.Join(b.TellPlan(i), "\n"); !strings.Contains(said, want) {
			t.Errorf("%s: %q is missing in\n%s", r.ID, want, said)
		}
	}
}
