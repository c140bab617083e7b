//go:build unix

package logbook

import (
	"os"

	"golang.org/x/sys/unix"
)

// lock waits until no other process holds the file. The system lets go of it when the file is closed or the process dies.
func lock(f *os.File) error {
	for {
		err := unix.Flock(int(f.Fd()), unix.LOCK_EX)
		if err != unix.EINTR { //nolint:errorlint // a bare errno
			return err
		}
	}
}
