package house

import (
	"fmt"
	"slices"

	"pourbench/pour/cost"
	"pourbench/pour/lot"
	"pourbench/pour/ownfile"
	"pourbench/pour/strict"
)

// Store changes the file in a folder of data, one key at a time and under a lock. All else in it stays as it is, to the byte.
type Store struct{ ownfile.File }

// NewStore is the file of costs in a folder of data, which is made where it is missing.
func NewStore(dir string) Store {
	reads := func(name, text string) error { _, err := Read(name, text); return err }
	return Store{ownfile.New(dir, FileName, head, form(), reads)}
}

// head is how a new file begins.
const head = "# Your costs. Write in it as you like: pourbench changes a line and leaves the rest. Its keys: pourbench cost keys\nformat = 1\n"

// Set states a cost by its key; an empty text takes it out. What cannot be is refused, and nothing is written then.
func (s Store) Set(key, text string) error {
	var h cost.House
	return s.change("state "+key, func(src string, _ cost.House) (string, error) { return put(src, "", Rows(&h), key, text) })
}

// SetChannel states something of a way of selling by its name, which begins with it where it is new; an empty text takes it out.
func (s Store) SetChannel(name, key, text string) error {
	var c cost.Channel
	return s.change("state "+key+" of "+name, func(src string, h cost.House) (string, error) {
		at := slices.IndexFunc(h.Channels, func(c cost.Channel) bool { return c.Name == name })
		if at >= 0 {
			return put(src, fmt.Sprintf("channel[%d].", at), ChannelRows(&c), key, text)
		}
		row, err := rowOf(ChannelRows(&c), key)
		if err != nil || text == "" {
			return src, err
		}
		pairs := []strict.Pair{{Key: "name", Value: strict.Quote(name)}}
		if key != "name" {
			pairs = append(pairs, strict.Pair{Key: key, Value: row.value(text)})
		}
		return strict.Append(src, "channel", pairs...)
	})
}

// DropChannel takes a way of selling out.
func (s Store) DropChannel(name string) error {
	return s.change("take out "+name, func(src string, h cost.House) (string, error) {
		at := slices.IndexFunc(h.Channels, func(c cost.Channel) bool { return c.Name == name })
		if at < 0 {
			return "", fmt.Errorf("no way of selling is called %q", name)
		}
		return strict.Unset(src, fmt.Sprintf("channel[%d]", at))
	})
}

// SetPrice states what a kilogram, or a piece, of a material costs that no pack has brought; an empty text takes it out.
func (s Store) SetPrice(m lot.Material, text string) error {
	text = strict.WithPoint(text)
	return s.change("price "+m.String(), func(src string, h cost.House) (string, error) {
		key, _ := keyOf(m)
		at := slices.IndexFunc(h.Prices, func(p cost.Price) bool { return p.Of == m.String() })
		path := fmt.Sprintf("price[%d]", at)
		switch {
		case at < 0 && text == "":
			return src, nil
		case at < 0:
			return strict.Append(src, "price", strict.Pair{Key: "of", Value: strict.Quote(m.String())}, strict.Pair{Key: key, Value: strict.Quote(text)})
		case text == "":
			return strict.Unset(src, path)
		}
		return strict.Set(src, path+"."+key, strict.Quote(text))
	})
}

func rowOf(rows []Row, key string) (Row, error) {
	at := slices.IndexFunc(rows, func(r Row) bool { return r.Key == key })
	if at >= 0 {
		return rows[at], nil
	}
	keys := make([]string, len(rows))
	for i, r := range rows {
		keys[i] = r.Key
	}
	return Row{}, ownfile.Strange(key, keys)
}

// put writes a key of a table, or takes it out.
func put(src, table string, rows []Row, key, text string) (string, error) {
	row, err := rowOf(rows, key)
	switch {
	case err != nil:
		return "", err
	case text == "":
		return strict.Unset(src, table+key)
	}
	return strict.Set(src, table+key, row.value(text))
}

// change makes a change in the file as it is at that moment, if what comes of it can be read.
func (s Store) change(what string, next func(src string, h cost.House) (string, error)) error {
	return s.Change(what, func(src string) (string, error) {
		h, err := Read(s.Path(), src)
		if err != nil {
			return "", err
		}
		return next(src, h)
	})
}
