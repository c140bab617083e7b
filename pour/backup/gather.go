package backup

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pourbench/pour/disk"
	"pourbench/pour/planfile"
)

// Gather reads what is to be kept. What is there and cannot be kept is returned as errors beside the rest; a plan that was opened once
// and is gone is no error.
func Gather(p Places) (files []File, left []error) {
	g := gathering{places: p, names: map[string]bool{}}
	known, err := planfile.Known(p.State)
	g.note(err)
	for _, path := range known {
		g.take(Plan, path)
	}
	g.take(Shelf, p.Shelf)
	g.folder(Pour, p.Book)
	for _, name := range besides() {
		g.take(Beside, filepath.Join(p.Data, name))
	}
	g.folder(Journal, p.State)
	return g.files, g.left
}

// gathering is what was gathered so far.
type gathering struct {
	places Places
	files  []File
	names  map[string]bool // of the archive, in small letters
	left   []error
}

func (g *gathering) note(err error) {
	if err != nil {
		g.left = append(g.left, err)
	}
}

// folder takes every file of a kind in a folder.
func (g *gathering) folder(k Kind, dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		g.note(fmt.Errorf("%w: keep what is in %q", disk.Reason(err), dir))
	}
	for _, known := range kinds() {
		for _, e := range entries {
			if known.kind == k && strings.HasSuffix(e.Name(), known.ends) {
				g.take(k, filepath.Join(dir, e.Name()))
			}
		}
	}
}

// take reads one file.
func (g *gathering) take(k Kind, path string) {
	f, info, err := disk.Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return
	}
	var content []byte
	if err == nil {
		content, err = io.ReadAll(io.LimitReader(f, mostFile+1))
		err = errors.Join(err, f.Close())
	}
	name := g.free(k, filepath.Base(path))
	switch {
	case err != nil:
	case len(content) > mostFile:
		err = fmt.Errorf("it is larger than %d MB, as no %s is", mostFile>>20, k)
	case name == "":
		err = errors.New("its name cannot stand in an archive; give it one of letters, digits and hyphens")
	}
	if err != nil {
		g.note(fmt.Errorf("%w: keep the %s %q", disk.Reason(err), k, path))
		return
	}
	g.names[strings.ToLower(member(k, name))] = true
	g.files = append(g.files, File{Kind: k, Name: name, From: g.places.from(path), Modified: info.ModTime(), Content: content})
}

// free is a name that no other file of the archive has, also where capitals do not count: plans of one name may lie in several folders.
func (g *gathering) free(k Kind, name string) string {
	if k == Shelf {
		name = "shelf.toml"
	}
	if !proper(k, name) {
		return ""
	}
	ext := filepath.Ext(name)
	stem := strings.TrimSuffix(name, ext)
	for n := 2; g.names[strings.ToLower(member(k, name))]; n++ {
		name = fmt.Sprintf("%s-%d%s", stem, n, ext)
	}
	return name
}

// from is a path as an archive tells it: from the maker's home where it lies there, which may be elsewhere on another machine.
func (p Places) from(path string) string {
	if rest, ok := strings.CutPrefix(path, p.Home+string(filepath.Separator)); ok && p.Home != "" {
		return "~/" + filepath.ToSlash(rest)
	}
	return filepath.ToSlash(path)
}
