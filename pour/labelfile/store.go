package labelfile

import (
	"fmt"
	"slices"

	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/pour/ownfile"
	"pourbench/pour/strict"
)

// Store changes the file in a folder of data, one thing at a time and under a lock. All else in it stays as it is, to the byte.
type Store struct{ ownfile.File }

// NewStore is the label file in a folder of data, which is made where it is missing.
func NewStore(dir string) Store {
	reads := func(name, text string) error { _, err := Read(name, text); return err }
	return Store{ownfile.New(dir, FileName, head, form(), reads)}
}

// head is how a new file begins.
const head = "# What your labels say. Write in it as you like: pourbench changes a line and leaves the rest. Its keys: pourbench label keys\nformat = 1\n"

// change makes a change in the file as it is at that moment, if what comes of it can be read.
func (s Store) change(what string, next func(src string, h label.House) (string, error)) error {
	return s.Change(what, func(src string) (string, error) {
		h, err := Read(s.Path(), src)
		if err != nil {
			return "", err
		}
		return next(src, h)
	})
}

// SetLogo names a maker's own logo; an empty path takes it out.
func (s Store) SetLogo(path string) error {
	return s.change("name the logo", func(src string, _ label.House) (string, error) { return put(src, keyLogo, path) })
}

// put gives a key a text, or takes it out.
func put(src, path, text string) (string, error) {
	if text == "" {
		return strict.Unset(src, path)
	}
	return strict.Set(src, path, strict.Quote(text))
}

// SetMaker states something of who stands on labels in a market, or where the market is empty wherever no other does. A new one begins with the name.
func (s Store) SetMaker(market, key, text string) error {
	return s.change("state the maker's "+key, func(src string, h label.House) (string, error) {
		if keys := MakerKeys(); !slices.Contains(keys, key) {
			return "", ownfile.Strange(key, keys)
		}
		at := makerAt(h, market)
		switch {
		case at >= 0:
			return put(src, fmt.Sprintf("maker[%d].%s", at, key), text)
		case text == "":
			return src, nil
		}
		pairs := []strict.Pair{{Key: key, Value: strict.Quote(text)}}
		if market != "" {
			pairs = append([]strict.Pair{{Key: keyMarket, Value: strict.Quote(market)}}, pairs...)
		}
		return strict.Append(src, "maker", pairs...)
	})
}

func makerAt(h label.House, market string) int {
	return slices.IndexFunc(h.Makers, func(m label.Maker) bool { return m.Market == market })
}

// DropMaker takes out who stands on labels in a market.
func (s Store) DropMaker(market string) error {
	return s.change("take out a maker", func(src string, h label.House) (string, error) {
		at := makerAt(h, market)
		if at < 0 {
			return "", fmt.Errorf("no maker is stated there for the market %q", market)
		}
		return strict.Unset(src, fmt.Sprintf("maker[%d]", at))
	})
}

// AddReport writes a report with its ranges to the end of the file. One that is there by its id already is refused.
func (s Store) AddReport(r label.Report) error {
	return s.change("add the report "+r.ID, func(src string, h label.House) (string, error) {
		if _, there := h.Report(r.ID); there {
			return "", fmt.Errorf("there is a report %q already: change its ranges, or take it out first", r.ID)
		}
		pairs := []strict.Pair{{Key: keyID, Value: strict.Quote(r.ID)}}
		if r.Of != "" {
			pairs = append(pairs, strict.Pair{Key: keyAbout, Value: strict.Quote(r.Of)})
		}
		text, err := strict.Append(src, "report", append(pairs, strict.Pair{Key: keyOn, Value: r.On.String()})...)
		for _, x := range r.Ranges {
			if err == nil {
				text, err = appended(text, fmt.Sprintf("report[%d]", len(h.Reports)), x)
			}
		}
		return text, err
	})
}

// appended is a text with a range more in a report.
func appended(src, report string, x label.Range) (string, error) {
	pairs := []strict.Pair{{Key: keyOf, Value: strict.Quote(x.Of())}}
	if x.Least != 0 {
		pairs = append(pairs, strict.Pair{Key: keyLeast, Value: strict.Short(x.Least)})
	}
	return strict.Append(src, report+".range", append(pairs, strict.Pair{Key: keyMost, Value: strict.Short(x.Most)})...)
}

// SetReport states what a report is about and the day it bears.
func (s Store) SetReport(id, about string, on day.Day) error {
	return s.inReport(id, "state the report "+id, func(src, path string, _ label.Report) (string, error) {
		text, err := put(src, path+"."+keyAbout, about)
		if err != nil {
			return "", err
		}
		return strict.Set(text, path+"."+keyOn, on.String())
	})
}

// SetRange states what a report allows of one thing.
func (s Store) SetRange(id string, x label.Range) error {
	return s.inReport(id, "state what "+id+" allows of "+x.Of(), func(src, path string, r label.Report) (string, error) {
		at := rangeAt(r, x)
		if at < 0 {
			return appended(src, path, x)
		}
		path = fmt.Sprintf("%s.range[%d].", path, at)
		text, err := strict.Set(src, path+keyMost, strict.Short(x.Most))
		switch {
		case err != nil:
			return "", err
		case x.Least == 0:
			return strict.Unset(text, path+keyLeast)
		}
		return strict.Set(text, path+keyLeast, strict.Short(x.Least))
	})
}

func rangeAt(r label.Report, x label.Range) int {
	return slices.IndexFunc(r.Ranges, func(o label.Range) bool { return o.Of() == x.Of() })
}

// DropRange takes out what a report allows of one thing.
func (s Store) DropRange(id string, x label.Range) error {
	return s.inReport(id, "take out what "+id+" allows of "+x.Of(), func(src, path string, r label.Report) (string, error) {
		at := rangeAt(r, x)
		if at < 0 {
			return "", fmt.Errorf("it has no range for %s", x.Of())
		}
		return strict.Unset(src, fmt.Sprintf("%s.range[%d]", path, at))
	})
}

// DropReport takes a report out.
func (s Store) DropReport(id string) error {
	return s.inReport(id, "take out the report "+id, func(src, path string, _ label.Report) (string, error) { return strict.Unset(src, path) })
}

// inReport makes a change in a report by its id.
func (s Store) inReport(id, what string, next func(src, path string, r label.Report) (string, error)) error {
	return s.change(what, func(src string, h label.House) (string, error) {
		at := slices.IndexFunc(h.Reports, func(r label.Report) bool { return r.ID == id })
		if at >= 0 {
			return next(src, fmt.Sprintf("report[%d]", at), h.Reports[at])
		}
		var ids []string
		for _, r := range h.Reports {
			ids = append(ids, r.ID)
		}
		return "", fmt.Errorf("no report %q is there: %s", id, strict.Meant(id, ids, "add it first, with pourbench label report add", ""))
	})
}
