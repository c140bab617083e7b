// Package strict reads TOML files in which nothing may be overlooked: an unknown key, a value of the wrong kind and text
// too long to show are refused, each with its line, its column and how to mend it, all of them at once and in the order
// of the file. Plan files, shelf files and the logbook are read by it, and there is one type for what is wrong: [Fault].
//
// Text is made safe for terminals here, once, so that nothing after it has to.
package strict

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"

	"github.com/BurntSushi/toml"

	"pourbench/pour/plain"
)

// Form is a kind of file: what messages call it, and its limits.
type Form struct {
	Noun    string                    // "plan": as in "is no key of a plan"
	Bytes   int                       // the longest file that is read
	Items   int                       // the longest list
	Letters int                       // the longest line of text where a key has no limit of its own
	Long    string                    // what to do with a longer line; empty: nothing can be said
	Again   string                    // how to mend a file that is hopeless
	Home    func(key string) []string // where a key belongs that is unknown where it stands; nil: nobody can tell
}

// Slurp reads a whole file of that form; what is longer than the form allows is refused. Any failure is an [*Error].
func (f Form) Slurp(name string, r io.Reader) (string, error) {
	src, err := io.ReadAll(io.LimitReader(r, int64(f.Bytes)+1))
	if err != nil {
		return "", Refuse(name, err, "look whether the file can be read at all")
	}
	if len(src) > f.Bytes {
		return "", Refuse(name, fmt.Errorf("is longer than %d KiB, which no %s is", f.Bytes>>10, f.Noun), fmt.Sprintf("name a %s", f.Noun))
	}
	return string(src), nil
}

// File is one file while it is read, with what was found wrong with it so far.
type File struct {
	form   Form
	name   string
	src    string
	tree   map[string]any
	places map[string]place // of every key; worked out with the first fault, for most files have none
	faults []Fault
	told   []string // keys that have a fault
}

// Open parses the text of a file. The name stands in front of every fault, as a path or "stdin" would. Text that is no
// TOML is an [*Error]; what is wrong beyond that is collected while the file is read, see [File.Err].
func (f Form) Open(name, src string) (*File, error) {
	file := &File{form: f, name: plain.Line(name), src: src}
	s := newScanner(src, false)
	s.all()
	if at := s.deep; at.line > 0 {
		return nil, &Error{Faults: []Fault{{
			File: file.name, Line: at.line, Column: at.column, Problem: "goes deeper than any " + f.Noun, Mend: "close brackets where they end; a key has at most three dots",
		}}}
	}
	return file.decode()
}

// Trust parses the text of a file that came with the program: it is not looked through for what would take too long to parse.
func (f Form) Trust(name, src string) (*File, error) {
	return (&File{form: f, name: name, src: src}).decode()
}

// decode reads the TOML. The library is trusted to report, and watched in case it panics on what it did not foresee.
func (f *File) decode() (file *File, err error) {
	hopeless := func(problem string) error {
		return &Error{Faults: []Fault{{File: f.name, Problem: problem, Mend: f.form.Again}}}
	}
	defer func() {
		if recover() != nil {
			file, err = nil, hopeless("is not TOML that can be read")
		}
	}()
	_, err = toml.Decode(f.src, &f.tree)
	var broken toml.ParseError
	switch {
	case errors.As(err, &broken):
		return nil, &Error{Faults: []Fault{syntax(f.name, f.src, broken)}}
	case err != nil:
		return nil, hopeless(plain.Line(err.Error()))
	}
	return f, nil
}

// Comments lists the comments in the text of a file, without the hash and the spaces around them.
func Comments(src string) []string {
	s := newScanner(src, false)
	s.all()
	return s.comments
}

// Place returns where a key stands, line and column from 1, the column counted in letters; for a key that does not stand
// in the file, the nearest table around it; 0 and 0 when there is none.
func (f *File) Place(path string) (line, column int) {
	if f.places == nil {
		s := newScanner(f.src, true)
		s.all()
		f.places = s.places
	}
	for ; path != ""; path = parent(path) {
		if p, ok := f.places[path]; ok {
			return p.line, p.column
		}
	}
	return 0, 0
}

// mostNoted bounds the faults that are kept to be sorted; a file with more of them is no file of ours.
const mostNoted = 500

// Add notes a fault; its path says where it stands.
func (f *File) Add(fault Fault) { f.add(fault.Path, fault) }

// add notes a fault at a key of the file, which may be told by another name than its path.
func (f *File) add(path string, fault Fault) {
	if len(f.faults) == mostNoted {
		return
	}
	const longestKey = 120 // letters; no key of ours comes near it
	key, cut := clipped(plain.Line(fault.Path), longestKey)
	fault.File, fault.Path, fault.Value = f.name, key+cut, plain.Line(fault.Value)
	fault.Problem, fault.Mend = plain.Line(fault.Problem), plain.Line(fault.Mend)
	fault.Line, fault.Column = f.Place(path)
	f.faults = append(f.faults, fault)
	f.told = append(f.told, path)
}

// Told lists the keys that have a fault already. A key taken for a slip of another counts for both.
func (f *File) Told() []string { return slices.Clone(f.told) }

// Err gives everything that was found wrong, in the order of the file, as an [*Error]; nil when nothing was.
func (f *File) Err() error {
	if len(f.faults) == 0 {
		return nil
	}
	all := slices.Clone(f.faults)
	slices.SortStableFunc(all, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	more := max(0, len(all)-mostFaults)
	return &Error{Faults: all[:len(all)-more], More: more}
}
