package command

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/lot"
	"pourbench/pour/plain"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/pour/stock/invoice"
	"pourbench/pour/stock/taking"
)

// packCommand takes packaging for the bars of a batch.
func (g *program) packCommand() *cobra.Command {
	cmd := g.book("pack ID [WHAT COUNT]", "Take packaging for the bars of a batch", anyWords, "", func(book logbook.Book, shelf pour.Shelf, args []string) error {
		said, err := g.packBars(book, shelf, args[0], args[1:])
		return errors.Join(g.print(said), err)
	})
	cmd.Example = "  pourbench stock pack " + examplePour + " box 24 label 24"
	cmd.Long = `Take packaging for the bars of a batch: boxes, labels, bands, by the piece. What you name is
taken each time, so that bars can be packed a few at a time. Without it the pieces are
taken that the plan wants for the bars that can be sold, as far as they were not taken.`
	return cmd
}

// packBars takes pieces of packaging for a batch.
func (g *program) packBars(book logbook.Book, shelf pour.Shelf, id string, words []string) (string, error) {
	record, sheet, _, err := g.poured("take stock for", book, shelf, id)
	if err != nil {
		return "", err
	}
	if len(words) == 0 {
		return g.packAll(book, shelf, record, &sheet)
	}
	var t taking.Taking
	_, err = g.ledger().Decide(g.now(), session(), func(s stock.State) ([]stock.Entry, error) {
		wants, err := wanted(s.Stock, words)
		if err != nil {
			return nil, err
		}
		for _, w := range wants {
			if w.Material.Kind != lot.Packaging {
				return nil, fmt.Errorf("pack %s: %s is no packaging but %s", id, w.Name, w.Material)
			}
		}
		if t = taking.Of(wants, s.Stock, g.today()); len(t.Draws) == 0 {
			return nil, errNothing
		}
		return t.Entries(id, g.today()), nil
	})
	if err != nil && !errors.Is(err, errNothing) {
		return "", err
	}
	return t.Tell(), g.enterDrawn(book, shelf, id, nil)
}

// packAll takes the packaging that the plan wants for the bars that can be sold, as far as it was not taken.
func (g *program) packAll(book logbook.Book, shelf pour.Shelf, record logbook.Pour, sheet *pour.Sheet) (string, error) {
	bars, known := taking.Bars(life.Of(record, shelf, pour.Hand{}, g.today()))
	if !known {
		bars = sheet.SaleableBars()
	}
	var wants []taking.Want
	for _, n := range record.Plan.Cost.PackagingFor(bars.Good) {
		wants = append(wants, taking.Want{MaterialNeed: n})
	}
	if len(wants) == 0 {
		return "", fmt.Errorf("pack %s: its plan names no packaging; name it: pourbench stock pack %s box %d", record.ID, record.ID, bars.Good)
	}
	return g.draw(book, shelf, record.ID, g.today(), wants)
}

// wanted reads what is named with how much of it, one behind the other.
func wanted(s lot.Stock, words []string) ([]taking.Want, error) {
	if len(words) == 0 || len(words)%2 != 0 {
		return nil, fmt.Errorf("read %q: write each thing and how much of it, as in olive 3kg coconut 2kg; a name of several words in quotes", strings.Join(words, " "))
	}
	var out []taking.Want
	for i := 0; i < len(words); i += 2 {
		m, name, err := taking.Find(s, words[i])
		if err != nil {
			return nil, err
		}
		q, err := invoice.Quantity(words[i+1], m.Kind)
		if err != nil {
			return nil, err
		}
		if q <= 0 {
			return nil, fmt.Errorf("read %q of %s: write more than nothing", words[i+1], name)
		}
		out = append(out, taking.Want{MaterialNeed: pour.MaterialNeed{Material: m, Name: name, Q: q}})
	}
	return out, nil
}

// makeCommand makes a pack of other packs.
func (g *program) makeCommand() *cobra.Command {
	m := taking.Making{}
	kind, expires := "", ""
	cmd := &cobra.Command{
		Use: "make NAME AMOUNT WHAT AMOUNT", Short: "Make something beforehand out of packs: a blend of oils, stock lye, a sprinkle blend, embeds", Args: takes(anyWords),
		Long: `Make something beforehand out of packs: oils mixed for many batches, a stock lye, a sprinkle
blend, embeds. It is a pack of its own, with what went into it, a lot, what it cost, and the
day on which the first of what went in expires, and plans take it by its name: a ready blend
by the name the plan has for it, a stock lye as stock-lye, embeds by theirs. Water needs no
pack.`,
		Example: `  pourbench stock make "House blend" 5kg olive 3kg coconut 2kg
  pourbench stock make stock-lye 2kg naoh 1kg water 1kg
  pourbench stock make --kind embed moon 40 olive 600g`,
		RunE: func(_ *cobra.Command, args []string) error {
			m.Name = plain.Line(args[0])
			k, err := madeKind(kind)
			if err != nil {
				return err
			}
			m.Material = lot.Material{Kind: k, ID: plain.Slug(m.Name, string(k))}
			if m.Q, err = invoice.Quantity(args[1], k); err != nil {
				return err
			}
			if m.On = g.today(); expires != "" {
				if m.Expires, err = g.day(expires); err != nil {
					return fmt.Errorf("make %s: --expires %q: %w", m.Name, expires, err)
				}
			}
			return g.atDesk(func(s stock.State) (desk.Deed, error) { return made(m, s, args[2:]) })
		},
	}
	cmd.Flags().StringVar(&kind, "kind", string(lot.Blend), "what it is: blend, in grams, or embed, in pieces")
	cmd.Flags().StringVar(&m.Lot, "lot", "", "a lot of your own (default: the name of the pack)")
	cmd.Flags().StringVar(&expires, "expires", "", "the last day it may be used (default: when the first of what went in expires)")
	return cmd
}

// madeKind is the kind of what is made beforehand.
func madeKind(word string) (lot.Kind, error) {
	for _, k := range []lot.Kind{lot.Blend, lot.Embed, lot.Topping} {
		if word == string(k) {
			return k, nil
		}
	}
	return "", fmt.Errorf("make a pack: --kind %q: write blend, embed or topping", word)
}

// made is what making something comes to.
func made(m taking.Making, s stock.State, words []string) (desk.Deed, error) {
	wants, err := wanted(s.Stock, words)
	if err != nil {
		return desk.Deed{}, err
	}
	m.Of, m.Pack, m.Lot = wants, desk.NextPack(s, m.Material), plain.Line(m.Lot)
	entries, t, err := m.Entries(s.Stock)
	if err != nil {
		return desk.Deed{}, err
	}
	pack := entries[len(entries)-1]
	said := []string{fmt.Sprintf("%s: %s %s of %s, lot %s%s, of", pack.Pack, pack.Q, pack.Material.Kind.Unit(), pack.Name, pack.Lot, usableTo(pack.Expires))}
	return desk.Deed{Entries: entries, Said: append(said, strings.TrimRight(t.Tell(), "\n"))}, nil
}

func usableTo(d day.Day) string {
	if d == 0 {
		return ""
	}
	return ", to be used by " + d.String()
}
