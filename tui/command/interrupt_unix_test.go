//go:build unix

package command_test

import (
	"os"
	"strings"
	"testing"

	"golang.org/x/sys/unix"
)

// nervous presses Ctrl+C as soon as it is told anything.
type nervous struct{ heard strings.Builder }

func (n *nervous) Write(p []byte) (int, error) {
	if n.heard.Len() == 0 {
		_ = unix.Kill(os.Getpid(), unix.SIGINT)
	}
	return n.heard.Write(p)
}

func TestCtrlCStopsALongPictureAndLeavesNothing(t *testing.T) {
	for _, view := range []string{"bar", "bars", "loaf", "top"} {
		m, n := newMaker(t), &nervous{}
		m.errs = n
		m.writes("\x89PNG old", "out", "bar.png")
		code, out, _ := m.types("picture", "-o", m.path("out", "bar.png"), "--width", "5000", "--view", view)
		if code != 130 || out != "" {
			t.Errorf("%s: exit %d, %q", view, code, out)
		}
		if heard := n.heard.String(); !strings.HasPrefix(heard, "drawing "+view+", 5000 pixels wide: ") || strings.Contains(heard, "pourbench:") {
			t.Errorf("%s: it said %q", view, heard)
		}
		m.holds(m.path("out"), "bar.png")
		if old, err := os.ReadFile(m.path("out", "bar.png")); err != nil || string(old) != "\x89PNG old" {
			t.Errorf("the old picture is %q, %v", old, err)
		}
	}
}

func TestAPictureIsNotPouredIntoAPipeOrADevice(t *testing.T) {
	m := newMaker(t)
	if err := unix.Mkfifo(m.path("pipe"), 0o600); err != nil {
		t.Skip("no pipes here:", err)
	}
	for want, file := range map[string]string{"no plain file but a pipe": m.path("pipe"), "no plain file but a device": "/dev/null"} {
		if code, _, errs := m.types("picture", "-o", file, "--width", "64"); code != 2 || !strings.Contains(errs, want) {
			t.Errorf("%s: exit %d, %q", file, code, errs)
		}
	}
	m.holds(m.home, "pipe")
}

func TestANewPictureFollowsTheUmask(t *testing.T) {
	m := newMaker(t)
	before := unix.Umask(0o027)
	defer unix.Umask(before)
	if code, _, errs := m.types("picture", "-o", m.path("bar.png"), "--width", "64"); code != 0 {
		t.Fatal(errs)
	}
	if info, err := os.Stat(m.path("bar.png")); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("%v, %v", info, err)
	}
}
