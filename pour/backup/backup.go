// Package backup keeps what a maker would miss in one plain zip archive and puts it back: the plans her bench knows, her shelf, her pours
// with what stands beside them, and the work that was never saved. Beside the files stands a list of them that can be read, with where each
// came from, its size and its SHA-256 sum.
//
// What comes back is checked before a byte of it is written: nothing but the five kinds, no name that leads elsewhere, no file larger
// than any of the kind, every sum right. Nothing is written over a file that differs without leave.
package backup

import (
	"path/filepath"
	"slices"
	"strings"
	"time"

	"pourbench/pour/calendar"
	"pourbench/pour/house"
	"pourbench/pour/labelfile"
	"pourbench/pour/logbook"
	"pourbench/pour/plain"
	"pourbench/pour/season"
	"pourbench/pour/stock"
)

// Kind is what a file in an archive is.
type Kind string

// The kinds of file.
const (
	Plan    Kind = "plan"
	Shelf   Kind = "shelf"
	Pour    Kind = "pour"
	Beside  Kind = "beside"  // what stands beside the pours: see [besides]
	Journal Kind = "journal" // unsaved work
)

// kinds lists the kinds in the order of an archive, each with the folder its files stand in there and what their names end with.
func kinds() []struct {
	kind         Kind
	folder, ends string
} {
	return []struct {
		kind         Kind
		folder, ends string
	}{
		{Plan, "plans", ""}, {Shelf, "shelf", ".toml"}, {Pour, "pours", logbook.Suffix}, {Beside, "beside", ".toml"}, {Journal, "journals", ".journal"},
	}
}

// besides lists the files of a maker's folder of data that are kept beside her pours: the last two have what her house costs and what her labels say.
func besides() []string {
	return []string{calendar.FileName, season.FileName, stock.FileName, house.FileName, labelfile.FileName}
}

// Limits of an archive. A pour of a whole day is a tenth of a megabyte, a ledger of ten years thirteen.
const (
	mostFile  = 64 << 20  // bytes of one file
	mostAll   = 256 << 20 // bytes of all files together
	mostFiles = 20000
)

// File is one file of an archive with what it holds.
type File struct {
	Kind     Kind
	Name     string // without a folder
	From     string // where it came from; "~" is the maker's home
	Modified time.Time
	Content  []byte
}

// Places is where things are kept on this machine.
type Places struct {
	Home  string // the maker's home folder
	Shelf string // her shelf file
	Book  string // the folder of her pours
	Data  string // the folder of data, with what stands beside them
	State string // the folder of unsaved work, with the list of plans
	Plans string // for a plan that cannot go back to where it came from
}

// member is where a file of a kind stands in the archive; "" for a kind that is not known.
func member(k Kind, name string) string {
	for _, known := range kinds() {
		if known.kind == k {
			return known.folder + "/" + name
		}
	}
	return ""
}

// proper says whether a file of a kind can have that name: one plain part of a path, which hides nothing and means the same on every system.
func proper(k Kind, name string) bool {
	const longest = 200
	if name == "" || len(name) > longest || strings.HasPrefix(name, ".") || strings.ContainsAny(name, `/\:`) ||
		!filepath.IsLocal(name) || plain.Line(name) != name {
		return false
	}
	for _, known := range kinds() {
		if known.kind == k {
			return strings.HasSuffix(name, known.ends) && name != known.ends && (k != Beside || slices.Contains(besides(), name))
		}
	}
	return false
}
