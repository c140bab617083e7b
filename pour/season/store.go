package season

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"time"

	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// Store changes the season's file in a folder, one entry at a time and under a lock, so that two terminals lose nothing of each other. What
// stands in the file beside the entry stays as it is, to the byte; where that cannot be, the change is refused and says how to make it by hand.
type Store struct {
	Dir  string        // the maker's folder of data; made where it is missing
	Disk disk.Ops      // of the system: [disk.OS]
	Wait time.Duration // for another terminal that is at the file
}

// NewStore is the season's file in a folder.
func NewStore(dir string) Store { return Store{Dir: dir, Disk: disk.OS(), Wait: 2 * time.Second} }

// Path is the season's file.
func (s Store) Path() string { return filepath.Join(s.Dir, FileName) }

// lockName is the file that a terminal holds while it changes the season.
const lockName = ".season.lock"

// ErrGone is the reason when the entry that was to be changed is no longer what it was.
var ErrGone = errors.New("it was changed meanwhile by another terminal or by hand; look at the board again")

// edit changes the file: do is given what it holds and a draft of its text, and returns what it is to hold then.
func (s Store) edit(what string, do func(File, *draft) (File, error)) error {
	if err := s.locked(do); err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	return nil
}

func (s Store) locked(do func(File, *draft) (File, error)) (err error) {
	if err := os.MkdirAll(s.Dir, 0o700); err != nil {
		return disk.Reason(err)
	}
	held, err := s.Disk.HoldFor(filepath.Join(s.Dir, lockName), s.Wait)
	if errors.Is(err, disk.ErrLocked) {
		return fmt.Errorf("%w: another pourbench is changing %s; try again", err, s.Path())
	}
	if err != nil {
		return disk.Reason(err)
	}
	defer func() { err = errors.Join(err, held.Release()) }()
	old, err := current(s.Path())
	if err != nil {
		return err
	}
	f, err := Read(s.Path(), old)
	if err != nil {
		return err
	}
	d, err := newDraft(s.Path(), old, f)
	if err != nil {
		return err
	}
	want, err := do(f, d)
	if err != nil {
		return err
	}
	return s.put(old, d.String(), want)
}

// put writes the file if it then holds what it should, and if nobody has written it since it was read: an editor knows nothing of our lock.
func (s Store) put(old, fresh string, want File) error {
	got, err := Read(s.Path(), fresh)
	if err != nil {
		return fmt.Errorf("nothing was written, for the file would then be refused:\n%w", err)
	}
	if !reflect.DeepEqual(got.comparable(), want.comparable()) {
		return &strict.Error{Faults: []strict.Fault{{
			File: s.Path(), Problem: "is written in a way that cannot be changed here without touching other entries; nothing was written",
			Mend: "change it by hand, or give every date, pour and mould a header of its own: [[date]], [[pour]], [[mould]]",
		}}}
	}
	if fresh == old {
		return nil
	}
	want2 := disk.Want{Mode: disk.Private, New: old == "" && !exists(s.Path()), Still: func() error {
		now, err := current(s.Path())
		if err == nil && now != old {
			return fmt.Errorf("%s was changed by something else just now; look at it and try again", s.Path())
		}
		return err
	}}
	err = s.Disk.Save(s.Path(), func(w io.Writer) error {
		_, err := io.WriteString(w, fresh)
		return err
	}, want2)
	if err != nil {
		return fmt.Errorf("write %s: %w", s.Path(), disk.Reason(err))
	}
	return nil
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// comparable is the file with lists that hold nothing as none.
func (f File) comparable() File {
	f.House.BenchDays = append([]time.Weekday(nil), f.House.BenchDays...)
	f.House.Moulds = append([]Mould(nil), f.House.Moulds...)
	f.Pours = append([]Planned(nil), f.Pours...)
	dates := []Date(nil)
	for _, d := range f.Dates {
		d.Wants = append([]Want(nil), d.Wants...)
		dates = append(dates, d)
	}
	f.Dates = dates
	return f
}

// AddDate writes a market or an order to the end of the file.
func (s Store) AddDate(d Date) error {
	d = d.clean()
	return s.edit(fmt.Sprintf("add the date %q", d.Name), func(f File, t *draft) (File, error) {
		t.add("[[date]]", d.pairs())
		f.Dates = append(f.Dates, d)
		return f, nil
	})
}

// ChangeDate writes a date anew that is there by that name. Pours that are for it follow it under another name.
func (s Store) ChangeDate(name string, change func(Date) Date) error {
	return s.edit(fmt.Sprintf("change the date %q", name), func(f File, t *draft) (File, error) {
		i, err := f.dateAt(name)
		if err != nil {
			return f, err
		}
		was := f.Dates[i]
		now := change(was).clean()
		f.Dates = slices.Clone(f.Dates)
		f.Dates[i] = now
		if now.Name != was.Name {
			if err := f.rename(t, was.Name, now.Name); err != nil {
				return f, err
			}
		}
		return f, t.alter(entry("date", i), was.pairs(), now.pairs())
	})
}

// RemoveDate takes a date out. Pours that are for it stay, for none.
func (s Store) RemoveDate(name string) error {
	return s.edit(fmt.Sprintf("remove the date %q", name), func(f File, t *draft) (File, error) {
		i, err := f.dateAt(name)
		if err != nil {
			return f, err
		}
		if err := f.rename(t, f.Dates[i].Name, ""); err != nil {
			return f, err
		}
		f.Dates = slices.Delete(slices.Clone(f.Dates), i, i+1)
		return f, t.drop(entry("date", i))
	})
}

// PoursFor are the pours for the date of a name, by their numbers from 1.
func (f File) PoursFor(name string) []int {
	var out []int
	for i, p := range f.Pours {
		if p.For != "" && same(p.For, name) {
			out = append(out, i+1)
		}
	}
	return out
}

// rename has the pours of a date say another name.
func (f *File) rename(t *draft, from, to string) error {
	f.Pours = slices.Clone(f.Pours)
	for k, p := range f.Pours {
		if !same(p.For, from) || p.For == "" {
			continue
		}
		now := p
		now.For = to
		if err := t.alter(entry("pour", k), p.pairs(), now.pairs()); err != nil {
			return err
		}
		f.Pours[k] = now
	}
	return nil
}

func (f File) dateAt(name string) (int, error) {
	names := make([]string, len(f.Dates))
	for i, d := range f.Dates {
		if same(d.Name, name) {
			return i, nil
		}
		names[i] = d.Name
	}
	return 0, fmt.Errorf("the season has no date of that name; %s", strict.Meant(name, names, "pourbench season lists them", ""))
}
