package live

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/logbook"
)

// The environment that makes the test binary a run: the logbook's folder, the pour and the name of the session.
const (
	killDir     = "POURBENCH_KILL_TEST_DIR"
	killPour    = "POURBENCH_KILL_TEST_POUR"
	killSession = "POURBENCH_KILL_TEST_SESSION"
)

// TestMain makes the test binary a run that marks without a pause until it is killed.
func TestMain(m *testing.M) {
	if dir := os.Getenv(killDir); dir != "" {
		if err := victim(dir); err != nil {
			fmt.Println("failed:", err)
		}
		return
	}
	os.Exit(m.Run())
}

// victim takes a pour up and marks, finishes and takes back. It tells the id of every event once it is said to be on the disk. Its disk
// writes in small bites with pauses, so that it is killed in the middle of writing more often than not.
func victim(dir string) error {
	book, err := logbook.OpenBook(dir)
	if err != nil {
		return err
	}
	ops := disk.OS()
	ops.Write = func(f *os.File, p []byte) (n int, err error) {
		for bite := range slices.Chunk(p, 31) {
			time.Sleep(200 * time.Microsecond)
			k, err := f.Write(bite)
			if n += k; err != nil {
				return n, err
			}
		}
		return n, nil
	}
	sheet, shelf := lonely(&testing.T{})
	r, err := Resume(book.On(ops), os.Getenv(killPour), shelf, pour.Hand{}, SystemClock("kid"), os.Getenv(killSession))
	if err != nil {
		return err
	}
	steps := Steps(sheet)
	for i := 0; ; i++ {
		switch step := steps[i/2%len(steps)]; {
		case i%2 == 0 && !done(r, step.Key):
			err = r.Do(step.Key)
		case i%7 == 0:
			err = r.Back()
		default:
			err = r.note("fern", strings.Repeat("it is thick ", 1+i%9))
		}
		if waiting, why := r.Unwritten(); err != nil || why != nil {
			return fmt.Errorf("%w, %d wait: %w", err, len(waiting), why)
		}
		events := r.Live().Events
		fmt.Println(events[len(events)-1].ID)
	}
}

func done(r *Run, key string) bool {
	step, _ := r.State().step(key)
	return step.Done
}

// killed runs a victim for a while after its first event and returns what it had told by the time it was killed.
func killed(t *testing.T, dir, id, session string, after time.Duration) []string {
	t.Helper()
	self, err := os.Executable()
	must(t, err)
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), killDir+"="+dir, killPour+"="+id, killSession+"="+session)
	out, err := cmd.StdoutPipe()
	must(t, err)
	must(t, cmd.Start())
	var told []string
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if len(told) == 0 {
			time.AfterFunc(after, func() { _ = cmd.Process.Kill() })
		}
		told = append(told, lines.Text())
	}
	_ = cmd.Wait() // it was killed
	return told
}

// A run that is killed at any moment, in the middle of writing too, leaves a file that can be read, that holds everything it had said
// is written, in that order, that replays, and in which the run is taken up again.
func TestRunsKilledAtAnyMomentLoseNothingTheySaidIsWritten(t *testing.T) {
	kills := 10
	switch {
	case os.Getenv("POURBENCH_LONG") != "":
		kills = 120
	case testing.Short():
		kills = 3
	}
	r := rand.New(rand.NewPCG(8, 8))
	sheet, shelf := lonely(t)
	torn, written := 0, 0
	var book logbook.Book
	var id string
	for n := range kills {
		if n%10 == 0 { // a file grows with every kill
			book = openTestBook(t)
			first, err := Begin(book, sheet, "", shelf, SystemClock("a"), "a")
			must(t, mustRun(t, first, err).note("fern", "begun")) // the first mark makes the file
			id = first.ID
		}
		session := fmt.Sprintf("k%d", n)
		told := killed(t, filepath.Dir(book.Path(id)), id, session, time.Duration(r.IntN(30_000))*time.Microsecond)
		p, err := book.Read(id, shelf)
		must(t, err)
		var mine []string
		for _, e := range p.Events {
			if e.Kind == logbook.Resumed || e.Kind == logbook.Jumped || e.Kind == logbook.TornRecord || !strings.HasSuffix(e.ID, session) && !strings.Contains(e.ID, session+"-") {
				continue
			}
			mine = append(mine, e.ID)
		}
		if len(told) == 0 || strings.HasPrefix(told[len(told)-1], "failed") {
			t.Fatalf("kill %d: the run told %q", n, told)
		}
		if len(mine) < len(told) || !slices.Equal(mine[:len(told)], told) || len(mine) > len(told)+1 { // one may be written and not told yet
			t.Errorf("kill %d: told\n%q, the file has\n%q", n, told, mine)
		}
		if p.Torn != "" {
			torn++
		}
		written += len(told)
		takenUp(t, book, id, sheet, shelf, p, session+"again")
	}
	t.Logf("%d kills, %d in the middle of an event, after %d events", kills, torn, written)
	if kills >= 10 && torn == 0 {
		t.Error("no kill came in the middle of an event: the test sees too little")
	}
}

// takenUp takes up a run that was killed: it stands where its file left it, and goes on.
func takenUp(t *testing.T, book logbook.Book, id string, sheet pour.Sheet, shelf pour.Shelf, left logbook.Pour, session string) {
	t.Helper()
	again, err := Resume(book, id, shelf, pour.Hand{}, SystemClock(session), session)
	mustRun(t, again, err)
	before := Replay(sheet, left.Events)
	if s := again.State(); s.Next != before.Next || len(s.Steps) != len(before.Steps) {
		t.Errorf("taken up it is at step %d, it was at %d", s.Next, before.Next)
	}
	if last := left.Events[len(left.Events)-1].Run; again.Live().Run() < last {
		t.Errorf("taken up it is at %v, it was at %v", again.Live().Run(), last)
	}
	must(t, again.note("fern", "on"))
	if waiting, err := again.Unwritten(); len(waiting) != 0 || err != nil {
		t.Errorf("%d marks wait, %v", len(waiting), err)
	}
	p, err := book.Read(id, shelf)
	must(t, err)
	if p.Torn != "" || p.Events[len(p.Events)-1].Text != "on" {
		t.Errorf("the file ends with %q, torn %q", p.Events[len(p.Events)-1].Text, p.Torn)
	}
	if told := slices.ContainsFunc(p.Events[len(left.Events):], func(e logbook.Event) bool { return e.Kind == logbook.TornRecord }); told != (left.Torn != "") {
		t.Errorf("a torn event is told: %v, it was torn: %q", told, left.Torn)
	}
}
