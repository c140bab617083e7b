// Package disktest lets a test see the order of what is done to the disk, and make any part of it fail.
package disktest

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pourbench/pour/disk"
)

// Spy writes down every operation as "verb name", the last parts of its paths only and TEMP for a temporary file.
// It is not safe for several goroutines.
type Spy struct {
	Done []string
	Fail func(n int, step string) error // asked before operation n, from 0; an error makes it fail; nil: none does

	Failed string // the last operation that was made to fail
}

// Ops is the system's operations, watched. A write that fails writes half; a close that fails closes.
func (s *Spy) Ops() disk.Ops {
	sys := disk.OS()
	return disk.Ops{
		Create: func(path string, mode fs.FileMode) (*os.File, error) {
			return opened(s, "create", path, func() (*os.File, error) { return sys.Create(path, mode) })
		},
		Open: func(path string) (*os.File, error) {
			return opened(s, "open", path, func() (*os.File, error) { return sys.Open(path) })
		},
		TryLock: func(f *os.File) error { return s.do(func() error { return sys.TryLock(f) }, "lock", f.Name()) },
		Write: func(f *os.File, p []byte) (int, error) {
			if err := s.step("write", f.Name()); err != nil {
				n, _ := sys.Write(f, p[:len(p)/2])
				return n, err
			}
			return sys.Write(f, p)
		},
		Truncate: func(f *os.File, size int64) error {
			return s.do(func() error { return sys.Truncate(f, size) }, "truncate", f.Name())
		},
		Chmod: func(f *os.File, mode fs.FileMode) error {
			return s.do(func() error { return sys.Chmod(f, mode) }, "chmod", f.Name())
		},
		Sync: func(f *os.File) error { return s.do(func() error { return sys.Sync(f) }, "sync", f.Name()) },
		Close: func(f *os.File) error {
			err := s.step("close", f.Name())
			if closed := sys.Close(f); err == nil {
				err = closed
			}
			return err
		},
		Rename: func(from, to string) error {
			return s.do(func() error { return sys.Rename(from, to) }, "rename", from, to)
		},
		Move:       func(from, to string) error { return s.do(func() error { return sys.Move(from, to) }, "move", from, to) },
		Link:       func(from, to string) error { return s.do(func() error { return sys.Link(from, to) }, "link", from, to) },
		Remove:     func(path string) error { return s.do(func() error { return sys.Remove(path) }, "remove", path) },
		SyncFolder: func(path string) { _ = s.do(func() error { sys.SyncFolder(path); return nil }, "sync folder") },
	}
}

// step writes an operation down and says whether it is to fail.
func (s *Spy) step(verb string, paths ...string) error {
	words := []string{verb}
	for _, p := range paths {
		name := filepath.Base(p)
		if strings.HasPrefix(name, ".pourbench-") {
			name = "TEMP"
		}
		words = append(words, name)
	}
	step := strings.Join(words, " ")
	s.Done = append(s.Done, step)
	if s.Fail == nil {
		return nil
	}
	err := s.Fail(len(s.Done)-1, step)
	if err != nil {
		s.Failed = step
	}
	return err
}

func (s *Spy) do(op func() error, verb string, paths ...string) error {
	if err := s.step(verb, paths...); err != nil {
		return err
	}
	return op()
}

func opened(s *Spy, verb, path string, open func() (*os.File, error)) (*os.File, error) {
	if err := s.step(verb, path); err != nil {
		return nil, err
	}
	return open()
}
