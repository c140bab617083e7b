package disk

import "golang.org/x/sys/unix"

// move renames without replacing.
func move(from, to string) error { return unix.RenamexNp(from, to, unix.RENAME_EXCL) }
