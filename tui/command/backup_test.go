package command_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// worked is a maker who has a plan, a shelf of her own, a finished pour and unsaved work.
func worked(t *testing.T) *maker {
	t.Helper()
	m := newMaker(t)
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan(presets.Plans()[0])
	if err != nil {
		t.Fatal(err)
	}
	plan, err := planfile.Read("meadow", bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	m.writes(string(text), "soap", "meadow.toml")
	m.writes("[[oil]]\nid = \"olive\"\nname = \"my olive\"\n", "config", "pourbench", "shelf.toml")
	if err := planfile.Remember(m.path("state", "pourbench"), m.path("soap", "meadow.toml")); err != nil {
		t.Fatal(err)
	}
	book, err := logbook.OpenBook(m.path("data", "pourbench", "pours"))
	if err != nil {
		t.Fatal(err)
	}
	run, err := underway.Begin(book, pour.Work(plan, shelf, pour.Hand{}), "", shelf, underway.SystemClock("a"), "a")
	if err != nil {
		t.Fatal(err)
	}
	if err := run.Mark(logbook.Event{Kind: logbook.Noted, Text: "the sky was blue"}); err != nil {
		t.Fatal(err)
	}
	journal := planfile.NewJournal(m.path("state", "pourbench"))
	plan.Name = "Unsaved Meadow"
	if err := journal.Write(1, plan, "", planfile.Stamp{}); err != nil {
		t.Fatal(err)
	}
	if err := journal.Abandon(); err != nil {
		t.Fatal(err)
	}
	return m
}

// after is what a maker sees of her logbook, plan and lost work.
func (m *maker) after() string {
	m.t.Helper()
	var all strings.Builder
	for _, args := range [][]string{{"logbook", "list"}, {"logbook", "export", "--json"}, {"figures", m.path("soap", "meadow.toml")}} {
		code, out, errs := m.types(args...)
		if code != 0 || errs != "" {
			m.t.Fatalf("%q: exit %d, %s", args, code, errs)
		}
		all.WriteString(out)
	}
	found, err := planfile.Recoveries(m.path("state", "pourbench"))
	if err != nil {
		m.t.Fatal(err)
	}
	for _, r := range found {
		all.WriteString(r.Plan.Name + r.At.UTC().Format(time.RFC3339Nano))
	}
	return all.String()
}

func TestAFreshHomeSeesTheSameAfterARestore(t *testing.T) {
	m := worked(t)
	zip := filepath.Join(t.TempDir(), "b.zip")
	if code, out, errs := m.types("backup", zip); code != 0 || errs != "" || strings.Count(out, "\n") != 4 || !strings.Contains(out, "~/soap/meadow.toml") {
		t.Fatalf("exit %d, %s%s", code, out, errs)
	}
	if info, err := os.Stat(zip); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info, err)
	}
	n := newMaker(t)
	code, out, errs := n.types("restore", zip)
	if code != 0 || errs != "" || strings.Count(out, "put back") != 4 {
		t.Fatalf("exit %d, %s%s", code, out, errs)
	}
	if a, b := m.after(), n.after(); a != b || !strings.Contains(a, "the sky was blue") || !strings.Contains(a, "Unsaved Meadow") || !strings.Contains(a, "my olive") {
		t.Errorf("before:\n%s\nafter:\n%s", a, b)
	}
	if code, out, errs := n.types("restore", zip); code != 0 || errs != "" || strings.Count(out, "the same is there") != 4 {
		t.Errorf("again: exit %d, %s%s", code, out, errs)
	}
	again := filepath.Join(t.TempDir(), "c.zip") // the plan is known on the new machine too
	if code, out, errs := n.types("backup", again); code != 0 || strings.Count(out, "kept") != 4 {
		t.Errorf("backed up again: exit %d, %s%s", code, out, errs)
	}
}

func TestWithoutATerminalNothingIsWrittenOverUnlessAsked(t *testing.T) {
	m := worked(t)
	zip := m.path("b.zip")
	if code, _, errs := m.types("backup", zip); code != 0 {
		t.Fatal(errs)
	}
	if code, _, errs := m.types("backup", zip); code != 2 || !strings.Contains(errs, "is there already; nothing is written over without --replace") {
		t.Errorf("over a backup: exit %d, %s", code, errs)
	}
	if code, _, errs := m.types("backup", zip, "--replace"); code != 0 {
		t.Error(errs)
	}
	plan := m.path("soap", "meadow.toml")
	before := m.after()
	m.writes("my own, newer", "soap", "meadow.toml")
	if err := os.Remove(m.path("config", "pourbench", "shelf.toml")); err != nil {
		t.Fatal(err)
	}
	code, out, errs := m.types("restore", zip)
	if code != 2 || out != "" || !strings.Contains(errs, "1 files differ") || !strings.Contains(errs, plan) {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
	if text, err := os.ReadFile(plan); err != nil || string(text) != "my own, newer" {
		t.Errorf("%q, %v", text, err)
	}
	if _, err := os.Stat(m.path("config", "pourbench", "shelf.toml")); !os.IsNotExist(err) {
		t.Errorf("the shelf was put back although all was refused: %v", err)
	}
	code, out, errs = m.types("restore", zip, "--replace")
	if code != 0 || strings.Count(out, "replaced") != 1 || strings.Count(out, "put back") != 1 || strings.Count(out, "the same") != 2 {
		t.Errorf("exit %d, %s%s", code, out, errs)
	}
	if m.after() != before {
		t.Error("with --replace all is not as it was")
	}
}

func TestABackupThatCannotBeUsedSaysWhy(t *testing.T) {
	m := newMaker(t)
	m.writes("no zip at all", "b.zip")
	for want, args := range map[string][]string{
		"there is nothing yet":         {"backup", m.path("c.zip")},
		"no such file or directory":    {"restore", m.path("c.zip")},
		"it is no whole zip archive":   {"restore", m.path("b.zip")},
		"there is no such folder":      {"restore", m.path("b.zip"), "--plans", m.path("nowhere")},
		"is no plain file but a":       {"restore", m.home},
		"accepts 1 arg(s), received 0": {"backup"},
	} {
		if code, out, errs := m.types(args...); code != 2 || out != "" || !strings.Contains(errs, want) {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
	}
	m.holds(m.home, "b.zip")
}

func TestWhatABackupLeavesOutIsToldAndInTheExitCode(t *testing.T) {
	m := worked(t)
	m.writes("x", "data", "pourbench", "pours", "odd\u202ename.pour.toml")
	code, out, errs := m.types("backup", m.path("b.zip"))
	if code != 1 || strings.Count(out, "kept") != 4 || !strings.Contains(errs, "left out: its name cannot stand in an archive") {
		t.Errorf("exit %d, %s%s", code, out, errs)
	}
}
