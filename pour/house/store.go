package house

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"pourbench/pour/cost"
	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// Store changes the file of costs in a folder, one place at a time and under a lock. What stands beside it stays as it is, to the byte.
type Store struct {
	Dir  string        // the maker's folder of data; made where it is missing
	Disk disk.Ops      // of the system: [disk.OS]
	Wait time.Duration // for another terminal that is at the file
}

// NewStore is the file of costs in a folder.
func NewStore(dir string) Store { return Store{Dir: dir, Disk: disk.OS(), Wait: 2 * time.Second} }

// lockName is the file that a terminal holds while it changes the costs.
const lockName = ".costs.lock"

// head begins a new file.
const head = "# Your costs beside materials. Amounts stand between quotation marks, so that they stay exact; pourbench cost --keys tells what can stand here.\n"

// Set writes what holds for every batch: a key of the file and its value, as TOML has it; an empty value takes it out.
func (s Store) Set(key, value string) (cost.House, error) {
	return s.change("set "+key, func(src string, _ cost.House) (string, error) {
		if value == "" {
			return strict.Unset(src, key)
		}
		return strict.Set(src, key, value)
	})
}

// Price writes what something costs that no pack has brought yet.
func (s Store) Price(of, per string) (cost.House, error) {
	return s.change("price "+of, func(src string, h cost.House) (string, error) {
		for i, p := range h.Prices {
			if p.Of == of {
				return strict.Set(src, fmt.Sprintf("price[%d].per", i), strict.Quote(per))
			}
		}
		return strict.Append(src, "price", strict.Pair{Key: "of", Value: strict.Quote(of)}, strict.Pair{Key: "per", Value: strict.Quote(per)})
	})
}

// Channel writes a way bars are sold: a new one, or what is said of one that is there; an empty value takes a key out.
func (s Store) Channel(name string, says ...strict.Pair) (cost.House, error) {
	return s.change("channel "+name, func(src string, h cost.House) (string, error) {
		for i, c := range h.Channels {
			if c.Name != name {
				continue
			}
			var err error
			for _, p := range says {
				if src, err = strict.Set(src, fmt.Sprintf("channel[%d].%s", i, p.Key), p.Value); err != nil {
					return src, err
				}
			}
			return src, nil
		}
		return strict.Append(src, "channel", append([]strict.Pair{{Key: "name", Value: strict.Quote(name)}}, says...)...)
	})
}

// change changes the text of the file and says what it holds then. A text that could not be read back is not written.
func (s Store) change(what string, do func(src string, h cost.House) (string, error)) (h cost.House, err error) {
	defer func() {
		if err != nil {
			err = fmt.Errorf("%s in your costs: %w", what, err)
		}
	}()
	if err := os.MkdirAll(s.Dir, 0o700); err != nil {
		return h, disk.Reason(err)
	}
	held, err := s.Disk.HoldFor(filepath.Join(s.Dir, lockName), s.Wait)
	if errors.Is(err, disk.ErrLocked) {
		return h, fmt.Errorf("%w: another pourbench is changing %s; try again", err, Path(s.Dir))
	}
	if err != nil {
		return h, disk.Reason(err)
	}
	defer func() { err = errors.Join(err, held.Release()) }()
	src, fresh := head, true
	if old, err := os.ReadFile(Path(s.Dir)); err == nil {
		src, fresh = string(old), false
	} else if !errors.Is(err, os.ErrNotExist) {
		return h, disk.Reason(err)
	}
	if h, err = Read(Path(s.Dir), src); err != nil {
		return h, err
	}
	text, err := do(src, h)
	if err != nil {
		return h, err
	}
	if h, err = Read(Path(s.Dir), text); err != nil {
		return h, fmt.Errorf("nothing was written, for the file would then be refused:\n%w", err)
	}
	if err := s.Disk.Save(Path(s.Dir), disk.Bytes([]byte(text)), disk.Want{Mode: disk.Private, New: fresh}); err != nil {
		return h, disk.Reason(err)
	}
	return h, nil
}
