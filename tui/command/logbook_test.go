package command_test

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"strings"
	"testing"
	"time"

	"pourbench/pour/logbook"
)

// poured is the id of the one pour in the logbook of a maker who has worked.
func (m *maker) poured() string {
	m.t.Helper()
	files, err := os.ReadDir(m.path("data", "pourbench", "pours"))
	if err != nil {
		m.t.Fatal(err)
	}
	for _, f := range files {
		if id, ok := strings.CutSuffix(f.Name(), ".pour.toml"); ok {
			return id
		}
	}
	m.t.Fatal("no pour is in the logbook")
	return ""
}

// says runs a command that must succeed and returns what it prints.
func (m *maker) says(args ...string) string {
	m.t.Helper()
	code, out, errs := m.types(args...)
	if code != 0 || errs != "" {
		m.t.Fatalf("%q: exit %d, %s", args, code, errs)
	}
	return out
}

// What is typed after a pour stands in its file as it was typed, one mark for each command.
func TestEveryMarkOfTheLogbookCommandsIsInTheExport(t *testing.T) {
	m := worked(t)
	id := m.poured()
	today := time.Now().Format(time.DateOnly)
	for _, c := range []struct {
		args []string
		said string
	}{
		{[]string{"cut", id, "101,5"}, id + ": one bar weighed 101.5 g as cut, on " + today + "; planned "},
		{[]string{"note", id, "wrapped", "in", "two towels"}, id + ": note: wrapped in two towels\n"},
		{[]string{"result", id, "ash on", "top"}, id + ": result: ash on top\n"},
	} {
		if out := m.says(append([]string{"logbook"}, c.args...)...); !strings.HasPrefix(out, c.said) {
			t.Errorf("%q prints %q, want %q", c.args, out, c.said)
		}
	}
	if code, _, errs := m.types("logbook", "cut", id, "100", "whenever"); code == 0 || !strings.Contains(errs, "year-month-day") {
		t.Errorf("a day that is none: exit %d, %s", code, errs)
	}
	code, out, errs := m.types("logbook", "cured", id, "92.25", today)
	if said := id + ": one bar weighed 92.25 g cured, on " + today + "; planned "; code != 0 || !strings.HasPrefix(out, said) || !strings.Contains(errs, "it is the day of the pour") {
		t.Errorf("exit %d, it prints %q and says %q", code, out, errs)
	}
	rows, err := csv.NewReader(strings.NewReader(m.says("logbook", "export"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	want := map[string][2]string{ // of a kind: its value, its words
		"cut": {"101.5", ""}, "cured": {"92.25", ""}, "result": {"", "ash on top"}, "opened": {"", ""},
	}
	notes := 0
	for _, r := range rows[1:] {
		if r[at["pour"]] != id {
			t.Errorf("a row of %q", r[at["pour"]])
		}
		kind := r[at["kind"]]
		if kind == string(logbook.Noted) {
			if notes++; notes == 2 && r[at["text"]] != "wrapped in two towels" {
				t.Errorf("the note is %q", r[at["text"]])
			}
			continue
		}
		w, known := want[kind]
		if !known || r[at["value"]] != w[0] || r[at["text"]] != w[1] {
			t.Errorf("%s: %q, %q, want %q", kind, r[at["value"]], r[at["text"]], w)
		}
		delete(want, kind)
	}
	if len(want) > 0 || notes != 2 {
		t.Errorf("not exported: %v; %d notes", want, notes)
	}
	var pours []map[string]any
	if err := json.Unmarshal([]byte(m.says("logbook", "export", "--json")), &pours); err != nil || len(pours) != 1 {
		t.Errorf("%d pours as JSON, %v", len(pours), err)
	}
}

func TestThePoursAreListedSearchedAndCompared(t *testing.T) {
	m := worked(t)
	id := m.poured()
	all := m.says("logbook", "list")
	if !strings.Contains(all, id) || !strings.Contains(all, "open") || strings.Count(all, "\n") != 1 {
		t.Errorf("listed: %q", all)
	}
	for words, found := range map[string]bool{"meadow": true, "SKY meadow": true, "blue": true, "meadow desert": false} {
		out := m.says(append([]string{"logbook", "list"}, strings.Fields(words)...)...)
		if strings.Contains(out, id) != found {
			t.Errorf("%q finds %q", words, out)
		}
	}
	if out := m.says("logbook", "list", "desert"); !strings.Contains(out, "None of your 1 pour") || strings.Contains(out, "No pour is logged") {
		t.Errorf("nothing found is told as %q", out)
	}
	show := m.says("logbook", "show", id)
	for _, want := range []string{"POUR RECORD: Alpine Meadow", "kept as " + id, "planned", "actual", "note: the sky was blue"} {
		if !strings.Contains(show, want) {
			t.Errorf("the record lacks %q:\n%s", want, show)
		}
	}
	if out := m.says("logbook", "learned"); !strings.Contains(out, "pours") {
		t.Errorf("learned: %s", out)
	}
}

func TestAPourIsLeftOutWithItsReasonAndTakenInAgain(t *testing.T) {
	m := worked(t)
	id := m.poured()
	m.says("logbook", "leave-out", id, "the", "oven was on")
	if out := m.says("logbook", "list"); !strings.Contains(out, "left out") {
		t.Errorf("left out: %q", out)
	}
	if out := m.says("logbook", "export"); !strings.Contains(out, "the oven was on") {
		t.Errorf("the reason is not kept: %s", out)
	}
	m.says("logbook", "take-in", id)
	if out := m.says("logbook", "list"); strings.Contains(out, "left out") {
		t.Errorf("taken in: %q", out)
	}
}

func TestAPourIsForgottenForGood(t *testing.T) {
	m := worked(t)
	id := m.poured()
	if code, out, errs := m.types("logbook", "forget", id); code != 2 || out != "" || !strings.Contains(errs, "--yes forgets it unasked") {
		t.Errorf("unasked: exit %d, %q, %q", code, out, errs)
	}
	if out := m.says("logbook", "forget", id, "--yes"); !strings.Contains(out, id+": forgotten, ") || !strings.Contains(out, " marks\n") {
		t.Errorf("it prints %q", out)
	}
	if out := m.says("logbook", "list"); !strings.Contains(out, "No pour is logged yet") {
		t.Errorf("after forgetting: %q", out)
	}
	if code, out, errs := m.types("logbook", "forget", id, "--yes"); code != 2 || out != "" || !strings.Contains(errs, id) {
		t.Errorf("twice: exit %d, %q, %q", code, out, errs)
	}
}

// A batch on which something hangs is not forgotten: what does is said with the commands that put it right, and once they were typed it is.
func TestAPourOnWhichSomethingHangsIsNotForgotten(t *testing.T) {
	m := newMaker(t)
	id := m.pours(time.Now().Add(-72 * time.Hour))
	m.says("stock", "receive", "olive 2 kg 9 EUR lot A12")
	m.says("stock", "take", id)
	m.says("logbook", "slice", id, "--count", "10")
	m.says("logbook", "lot", id, "A", "--count", "8")
	m.says("logbook", "sell", id, "3", "--at", "market", "--price", "7", "--currency", "EUR")
	m.says("season", "add-pour", id)
	code, out, errs := m.types("logbook", "forget", id, "--yes")
	var typed [][]string
	for line := range strings.Lines(errs) {
		if _, mend, ok := strings.Cut(strings.TrimSpace(line), ": pourbench "); ok {
			typed = append(typed, strings.Fields(mend))
		}
	}
	if code != 2 || out != "" || len(typed) != 4 {
		t.Fatalf("exit %d, it prints %q and says %q", code, out, errs)
	}
	for _, want := range []string{"1 take of stock", "of the season", "labelled as A", "3 bars sold"} {
		if !strings.Contains(errs, want) {
			t.Errorf("%q is not in %q", want, errs)
		}
	}
	for _, args := range typed {
		m.says(args...)
	}
	m.says("logbook", "forget", id, "--yes")
	if out := m.says("logbook", "list"); !strings.Contains(out, "No pour is logged yet") {
		t.Errorf("after forgetting: %q", out)
	}
}

// What was taken for a batch whose file is gone is given back all the same.
func TestStockOfABatchThatIsGoneIsGivenBack(t *testing.T) {
	m := newMaker(t)
	id := m.pours(time.Now().Add(-72 * time.Hour))
	m.says("stock", "receive", "olive 2 kg 9 EUR lot A12")
	m.says("stock", "take", id)
	if err := os.Remove(m.path("data", "pourbench", "pours", id+".pour.toml")); err != nil {
		t.Fatal(err)
	}
	if out := m.says("stock", "back", id); !strings.Contains(out, "given back") {
		t.Errorf("it prints %q", out)
	}
	if code, _, errs := m.types("stock", "back", id); code != 2 || !strings.Contains(errs, "there is no such batch") {
		t.Errorf("twice: %d, %q", code, errs)
	}
}

// Nothing that is refused leaves a mark behind.
func TestWhatIsNoWeightOrNoPourIsRefusedAndMarksNothing(t *testing.T) {
	m := worked(t)
	id := m.poured()
	before := m.says("logbook", "export")
	for want, args := range map[string][]string{
		"it weighs more than 0 g": {"cut", id, "0"},
		`read "abc" as a number`:  {"cured", id, "abc"},
		`read "1,234.5"`:          {"cut", id, "1,234.5"},
		"nowhere":                 {"note", "nowhere", "words"},
		"there is no terminal":    {"cut", id},
		"ID is missing":           {"cut"},
		"GRAMS is missing":        {"cured", id},
		"REASON is missing":       {"leave-out", id},
	} {
		if code, out, errs := m.types(append([]string{"logbook"}, args...)...); code != 2 || out != "" || !strings.Contains(errs, want) {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
	}
	if code, _, errs := m.types("logbook", "cut", "--", id, "-5"); code != 2 || !strings.Contains(errs, "it weighs more than 0 g") {
		t.Errorf("less than nothing: exit %d, %s", code, errs)
	}
	if after := m.says("logbook", "export"); after != before {
		t.Errorf("marked all the same:\n%s", after)
	}
}

// One pour that cannot be read keeps no other from being used, and is not passed over in silence.
func TestAPourThatCannotBeReadIsNamedBesideTheResult(t *testing.T) {
	m := worked(t)
	id := m.poured()
	m.writes("format = 1\nnonsense = 1\n", "data", "pourbench", "pours", "torn.pour.toml")
	code, out, errs := m.types("logbook", "export")
	if code != 0 || !strings.Contains(out, id) || strings.Contains(out, "torn") || !strings.Contains(errs, "pourbench: torn is left out: ") {
		t.Errorf("export: exit %d, %q, %q", code, out, errs)
	}
	code, out, errs = m.types("checklist")
	if code != 0 || !strings.Contains(out, "Alpine Meadow") || strings.Contains(out, "torn") || !strings.Contains(errs, "pourbench: pour torn teaches nothing: ") {
		t.Errorf("checklist: exit %d, %q", code, errs)
	}
	if out := m.says("logbook", "list"); !strings.Contains(out, id) || !strings.Contains(out, "torn") {
		t.Errorf("listed: %q", out)
	}
	if code, out, errs := m.types("logbook", "show", "torn"); code != 2 || out != "" || !strings.Contains(errs, "torn.pour.toml:2:1") {
		t.Errorf("show: exit %d, %q, %q", code, out, errs)
	}
}

func TestARecordOfAPlanThatTheShelfNoLongerCarriesSaysSo(t *testing.T) {
	m := worked(t)
	id := m.poured()
	path := m.path("data", "pourbench", "pours", id+".pour.toml")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	m.writes(strings.ReplaceAll(string(text), `"castor"`, `"castor-gone"`), "data", "pourbench", "pours", id+".pour.toml")
	code, out, errs := m.types("logbook", "show", id)
	if code != 2 || out != "" || !strings.Contains(errs, "show "+id+": its plan cannot be used with today's shelf: ") || !strings.Contains(errs, "castor-gone") {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
}

// A slip is written, as whatever is typed, and said at once: the figures are of the plan that was poured.
func TestAWeightThatCanHardlyBeIsSaid(t *testing.T) {
	m := worked(t)
	id := m.poured()
	for _, c := range []struct {
		args []string
		want []string // nothing: nothing is said
	}{
		{[]string{"cut", id, "151,5"}, nil}, // planned 153 g
		{[]string{"cut", id, "1550"}, []string{"1550 g is 10 times the planned mass", "the last [[event]] out of", id + ".pour.toml"}},
		{[]string{"cut", id, "15"}, []string{"15 g is 9.8 % of the planned mass"}},
		{[]string{"cured", id, "160"}, []string{"heavier than the 15 g it weighed as cut", "it is the day of the pour"}},
		{[]string{"cut", id, "152"}, []string{"the bar as cut is lighter than the 160 g it weighed cured"}},
	} {
		code, out, errs := m.types(append([]string{"logbook"}, c.args...)...)
		if code != 0 || !strings.HasPrefix(out, id+": one bar weighed ") || (errs == "") != (c.want == nil) {
			t.Errorf("%q: exit %d, %q, %q", c.args, code, out, errs)
		}
		for _, w := range c.want {
			if !strings.Contains(errs, w) {
				t.Errorf("%q: it says %q without %q", c.args, errs, w)
			}
		}
	}
}

// The cut is a conversation of its own where there is no screen; what it marks is in export and record.
func TestALoafIsCutInLines(t *testing.T) {
	m := worked(t)
	id := m.poured()
	lines := strings.Repeat("done\n", 14) + "151,5\n15\nundo\n150\nq\ny\n"
	m.in = strings.NewReader(lines)
	code, out, _ := m.types("logbook", "cut", id, "--plain")
	m.in = nil
	if code != 0 || !strings.Contains(out, "The cut of Alpine Meadow") || !strings.Contains(out, "bar 1: 151,5 g") {
		t.Fatalf("exit %d:\n%s", code, out)
	}
	rows := m.says("logbook", "export")
	for _, want := range []string{"cut weigh bar 1,,,151.5", "cut weigh bar 2,,,150", "try whether it is firm"} {
		if !strings.Contains(rows, want) {
			t.Errorf("the export lacks %q:\n%s", want, rows)
		}
	}
	show := strings.Join(strings.Fields(m.says("logbook", "show", id)), " ")
	for _, want := range []string{"the cut: lay the marks +0:30", "bar 1 as cut 153.2 g 151.5 g", "all that was weighed as cut 306.4 g 301.5 g", "before anything dries"} {
		if !strings.Contains(show, want) {
			t.Errorf("the record lacks %q:\n%s", want, show)
		}
	}
	if strings.Contains(show, "bar 2 as cut 153.2 g 15.0 g") {
		t.Error("a weight that was taken back stands in the record")
	}
}

// What is typed wrong is answered in the maker's words, never in those of a library.
func TestFlagsAndSearchesAreAnsweredInPlainWords(t *testing.T) {
	m := newMaker(t)
	for want, args := range map[string][]string{
		"nothing here is below 0":    {"logbook", "cured", "x", "-5"},
		`it wants a whole number`:    {"picture", "-o", "x.png", "--width", "abc"},
		`unknown flag: --nosuch`:     {"picture", "--nosuch"},
		`"abc" for "--width" flag: `: {"picture", "-o", "x.png", "--width", "abc"},
	} {
		code, _, errs := m.types(args...)
		if code != 2 || !strings.Contains(errs, want) || strings.Contains(errs, "strconv") || strings.Contains(errs, "shorthand") {
			t.Errorf("%q: exit %d, %q", args, code, errs)
		}
	}
}
