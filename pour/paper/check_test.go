package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
)

func TestCheckExitsByTheWorstWarning(t *testing.T) {
	warn := func(severities ...pour.Severity) pour.Sheet {
		s := pour.Sheet{Plan: pour.Plan{Name: "Meadow"}}
		for _, v := range severities {
			s.Warnings = append(s.Warnings, pour.Warning{Code: "gel", Severity: v, Where: "bed", Text: "it may gel", Do: "wrap it"})
		}
		return s
	}
	for _, c := range []struct {
		sheet pour.Sheet
		exit  int
		says  string
	}{
		{warn(), 0, "Meadow: no warnings"},
		{warn(pour.Note, pour.Note), 0, "Meadow: 2 notes"},
		{warn(pour.Note, pour.Caution), 1, "Meadow: 1 caution, 1 note"},
		{warn(pour.Note, pour.Caution, pour.Stop), 3, "Meadow: 1 stop, 1 caution, 1 note"},
	} {
		text, exit := Check(c.sheet, nil)
		if exit != c.exit || !strings.HasPrefix(text, c.says+"\n") {
			t.Errorf("%q: exit %d, want %d and %q", text, exit, c.exit, c.says)
		}
	}
}

func TestCheckGroupsBySeverityWorstFirst(t *testing.T) {
	p := testPlan()
	p.Base.SuperfatPercent = -2
	text, exit := Check(work(p), nil)
	stop, caution, note := strings.Index(text, "\nSTOP\n"), strings.Index(text, "\nCAUTION\n"), strings.Index(text, "\nNOTE\n")
	if exit != ExitStop || stop < 0 || caution < stop || note < caution {
		t.Errorf("exit %d, stop at %d, caution at %d, note at %d", exit, stop, caution, note)
	}
	for _, w := range work(p).Warnings {
		if !strings.Contains(flat(text), w.Code+", "+w.Where) {
			t.Errorf("%s of %s is missing", w.Code, w.Where)
		}
	}
}

func TestCheckNeverCallsABatchSafe(t *testing.T) {
	text, _ := Check(pour.Sheet{Plan: pour.Plan{Name: "Meadow"}}, nil)
	if !strings.Contains(flat(text), "Whether a batch is safe is not judged.") {
		t.Errorf("a clean check must not sound like a promise: %s", text)
	}
}

func TestCheckListsTheMendsOfAWarning(t *testing.T) {
	s := pour.Sheet{Plan: pour.Plan{Name: "Meadow"}, Warnings: []pour.Warning{
		{Code: "note-first", Severity: pour.Note, Where: "base", Text: "one"}, {Code: "stop-second", Severity: pour.Stop, Where: "base", Text: "two", Do: "see to it"},
	}}
	text, _ := Check(s, [][]string{nil, {"raise the superfat to 3 %", "carry less"}})
	want := "STOP\n  stop-second, base\n      Base: two.\n      Do: See to it.\n      Mend: Raise the superfat to 3 %.\n      Mend: Carry less.\n"
	if !strings.Contains(text, want) || strings.Count(text, "Mend:") != 2 {
		t.Errorf("written:\n%s", text)
	}
}
