package disk_test

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/disk"
	"pourbench/pour/disk/disktest"
)

// killedTemp is the name of a temporary file that a killed program left.
const killedTemp = ".pourbench-0123456789abcdef.tmp"

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func holds(t *testing.T, path, want string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || string(got) != want {
		t.Errorf("%s holds %q, %v; want %q", filepath.Base(path), got, err, want)
	}
}

func folderHolds(t *testing.T, dir string, want ...string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	got := []string{}
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("the folder holds %q, want %q", got, want)
	}
}

func save(o disk.Ops, path, text string, w disk.Want) error {
	return o.Save(path, disk.Bytes([]byte(text)), w)
}

func TestAReplacedFileIsOnTheDiskBeforeItTakesTheName(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.txt")
	put(t, path, "old")
	var spy disktest.Spy
	if err := save(spy.Ops(), path, "new", disk.Want{Mode: disk.Shared}); err != nil {
		t.Fatal(err)
	}
	want := []string{"create TEMP", "lock TEMP", "write TEMP", "chmod TEMP", "sync TEMP", "close TEMP", "rename TEMP a.txt", "sync folder"}
	if d := cmp.Diff(want, spy.Done); d != "" {
		t.Error(d)
	}
	holds(t, path, "new")
}

func TestANewFileIsOnTheDiskBeforeItsNameAppears(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.txt")
	var spy disktest.Spy
	if err := save(spy.Ops(), path, "new", disk.Want{Mode: disk.Shared, New: true}); err != nil {
		t.Fatal(err)
	}
	want := []string{"create TEMP", "lock TEMP", "write TEMP", "sync TEMP", "close TEMP", "move TEMP a.txt", "sync folder"}
	if d := cmp.Diff(want, spy.Done); d != "" {
		t.Error(d)
	}
}

// full is what a full disk answers.
var full error = syscall.ENOSPC

// failing saves with every single operation failing in turn, and lets a test look at what is left.
func failing(t *testing.T, w disk.Want, before func(dir string), after func(t *testing.T, dir string, spy *disktest.Spy, err error)) {
	t.Helper()
	const most = 12 // more operations than a save needs
	for n := range most {
		dir := t.TempDir()
		before(dir)
		spy := &disktest.Spy{Fail: func(i int, _ string) error {
			if i == n {
				return &fs.PathError{Op: "do", Path: killedTemp, Err: full}
			}
			return nil
		}}
		err := save(spy.Ops(), filepath.Join(dir, "a.txt"), "new", w)
		after(t, dir, spy, err)
	}
}

func TestADiskThatIsFullAnywhereLeavesTheOldFileAndNothingElse(t *testing.T) {
	failed := 0
	failing(t, disk.Want{Mode: disk.Shared},
		func(dir string) { put(t, filepath.Join(dir, "a.txt"), "old") },
		func(t *testing.T, dir string, spy *disktest.Spy, err error) {
			t.Helper()
			want := "new"
			if err != nil {
				failed++
				want = "old"
				if !errors.Is(err, syscall.ENOSPC) || strings.Contains(err.Error(), ".pourbench-") {
					t.Errorf("the reason is lost, or a name that nobody chose is told: %v", err)
				}
			}
			holds(t, filepath.Join(dir, "a.txt"), want)
			folderHolds(t, dir, "a.txt")
			if err == nil && spy.Failed != "" && spy.Failed != "lock TEMP" && spy.Failed != "sync folder" {
				t.Errorf("%q failed and nobody said so", spy.Failed)
			}
		})
	if failed != 6 { // create, write, chmod, sync, close, rename
		t.Errorf("%d operations can fail, want 6", failed)
	}
}

func TestADiskThatIsFullAnywhereLeavesNothingUnderANewName(t *testing.T) {
	failed := 0
	failing(t, disk.Want{Mode: disk.Shared, New: true}, func(string) {},
		func(t *testing.T, dir string, _ *disktest.Spy, err error) {
			t.Helper()
			if err != nil {
				failed++
				folderHolds(t, dir)
				return
			}
			holds(t, filepath.Join(dir, "a.txt"), "new")
			folderHolds(t, dir, "a.txt")
		})
	if failed != 4 { // create, write, sync, close; a move that fails is made another way
		t.Errorf("%d operations can fail, want 4", failed)
	}
}

// without is a file system that lacks some operations.
func without(verbs ...string) *disktest.Spy {
	return &disktest.Spy{Fail: func(_ int, step string) error {
		for _, v := range verbs {
			if strings.HasPrefix(step, v) {
				return syscall.EPERM
			}
		}
		return nil
	}}
}

func TestANewNameIsTakenWholeOnEveryFileSystem(t *testing.T) {
	for name, spy := range map[string]*disktest.Spy{
		"one that moves": without(), "one that links only": without("move"), "one that does neither": without("move", "link"), "one without locks": without("lock"),
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "a.txt")
			if err := save(spy.Ops(), path, "new", disk.Want{Mode: disk.Shared, New: true}); err != nil {
				t.Fatal(err)
			}
			holds(t, path, "new")
			folderHolds(t, dir, "a.txt")
		})
	}
}

func TestAFileThatTurnsUpMeanwhileIsNeverReplacedByANewOne(t *testing.T) {
	for name, spy := range map[string]*disktest.Spy{
		"one that moves": without(), "one that links only": without("move"), "one that does neither": without("move", "link"),
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "a.txt")
			turnUp := func(w io.Writer) error {
				put(t, path, "theirs")
				_, err := io.WriteString(w, "mine")
				return err
			}
			if err := spy.Ops().Save(path, turnUp, disk.Want{Mode: disk.Shared, New: true}); !errors.Is(err, fs.ErrExist) {
				t.Errorf("got %v", err)
			}
			holds(t, path, "theirs")
			folderHolds(t, dir, "a.txt")
		})
	}
}

func TestAWriterThatFailsOrIsToldToStopLeavesTheOldFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.txt")
	put(t, path, "old")
	stop := errors.New("stop")
	err := disk.OS().Save(path, func(w io.Writer) error { _, _ = io.WriteString(w, "half"); return stop }, disk.Want{Mode: disk.Shared})
	if !errors.Is(err, stop) {
		t.Errorf("got %v", err)
	}
	if err := save(disk.OS(), path, "new", disk.Want{Mode: disk.Shared, Still: func() error { return stop }}); !errors.Is(err, stop) {
		t.Errorf("got %v", err)
	}
	holds(t, path, "old")
	folderHolds(t, dir, "a.txt")
}

func TestWhatAKilledWriterLeftIsSweptAndNothingElse(t *testing.T) {
	dir := t.TempDir()
	others := []string{".pourbench-0123456789abcdeg.tmp", ".pourbench-.tmp", ".pourbench-0123456789abcdef.tmp~", "x.pourbench-0123456789abcdef.tmp"}
	for _, name := range append(others, killedTemp) {
		put(t, filepath.Join(dir, name), "half")
	}
	if err := os.Mkdir(filepath.Join(dir, ".pourbench-00000000000000aa.tmp"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := save(disk.OS(), filepath.Join(dir, "a.txt"), "new", disk.Want{Mode: disk.Shared}); err != nil {
		t.Fatal(err)
	}
	folderHolds(t, dir, ".pourbench-.tmp", ".pourbench-00000000000000aa.tmp", ".pourbench-0123456789abcdef.tmp~", ".pourbench-0123456789abcdeg.tmp", "a.txt", "x.pourbench-0123456789abcdef.tmp")
}

func TestALivingWritersFileIsNotSwept(t *testing.T) {
	dir := t.TempDir()
	slow, other := filepath.Join(dir, "slow.txt"), filepath.Join(dir, "other.txt")
	err := disk.OS().Save(slow, func(w io.Writer) error {
		if err := save(disk.OS(), other, "quick", disk.Want{Mode: disk.Shared}); err != nil {
			return err
		}
		_, err := io.WriteString(w, "slow")
		return err
	}, disk.Want{Mode: disk.Shared})
	if err != nil {
		t.Fatal(err)
	}
	holds(t, slow, "slow")
	holds(t, other, "quick")
	folderHolds(t, dir, "other.txt", "slow.txt")
}

func TestAFileSweptInTheLastMomentIsWrittenOnceMore(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.txt")
	times := 0
	sweep := func() error { // the lock is gone already, the name not yet taken
		if times++; times == 1 {
			return save(disk.OS(), filepath.Join(dir, "b.txt"), "b", disk.Want{Mode: disk.Shared})
		}
		return nil
	}
	if err := save(disk.OS(), path, "a", disk.Want{Mode: disk.Shared, Still: sweep}); err != nil {
		t.Fatal(err)
	}
	if times != 2 {
		t.Errorf("written %d times, want 2", times)
	}
	holds(t, path, "a")
	folderHolds(t, dir, "a.txt", "b.txt")
}

func TestModesAreKeptOrFollowTheUmask(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("permissions are not kept there")
	}
	dir := t.TempDir()
	plain, err := os.OpenFile(filepath.Join(dir, "plain"), os.O_CREATE|os.O_WRONLY, 0o666)
	if err != nil {
		t.Fatal(err)
	}
	defer plain.Close() //nolint:errcheck // nothing was written
	like, err := plain.Stat()
	if err != nil {
		t.Fatal(err)
	}
	mode := func(name string, want fs.FileMode) {
		t.Helper()
		info, err := os.Stat(filepath.Join(dir, name))
		if err != nil || info.Mode().Perm() != want {
			t.Errorf("%s: %v, %v; want %v", name, info.Mode(), err, want)
		}
	}
	path := filepath.Join(dir, "a.txt")
	if err := save(disk.OS(), path, "a", disk.Want{Mode: disk.Shared}); err != nil {
		t.Fatal(err)
	}
	mode("a.txt", like.Mode().Perm())
	for _, want := range []fs.FileMode{0o600, 0o777, 0o446} {
		if err := os.Chmod(path, want); err != nil {
			t.Fatal(err)
		}
		if err := save(disk.OS(), path, "b", disk.Want{Mode: disk.Shared}); err != nil {
			t.Fatal(err)
		}
		mode("a.txt", want)
	}
	if err := save(disk.OS(), filepath.Join(dir, "mine"), "c", disk.Want{Mode: disk.Private}); err != nil {
		t.Fatal(err)
	}
	mode("mine", 0o600)
	for _, want := range []fs.FileMode{0o666, 0o604} { // made, then replaced
		if err := save(disk.OS(), filepath.Join(dir, "exact"), "d", disk.Want{Mode: want, Exactly: true}); err != nil {
			t.Fatal(err)
		}
		mode("exact", want)
	}
}

func TestASymbolicLinkStaysOneAndWhatItLeadsToIsWritten(t *testing.T) {
	dir := t.TempDir()
	sub := filepath.Join(dir, "sub")
	if err := os.Mkdir(sub, 0o755); err != nil {
		t.Fatal(err)
	}
	link, chain := filepath.Join(sub, "link"), filepath.Join(sub, "chain")
	if err := errors.Join(os.Symlink(filepath.Join("..", "a.txt"), link), os.Symlink("link", chain)); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	for _, text := range []string{"first, where nothing is yet", "second"} {
		if err := save(disk.OS(), chain, text, disk.Want{Mode: disk.Shared}); err != nil {
			t.Fatal(err)
		}
		holds(t, filepath.Join(dir, "a.txt"), text)
	}
	folderHolds(t, sub, "chain", "link")
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link became %v, %v", info.Mode(), err)
	}
	if err := os.Symlink("loop", filepath.Join(dir, "loop")); err != nil {
		t.Fatal(err)
	}
	if err := save(disk.OS(), filepath.Join(dir, "loop"), "x", disk.Want{Mode: disk.Shared}); err == nil {
		t.Error("a link that leads to itself was written to")
	}
}

func TestWhatIsNoPlainFileIsRefused(t *testing.T) {
	dir := t.TempDir()
	for _, path := range []string{dir, dir + string(filepath.Separator), filepath.Join(dir, "new") + "/", ""} {
		if err := save(disk.OS(), path, "x", disk.Want{Mode: disk.Shared}); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("%q: %v", path, err)
		}
	}
	if err := save(disk.OS(), filepath.Join(dir, "no", "where"), "x", disk.Want{Mode: disk.Shared}); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a folder that is not there: %v", err)
	}
	folderHolds(t, dir)
}

func TestTheReasonStandsWithoutTheNamesThatWereInvolved(t *testing.T) {
	err := errors.Join(&fs.PathError{Op: "write", Path: "x", Err: os.NewSyscallError("write", syscall.ENOSPC)})
	if got := disk.Reason(err); !errors.Is(got, syscall.ENOSPC) || got.Error() != syscall.ENOSPC.Error() {
		t.Errorf("got %v", got)
	}
	if got := disk.Reason(&os.LinkError{Op: "rename", Old: "a", New: "b", Err: syscall.EXDEV}); got.Error() != syscall.EXDEV.Error() {
		t.Errorf("got %v", got)
	}
	if own := errors.New("own"); disk.Reason(own) != own { //nolint:errorlint // the very same
		t.Error("another error was changed")
	}
}
