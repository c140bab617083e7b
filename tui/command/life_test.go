package command_test

import (
	"image"
	"image/png"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"
)

// A batch is lived through by commands: each says what it wrote, beside the plan and what is left, and what is doubtful on the other channel.
func TestABatchIsLivedThroughByCommands(t *testing.T) {
	m := worked(t)
	id := m.poured()
	today := time.Now()
	m.now = func() time.Time { return today.AddDate(0, 2, 0) }
	on := func(days int) string { return today.AddDate(0, 0, days).Format(time.DateOnly) }
	var small strings.Builder
	if err := png.Encode(&small, image.NewGray(image.Rect(0, 0, 2, 2))); err != nil {
		t.Fatal(err)
	}
	m.writes(small.String(), "cut.png")
	name := regexp.MustCompile(`\((e\d+)-`)
	var last string
	for _, c := range []struct {
		args   string
		says   string
		doubts string
	}{
		{"unmoulded ID soft in the middle --day " + on(1), "out of the mould, soft, in the middle, on " + on(1), ""},
		{"slice ID 150 151 152 --count 9 --crumbs 6 --seconds 1 --day " + on(1), "cut into 9 bars, 151.00 g on average, crumbs 6.00 g, 1 of them seconds, on " + on(1) + "; planned 10 bars of 153.20 g", "9 bars where the plan has 10"},
		{"weigh ID 145 146 147 --bars 1,2,3 --day " + on(8), "weighed, 146.00 g on average, bars 1 2 3, on " + on(8) + "; day 7 of the cure", ""},
		{"weigh ID 144 415 146 --bars 1,2,3 --day " + on(15), "day 14 of the cure", "bar 2, 415 g, is heavier than the 146 g of " + on(8)},
		{"correct ID LAST masses=144,,145,,146", "", ""},
		{"sniff ID 3 sweet and deep --scent meadow-hay --day " + on(15), "smells strongly (3 of 4), of meadow-hay, sweet and deep", ""},
		{"look ID ash 2 --day " + on(15), "ash some (2 of 4)", ""},
		{"test ID pH 9.5 strip --day " + on(30), "pH 9.5, strip", ""},
		{"photo ID " + m.path("cut.png"), "photo ../../../cut.png", ""},
		{"lot ID 261204A 2 first ones", "2 bars labelled as 261204A, first ones", ""},
		{"take-back ID LAST", "taken back: 2 bars labelled", ""},
		{"lot ID 261205A", "8 bars labelled as 261205A", ""},
		{"sell ID 3 --at market --price 7.50 --currency EUR --to cake", "3 bars sold, at market, 7.50 EUR a bar, for cake", ""},
		{"give ID 1 --to friends", "1 bar given, for friends", ""},
		{"keep ID 1 sample in the cool box", "1 bar kept, as the batch's sample, in the cool box", ""},
		{"second ID 1 chipped", "1 bar not good enough to sell, chipped", ""},
		{"count ID 1", "1 of 9 bars left, 1 missing", "2 bars were to be left, 1 fewer are there"},
		{"take-back ID LAST", "taken back: 1 bar left by counting them", ""},
		{"fail ID orange spots", "failed, orange spots", ""},
	} {
		args := strings.ReplaceAll(strings.ReplaceAll(c.args, "ID", id), "LAST", last)
		words := strings.Fields(args)
		for i, w := range words {
			words[i] = strings.ReplaceAll(w, ",,", " ")
		}
		code, out, errs := m.types(append([]string{"logbook"}, words...)...)
		if code != 0 || !strings.Contains(out, id+": ") || !strings.Contains(out, c.says) || (c.doubts == "") != (errs == "") || !strings.Contains(errs, c.doubts) {
			t.Fatalf("%s: exit %d\n%s%s", args, code, out, errs)
		}
		if found := name.FindStringSubmatch(out); found != nil {
			last = found[1]
		}
	}
	if got := m.says("batches", "meadow", "failed"); !strings.Contains(got, "failed since "+m.now().Format(time.DateOnly)) {
		t.Errorf("%s", got)
	}
	if got := m.says("batches", "no-such-word"); !strings.Contains(got, "No batch") {
		t.Errorf("%s", got)
	}
	if code, _, errs := m.types("logbook", "take-back", id, "e1"); code != 2 || strings.Count(errs, "\n  e1") < 3 || !strings.Contains(errs, "bars sold, at market") {
		t.Errorf("exit %d, %s", code, errs)
	}
	show := m.says("logbook", "show", id)
	for _, want := range []string{"weighed, 145.00 g on average, bars 1 2 3, in the place of", "261205A", "failed, orange spots"} {
		if !strings.Contains(strings.Join(strings.Fields(show), " "), want) {
			t.Errorf("show does not have %q:\n%s", want, show)
		}
	}
	if got := m.says("record", id); !strings.Contains(got, "Label lot: 261205A") || !strings.Contains(got, "Sample bars kept, and where: 1 on "+m.now().Format(time.DateOnly)+", in the cool box") || !strings.Contains(got, "taken back: "+m.now().Format(time.DateOnly)+", 2 bars labelled as 261204A, first ones") || !strings.Contains(got, "9 bars: 3 sold, 1 given away, 1 kept, 2 seconds, 0 missing, 2 left.") {
		t.Errorf("%s", got)
	}
	if code, _, errs := m.types("backup", m.path("all.zip")); code != 0 || !strings.Contains(errs, "1 picture of your pours is not in it") {
		t.Errorf("exit %d, %s", code, errs)
	}
}

// What is typed wrongly is refused with how to type it, and nothing is written.
func TestWhatIsTypedWronglyIsNotLogged(t *testing.T) {
	m := worked(t)
	id := m.poured()
	m.writes("x", "notes.png")
	file := m.path("data", "pourbench", "pours", id+".pour.toml")
	before, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for args, says := range map[string]string{
		"logbook sell ID":                         "BARS is missing; it is typed as: pourbench logbook sell",
		"logbook sell ID many":                    "many",
		"logbook sell ID 1 --day soon":            "year-month-day",
		"logbook sell ID 1 --price 7,x":           "decimal number",
		"logbook look ID":                         "WHAT and HOW-MUCH are missing",
		"logbook look ID ash":                     "HOW-MUCH is missing",
		"logbook test ID tongue 9":                "pH, titration",
		"logbook correct ID e99 a=1":              "has none that begins so",
		"logbook fail ID":                         "WORDS is missing",
		"logbook sell ID -1":                      "nothing here is below 0",
		"logbook count ID -1":                     "nothing here is below 0",
		"logbook count " + id[:len(id)-1] + " 1":  "there is no such batch; did you mean \"" + id + "\"?",
		"logbook lot ID L1 --count 0":             "count = 0",
		"logbook lot ID L1 0":                     "count = 0",
		"logbook photo ID " + m.path("notes.png"): "it is none that can be shown",
		"logbook weigh ID light":                  "light",
		"batches --sort colour":                   "day, due, state, name, left",
		"batches --state wet":                     "in the mould",
		"record nowhere":                          "nowhere",
	} {
		code, out, errs := m.types(strings.Fields(strings.ReplaceAll(args, "ID", id))...)
		if code != 2 || out != "" || !strings.Contains(errs, says) {
			t.Errorf("%s: exit %d\n%s%s", args, code, out, errs)
		}
	}
	after, err := os.ReadFile(file)
	if err != nil || string(after) != string(before) {
		t.Errorf("the pour's file is another, %v", err)
	}
}
