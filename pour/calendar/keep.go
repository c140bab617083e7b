package calendar

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"pourbench/pour/disk"
)

// lockSuffix is added to the register's name while somebody is at it.
const lockSuffix = ".lock"

// HandOut revises what is due by the register in a file, keeps the register of what is handed out now and returns it, to be written with
// [Write]; see [Register.Revise]. The register is on the disk first: a calendar that is not written after all is handed out with the same
// numbers the next time, while a number once in her calendar is never given to another date.
//
// While another export is at the register it tries again for as long as wait, then gives up with [disk.ErrLocked]. A register that cannot be read is
// left as it is and nothing is handed out.
func HandOut(d disk.Ops, file string, wait time.Duration, due []Entry, within func(batch string) bool, at time.Time) ([]Entry, error) {
	if err := sound(due); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return nil, fmt.Errorf("keep what the calendar was told: %w", err)
	}
	held, err := d.HoldFor(file+lockSuffix, wait)
	if errors.Is(err, disk.ErrLocked) {
		return nil, fmt.Errorf("keep what the calendar was told in %s: another export is at it (%w); try again", file, err)
	}
	if err != nil {
		return nil, fmt.Errorf("keep what the calendar was told in %s: %w", file, disk.Reason(err))
	}
	defer held.Release() //nolint:errcheck // a file that stays is taken over by the next
	old, err := ReadRegister(file)
	if err != nil {
		return nil, err
	}
	out, next := old.Revise(due, within, at)
	if next.text() == old.text() {
		return out, nil
	}
	if err := d.Save(file, disk.Bytes([]byte(next.text())), disk.Want{Mode: disk.Private}); err != nil {
		return nil, fmt.Errorf("keep what the calendar was told in %s: %w", file, err)
	}
	return out, nil
}

// ReadRegister reads the register in a file; one that is not there is empty.
func ReadRegister(file string) (Register, error) {
	f, _, err := disk.Read(file)
	if errors.Is(err, fs.ErrNotExist) {
		return Register{}, nil
	}
	if err != nil {
		return Register{}, fmt.Errorf("read what the calendar was told: %w", err)
	}
	defer f.Close() //nolint:errcheck // nothing was written
	src, err := form().Slurp(file, io.Reader(f))
	if err != nil {
		return Register{}, err
	}
	return parse(file, src)
}
