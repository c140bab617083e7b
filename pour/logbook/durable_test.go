package logbook

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// TestMain lets the test binary stand in for a terminal that journals until it is killed.
func TestMain(m *testing.M) {
	if path := os.Getenv("LOGBOOK_TEST_WRITER"); path != "" {
		write(path, os.Getenv("LOGBOOK_TEST_NAME"))
		return
	}
	os.Exit(m.Run())
}

// write journals notes and tells each one only once it is on the disk.
func write(path, name string) {
	book, id := Book{filepath.Dir(path), disk.OS()}, strings.TrimSuffix(filepath.Base(path), Suffix)
	for i := range 100000 {
		e := Event{ID: fmt.Sprintf("%s-%d", name, i), Kind: Noted, Text: strings.Repeat("soap ", 40), Wall: time.Now(), Run: time.Duration(i) * time.Second}
		if _, _, err := book.Append(id, time.Minute, e); err != nil {
			fmt.Println("failed:", err)
			return
		}
		fmt.Println(e.ID)
	}
}

// writer starts a terminal of its own and returns, once it has told of enough events, what it told.
func writer(t *testing.T, path, name string, enough int) []string {
	t.Helper()
	self, err := os.Executable()
	must(t, err)
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), "LOGBOOK_TEST_WRITER="+path, "LOGBOOK_TEST_NAME="+name)
	out, err := cmd.StdoutPipe()
	must(t, err)
	must(t, cmd.Start())
	var told []string
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		told = append(told, lines.Text())
		if len(told) == enough {
			must(t, cmd.Process.Kill())
		}
	}
	_ = cmd.Wait() // it was killed
	return told
}

func TestWhatWasJournaledSurvivesKillInTheMiddle(t *testing.T) {
	book, id, shelf := aPour(t)
	told := writer(t, book.Path(id), "kid", 25)
	p, err := book.Read(id, shelf)
	must(t, err)
	has := map[string]bool{}
	for _, e := range p.Events {
		has[e.ID] = true
	}
	for _, id := range told {
		if !has[id] {
			t.Errorf("%s was told to be on the disk and is not in the file", id)
		}
	}
	if len(told) < 25 {
		t.Errorf("the terminal told of %d events: %v", len(told), told)
	}
}

func TestTwoTerminalsAppendWithoutHarmingEachOther(t *testing.T) {
	book, id, shelf := aPour(t)
	var group sync.WaitGroup
	told := make([][]string, 2)
	for i, name := range []string{"one", "two"} {
		group.Go(func() { told[i] = writer(t, book.Path(id), name, 20) })
	}
	group.Wait()
	p, err := book.Read(id, shelf)
	must(t, err)
	next := map[string]int{}
	for _, e := range p.Events {
		if name, number, ok := strings.Cut(e.ID, "-"); ok && e.Kind == Noted {
			if number != fmt.Sprint(next[name]) {
				t.Fatalf("%s stands where %s-%d should", e.ID, name, next[name])
			}
			next[name]++
		}
	}
	for i, name := range []string{"one", "two"} {
		if next[name] < len(told[i]) {
			t.Errorf("terminal %s told of %d events, the file has %d", name, len(told[i]), next[name])
		}
	}
}

func TestATornTailIsToldAndMendedWhereverItWasTorn(t *testing.T) {
	book, id, shelf := aPour(t)
	before, err := os.ReadFile(book.Path(id))
	must(t, err)
	c := course{from: opened()}
	c.mark(7, Event{Kind: Seen, Batch: pour.Base, Jug: "fern", Stage: chem.Medium})
	_, _, err = book.Append(id, 0, c.events...)
	must(t, err)
	whole, err := os.ReadFile(book.Path(id))
	must(t, err)
	for cut := len(before); cut < len(whole)-1; cut += 2 {
		must(t, os.WriteFile(book.Path(id), whole[:cut], 0o600))
		p, err := book.Read(id, shelf)
		if err != nil {
			t.Fatalf("torn after %d bytes: %v", cut, err)
		}
		if torn := string(whole[len(before):cut]); strings.TrimSpace(torn) != "" && p.Torn == "" && len(p.Events) < 4 {
			t.Fatalf("torn after %d bytes: %q is not told", cut, torn)
		}
		_, _, err = book.Append(id, 0, Event{ID: "next", Kind: Noted, Text: "on", Wall: opened()})
		must(t, err)
		if p, err = book.Read(id, shelf); err != nil {
			t.Fatalf("torn after %d bytes and written on: %v", cut, err)
		}
		if last := p.Events[len(p.Events)-1]; last.ID != "next" || p.Torn != "" {
			t.Fatalf("torn after %d bytes: the last event is %q", cut, last.ID)
		}
	}
}

func TestABrokenFileIsRefusedWithItsLineAndHowToMendIt(t *testing.T) {
	book, id, shelf := aPour(t)
	src, err := os.ReadFile(book.Path(id))
	must(t, err)
	for _, x := range []struct{ name, old, new, line, says string }{
		{"a stage", `stage = "light"`, `stage = "ligth"`, `stage = "ligth"`, "emulsion, light"},
		{"a kind", `kind = "seen"`, `kind = "sene"`, `kind = "sene"`, `did you mean "seen"?`},
		{"a missing time", "kind = \"seen\"\n", "kind = \"seen\"\n[[event]]\nkind = \"note\"\n", "[[event]]\nkind = \"seen\"\n[[event]]", "event[2].run_s: is missing"},
		{"a missing wall", "kind = \"seen\"\n", "kind = \"note\"\nrun_s = 1\n[[event]]\nkind = \"seen\"\n", "[[event]]\nkind = \"note\"", "event[2].wall: is missing"},
		{"a stray key", `jug = "fern"`, `jugg = "fern"`, `jugg = "fern"`, "did you mean jug?"},
		{"a broken line", `stage = "light"`, `stage = light`, `stage = light`, "double quotes"},
		{"a newer file", `format = 1`, `format = 9`, "", "format = 1"},
	} {
		broken := strings.Replace(string(src), x.old, x.new, 1)
		if x.name == "a newer file" {
			broken = strings.Replace(string(src), "\nformat = 1", "\nformat = 9", 1)
		}
		must(t, os.WriteFile(book.Path(id), []byte(broken), 0o600))
		_, err := book.Read(id, shelf)
		var told *strict.Error
		if !errors.As(err, &told) {
			t.Errorf("%s: %v", x.name, err)
			continue
		}
		p := told.Faults[0]
		if !strings.Contains(told.Error(), x.says) {
			t.Errorf("%s: %q does not say %q", x.name, told.Error(), x.says)
		}
		if x.line != "" {
			if want := 1 + strings.Count(broken[:strings.Index(broken, x.line)], "\n"); p.Line != want {
				t.Errorf("%s: line %d is named, it is line %d", x.name, p.Line, want)
			}
		}
	}
}

func FuzzParse(f *testing.F) {
	book, id, shelf := aPour(f)
	src, err := os.ReadFile(book.Path(id))
	must(f, err)
	f.Add(string(src))
	f.Add(string(src[:len(src)-20]))
	f.Add("[[event]]\nrun_s = nan\n")
	lived := "kind = \"sliced\"\nday = \"2026-12-06 09:30\"\nbars = [1, 2]\nmasses_g = [128.4, 127]\ncrumbs_g = 6\nseconds = 1\nid = \"a\"\nwall = 2026-12-06T10:00:00Z\n"
	sold := "kind = \"sold\"\ncount = 3\nprice = \"7.50\"\ncurrency = \"EUR\"\naudience = \"cake\"\ncorrects = \"a\"\nid = \"b\"\nwall = 2026-12-06T10:00:00Z\n"
	seen := "kind = \"looked\"\nvalue = 2\nscent = \"x\"\ncolour = \"#aabbcc\"\npath = \"../a.png\"\nwall = 2026-12-06T10:00:00Z\n"
	f.Add(string(src) + "\n[[event]]\n" + lived + "\n[[event]]\n" + sold + "\n[[event]]\n" + seen)
	f.Fuzz(func(t *testing.T, text string) {
		p, err := parse("x", "x", text, shelf)
		if err != nil {
			return
		}
		for _, e := range p.Events {
			if strings.ContainsAny(e.Text+e.What+e.Jug+e.Step+e.Corrects+e.Life.Day+e.Life.Audience+e.Life.Scent+e.Life.Path, "\x1b\u009b\u202e") {
				t.Fatalf("unsafe text in %+v", e)
			}
		}
	})
}
