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

// ErrBusy is the reason when another export has the register.
var ErrBusy = errors.New("another export is at it")

// HandOut revises what is due by the register in a file, keeps the register of what is handed out now and returns it, to be written with
// [Write]; see [Register.Revise]. The register is on the disk first: a calendar that is not written after all is handed out with the same
// numbers the next time, while a number once in her calendar is never given to another date.
//
// While another export is at the register it tries again for as long as wait, then gives up with [ErrBusy]. A register that cannot be read is
// left as it is and nothing is handed out.
func HandOut(d disk.Ops, file string, wait time.Duration, due []Entry, within func(batch string) bool, at time.Time) (out []Entry, err error) {
	if err := sound(due); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return nil, fmt.Errorf("keep what the calendar was told: %w", err)
	}
	held, err := hold(d, file+lockSuffix, wait)
	if err != nil {
		return nil, fmt.Errorf("keep what the calendar was told in %s: %w", file, err)
	}
	defer func() { err = errors.Join(err, held.Release()) }()
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

// hold takes the name of a lock. One that a killed export left is taken away.
func hold(d disk.Ops, lock string, wait time.Duration) (*disk.Held, error) {
	const pause = 10 * time.Millisecond
	for tried := time.Duration(0); ; tried += pause {
		held, err := d.Hold(lock)
		if !errors.Is(err, fs.ErrExist) {
			return held, err
		}
		if d.DropUnheld(lock) {
			if held, err = d.Hold(lock); !errors.Is(err, fs.ErrExist) {
				return held, err
			}
		}
		if tried >= wait {
			return nil, fmt.Errorf("%w; try again, and remove %s if no other is", ErrBusy, lock)
		}
		time.Sleep(pause)
	}
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
