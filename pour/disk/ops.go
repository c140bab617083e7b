package disk

import (
	"errors"
	"io/fs"
	"os"
)

// ErrLocked is the reason when something else holds a file.
var ErrLocked = errors.New("something else has the file locked")

// Ops are the operations that change the disk. [OS] gives those of the system; a test gives its own. None may be nil.
type Ops struct {
	Create     func(path string, mode fs.FileMode) (*os.File, error) // a file that was not there, for writing; the umask takes its part of the mode
	Open       func(path string) (*os.File, error)                   // a file that is there, for reading and for writing at its end
	TryLock    func(f *os.File) error                                // [ErrLocked] when another has it; the lock goes when the file is closed or the process dies
	Write      func(f *os.File, p []byte) (int, error)
	Truncate   func(f *os.File, size int64) error
	Chmod      func(f *os.File, mode fs.FileMode) error
	Sync       func(f *os.File) error // returns when what was written is on the disk
	Close      func(f *os.File) error
	Rename     func(from, to string) error // replaces what is there
	Move       func(from, to string) error // replaces nothing: [fs.ErrExist]; where the file system cannot promise that, any other error
	Link       func(from, to string) error // a second name, which replaces nothing either
	Remove     func(path string) error
	SyncFolder func(path string) // makes names last through a power cut, where the system can
}

// OS is the operating system's own operations.
func OS() Ops {
	return Ops{
		Create: func(path string, mode fs.FileMode) (*os.File, error) {
			return os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, mode)
		},
		Open:       func(path string) (*os.File, error) { return os.OpenFile(path, os.O_RDWR|os.O_APPEND, 0) },
		TryLock:    tryLock,
		Write:      (*os.File).Write,
		Truncate:   (*os.File).Truncate,
		Chmod:      (*os.File).Chmod,
		Sync:       (*os.File).Sync,
		Close:      (*os.File).Close,
		Rename:     os.Rename,
		Move:       move,
		Link:       os.Link,
		Remove:     os.Remove,
		SyncFolder: syncFolder,
	}
}

// syncFolder says nothing of a failure: the name is there all the same, and some systems cannot open a folder.
func syncFolder(path string) {
	if folder, err := os.Open(path); err == nil {
		_ = folder.Sync()
		_ = folder.Close()
	}
}

// Reason is why an operation failed, without the name of the file, which may be one that nobody chose.
func Reason(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	var call *os.SyscallError
	switch {
	case errors.As(err, &path):
		return Reason(path.Err)
	case errors.As(err, &link):
		return Reason(link.Err)
	case errors.As(err, &call):
		return Reason(call.Err)
	}
	return err
}
