//go:build unix

package planfile

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"golang.org/x/sys/unix"

	"pourbench/pour/disk"
)

func TestAPipeOrADeviceAsAPlanIsRefusedAtOnce(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe.toml")
	if err := unix.Mkfifo(pipe, 0o600); err != nil {
		t.Skip("no pipes here:", err)
	}
	plan := mustRead(t, planText(t, "smallest.toml"))
	for _, path := range []string{pipe, os.DevNull, "/dev/tty", t.TempDir()} {
		if _, err := os.Stat(path); err != nil {
			continue
		}
		if _, err := Load(path, shelf(t)); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("load %s: %v", path, err)
		}
		if _, err := Save(path, plan, SaveOptions{Force: true}); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("save %s: %v", path, err)
		}
		if _, err := Changed(path, Stamp{}); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("look at %s: %v", path, err)
		}
	}
}

func TestAPipeThatTheShellHasOpenedIsReadAndHasNoFile(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close() //nolint:errcheck // only read
	name := filepath.Join("/dev/fd", strconv.Itoa(int(r.Fd())))
	if _, err := os.Stat(name); err != nil {
		t.Skip("no names for open files here:", err)
	}
	go func() {
		_, _ = w.WriteString(planText(t, "smallest.toml"))
		_ = w.Close()
	}()
	d, err := Load(name, shelf(t))
	if err != nil || d.Plan.Name == "" || d.Path != "" || !d.Stamp.Zero() {
		t.Errorf("got %q of %q, %v", d.Plan.Name, d.Path, err)
	}
}

func TestTheNameOfAFolderIsNoNameOfAPlan(t *testing.T) {
	dir := t.TempDir()
	plan := mustRead(t, planText(t, "smallest.toml"))
	for _, path := range []string{dir + "/", dir + "/new/", dir} {
		if _, err := Save(path, plan, SaveOptions{}); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("%s: %v", path, err)
		}
	}
	alone(t, dir)
}
