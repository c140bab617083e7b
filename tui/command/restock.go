package command

import (
	"fmt"
	"os"
	"strings"
	"sync"

	"pourbench/pour"
	"pourbench/pour/house"
	"pourbench/pour/labelfile"
	"pourbench/tui"
)

// restock reads the shelf again where one of the files behind it changed since it was asked last, or since the bench was opened.
func (g *program) restock() tui.Restock {
	var one sync.Mutex // it is asked beside the keyboard, twice at once when the terminal comes back into focus just then
	was := g.behindShelf()
	return func() (pour.Shelf, bool, error) {
		one.Lock()
		defer one.Unlock()
		now := g.behindShelf()
		if now == was {
			return pour.Shelf{}, false, nil
		}
		was = now // a file that cannot be read is told of once
		shelf, err := g.shelf()
		return shelf, err == nil, err
	}
}

// behindShelf tells the files that the shelf is made of apart by their sizes and times.
func (g *program) behindShelf() string {
	var b strings.Builder
	for _, path := range []string{g.shelfPath(), g.ledger().Path(), house.NewStore(g.dataDir()).Path(), labelfile.NewStore(g.dataDir()).Path()} {
		if info, err := os.Stat(path); err == nil {
			fmt.Fprintln(&b, path, info.Size(), info.ModTime().UnixNano())
		}
	}
	return b.String()
}

// asItIs is the shelf as it is by now, or as it was where it cannot be read.
func (g *program) asItIs(was pour.Shelf) pour.Shelf {
	if shelf, err := g.shelf(); err == nil {
		return shelf
	}
	return was
}
