package planfile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/disk/disktest"
)

// written makes a plan file in a folder of its own and loads it.
func written(t *testing.T, text string) Document {
	t.Helper()
	path := filepath.Join(t.TempDir(), "plan.toml")
	put(t, path, text)
	d, err := Load(path, shelf(t))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func content(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// alone checks that a folder holds just these files: nothing was left behind.
func alone(t *testing.T, dir string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if strings.Join(got, " ") != strings.Join(names, " ") {
		t.Errorf("the folder holds %q, want %q", got, names)
	}
}

func renamed(p pour.Plan, name string) pour.Plan {
	p.Name = name
	return p
}

func TestASavedPlanIsLoadedAgainAsItWas(t *testing.T) {
	plan := mustRead(t, planText(t, "everykey.toml"))
	path := filepath.Join(t.TempDir(), "new.toml")
	saved, err := Save(path, plan, SaveOptions{})
	if err != nil || saved.Kept != "" {
		t.Fatalf("kept %q, %v", saved.Kept, err)
	}
	d, err := Load(path, shelf(t))
	if err != nil {
		t.Fatal(err)
	}
	if diff := difference(plan, d.Plan); diff != "" || d.Stamp != saved.Stamp || d.HandComments {
		t.Errorf("%s stamp %+v, want %+v, comments %v", diff, d.Stamp, saved.Stamp, d.HandComments)
	}
	again, err := Save(path, renamed(plan, "Second"), SaveOptions{Since: saved.Stamp})
	if err != nil || again.Kept != "" {
		t.Errorf("saving twice: kept %q, %v", again.Kept, err)
	}
	alone(t, filepath.Dir(path), "new.toml")
}

func TestANewFileIsReadableToOthersAsTheUmaskAllows(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("permissions are not kept there")
	}
	dir := t.TempDir()
	put(t, filepath.Join(dir, "other"), "")
	if _, err := Save(filepath.Join(dir, "new.toml"), mustRead(t, planText(t, "smallest.toml")), SaveOptions{}); err != nil {
		t.Fatal(err)
	}
	want, _ := os.Stat(filepath.Join(dir, "other"))
	if got, _ := os.Stat(filepath.Join(dir, "new.toml")); got.Mode() != want.Mode() {
		t.Errorf("mode %v, want %v", got.Mode(), want.Mode())
	}
}

func TestSavingKeepsThePermissionsOfTheFile(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("permissions are not kept there")
	}
	d := written(t, planText(t, "meadow.toml"))
	if err := os.Chmod(d.Path, 0o640); err != nil {
		t.Fatal(err)
	}
	saved, err := Save(d.Path, d.Plan, SaveOptions{Since: d.Stamp})
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{d.Path, saved.Kept} {
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
			t.Errorf("%s: %v %v", path, info, err)
		}
	}
}

func TestAWriteProtectedFileIsLeftAloneUnlessForced(t *testing.T) {
	d := written(t, planText(t, "smallest.toml"))
	if err := os.Chmod(d.Path, 0o444); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.Chmod(d.Path, 0o644) })
	if _, err := Save(d.Path, renamed(d.Plan, "Other"), SaveOptions{Since: d.Stamp}); !errors.Is(err, fs.ErrPermission) {
		t.Errorf("got %v", err)
	}
	if content(t, d.Path) != planText(t, "smallest.toml") {
		t.Error("the file was changed")
	}
	if _, err := Save(d.Path, d.Plan, SaveOptions{Since: d.Stamp, Force: true}); err != nil {
		t.Error(err)
	}
}

func TestASymbolicLinkStaysALinkAndItsTargetIsSaved(t *testing.T) {
	dir := t.TempDir()
	target, link := filepath.Join(dir, "target.toml"), filepath.Join(dir, "sub", "link.toml")
	if err := os.Mkdir(filepath.Dir(link), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join("..", "target.toml"), link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	plan := mustRead(t, planText(t, "smallest.toml"))
	saved, err := Save(link, plan, SaveOptions{}) // the link leads to nothing yet
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Save(link, renamed(plan, "Through the link"), SaveOptions{Since: saved.Stamp}); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link became %v, %v", info.Mode(), err)
	}
	if !strings.Contains(content(t, target), "Through the link") {
		t.Error("the target was not saved")
	}
	alone(t, filepath.Dir(link), "link.toml")
}

func TestALinkThatLeadsToItselfIsAnErrorAndNotAnEndlessLoop(t *testing.T) {
	link := filepath.Join(t.TempDir(), "loop.toml")
	if err := os.Symlink("loop.toml", link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	if _, err := Save(link, pour.Plan{Name: "x"}, SaveOptions{}); err == nil {
		t.Error("was saved somewhere")
	}
}

func TestAFileChangedBySomethingElseIsNotReplacedUnlessForced(t *testing.T) {
	d := written(t, planText(t, "smallest.toml"))
	theirs := strings.Replace(planText(t, "smallest.toml"), "Smallest", "Theirs", 1)
	put(t, d.Path, theirs)
	if _, err := Save(d.Path, d.Plan, SaveOptions{Since: d.Stamp}); !errors.Is(err, ErrChanged) {
		t.Fatalf("got %v", err)
	}
	if content(t, d.Path) != theirs {
		t.Fatal("the other's work is gone")
	}
	saved, err := Save(d.Path, d.Plan, SaveOptions{Since: d.Stamp, Force: true})
	if err != nil || content(t, saved.Kept) != theirs {
		t.Errorf("the other's work is not kept: %+v, %v", saved, err)
	}
}

func TestSavingUnderAnotherNameDoesNotReplaceAFileUnlessForced(t *testing.T) {
	d := written(t, planText(t, "smallest.toml"))
	other := filepath.Join(filepath.Dir(d.Path), "other.toml")
	put(t, other, "not even a plan")
	if _, err := Save(other, d.Plan, SaveOptions{}); !errors.Is(err, ErrExists) {
		t.Fatalf("got %v", err)
	}
	if content(t, other) != "not even a plan" {
		t.Fatal("the other file is gone")
	}
	saved, err := Save(other, d.Plan, SaveOptions{Force: true})
	if err != nil || content(t, saved.Kept) != "not even a plan" {
		t.Errorf("got %+v, %v", saved, err)
	}
}

func TestAFileWithCommentsIsKeptBesideTheOneThatReplacesIt(t *testing.T) {
	text := planText(t, "meadow.toml")
	d := written(t, text)
	if !d.HandComments {
		t.Error("the comments were not noticed")
	}
	saved, err := Save(d.Path, d.Plan, SaveOptions{Since: d.Stamp})
	if err != nil || saved.Kept != saved.Path+"~" || content(t, saved.Kept) != text {
		t.Fatalf("got %+v, %v", saved, err)
	}
	if saved, err = Save(d.Path, d.Plan, SaveOptions{Since: saved.Stamp}); err != nil || saved.Kept != "" {
		t.Errorf("a file without comments was kept: %+v, %v", saved, err)
	}
	if content(t, d.Path+"~") != text {
		t.Error("the kept comments were replaced")
	}
}

func TestWhatIsKeptIsNeverReplaced(t *testing.T) {
	d := written(t, planText(t, "meadow.toml"))
	kept := []string{d.Path + "~", d.Path + "~2", d.Path + "~3"}
	since, now := d.Stamp, planText(t, "meadow.toml")
	for i, want := range kept {
		saved, err := Save(d.Path, d.Plan, SaveOptions{Since: since, Force: i > 0})
		if err != nil || saved.Kept != want || content(t, want) != now {
			t.Errorf("kept as %q, %v; want %q", saved.Kept, err, want)
		}
		now = fmt.Sprintf("theirs, %d", i)
		put(t, d.Path, now)
		since = saved.Stamp
	}
	put(t, d.Path, "theirs, 1") // is kept already
	if saved, err := Save(d.Path, d.Plan, SaveOptions{Force: true}); err != nil || saved.Kept != kept[2] {
		t.Errorf("kept as %q, %v", saved.Kept, err)
	}
	alone(t, filepath.Dir(d.Path), "plan.toml", "plan.toml~", "plan.toml~2", "plan.toml~3")
}

func TestASaveThatFailsLeavesTheOldFileAndNothingElse(t *testing.T) {
	d := written(t, planText(t, "smallest.toml"))
	broken := d.Plan
	broken.Mould.FillMM /= 0 * broken.Mould.BarMM
	if _, err := Save(d.Path, broken, SaveOptions{Since: d.Stamp}); err == nil {
		t.Error("a plan that no file can hold was saved")
	}
	dir := filepath.Dir(d.Path)
	if _, err := Save(filepath.Join(dir, strings.Repeat("x", 300)), d.Plan, SaveOptions{}); err == nil {
		t.Error("a name too long for any folder was saved to")
	}
	if _, err := Save(filepath.Join(dir, "nowhere", "plan.toml"), d.Plan, SaveOptions{}); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a folder that is not there: %v", err)
	}
	if _, err := Save(dir, d.Plan, SaveOptions{Force: true}); err == nil {
		t.Error("a folder was replaced")
	}
	if content(t, d.Path) != planText(t, "smallest.toml") {
		t.Error("the old file was changed")
	}
	alone(t, dir, "plan.toml")
}

func TestAChangeOnDiskIsToldByContentAlone(t *testing.T) {
	d := written(t, planText(t, "smallest.toml"))
	check := func(what string, s Stamp, want bool) {
		t.Helper()
		if got, err := Changed(d.Path, s); err != nil || got != want {
			t.Errorf("%s: changed = %v, %v; want %v", what, got, err, want)
		}
	}
	check("untouched", d.Stamp, false)
	if err := os.Chtimes(d.Path, time.Unix(1, 0), time.Unix(1, 0)); err != nil {
		t.Fatal(err)
	}
	check("touched", d.Stamp, false)
	put(t, d.Path, strings.Replace(planText(t, "smallest.toml"), "62", "63", 1))
	if err := os.Chtimes(d.Path, d.Stamp.ModTime, d.Stamp.ModTime); err != nil {
		t.Fatal(err)
	}
	check("edited within the same length and second", d.Stamp, true)
	check("there although it should not be", Stamp{}, true)
	if err := os.Remove(d.Path); err != nil {
		t.Fatal(err)
	}
	check("removed", d.Stamp, true)
	check("not there, as it should", Stamp{}, false)
}

func TestAPlanIsOnTheDiskBeforeItTakesTheNameAndReplacesNothingUnseen(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	plan := mustRead(t, planText(t, "smallest.toml"))
	var first, second disktest.Spy
	saved, err := save(first.Ops(), path, plan, SaveOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := save(second.Ops(), path, plan, SaveOptions{Since: saved.Stamp}); err != nil {
		t.Fatal(err)
	}
	want := []string{"create TEMP", "lock TEMP", "write TEMP", "sync TEMP", "close TEMP", "move TEMP plan.toml", "sync folder"}
	if d := cmp.Diff(want, first.Done); d != "" {
		t.Errorf("a new plan: %s", d)
	}
	want = []string{"create TEMP", "lock TEMP", "write TEMP", "chmod TEMP", "sync TEMP", "close TEMP", "rename TEMP plan.toml", "sync folder"}
	if d := cmp.Diff(want, second.Done); d != "" {
		t.Errorf("a plan saved again: %s", d)
	}
}

func TestAFullDiskLeavesTheOldPlanAndSaysWhyFirst(t *testing.T) {
	for _, step := range []string{"create TEMP", "write TEMP", "sync TEMP", "close TEMP", "rename TEMP plan.toml"} {
		d := written(t, planText(t, "meadow.toml")) // its comments are kept beside it by the first of two writes
		full := &disktest.Spy{Fail: func(_ int, s string) error {
			if s == step {
				return syscall.ENOSPC
			}
			return nil
		}}
		_, err := save(full.Ops(), d.Path, renamed(d.Plan, "New"), SaveOptions{Since: d.Stamp})
		if !errors.Is(err, syscall.ENOSPC) || !strings.HasPrefix(err.Error(), syscall.ENOSPC.Error()+": ") || !strings.Contains(err.Error(), d.Path) {
			t.Errorf("%s: %v", step, err)
		}
		if content(t, d.Path) != planText(t, "meadow.toml") {
			t.Errorf("%s: the old plan is gone", step)
		}
		_, err = save(full.Ops(), filepath.Join(filepath.Dir(d.Path), "new.toml"), d.Plan, SaveOptions{})
		if wanted := !strings.HasPrefix(step, "rename"); errors.Is(err, syscall.ENOSPC) != wanted {
			t.Errorf("%s under a new name: %v", step, err)
		}
		if err != nil {
			_, there := os.Stat(filepath.Join(filepath.Dir(d.Path), "new.toml"))
			if !errors.Is(there, fs.ErrNotExist) {
				t.Errorf("%s: there is a file under the new name", step)
			}
		}
		if left, _ := filepath.Glob(filepath.Join(filepath.Dir(d.Path), ".*")); len(left) > 0 {
			t.Errorf("%s: %q are left", step, left)
		}
	}
}

func TestAPlanSavedByAnotherBenchInTheLastMomentIsNotReplaced(t *testing.T) {
	d := written(t, planText(t, "smallest.toml"))
	theirs := strings.Replace(planText(t, "smallest.toml"), "Smallest", "Theirs", 1)
	late := &disktest.Spy{Fail: func(_ int, step string) error {
		if step == "close TEMP" {
			put(t, d.Path, theirs)
		}
		return nil
	}}
	if _, err := save(late.Ops(), d.Path, d.Plan, SaveOptions{Since: d.Stamp}); !errors.Is(err, ErrChanged) {
		t.Errorf("replaced: %v", err)
	}
	if content(t, d.Path) != theirs {
		t.Error("the other bench's plan is gone")
	}
	path := filepath.Join(filepath.Dir(d.Path), "new.toml")
	late.Fail = func(_ int, step string) error {
		if step == "close TEMP" {
			put(t, path, theirs)
		}
		return nil
	}
	if _, err := save(late.Ops(), path, d.Plan, SaveOptions{}); !errors.Is(err, ErrExists) {
		t.Errorf("a new file: %v", err)
	}
	if content(t, path) != theirs {
		t.Error("the file that turned up is gone")
	}
}
