package strict

import (
	"math"
	"strings"
	"testing"
	"time"
)

// everything is what a recipe holds.
type everything struct {
	number  float64
	small   float64
	whole   int64
	count   int
	flag    bool
	line    string
	word    string
	prose   string
	lines   []string
	wall    time.Time
	moment  time.Time
	day     time.Time
	eggs    []string // names of a list of tables
	hobHeat float64
}

func untouched() everything {
	at := time.Date(1999, 1, 1, 0, 0, 0, 0, time.UTC)
	return everything{
		number: -7, small: -7, whole: -7, count: -7, flag: true, line: "old", word: "old", prose: "old", lines: []string{"old"}, wall: at, moment: at, day: at, hobHeat: -7,
	}
}

func (e *everything) read(t *Table) {
	t.Only("number", "small", "whole", "count", "flag", "line", "word", "prose", "lines", "wall", "moment", "day", "egg", "hob")
	t.Read("number", &e.number)
	t.Within("small", &e.small, -1, 2.5)
	t.Read("whole", &e.whole)
	t.Read("count", &e.count)
	t.Read("flag", &e.flag)
	t.Read("line", &e.line)
	t.Word("word", &e.word, "sweet", "sour")
	t.Prose("prose", &e.prose)
	t.Read("lines", &e.lines)
	t.Read("wall", &e.wall)
	t.Moment("moment", &e.moment)
	t.Day("day", &e.day)
	for _, egg := range t.List("egg") {
		name := ""
		egg.Only("name", "boil_min")
		egg.Missing("name")
		egg.Line("name", &name, 5)
		e.eggs = append(e.eggs, name)
	}
	if hob, ok := t.Section("hob"); ok {
		hob.Only("heat")
		hob.Number("heat", &e.hobHeat)
	}
}

func TestEveryKindOfValueIsRead(t *testing.T) {
	var e everything
	faults := faultsIn(t, `
number = 2
small = -1.0
whole = -9223372036854775808
count = 3.0
flag = false
line = "a\u001b[2Jb"
word = "sour"
prose = """
one
two"""
lines = ["x", "y"]
wall = 2026-12-05T10:00:00.5
moment = 2026-12-05T10:00:00+01:00
day = 2026-03-29
[hob]
heat = -0.0
[[egg]]
name = "hen"
[[egg]]
name = "goose"
`, e.read)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if e.number != 2 || e.small != -1 || e.whole != math.MinInt64 || e.count != 3 || e.flag || e.word != "sour" || e.prose != "one\ntwo" {
		t.Errorf("%+v", e)
	}
	if strings.ContainsRune(e.line, 0x1b) || !strings.HasPrefix(e.line, "a") || strings.Join(e.lines, "|") != "x|y" || strings.Join(e.eggs, "|") != "hen|goose" {
		t.Errorf("%q, %q, %q", e.line, e.lines, e.eggs)
	}
	if want := time.Date(2026, 12, 5, 10, 0, 0, 5e8, time.UTC); !e.wall.Equal(want) || e.wall.Location() != time.UTC {
		t.Errorf("the wall clock shows %v, want %v", e.wall, want)
	}
	if want := time.Date(2026, 12, 5, 9, 0, 0, 0, time.UTC); !e.moment.Equal(want) {
		t.Errorf("the moment is %v, want %v", e.moment, want)
	}
	if want := time.Date(2026, 3, 29, 0, 0, 0, 0, time.UTC); !e.day.Equal(want) || e.day.Location() != time.UTC {
		t.Errorf("the day is %v, want %v", e.day, want)
	}
	if e.hobHeat != 0 || math.Signbit(e.hobHeat) {
		t.Errorf("minus nothing was read as %v", e.hobHeat)
	}
}

func TestWhatIsNotThereLeavesThePlaceAlone(t *testing.T) {
	e := untouched()
	if faults := faultsIn(t, "", e.read); len(faults) > 0 {
		t.Error(faults)
	}
	if e.number != -7 || e.small != -7 || e.whole != -7 || e.count != -7 || !e.flag || e.line+e.word+e.prose != "oldoldold" || e.lines[0] != "old" || e.wall.Year() != 1999 || e.moment.Year() != 1999 || e.day.Year() != 1999 || e.hobHeat != -7 {
		t.Errorf("%+v", e)
	}
}

// TestEveryWrongValueIsRefusedWithItsPlaceAndHowToMendIt: nothing of it reaches the place it was meant for.
func TestEveryWrongValueIsRefusedWithItsPlaceAndHowToMendIt(t *testing.T) {
	for text, want := range map[string]string{
		`number = "62,5 %"`:                    `r.toml:2:1: number = "62,5 %": a number is wanted, but this is text; write 62.5, without quotes or a unit`,
		`number = "many"`:                      `r.toml:2:1: number = "many": a number is wanted, but this is text; write a number with a decimal point and without quotes or a unit, as in 12.5`,
		`number = true`:                        `r.toml:2:1: number = true: a number is wanted, but this is true or false; write a number with a decimal point and without quotes or a unit, as in 12.5`,
		`number = nan`:                         `r.toml:2:1: number = NaN: is not a number that can be weighed or measured; write an ordinary number, as in 12.5`,
		`number = -inf`:                        `r.toml:2:1: number = -Inf: is not a number that can be weighed or measured; write an ordinary number, as in 12.5`,
		`number = []`:                          `r.toml:2:1: number: a number is wanted, but this is a list; write a number with a decimal point and without quotes or a unit, as in 12.5`,
		`small = 2.6`:                          `r.toml:2:1: small = 2.6: is outside what can be; write a number from -1 to 2.5`,
		`small = -2`:                           `r.toml:2:1: small = -2: is outside what can be; write a number from -1 to 2.5`,
		`small = inf`:                          `r.toml:2:1: small = +Inf: is not a number that can be weighed or measured; write an ordinary number, as in 12.5`,
		`whole = 2.5`:                          `r.toml:2:1: whole = 2.5: is no whole number; write a whole number, as in 3`,
		`whole = 1e300`:                        `r.toml:2:1: whole = 1e+300: is no whole number; write a whole number, as in 3`,
		`whole = -9.1e15`:                      `r.toml:2:1: whole = -9.1e+15: is no whole number; write a whole number, as in 3`,
		`whole = nan`:                          `r.toml:2:1: whole = NaN: is no whole number; write a whole number, as in 3`,
		`count = "3"`:                          `r.toml:2:1: count = "3": a whole number is wanted, but this is text; write a whole number without quotes, as in 3`,
		`flag = "yes"`:                         `r.toml:2:1: flag = "yes": true or false is wanted, but this is text; write true or false, without quotes`,
		`flag = 1`:                             `r.toml:2:1: flag = 1: true or false is wanted, but this is a number; write true or false, without quotes`,
		`line = 7.5`:                           `r.toml:2:1: line = 7.5: text is wanted, but this is a number; put it in double quotes`,
		`line = 1979-05-27`:                    `r.toml:2:1: line = 1979-05-27: text is wanted, but this is a date or time; put it in double quotes`,
		`line = 07:32:00`:                      `r.toml:2:1: line = 07:32:00: text is wanted, but this is a date or time; put it in double quotes`,
		`line = "thirteen lett"`:               `r.toml:2:1: line = "thirteen lett": is 13 letters long; keep it to 12 letters; the rest goes into notes`,
		`line = {a = 1}`:                       `r.toml:2:1: line: text is wanted, but this is a table; put it in double quotes`,
		`word = "swet"`:                        `r.toml:2:1: word = "swet": is not a word this key knows; did you mean "sweet"? It can be sweet, sour`,
		`word = "bitter"`:                      `r.toml:2:1: word = "bitter": is not a word this key knows; write one of sweet, sour`,
		`word = 1`:                             `r.toml:2:1: word = 1: text is wanted, but this is a number; put it in double quotes`,
		`prose = ["a"]`:                        `r.toml:2:1: prose: text is wanted, but this is a list; put it in double quotes, or in """ for many lines`,
		`lines = "x"`:                          `r.toml:2:1: lines = "x": a list of texts is wanted, but this is text; write a list in brackets: ["one", "two"]`,
		`lines = ["é", 3]`:                     `r.toml:2:15: lines[1] = 3: text is wanted, but this is a number; put it in double quotes`,
		`lines = ["1","2","3","4","5","6"]`:    `r.toml:2:1: lines: has 6 items; keep to 5; no recipe needs more`,
		`wall = 2026-12-05`:                    `r.toml:2:1: wall = 2026-12-05: is not a date with a time and nothing after it; write what the clock on the wall will say, without a zone, as in 2026-12-05T10:00:00`,
		`wall = 2026-12-05T10:00:00Z`:          `r.toml:2:1: wall = 2026-12-05T10:00:00Z: is not a date with a time and nothing after it; write what the clock on the wall will say, without a zone, as in 2026-12-05T10:00:00`,
		`wall = "today"`:                       `r.toml:2:1: wall = "today": a date with a time is wanted, but this is text; write it without quotes, as in 2026-12-05T10:00:00`,
		`moment = 10:00:00`:                    `r.toml:2:1: moment = 10:00:00: a date with a time and its zone is wanted, but this is a date or time; write it without quotes, as in 2026-12-05T10:00:00+01:00`,
		`moment = 2026-12-05`:                  `r.toml:2:1: moment = 2026-12-05: a date with a time and its zone is wanted, but this is a date or time; write it without quotes, as in 2026-12-05T10:00:00+01:00`,
		`moment = 9`:                           `r.toml:2:1: moment = 9: a date with a time and its zone is wanted, but this is a number; write it without quotes, as in 2026-12-05T10:00:00+01:00`,
		`day = 2026-12-05T10:00:00`:            `r.toml:2:1: day = 2026-12-05T10:00:00: is more than a day or none; write the day alone, as in 2026-12-05`,
		`day = 10:00:00`:                       `r.toml:2:1: day = 10:00:00: is more than a day or none; write the day alone, as in 2026-12-05`,
		`day = "2026-12-05"`:                   `r.toml:2:1: day = "2026-12-05": a day is wanted, but this is text; write it without quotes, as in 2026-12-05`,
		`egg = 1`:                              `r.toml:2:1: egg = 1: a list of tables is wanted, but this is a number; start each item with a line [[egg]]`,
		`egg = [{name="hen"}, 2]`:              `r.toml:2:1: egg: a list of tables is wanted, but this is a list; start each item with a line [[egg]]`,
		`egg = [{},{},{},{},{},{}]`:            `r.toml:2:1: egg: has 6 items; keep to 5; no recipe needs more`,
		`egg = [{name="hen"}, {boil_min = 1}]`: `r.toml:2:22: egg[1].name: is missing; write name = … in this [[egg]]`,
		`egg = [{name = "ostrich"}]`:           `r.toml:2:9: egg[0].name = "ostrich": is 7 letters long; keep it to 5 letters; the rest goes into notes`,
		`hob = "hot"`:                          `r.toml:2:1: hob = "hot": a section is wanted, but this is text; write a line [hob] and its keys under it`,
		`[hob]` + "\n" + `  haet = 1`:          `r.toml:3:3: hob.haet: is no key of a recipe; did you mean heat?`,
		`nubmer = 1`:                           `r.toml:2:1: nubmer: is no key of a recipe; did you mean number?`,
		`"\u001b[31m" = 1`:                     `r.toml: is no key of a recipe here; take it out; the keys here are number, small, whole, count, flag, line, word, prose, lines, wall, moment, day, egg, hob`,
		`heat = 1`:                             `r.toml:2:1: heat: is no key of a recipe here; move it: heat belongs under [oven] or under [hob], not above the first [section]`,
		"[[egg]]\nname = \"hen\"\nheat = 1":    `r.toml:4:1: egg[0].heat: is no key of a recipe here; move it: heat belongs under [oven] or under [hob]`,
	} {
		e := untouched()
		faults := faultsIn(t, "# a recipe\n"+text, e.read)
		if len(faults) != 1 || faults[0].Error() != want {
			t.Errorf("%s\n got %v\nwant [%s]", text, faults, want)
		}
		if e.number != -7 || e.small != -7 || e.whole != -7 || e.count != -7 || !e.flag || e.line+e.word+e.prose != "oldoldold" || e.wall.Year() != 1999 || e.moment.Year() != 1999 || e.day.Year() != 1999 || e.hobHeat != -7 {
			t.Errorf("%s: something of it was taken all the same: %+v", text, e)
		}
	}
}

func TestALongValueIsShownShort(t *testing.T) {
	faults := faultsIn(t, `line = "`+strings.Repeat("é", 60)+`"`, func(t *Table) { t.Line("line", new(string), 59) })
	if want := `"` + strings.Repeat("é", 40) + `"…`; faults[0].Value != want {
		t.Errorf("%s, want %s", faults[0].Value, want)
	}
	faults = faultsIn(t, `line = "`+strings.Repeat("é", 40)+`"`, func(t *Table) { t.Line("line", new(string), 39) })
	if want := `"` + strings.Repeat("é", 40) + `"`; faults[0].Value != want {
		t.Errorf("%s, want %s", faults[0].Value, want)
	}
}

func TestAWholeNumberIsReadAsFarAsAFloatCanCount(t *testing.T) {
	var n int64
	if faults := faultsIn(t, "n = 9007199254740992.0", func(t *Table) { t.Whole("n", &n) }); len(faults) > 0 || n != 1<<53 {
		t.Errorf("%d, %v", n, faults)
	}
	if faults := faultsIn(t, "n = -9007199254740994.0", func(t *Table) { t.Whole("n", &n) }); len(faults) != 1 {
		t.Error("what a float cannot count was taken for a whole number")
	}
}

func TestWhatIsJustAllowedIsRead(t *testing.T) {
	e := untouched()
	faults := faultsIn(t, "small = 2.5\nline = \"twelve lette\"\nlines = [\"1\", \"2\", \"3\", \"4\", \"5\"]\negg = [{name=\"a\"}, {name=\"b\"}, {name=\"c\"}, {name=\"d\"}, {name=\"goose\"}]", e.read)
	if len(faults) > 0 || e.small != 2.5 || e.line != "twelve lette" || len(e.lines) != 5 || len(e.eggs) != 5 {
		t.Errorf("%v, %+v", faults, e)
	}
}

func TestAnEmptyListIsNone(t *testing.T) {
	lines := []string{"old"}
	if faults := faultsIn(t, "lines = []", func(t *Table) { t.Lines("lines", &lines) }); len(faults) > 0 || lines != nil {
		t.Errorf("%#v, %v", lines, faults)
	}
}
