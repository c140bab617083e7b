package live

import (
	"os"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/google/go-cmp/cmp"
	"golang.org/x/sys/unix"

	"pourbench/pour/disk"
	"pourbench/pour/logbook"
)

// modes are the terminal's own settings: echo, lines, signals.
func (s *screenful) modes() unix.Termios {
	s.Helper()
	t, err := unix.IoctlGetTermios(int(s.master.Fd()), unix.TCGETS)
	must(s, err)
	return *t
}

func TestARunThatIsEndedFromOutsideGivesTheTerminalBack(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT} {
		s := start(t, t.TempDir(), "")
		before := s.cooked
		s.shows("step 1 of 28")
		s.press(" ")
		s.shows("done: make the lye")
		if cmp.Equal(before, s.modes()) {
			t.Fatal("the run did not take the terminal over")
		}
		must(t, s.cmd.Process.Signal(sig))
		select {
		case <-s.ended: //nolint:errcheck // how it ended is its exit code
			if got := s.cmd.ProcessState.ExitCode(); sig != syscall.SIGINT && got != 128+int(sig) {
				t.Errorf("%v: exit %d", sig, got)
			}
		case <-time.After(20 * time.Second):
			t.Fatalf("%v did not end the run", sig)
		}
		if d := cmp.Diff(before, s.modes()); d != "" {
			t.Errorf("%v: the terminal is not as it was:\n%s", sig, d)
		}
		s.until("the end of the alternate screen", func() bool { return strings.Contains(s.raw(), ansi.ResetModeAltScreenSaveCursor) })
		if raw := s.raw(); strings.LastIndex(raw, ansi.SetModeTextCursorEnable) < strings.LastIndex(raw, ansi.ResetModeTextCursorEnable) {
			t.Errorf("%v: the cursor is still hidden", sig)
		}
		s.shows("Take it up again with: pourbench run --resume")
	}
}

func TestARunThatHangsUpWritesWhatItCouldNotBefore(t *testing.T) {
	dir := t.TempDir()
	s := start(t, dir, "")
	s.shows("step 1 of 28")
	s.press(" ")
	s.shows("done: make the lye")
	book, err := logbook.OpenBook(dir)
	must(t, err)
	list, err := book.List()
	must(t, err)
	path := book.Path(list[0].ID)
	backup, err := disk.OS().Open(path)
	must(t, err)
	must(t, disk.OS().TryLock(backup))
	time.Sleep(quiet)
	s.press(" ")
	s.shows("NOT WRITTEN, 1 mark")
	must(t, s.cmd.Process.Signal(syscall.SIGHUP))
	time.Sleep(1200 * time.Millisecond) // it tries, in vain
	must(t, backup.Close())
	select {
	case <-s.ended: //nolint:errcheck // how it ended is its exit code
		if got := s.cmd.ProcessState.ExitCode(); got != 128+int(syscall.SIGHUP) {
			t.Errorf("exit %d", got)
		}
	case <-time.After(20 * time.Second):
		t.Fatal("the run did not end")
	}
	src, err := os.ReadFile(path)
	must(t, err)
	if n := strings.Count(string(src), `kind = "done"`); n != 2 {
		t.Errorf("%d marks are in the file:\n%s", n, src)
	}
}
