package command

import (
	"fmt"
	"os"
	"strings"

	"pourbench/pour"
	"pourbench/pour/stock"
	"pourbench/pour/stock/shopping"
	"pourbench/tui/stockroom"
)

// showStock opens the page of stock on this terminal, or talks of it in lines; words are searched for at first.
func (g *program) showStock(words []string) error {
	shelf, err := g.shelf()
	if err != nil {
		return err
	}
	o := g.stockOptions(shelf)
	o.Search = strings.Join(words, " ")
	if g.talk.In != nil || g.plain {
		return stockroom.Converse(o, g.talking())
	}
	return stockroom.Open(o)
}

// stockOptions is what the page of stock can do.
func (g *program) stockOptions(shelf pour.Shelf) stockroom.Options {
	l := g.ledger()
	o := stockroom.Options{
		Today: g.today(), File: l.Path(), Shelf: shelf, Colour: g.colour, Background: g.background, NoMouse: g.noMouse, Environ: g.Environ,
		Read: g.stockReader(l.Path()),
		Decide: func(decide func(stock.State) ([]stock.Entry, error)) ([]stock.Entry, error) {
			return l.Decide(g.now(), session(), decide)
		},
		Shopping: func() (string, error) { return g.shoppingText() },
		Expiring: func() (string, error) { return g.expiringText(shopping.Month) },
		Trace:    g.traceText,
	}
	o.Keys, o.KeyFaults = g.keys()
	return o
}

// stockReader reads what lies there with what is reserved of it. A ledger whose file is as it was is not read again.
func (g *program) stockReader(file string) func() (stock.State, error) {
	var was string
	var state stock.State
	return func() (stock.State, error) {
		stamp := ""
		if info, err := os.Stat(file); err == nil {
			stamp = fmt.Sprint(info.Size(), info.ModTime().UnixNano())
		}
		if stamp != "" && stamp == was {
			return state, nil
		}
		s, err := g.stocked()
		if err != nil {
			return s, err
		}
		if f, err := g.reserved(s); err == nil { // without the season nothing is reserved, and the stock can be seen all the same
			s.Stock = f.Stock
		}
		was, state = stamp, s
		return s, nil
	}
}
