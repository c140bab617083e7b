package disk

import "golang.org/x/sys/windows"

// move renames without replacing, and waits until the new name is on the disk.
func move(from, to string) error {
	old, err := windows.UTF16PtrFromString(from)
	if err != nil {
		return err
	}
	name, err := windows.UTF16PtrFromString(to)
	if err != nil {
		return err
	}
	return windows.MoveFileEx(old, name, windows.MOVEFILE_WRITE_THROUGH)
}
