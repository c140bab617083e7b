package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// ErrNotPlain is the reason when a name leads to a folder, a pipe or a device where a plain file is wanted.
var ErrNotPlain = errors.New("this is no plain file")

// mostLinks bounds a chain of symbolic links, as the systems themselves do.
const mostLinks = 40

// Follow resolves the symbolic links of a name, also those that lead to a file that is not there yet. The folder must be there.
// A name that ends like a folder's is refused with [ErrNotPlain].
func Follow(path string) (string, error) {
	if path == "" || os.IsPathSeparator(path[len(path)-1]) {
		return "", fmt.Errorf("%w but a folder; add the name of a file", ErrNotPlain)
	}
	return follow(path, mostLinks)
}

func follow(path string, links int) (string, error) {
	file, err := filepath.EvalSymlinks(path)
	if !errors.Is(err, fs.ErrNotExist) {
		return file, err
	}
	target, err := os.Readlink(path)
	if err != nil { // no link: a new file, in a folder that must be there
		folder, err := filepath.EvalSymlinks(filepath.Dir(path))
		return filepath.Join(folder, filepath.Base(path)), err
	}
	if links == 0 {
		return "", fmt.Errorf("%s: too many links", path)
	}
	if !filepath.IsAbs(target) {
		target = filepath.Join(filepath.Dir(path), target)
	}
	return follow(target, links-1)
}

// Plain refuses with [ErrNotPlain] what is no plain file, and says what it is.
func Plain(info fs.FileInfo) error {
	what := "something of the system's"
	switch mode := info.Mode(); {
	case mode.IsRegular():
		return nil
	case mode.IsDir():
		what = "a folder"
	case mode&fs.ModeNamedPipe != 0:
		what = "a pipe"
	case mode&fs.ModeSocket != 0:
		what = "a socket"
	case mode&fs.ModeDevice != 0:
		what = "a device"
	}
	return fmt.Errorf("%w but %s", ErrNotPlain, what)
}

// Read opens a plain file for reading. A pipe is refused before it is opened, since opening one may wait for ever.
func Read(path string) (*os.File, fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, nil, err
	}
	if err := Plain(info); err != nil {
		return nil, nil, err
	}
	f, err := os.Open(path)
	return f, info, err
}

// Given opens for reading what a maker has named: a plain file, or a pipe that the shell has opened for this process already, as
// /dev/stdin and "<(COMMAND)" are. The other end of such a pipe is there, so that reading waits no longer than the command that writes.
// The information is nil for a pipe.
func Given(path string) (*os.File, fs.FileInfo, error) {
	f, info, err := Read(path)
	if errors.Is(err, ErrNotPlain) && isHanded(path) {
		f, err = os.Open(path)
		return f, nil, err
	}
	return f, info, err
}

func isHanded(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode()&fs.ModeNamedPipe != 0 && (path == "/dev/stdin" || strings.HasPrefix(path, "/dev/fd/") || strings.HasPrefix(path, "/proc/self/fd/"))
}
