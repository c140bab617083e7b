//go:build unix

package disk

import (
	"os"

	"golang.org/x/sys/unix"
)

func tryLock(f *os.File) error {
	for {
		switch err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB); err { //nolint:errorlint // a bare errno
		case unix.EINTR:
		case unix.EWOULDBLOCK:
			return ErrLocked
		default:
			return err
		}
	}
}
