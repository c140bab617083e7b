// Package presets is the shelf the program comes with, and the example plans: TOML files built into it. A maker's own
// shelf file is laid over them with [Overlay].
//
// Every entry says where its figures come from. Text is made safe for terminals once, when it is read.
package presets

import (
	"embed"
	"errors"
	"fmt"
	"path"
	"sort"
	"strings"
	"sync"

	"pourbench/pour"
	"pourbench/pour/strict"
)

//go:embed *.toml plans/*.toml
var files embed.FS

// demo is the plan the program opens when it is given none.
const demo = "alpine-meadow"

// shelfFiles lists the files of the shelf in the order they are read: scents name families and extracts among the allergens.
func shelfFiles() []string {
	return []string{
		"oils.toml", "colourants.toml", "extras.toml", "families.toml", "allergens.toml", "scents.toml", "moulds.toml", "techniques.toml", "toppings.toml",
		"names.toml", "markets.toml",
	}
}

// Shelf returns the shelf the program comes with. An error means the program was built with a broken file; tests keep that from happening.
func Shelf() (pour.Shelf, error) {
	docs, err := openAll(shelfFiles())
	if err != nil {
		return pour.Shelf{}, fmt.Errorf("read the built-in shelf: %w", err)
	}
	var s pour.Shelf
	for _, doc := range docs {
		if s, err = lay(s, doc, ""); err != nil {
			return pour.Shelf{}, fmt.Errorf("read the built-in shelf: %w", err)
		}
	}
	return s.Prepared()
}

// openAll parses the built-in files side by side: they are read at every start.
func openAll(names []string) ([]*strict.File, error) {
	docs, errs := make([]*strict.File, len(names)), make([]error, len(names))
	var done sync.WaitGroup
	for i, name := range names {
		done.Go(func() {
			text, err := files.ReadFile(name)
			if err != nil {
				errs[i] = err
				return
			}
			docs[i], errs[i] = form().Trust(name, string(text))
		})
	}
	done.Wait()
	return docs, errors.Join(errs...)
}

// Plans returns the names of the example plans; the first is the one the program opens when it is given none.
func Plans() []string {
	entries, err := files.ReadDir("plans")
	if err != nil {
		return nil // the directory is built in: it cannot fail
	}
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), ".toml"))
	}
	sort.SliceStable(names, func(i, j int) bool { return names[i] == demo && names[j] != demo })
	return names
}

// Plan returns the TOML of the example plan with that name.
func Plan(name string) ([]byte, error) {
	for _, known := range Plans() {
		if known == name {
			return files.ReadFile(path.Join("plans", name+".toml"))
		}
	}
	return nil, fmt.Errorf("open the example plan %q: there is none of that name; the examples are %s", name, strings.Join(Plans(), ", "))
}
