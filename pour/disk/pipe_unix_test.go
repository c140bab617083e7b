//go:build unix

package disk_test

import (
	"errors"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"

	"pourbench/pour/disk"
)

func TestAPipeOrADeviceIsRefusedAtOnce(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe")
	if err := unix.Mkfifo(pipe, 0o600); err != nil {
		t.Skip("no pipes here:", err)
	}
	for _, path := range []string{pipe, "/dev/null"} {
		if err := save(disk.OS(), path, "x", disk.Want{Mode: disk.Shared}); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("save to %s: %v", path, err)
		}
		if _, _, err := disk.OS().Append(path, 0, addLine("x")); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("append to %s: %v", path, err)
		}
		if _, _, err := disk.Read(path); !errors.Is(err, disk.ErrNotPlain) {
			t.Errorf("read %s: %v", path, err)
		}
	}
	folderHolds(t, dir, "pipe")
}
