package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/life"
	"pourbench/pour/logbook/scents"
	"pourbench/pour/paper"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// exampleScent is the scent in the examples.
const exampleScent = "alp-rose"

// scentCommand tells what all pours say of a scent, or lists all scents.
func (g *program) scentCommand() *cobra.Command {
	cmd := g.book("scent [ID]", "What all your pours say of a scent: clock, trouble, browning, strength by week, whom it went to", 1, "", func(book logbook.Book, shelf pour.Shelf, args []string) error {
		pages, unread, err := g.scentPages(book, shelf)
		if err != nil {
			return err
		}
		if len(args) == 0 {
			return g.print(paper.ScentList(pages, unread))
		}
		page, err := scentOf(pages, shelf, args[0])
		if err != nil {
			return err
		}
		for _, u := range unread {
			g.say("pour %s says nothing of it: %v", u.ID, u.Err)
		}
		return g.print(paper.ScentText(page, paper.ScentOnPaper))
	})
	cmd.Long = `What all your pours say of a scent: how often it was poured, what the clock has
learnt of it, trouble, browning as predicted and as seen, how strong it was week
by week since the cut as you sniffed it, your words, and whom its bars went to.
Without ID it lists every scent that was poured or sniffed.`
	cmd.Example = "  pourbench scent " + exampleScent
	return cmd
}

// scentPages are the pages of all scents of the book, with what the clock has learnt of them.
func (g *program) scentPages(book logbook.Book, shelf pour.Shelf) ([]scents.Page, []learn.Unread, error) {
	lesson, _, err := g.taught(shelf) // what teaches nothing is said below, once
	if err != nil {
		return nil, nil, err
	}
	return scents.FromBook(book, shelf, lesson)
}

// scentOf is the page of a scent by its id or its name. One of the shelf that was neither poured nor sniffed has a page without marks.
func scentOf(pages []scents.Page, shelf pour.Shelf, of string) (scents.Page, error) {
	var known []string
	for _, p := range pages {
		if strings.EqualFold(p.ID, of) || strings.EqualFold(p.Name, of) {
			return p, nil
		}
		known = append(known, p.ID)
	}
	for _, s := range shelf.Scents {
		if strings.EqualFold(s.ID, of) || strings.EqualFold(s.Name, of) {
			return scents.Of(s), nil
		}
		if !slices.Contains(known, s.ID) {
			known = append(known, s.ID)
		}
	}
	return scents.Page{}, fmt.Errorf("tell of the scent %q: it is neither in the logbook nor on the shelf; %s", plain.Line(of), strict.Meant(of, known, "pourbench scent lists those of the logbook", "pourbench scent lists those of the logbook"))
}

// scentsOf are the scents of a pour's plan, each once; they are read once, for the page of batches asks often.
func (g *program) scentsOf(book logbook.Book, shelf pour.Shelf) func(id string) []string {
	known := map[string][]string{}
	return func(id string) []string {
		of, ok := known[id]
		if ok {
			return of
		}
		if p, err := book.Read(id, shelf); err == nil {
			for _, f := range life.Fields(&logbook.Event{Kind: logbook.Sniffed}, p.Plan) {
				if f.Key == "scent" {
					of = f.Words
				}
			}
		}
		known[id] = of
		return of
	}
}

// scentText is the page of a scent for a screen, with its title.
func (g *program) scentText(book logbook.Book, shelf pour.Shelf, id string) (title, text string, err error) {
	pages, _, err := g.scentPages(book, shelf)
	if err != nil {
		return "", "", err
	}
	page, err := scentOf(pages, shelf, id)
	if err != nil {
		return "", "", err
	}
	return page.Name, paper.ScentText(page, paper.ScentOnScreen), nil
}
