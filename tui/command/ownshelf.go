package command

import (
	"strings"

	"pourbench/pour"
	"pourbench/pour/shelffile"
	"pourbench/tui"
)

// ownShelf is the maker's own shelf file for the bench: what it says, and how it is changed.
func (g *program) ownShelf() tui.OwnShelf {
	path := g.shelfPath()
	file := shelffile.New(path, func(text string) error {
		base, err := g.built.Shelf()
		if err != nil {
			return err
		}
		_, err = g.built.Overlay(base, path, strings.NewReader(text))
		return err
	})
	return tui.OwnShelf{
		Entry: g.built.Entry,
		Named: func() (map[pour.EntryName][]string, error) {
			text, _, err := file.Text()
			if err != nil {
				return nil, err
			}
			return shelffile.Named(path, text)
		},
		Change: func(c pour.ShelfChange) (func() error, error) {
			done, err := file.Change(c)
			if err != nil {
				return nil, err
			}
			return func() error { return file.Back(done) }, nil
		},
		Shelf: g.shelf,
	}
}
