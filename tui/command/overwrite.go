package command

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
)

// headBytes is how much of a file is looked at to tell its kind.
const headBytes = 16

// overwrites refuses to write what was drawn over a file that is none of its kind: one that begins with none of the words given, such as a
// plan of a name typed in the wrong place. A file that is empty or not there is written, and so is what is no plain file, as a pipe.
func overwrites(file, what string, begins ...string) error {
	info, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist) || err == nil && (!info.Mode().IsRegular() || info.Size() == 0):
		return nil
	case err != nil:
		return fmt.Errorf("write the %s to %s: %w", what, file, err)
	}
	f, err := os.Open(file)
	if err != nil {
		return fmt.Errorf("write the %s to %s: %w", what, file, err)
	}
	defer f.Close() //nolint:errcheck // it was only read
	head := make([]byte, headBytes)
	n, _ := io.ReadFull(f, head)
	for _, b := range begins {
		if strings.HasPrefix(string(head[:n]), b) {
			return nil
		}
	}
	return fmt.Errorf("write the %s to %s: that file is there and is no %s; give another name, or remove it first", what, file, what)
}

// pngHead is what a PNG begins with (PNG specification, section 5.2).
func pngHead() string { return string([]byte{0x89, 'P', 'N', 'G'}) }
