package disk

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// tryLock locks one byte far behind the end, so that readers are not kept out.
func tryLock(f *os.File) error {
	const how = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	far := windows.Overlapped{OffsetHigh: 1 << 30}
	err := windows.LockFileEx(windows.Handle(f.Fd()), how, 0, 1, 0, &far)
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) || errors.Is(err, windows.ERROR_IO_PENDING) {
		return ErrLocked
	}
	return err
}
