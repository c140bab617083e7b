package planfile

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
)

// savingIn is the environment variable that makes this test binary save into a folder until it is killed.
const savingIn = "POURBENCH_TEST_SAVING_IN"

func TestMain(m *testing.M) {
	if dir := os.Getenv(savingIn); dir != "" {
		if err := saveUntilKilled(dir); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}

// sized is a plan whose file is longer the higher n is: half of one is no file of another.
func sized(p pour.Plan, n int) pour.Plan {
	p.Name = fmt.Sprintf("Plan %d", n)
	p.Notes = strings.Repeat("a line of notes\n", n%7*400)
	return p
}

// saveUntilKilled saves new plans, each again and again with other content, and keeps a journal beside.
func saveUntilKilled(dir string) error {
	src, err := os.ReadFile(filepath.Join(dir, "start.toml"))
	if err != nil {
		return err
	}
	plan, err := read("start.toml", string(src), nil)
	if err != nil {
		return err
	}
	journal := NewJournal(filepath.Join(dir, "state"))
	for n, since := 1, (Stamp{}); ; n++ {
		if n%3 == 1 {
			since = Stamp{} // a new file
		}
		path := filepath.Join(dir, fmt.Sprintf("plan-%d-%d.toml", os.Getpid(), (n-1)/3))
		if err := journal.Write(2*n, sized(plan, n), path, since); err != nil {
			return err
		}
		saved, err := Save(path, sized(plan, n), SaveOptions{Since: since})
		if err != nil {
			return err
		}
		since = saved.Stamp
		if n%5 == 0 {
			if err := journal.Drop(2*n + 1); err != nil {
				return err
			}
		}
		fmt.Println("saved")
	}
}

// killedSaving lets a child save into a folder and kills it at a random moment after its first save.
func killedSaving(t *testing.T, dir string) {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run=^$")
	cmd.Env = append(os.Environ(), savingIn+"="+dir)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	if !lines.Scan() || lines.Text() != "saved" {
		t.Fatalf("the child says %q", lines.Text())
	}
	go func() {
		for lines.Scan() { // so that the child never waits for its reader
		}
	}()
	time.Sleep(time.Duration(rand.Int64N(int64(15 * time.Millisecond))))
	_ = cmd.Process.Kill()
	_ = cmd.Wait()
}

func TestASaveKilledAtAnyMomentLeavesAWholePlanOrNone(t *testing.T) {
	kills := 20
	switch {
	case os.Getenv("POURBENCH_LONG") != "":
		kills = 300
	case testing.Short():
		kills = 8
	}
	smallest, half, left := mustRead(t, planText(t, "smallest.toml")), 0, 0
	for range kills {
		dir := t.TempDir()
		put(t, filepath.Join(dir, "start.toml"), planText(t, "smallest.toml"))
		killedSaving(t, dir)
		files, err := filepath.Glob(filepath.Join(dir, "plan-*"))
		if err != nil || len(files) == 0 {
			t.Fatalf("nothing was saved: %v", err)
		}
		for _, file := range files {
			whole(t, file, smallest)
		}
		for _, r := range readable(t, dir) {
			left++
			whole(t, r.File, smallest)
		}
		half += strays(t, dir) + strays(t, filepath.Join(dir, "state"))
		nextSaveSweeps(t, dir, smallest)
	}
	t.Logf("%d kills: %d left a file half written beside, %d a journal", kills, half, left)
}

// whole checks that a file holds a plan just as one save wrote it.
func whole(t *testing.T, file string, p pour.Plan) {
	t.Helper()
	got := content(t, file)
	plan, err := read(file, got, nil)
	if err != nil {
		t.Fatalf("%s is not whole: %v", file, err)
	}
	n := 0
	if _, err := fmt.Sscanf(plan.Name, "Plan %d", &n); err != nil {
		t.Fatal(err)
	}
	if d := difference(sized(p, n), plan); d != "" {
		t.Errorf("%s: %s", file, d)
	}
}

// readable is the lost work in the state folder, which must all be readable and nobody's any more.
func readable(t *testing.T, dir string) []Recovery {
	t.Helper()
	found, err := Recoveries(filepath.Join(dir, "state"))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range found {
		if r.Err != nil || r.Living {
			t.Errorf("the journal %s: living %v, %v", r.File, r.Living, r.Err)
		}
	}
	return found
}

func strays(t *testing.T, dir string) int {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(dir, ".pourbench-*"))
	if err != nil {
		t.Fatal(err)
	}
	return len(found)
}

// nextSaveSweeps checks that one more save and one more bench leave nothing behind but plans and lost work.
func nextSaveSweeps(t *testing.T, dir string, p pour.Plan) {
	t.Helper()
	if _, err := Save(filepath.Join(dir, "next.toml"), p, SaveOptions{}); err != nil {
		t.Fatal(err)
	}
	state := filepath.Join(dir, "state")
	if err := journalled(t, state, p, "", Stamp{}).Drop(2); err != nil {
		t.Fatal(err)
	}
	for _, r := range readable(t, dir) {
		if err := r.Drop(); err != nil {
			t.Error(err)
		}
	}
	if strays(t, dir) > 0 {
		t.Error("a file half written is still there after the next save")
	}
	alone(t, state)
}
