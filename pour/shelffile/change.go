package shelffile

import (
	"errors"
	"fmt"
	"slices"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// form is how the text of a shelf file is opened here: what it may say is for its reader to judge.
func form() strict.Form {
	return strict.Form{Noun: "shelf file", Bytes: 1 << 20, Items: 2000, Letters: 1 << 20, Again: "correct the file there"}
}

// Named lists what a shelf file says of every entry: its keys, in the order of the alphabet.
func Named(name, text string) (map[pour.EntryName][]string, error) {
	file, err := form().Open(name, text)
	if err != nil {
		return nil, err
	}
	out := map[pour.EntryName][]string{}
	top := file.Top()
	for _, table := range top.Keys() {
		if table == "format" {
			continue
		}
		for _, in := range top.List(table) {
			id := ""
			in.Read("id", &id)
			out[pour.EntryName{Table: table, ID: id}] = in.Keys()
		}
	}
	return out, nil
}

// where is the path of an entry in the text of a shelf file; empty: the file says nothing of it.
func where(text string, of pour.EntryName) (path string, keys []string, err error) {
	file, err := form().Open("the shelf file", text)
	if err != nil {
		return "", nil, err
	}
	for i, in := range file.Top().List(of.Table) {
		id := ""
		if in.Read("id", &id); id == of.ID {
			return fmt.Sprintf("%s[%d]", of.Table, i), in.Keys(), nil
		}
	}
	return "", nil, nil
}

// changed is a text with a change made in it.
func changed(text string, c pour.ShelfChange) (string, error) {
	at, keys, err := where(text, c.Of)
	id := strict.Pair{Key: "id", Value: strict.Quote(c.Of.ID)}
	switch {
	case err != nil:
		return "", err
	case c.Key == "" && c.New == nil:
		return strict.Unset(text, at)
	case c.Key == "" && at != "":
		return "", errors.New("there is an entry of that id already")
	case c.Key == "":
		return strict.Append(text, c.Of.Table, append([]strict.Pair{id}, c.New...)...)
	case c.Value == "" && at == "":
		return text, nil
	case c.Value == "":
		return taken(text, at, keys, c)
	}
	pair := strict.Pair{Key: c.Key, Value: c.Value}
	if c.In != "" && !slices.Contains(keys, c.In) {
		pair = strict.Pair{Key: c.In, Value: c.Whole}
	}
	switch {
	case at == "":
		return strict.Append(text, c.Of.Table, id, pair)
	case c.Added && pair.Key == c.Key:
		return strict.Append(text, at+"."+c.In, c.New...)
	}
	return put(text, at+"."+pair.Key, pair.Value)
}

// taken is a text without a key of an entry. Of a part of something that the file does not say yet, what is left of that is written; what
// has no part left goes whole, and a list is written empty, since the built-in one would count again.
func taken(text, at string, keys []string, c pour.ShelfChange) (string, error) {
	home := at + "." + c.In
	switch {
	case c.In == "":
		return strict.Unset(text, at+"."+c.Key)
	case c.Whole == "{  }":
		return strict.Unset(text, home)
	case c.Whole == "[]" || !slices.Contains(keys, c.In):
		return put(text, home, c.Whole)
	}
	return strict.Unset(text, at+"."+c.Key)
}

// put gives a key a value. What stands there as sections of its own is taken out first.
func put(text, path, value string) (string, error) {
	out, err := strict.Set(text, path, value)
	if !errors.Is(err, strict.ErrOtherwise) {
		return out, err
	}
	bare, err := strict.Unset(text, path)
	if err != nil {
		return "", err
	}
	return strict.Set(bare, path, value)
}

// restored is a text, in which more was changed since, with one change taken back.
func restored(now string, d Done) (string, error) {
	c := d.change
	if c.Key == "" || c.Added {
		return "", ErrChanged
	}
	at, _, err := where(now, c.Of)
	if err != nil {
		return "", err
	}
	was, err1 := valueAt(d.before, c)
	made, err2 := valueAt(d.after, c)
	is, err3 := valueAt(now, c)
	switch {
	case errors.Join(err1, err2, err3) != nil || is != made:
		return "", ErrChanged
	case was == "":
		return strict.Unset(now, at+"."+c.Key)
	}
	return strict.Set(now, at+"."+c.Key, was)
}

// valueAt is the value of a changed key as it stands in a text; empty: it does not.
func valueAt(text string, c pour.ShelfChange) (string, error) {
	at, _, err := where(text, c.Of)
	if err != nil || at == "" {
		return "", err
	}
	return strict.Value(text, at+"."+c.Key), nil
}
