package season_test

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/day"
	"pourbench/pour/season"
)

// on reads a day that a test means.
func on(t interface{ Fatal(...any) }, s string) day.Day {
	d, err := day.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// whole is a season's file that says all that one can.
const whole = `# my season
format = 1

[house]
rack_bars = 120            # two trolleys
bench_days = ["sat", "sun"]
most_pours_a_day = 2

[[mould]]
name = "long loaf"
count = 2
shape = "loaf"
length_mm = 250
width_mm = 80
height_mm = 70.5

[[mould]]
name = "hearts"
shape = "cavity"
length_mm = 60
width_mm = 50
height_mm = 30
cavities = 6

# ---- markets ----
[[date]]
name = "winter market"
day = 2026-12-19
kind = "market"
audience = "town"
label_days = 2
wants = [
  { design = "Alpine Meadow", bars = 12 },  # they ask for it
  { design = "Rose", bars = 6 },
]

# ---- orders ----
[[date]]
name = "inn"
day = 2027-01-10
kind = "order"

# ---- pours ----
[[pour]]
plan = "meadow.toml"
for = "winter market"
day = 2026-11-14

[[pour]]
pour = "2026-11-01-rose"
for = "inn"
`

// seasonOf is what [whole] says, written by hand.
func seasonOf(t *testing.T) season.File {
	pourDay := on(t, "2026-11-14")
	return season.File{
		House: season.House{RackBars: 120, BenchDays: []time.Weekday{time.Saturday, time.Sunday}, MostPours: 2, Moulds: []season.Mould{
			{Name: "long loaf", Count: 2, Shape: "loaf", LengthMM: 250, WidthMM: 80, HeightMM: 70.5},
			{Name: "hearts", Count: 1, Shape: "cavity", LengthMM: 60, WidthMM: 50, HeightMM: 30, Cavities: 6},
		}},
		Dates: []season.Date{
			{Name: "winter market", Day: on(t, "2026-12-19"), Kind: season.Market, Audience: "town", LabelDays: 2, Wants: []season.Want{{"Alpine Meadow", 12}, {"Rose", 6}}},
			{Name: "inn", Day: on(t, "2027-01-10"), Kind: season.Order},
		},
		Pours: []season.Planned{{Plan: "meadow.toml", For: "winter market", Day: &pourDay}, {Pour: "2026-11-01-rose", For: "inn"}},
	}
}

func TestASeasonIsReadAsItIsWritten(t *testing.T) {
	got, err := season.Read("season.toml", whole)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(seasonOf(t), got); diff != "" {
		t.Error(diff)
	}
	for _, empty := range []string{"", " \n\n", "\ufeff"} {
		if f, err := season.Read("season.toml", strings.TrimPrefix(empty, "\ufeff")); err != nil || len(f.Dates)+len(f.Pours) > 0 {
			t.Errorf("%q: %v, %v", empty, f, err)
		}
	}
	if f, err := season.Load(t.TempDir()); err != nil || len(f.Dates) > 0 {
		t.Errorf("no file: %v, %v", f, err)
	}
}

// What cannot be is refused with its line and how to mend it.
func TestABadSeasonIsRefusedWithLineAndMend(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"format = 1", "format = 2", "season.toml:2:1: format = 2: is none this program reads"},
		{"format = 1\n", "", "format: is missing"},
		{"rack_bars = 120 ", "rack_bars = -1 ", "season.toml:5:1: house.rack_bars = -1: is outside what can be\n    to mend: write a whole number from 0 to 100000"},
		{"rack_bars = 120 ", "rack_places = 120 ", "season.toml:5:1: house.rack_places: is no key of a season"},
		{`"sat", "sun"`, `"sat", "sonday"`, `season.toml:6:1: house.bench_days = "sonday": is not a word this key knows`},
		{`"sat", "sun"`, `"sat", "sat"`, "stands there twice\n    to mend: take one out"},
		{"count = 2\n", "count = 0\n", "season.toml:11:1: mould[0].count = 0: is outside"},
		{"count = 2\n", "count = 1.5\n", "is no whole number"},
		{`shape = "loaf"`, `shape = "lof"`, `did you mean "loaf"?`},
		{"length_mm = 250\n", "", "season.toml:9:1: mould[0].length_mm: is missing\n    to mend: write length_mm = … in this [[mould]]"},
		{"length_mm = 250", "length_mm = 0", "mould[0].length_mm = 0: is outside what can be"},
		{`name = "hearts"`, `name = "Long Loaf"`, `season.toml:18:1: mould[1].name = "Long Loaf": is the name of another mould`},
		{`name = "winter market"`, `name = ""`, `season.toml:27:1: date[0].name = "": is no name`},
		{`name = "inn"`, `name = "Winter Market "`, "is the name of another date\n    to mend: add the month or a number"},
		{"day = 2026-12-19", `day = "2026-12-19"`, "season.toml:28:1: date[0].day = \"2026-12-19\": a day is wanted, but this is text\n    to mend: write it without quotes"},
		{"day = 2026-12-19", "day = 2026-12-19T10:00:00", "write the day alone, as in 2026-12-05"},
		{"day = 2026-12-19", "day = 2026-02-29", "season.toml:28"},
		{"day = 2026-12-19\n", "", "date[0].day: is missing"},
		{"day = 2026-12-19", "day = 0001-12-19", "is in no year to plan for"},
		{`kind = "market"`, `kind = "fair"`, `date[0].kind = "fair": is not a word this key knows`},
		{"label_days = 2", "label_days = 400", "write a whole number from 0 to 365"},
		{"bars = 12 ", "bars = 0 ", "season.toml:33:"},
		{`design = "Rose", bars`, `design = "alpine meadow", bars`, "stands there twice\n    to mend: add the bars up in one"},
		{`design = "Rose", bars`, `design = "alpine meadow, again 2", bars`, "stands there twice"},
		{`{ design = "Rose", bars = 6 }`, `{ design = "Rose" }`, "date[0].wants[1].bars: is missing"},
		{`plan = "meadow.toml"`, "", "says not what is poured"},
		{`plan = "meadow.toml"`, "plan = \"meadow.toml\"\npour = \"x\"", "stands beside a plan"},
		{`for = "inn"`, `for = "in"`, `season.toml:51:1: pour[1].for = "in": is the name of no date here` + "\n    to mend: did you mean \"inn\"?"},
		{`audience = "town"`, `plan = "x"`, "move it: plan belongs in a [[pour]]"},
		{`name = "inn"`, "name = \"inn", "season.toml:"},
		{"[house]", "house = 3", "a section is wanted"},
	} {
		src := strings.Replace(whole, c.from, c.to, 1)
		if src == whole {
			t.Fatalf("%q is not there", c.from)
		}
		_, err := season.Read("season.toml", src)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q for %q: %v\nwant %s", c.to, c.from, err, c.want)
		}
	}
}
