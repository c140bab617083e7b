package live

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"golang.org/x/sys/unix"

	"pourbench/pour"
	"pourbench/pour/logbook"
	underway "pourbench/pour/logbook/live"
	"pourbench/tui/terminal"
)

// The environment that makes the test binary a live run: the logbook's folder, and the pour to take up.
const (
	childDir    = "POURBENCH_LIVE_TEST_DIR"
	childResume = "POURBENCH_LIVE_TEST_RESUME"
)

// TestMain makes the test binary a live run on its terminal when it is started again with the folder of a logbook.
func TestMain(m *testing.M) {
	if dir := os.Getenv(childDir); dir != "" {
		os.Exit(child(dir))
	}
	os.Exit(m.Run())
}

func child(dir string) int {
	t := &testing.T{}
	plan, shelf := meadow(t)
	book, err := logbook.OpenBook(dir)
	if err == nil {
		err = Open(Options{Book: book, Sheet: pour.Work(plan, shelf, pour.Hand{}), Resume: os.Getenv(childResume), Shelf: shelf, Background: "dark"})
	}
	if ended := new(terminal.EndedError); errors.As(err, ended) {
		return ended.Exit()
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}

// screenful is a program on a pseudo-terminal.
type screenful struct {
	testing.TB
	cmd    *exec.Cmd
	master *os.File
	mu     sync.Mutex
	out    bytes.Buffer
	ended  chan error
	cooked unix.Termios // the terminal before the run
}

// start starts the live run of a folder on a pseudo-terminal of 120×36.
func start(t testing.TB, dir, resume string) *screenful {
	t.Helper()
	return startAt(t, dir, resume, 120, 36)
}

// startAt starts it on a pseudo-terminal of another size.
func startAt(t testing.TB, dir, resume string, w, h uint16) *screenful {
	t.Helper()
	master, slave := pseudoTerminal(t)
	must(t, unix.IoctlSetWinsize(int(master.Fd()), unix.TIOCSWINSZ, &unix.Winsize{Row: h, Col: w}))
	s := &screenful{TB: t, master: master, cmd: exec.Command(os.Args[0]), ended: make(chan error, 1)}
	s.cmd.Env = append(os.Environ(), childDir+"="+dir, childResume+"="+resume, "TERM=xterm-256color", "NO_COLOR=")
	s.cmd.Stdin, s.cmd.Stdout, s.cmd.Stderr = slave, slave, slave
	s.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	s.cooked = s.modes()
	must(t, s.cmd.Start())
	must(t, slave.Close())
	go s.read()
	go func() { s.ended <- s.cmd.Wait() }()
	t.Cleanup(func() { _ = s.cmd.Process.Kill(); _ = master.Close() })
	return s
}

func pseudoTerminal(t testing.TB) (master, slave *os.File) {
	t.Helper()
	master, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skipf("this machine has no pseudo-terminals: %v", err)
	}
	fd := int(master.Fd())
	must(t, unix.IoctlSetPointerInt(fd, unix.TIOCSPTLCK, 0))
	n, err := unix.IoctlGetInt(fd, unix.TIOCGPTN)
	must(t, err)
	slave, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDWR|syscall.O_NOCTTY, 0)
	must(t, err)
	return master, slave
}

func (s *screenful) read() {
	chunk := make([]byte, 4096)
	for {
		n, err := s.master.Read(chunk)
		s.mu.Lock()
		s.out.Write(chunk[:n])
		s.mu.Unlock()
		if err != nil {
			return
		}
	}
}

func (s *screenful) raw() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.out.String()
}

// until waits until something is so.
func (s *screenful) until(what string, so func() bool) {
	s.Helper()
	for end := time.Now().Add(20 * time.Second); !so(); time.Sleep(10 * time.Millisecond) {
		if time.Now().After(end) {
			s.Fatalf("%s did not come; the terminal got\n%q", what, s.raw())
		}
	}
}

func (s *screenful) shows(words string) {
	s.Helper()
	s.until(words, func() bool { return strings.Contains(ansi.Strip(s.raw()), words) })
}

func (s *screenful) press(keys string) {
	s.Helper()
	_, err := s.master.WriteString(keys)
	must(s, err)
}

func TestAKilledTerminalResumesTheRunWhereItWas(t *testing.T) {
	dir := t.TempDir()
	s := start(t, dir, "")
	s.shows("step 1 of 28")
	book, err := logbook.OpenBook(dir)
	must(t, err)
	id := ""
	journaled := func(words string, n int) {
		t.Helper()
		s.until(words, func() bool {
			src, err := os.ReadFile(book.Path(id))
			return err == nil && strings.Count(string(src), words) == n
		})
	}
	for step := range 5 { // both lyes made and cooled, lye in oil
		s.press(" ")
		s.until("the file", func() bool {
			list, err := book.List()
			if err == nil && len(list) == 1 {
				id = list[0].ID
			}
			return id != ""
		})
		journaled(`kind = "done"`, step+1)
		time.Sleep(quiet + 50*time.Millisecond)
	}
	s.press("2l")
	journaled(`kind = "seen"`, 1)
	must(t, s.cmd.Process.Kill()) // kill -9
	if err := <-s.ended; err == nil {
		t.Error("a killed run ended well")
	}

	again := start(t, dir, id)
	again.shows("step 6 of 28")
	again.shows("light, ")
	again.press(" ")
	s = again
	journaled(`kind = "done"`, 6)
	journaled(`kind = "resumed"`, 1)
	again.press("qq")
	again.shows("Take it up again with: pourbench run --resume " + id)
	if err := <-again.ended; err != nil {
		t.Errorf("the run was left with %v", err)
	}
	if raw := again.raw(); !strings.Contains(raw, ansi.ResetModeAltScreenSaveCursor) {
		t.Error("the alternate screen was not given back")
	}
	checkResumed(t, book, id)
}

// checkResumed looks at what the file tells of a run that was killed.
func checkResumed(t *testing.T, book logbook.Book, id string) {
	t.Helper()
	plan, shelf := meadow(t)
	p, err := book.Read(id, shelf)
	must(t, err)
	state := underway.Replay(pour.Weigh(plan, shelf), p.Events)
	var done int
	var last time.Duration
	for _, step := range state.Steps {
		if step.Done {
			done++
			last = max(last, step.DoneAt)
		}
	}
	first, end := p.Events[0], p.Events[len(p.Events)-1]
	if done != 6 || len(state.Sightings) != 1 {
		t.Errorf("%d steps and %d sightings are in the file", done, len(state.Sightings))
	}
	if drift := end.Run - end.Wall.Sub(first.Wall); drift.Abs() > 100*time.Millisecond {
		t.Errorf("the run went on for %v while the wall clock went on by %v", end.Run, end.Wall.Sub(first.Wall))
	}
}

func TestATerminalThatSaysItIsVastIsDrawnInPart(t *testing.T) {
	s := startAt(t, t.TempDir(), "", 5000, 5000)
	s.shows("of 28")
	s.press("qq")
	s.shows("no lye met oil; no pour is kept")
	if err := <-s.ended; err != nil {
		t.Errorf("the run was left with %v", err)
	}
	usage, ok := s.cmd.ProcessState.SysUsage().(*syscall.Rusage)
	const most = 600 << 10 // KiB; cells set aside for the whole of it would take gigabytes
	if !ok || usage.Maxrss > most {
		t.Errorf("the run took %d KiB", usage.Maxrss)
	}
}
