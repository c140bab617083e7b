package planfile

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/disk/disktest"
)

// journalled is a bench that has kept a plan and lives until the end of the test.
func journalled(t *testing.T, dir string, p pour.Plan, path string, made Stamp) *Journal {
	t.Helper()
	j := NewJournal(dir)
	if err := j.Write(1, p, path, made); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = j.Abandon() })
	return j
}

// ended is a bench that kept a plan and is gone.
func ended(t *testing.T, dir string, p pour.Plan, path string, made Stamp) {
	t.Helper()
	if err := journalled(t, dir, p, path, made).Abandon(); err != nil {
		t.Fatal(err)
	}
}

func recoveries(t *testing.T, dir string, want int) []Recovery {
	t.Helper()
	found, err := Recoveries(dir)
	if err != nil || len(found) != want {
		t.Fatalf("found %d journals, %v; want %d", len(found), err, want)
	}
	return found
}

func TestAJournalBringsBackThePlanAndThePathAndStampOfItsFile(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "state", "pourbench")
	first := mustRead(t, planText(t, "everykey.toml"))
	path := filepath.Join(t.TempDir(), "odd \"name\"\n.toml")
	made := stampOf([]byte("as it was"), time.Now())
	j := journalled(t, dir, renamed(first, "Before"), "before", Stamp{})
	if err := j.Write(2, first, path, made); err != nil {
		t.Fatal(err)
	}
	old := time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)
	if err := os.Chtimes(journalFile(dir, j.key), old, old); err != nil {
		t.Fatal(err)
	}
	ended(t, dir, mustRead(t, planText(t, "smallest.toml")), "", Stamp{})
	found := recoveries(t, dir, 2)
	if found[0].Path != "" || !found[0].Made.Zero() || found[0].Living {
		t.Errorf("the latest comes first, of no file and of no living bench: %+v", found[0])
	}
	r := found[1]
	if r.Path != path || !r.At.Equal(old) || r.Err != nil || !r.Living || r.Made.Sum != made.Sum {
		t.Errorf("found %+v", r)
	}
	if d := difference(first, r.Plan); d != "" {
		t.Error(d)
	}
}

func TestTheLockAndTheContentAreOnTheDiskBeforeTheJournalAppears(t *testing.T) {
	dir := t.TempDir()
	var spy disktest.Spy
	j := newJournal(spy.Ops(), dir)
	j.key = "bench-1"
	if err := j.Write(1, mustRead(t, planText(t, "smallest.toml")), "", Stamp{}); err != nil {
		t.Fatal(err)
	}
	want := []string{
		"create bench-1.lock", "lock bench-1.lock",
		"create TEMP", "lock TEMP", "write TEMP", "sync TEMP", "close TEMP", "move TEMP bench-1.journal", "sync folder",
	}
	if d := cmp.Diff(want, spy.Done); d != "" {
		t.Error(d)
	}
}

func TestTwoBenchesOnOnePlanHaveAJournalEach(t *testing.T) {
	dir := t.TempDir()
	plan := mustRead(t, planText(t, "smallest.toml"))
	path := filepath.Join(t.TempDir(), "plan.toml")
	one, two := journalled(t, dir, renamed(plan, "One"), path, Stamp{}), journalled(t, dir, renamed(plan, "Two"), path, Stamp{})
	for _, r := range recoveries(t, dir, 2) {
		if !r.Living {
			t.Errorf("the work of %s is taken for lost", r.Plan.Name)
		}
		if err := r.Drop(); err != nil { // a living bench's journal is left alone
			t.Error(err)
		}
	}
	if err := one.Drop(2); err != nil {
		t.Fatal(err)
	}
	if left := recoveries(t, dir, 1); left[0].Plan.Name != "Two" || !left[0].Living {
		t.Errorf("left: %+v", left[0])
	}
	if err := two.Abandon(); err != nil {
		t.Fatal(err)
	}
	lost := recoveries(t, dir, 1)[0]
	if lost.Living {
		t.Error("the work of a bench that is gone is taken for living")
	}
	for range 2 {
		if err := lost.Drop(); err != nil {
			t.Error(err)
		}
	}
	alone(t, dir)
}

func TestWhatComesLateIsPassedOver(t *testing.T) {
	dir := t.TempDir()
	plan := mustRead(t, planText(t, "smallest.toml"))
	j := NewJournal(dir)
	if err := j.Write(2, renamed(plan, "Second"), "", Stamp{}); err != nil {
		t.Fatal(err)
	}
	if err := j.Write(1, renamed(plan, "First"), "", Stamp{}); err != nil {
		t.Fatal(err)
	}
	if got := recoveries(t, dir, 1)[0].Plan.Name; got != "Second" {
		t.Errorf("the journal holds %q", got)
	}
	if err := errors.Join(j.Drop(4), j.Write(3, plan, "", Stamp{})); err != nil {
		t.Fatal(err)
	}
	alone(t, dir)
	if err := errors.Join(j.Write(5, plan, "", Stamp{}), j.Drop(6), j.Drop(7)); err != nil {
		t.Error(err)
	}
	alone(t, dir)
}

func TestAJournalThatCannotBeWrittenSaysWhyAndKeepsTheOneBefore(t *testing.T) {
	dir := t.TempDir()
	plan := mustRead(t, planText(t, "smallest.toml"))
	spy := &disktest.Spy{}
	j := newJournal(spy.Ops(), dir)
	if err := j.Write(1, renamed(plan, "Before"), "", Stamp{}); err != nil {
		t.Fatal(err)
	}
	spy.Fail = func(_ int, step string) error {
		if step == "write TEMP" {
			return syscall.ENOSPC
		}
		return nil
	}
	err := j.Write(2, plan, "", Stamp{})
	if want := fmt.Sprintf("%v: keep a recovery journal in %q", syscall.ENOSPC, dir); err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	if got := recoveries(t, dir, 1)[0].Plan.Name; got != "Before" {
		t.Errorf("the journal holds %q", got)
	}
}

func TestTheLockOfABenchThatWasKilledBeforeItsFirstJournalIsSwept(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "bench-0.lock"), "")
	put(t, filepath.Join(dir, "other.lock"), "not ours")
	living, err := disk.OS().Hold(filepath.Join(dir, "bench-1.lock"))
	if err != nil {
		t.Fatal(err)
	}
	j := journalled(t, dir, mustRead(t, planText(t, "smallest.toml")), "", Stamp{})
	if err := j.Drop(2); err != nil {
		t.Fatal(err)
	}
	alone(t, dir, "bench-1.lock", "other.lock")
	if err := living.Release(); err != nil {
		t.Fatal(err)
	}
}

func TestABrokenJournalIsShownWithItsReason(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "half.journal"), journalHead+"\"/a/plan.toml\"\nformat = 1\nname = \"cut o")
	put(t, filepath.Join(dir, "notes.txt"), "not ours")
	if r := recoveries(t, dir, 1)[0]; r.Err == nil || r.Path != "/a/plan.toml" {
		t.Errorf("found %+v", r)
	}
	if found, err := Recoveries(filepath.Join(dir, "missing")); err != nil || found != nil {
		t.Errorf("a folder that is not there: %+v, %v", found, err)
	}
}

// The journals of earlier versions were named after the document, held its path as it was typed, and no stamp.
func TestJournalsOfEarlierVersionsAreStillFound(t *testing.T) {
	dir, plans := t.TempDir(), t.TempDir()
	if resolved, err := filepath.EvalSymlinks(plans); err == nil {
		plans = resolved
	}
	path := filepath.Join(plans, "plan.toml")
	text := planText(t, "smallest.toml")
	key := fmt.Sprintf("%x", sha256.Sum256([]byte(path)))[:16]
	put(t, filepath.Join(dir, key+".journal"), "# pourbench recovery journal of \"plan.toml\"\n"+text)
	put(t, filepath.Join(dir, "draft-4711.journal"), "# pourbench recovery journal of \"\"\n"+text)
	drafts, ofFile := 0, 0
	for _, r := range recoveries(t, dir, 2) {
		if r.Err != nil || r.Living || !r.Made.Zero() || r.Plan.Name == "" {
			t.Errorf("found %+v", r)
		}
		if r.Of("") {
			drafts++
		}
		if r.Of(path) && !r.Of(filepath.Join(plans, "other.toml")) {
			ofFile++
		}
		if err := r.Drop(); err != nil {
			t.Error(err)
		}
	}
	if drafts != 1 || ofFile != 1 {
		t.Errorf("%d drafts and %d of the file, want one each", drafts, ofFile)
	}
	alone(t, dir)
}

func TestAJournalBelongsToItsFileByEveryWayToWriteThePath(t *testing.T) {
	state, dir := t.TempDir(), t.TempDir()
	path := filepath.Join(dir, "plan.toml")
	plan := mustRead(t, planText(t, "smallest.toml"))
	ended(t, state, plan, path, Stamp{})
	r := recoveries(t, state, 1)[0]
	if !r.Of(path) || !r.Of(filepath.Join(dir, "x", "..", "plan.toml")) || r.Of(filepath.Join(dir, "other.toml")) || r.Of("") {
		t.Error("the journal does not follow the file")
	}
	t.Chdir(dir)
	if !r.Of("plan.toml") {
		t.Error("a relative path is another file")
	}
	link := filepath.Join(dir, "link.toml")
	if err := os.Symlink("plan.toml", link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	if !r.Of(link) {
		t.Error("a link to the file is another file")
	}
	ended(t, state, renamed(plan, "Relative"), "plan.toml", Stamp{})
	for _, r := range recoveries(t, state, 2) {
		if !filepath.IsAbs(r.Path) {
			t.Errorf("the path %q says nothing in another folder", r.Path)
		}
	}
}

func TestJournalsAreForTheMakersEyesOnly(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "state")
	j := journalled(t, dir, mustRead(t, planText(t, "smallest.toml")), "", Stamp{})
	if !regexp.MustCompile("^bench-[0-9a-f]{16}$").MatchString(j.key) {
		t.Errorf("the key is %q", j.key)
	}
	for _, path := range []string{dir, journalFile(dir, j.key), lockFile(dir, j.key)} {
		const others = 0o077
		if info, err := os.Stat(path); err != nil || os.PathSeparator == '/' && info.Mode()&others != 0 {
			t.Errorf("%s: %v, %v", path, info.Mode(), err)
		}
	}
}
