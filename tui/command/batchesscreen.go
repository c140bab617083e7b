package command

import (
	"runtime"
	"strings"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/pour/season"
	"pourbench/tui"
	"pourbench/tui/batches"
	"pourbench/tui/live"
	"pourbench/tui/terminal"
)

// showBatches opens the page of batches on this terminal, or talks of them in lines; words are searched for at first. A pour that is to be
// poured again is returned as a new plan.
func (g *program) showBatches(shelf pour.Shelf, words []string, order life.Sort) (tui.Poured, error) {
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return tui.Poured{}, err
	}
	o := g.batchesOptions(book, shelf)
	o.Order = order
	o.Search = strings.Join(words, " ")
	open := batches.Open
	if g.talk.In != nil || g.plain {
		open = func(o batches.Options) (*batches.Poured, error) { return batches.Converse(o, g.talking()) }
	}
	poured, err := open(o)
	if err != nil || poured == nil {
		return tui.Poured{}, err
	}
	return tui.Poured{Plan: &poured.Plan, Said: poured.Said}, nil
}

// batchesOptions is what the page of batches can do.
func (g *program) batchesOptions(book logbook.Book, shelf pour.Shelf) batches.Options {
	hand := g.quietHand(shelf)
	o := batches.Options{
		Today: g.today(), Folder: book.Folder(), Colour: g.colour, Background: g.background, Pixels: g.pixels, NoMouse: g.noMouse, Environ: g.Environ,
		Read: func() ([]life.Batch, error) { return life.All(book, shelf, hand, g.today()) },
		Detail: func(id string) (batches.Detail, error) {
			p, err := book.Read(id, shelf)
			if err != nil {
				return batches.Detail{}, err
			}
			return batches.Detail{Plan: p.Plan, Marks: life.Marks(p.Events)}, nil
		},
		Log: func(id string, e logbook.Event) (life.Logged, error) {
			return life.Log(book, shelf, id, e, g.now(), session())
		},
		Again: func(id string) (pour.Plan, string, error) { return g.pouredAgain(shelf, id) },
		Cut: func(id string) error {
			return g.pourLive(live.Options{Resume: id, Cut: true, Shelf: shelf, Hand: g.quietHand(shelf)})
		},
		Scents: g.scentsOf(book, shelf),
		Scent:  func(scent string) (title, text string, err error) { return g.scentText(book, shelf, scent) },
		Write: func(path, text string) error {
			return disk.OS().Save(path, disk.Bytes([]byte(text)), disk.Want{Mode: disk.Shared, New: true})
		},
		Season: func() (season.Board, string, error) {
			b, err := g.seasonBoard()
			if err != nil {
				return season.Board{}, "", err
			}
			return b, paper.SeasonText(b), nil
		},
		Calendar: g.calendarFile,
		Record:   func(id string) (string, error) { return g.batchRecord(book, shelf, id) },
		Show:     func(path string) error { return terminal.OpenFile(runtime.GOOS, path) },
	}
	o.Keys, o.KeyFaults = g.keys()
	return o
}

// batchesHere opens the page of batches, in an order, on those that hold every word, and, for a pour that is to be poured again, the bench with its new plan.
func (g *program) batchesHere(shelf pour.Shelf, words []string, order life.Sort) error {
	poured, err := g.showBatches(shelf, words, order)
	if err != nil || poured.Plan == nil {
		return err
	}
	return g.bench(planfile.Document{Plan: *poured.Plan}, shelf, poured.Said, g.talk.In != nil || g.plain)
}
