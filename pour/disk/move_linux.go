package disk

import "golang.org/x/sys/unix"

// move renames without replacing. Network file systems and old kernels refuse to promise that.
func move(from, to string) error {
	return unix.Renameat2(unix.AT_FDCWD, from, unix.AT_FDCWD, to, unix.RENAME_NOREPLACE)
}
