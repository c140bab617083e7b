package logbook

import (
	"os"

	"golang.org/x/sys/windows"
)

// lock waits until no other process holds the file. It locks one byte far behind the end, so that readers are not kept out. The
// system lets go of it when the file is closed or the process dies.
func lock(f *os.File) error {
	far := windows.Overlapped{OffsetHigh: 1 << 30}
	return windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK, 0, 1, 0, &far)
}
