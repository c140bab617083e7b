package season

import (
	"fmt"
	"slices"

	"pourbench/pour/strict"
)

// what is a pour in what is said of it.
func (p Planned) what() string {
	if p.Pour != "" {
		return p.Pour
	}
	return p.Plan
}

// same reports whether two are the same entry.
func (p Planned) same(o Planned) bool {
	return p.Plan == o.Plan && p.Pour == o.Pour && p.For == o.For && (p.Day == nil) == (o.Day == nil) && (p.Day == nil || *p.Day == *o.Day)
}

// AddPour writes a planned pour to the end of the file.
func (s Store) AddPour(p Planned) error {
	p = p.clean()
	return s.edit(fmt.Sprintf("add the pour of %q", p.what()), func(f File, t *draft) (File, error) {
		t.add("[[pour]]", p.pairs())
		f.Pours = append(f.Pours, p)
		return f, nil
	})
}

// ChangePour writes the pour of that place in the file anew, counted from 1, which was as the caller saw it; else [ErrGone].
func (s Store) ChangePour(number int, was, now Planned) error {
	now = now.clean()
	return s.edit(fmt.Sprintf("change the pour of %q", was.what()), func(f File, t *draft) (File, error) {
		i, err := f.pourAt(number, was)
		if err != nil {
			return f, err
		}
		f.Pours = slices.Clone(f.Pours)
		f.Pours[i] = now
		return f, t.alter(entry("pour", i), was.pairs(), now.pairs())
	})
}

// RemovePour takes the pour of that place out of the file, counted from 1, which was as the caller saw it; else [ErrGone].
func (s Store) RemovePour(number int, was Planned) error {
	return s.edit(fmt.Sprintf("remove the pour of %q", was.what()), func(f File, t *draft) (File, error) {
		i, err := f.pourAt(number, was)
		if err != nil {
			return f, err
		}
		f.Pours = slices.Delete(slices.Clone(f.Pours), i, i+1)
		return f, t.drop(entry("pour", i))
	})
}

// pourAt is the place from 0 of a pour that was at a number from 1: there, or where it has moved to by what was added or taken out before it.
func (f File) pourAt(number int, was Planned) (int, error) {
	if i := number - 1; i >= 0 && i < len(f.Pours) && f.Pours[i].same(was) {
		return i, nil
	}
	at := -1
	for i, p := range f.Pours {
		if !p.same(was) {
			continue
		}
		if at >= 0 {
			return 0, ErrGone // two are alike, and which was meant cannot be told
		}
		at = i
	}
	if at < 0 {
		return 0, ErrGone
	}
	return at, nil
}

// SetHouse writes what the maker has and when she pours. Her moulds are entries of their own and stay.
func (s Store) SetHouse(change func(House) House) error {
	return s.edit("change the house", func(f File, t *draft) (File, error) {
		was, now := f.House, change(f.House)
		now.Moulds = was.Moulds
		f.House = now
		if line, _ := t.doc.Place("house"); line == 0 {
			t.add("[house]", now.pairs())
			return f, nil
		}
		return f, t.alter("house", was.pairs(), now.pairs())
	})
}

// AddMould writes a mould she owns to the end of the file.
func (s Store) AddMould(m Mould) error {
	m = m.clean()
	return s.edit(fmt.Sprintf("add the mould %q", m.Name), func(f File, t *draft) (File, error) {
		t.add("[[mould]]", m.pairs())
		f.House.Moulds = append(slices.Clone(f.House.Moulds), m)
		return f, nil
	})
}

// RemoveMould takes a mould out.
func (s Store) RemoveMould(name string) error {
	return s.edit(fmt.Sprintf("remove the mould %q", name), func(f File, t *draft) (File, error) {
		var names []string
		for i, m := range f.House.Moulds {
			if same(m.Name, name) {
				f.House.Moulds = slices.Delete(slices.Clone(f.House.Moulds), i, i+1)
				return f, t.drop(entry("mould", i))
			}
			names = append(names, m.Name)
		}
		return f, fmt.Errorf("the season has no mould of that name; %s", strict.Meant(name, names, "pourbench season house lists them", ""))
	})
}
