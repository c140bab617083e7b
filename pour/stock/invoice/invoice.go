// Package invoice understands what came as makers write it down or paste it from an invoice: a line for each thing with its size, its price and
// whatever else is known of it. It turns text into packs and says line by line what it understood and what it did not. It guesses nothing: what
// could be read in two ways is refused, and says how to write it. It knows no file and no clock.
package invoice

import (
	"fmt"
	"strings"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/plain"
)

// What an invoice may hold. What is longer was not meant to be one.
const (
	mostLines   = 500
	mostLetters = 400
)

// Kind is what a line was understood to be.
type Kind int

// What a line can be.
const (
	Blank    Kind = iota // nothing, or words without an amount
	Taken                // something that came
	Postage              // of all that came: shared over it by price
	Discount             // off all that came: shared over it by price
	Sum                  // what all of it comes to: checked
	Heading              // supplier or day of all lines below it
	Detail               // more of the thing in the line above
	Aside                // known, and not taken: tax
	Odd                  // not understood, or not alone
)

// Known is what names and days are read against.
type Known struct {
	Shelf    pour.Shelf
	Held     lot.Stock // names of packs that came before are known too
	Currency string    // of the ledger; empty: none yet
	Today    day.Day   // nothing was bought after it
}

// Item is something that came: one pack, or several that are alike.
type Item struct {
	Material lot.Material
	Name     string // what it is called
	New      bool   // it is not on the shelf, and none came before
	Packs    int
	Each     lot.Quantity // of one pack
	Price    money.Amount // of all packs
	Postage  money.Amount // of all packs
	Currency string       // as it was written; empty: none was
	Lot      string
	Supplier string
	Bought   day.Day
	Expires  day.Day      // 0: none
	Tare     lot.Quantity // of one empty tub, g; 0: not known
	Loss     lot.Quantity // usual, of one pack
}

// Line is one line of an invoice.
type Line struct {
	Text   string // as it stands, made safe
	Kind   Kind
	Item   Item         // Taken
	Amount money.Amount // Postage, Discount, Sum
	Notes  []string     // Taken: what was assumed of it
	Why    string       // Aside, Odd: why it is not taken, and how it could be
	Near   []string     // Odd: names that may be meant

	reading reading
}

// Invoice is what was understood of a text.
type Invoice struct {
	Lines []Line
	Cut   int // lines beyond those an invoice may hold
}

// Read understands a text, as far as it can be understood.
func Read(text string, known Known) Invoice {
	// Columns of a table are kept apart; cleaning would make blanks of tabs.
	lines := strings.Split(plain.Text(strings.NewReplacer("\t", " | ", ";", " | ").Replace(text)), "\n")
	var inv Invoice
	if over := len(lines) - mostLines; over > 0 {
		lines, inv.Cut = lines[:mostLines], over
	}
	b := newBook(known)
	for _, text := range lines {
		inv.Lines = append(inv.Lines, b.read(text))
	}
	inv.join()
	for i := range inv.Lines {
		if l := &inv.Lines[i]; l.Kind == Taken {
			*l = b.item(*l, known)
		}
	}
	return inv
}

// One understands a text that is to be one thing that came.
func One(text string, known Known) (Line, error) {
	inv := Read(text, known)
	var found *Line
	for i := range inv.Lines {
		switch l := &inv.Lines[i]; {
		case l.Kind == Blank && l.Text == "", l.Kind == Heading, l.Kind == Detail:
		case l.Kind != Taken:
			return *l, fmt.Errorf("read %q: %s", l.Text, l.refusal())
		case found != nil:
			return *l, fmt.Errorf("read %q: it is the second thing in one; write one at a time, or paste an invoice", l.Text)
		default:
			found = l
		}
	}
	if found == nil {
		return Line{}, fmt.Errorf("read %q: there is nothing in it; write what came, its size and its price, as in %s", strings.TrimSpace(plain.Line(text)), example)
	}
	return *found, nil
}

// example is a line that is understood.
const example = "olive 5 kg 38.50"

// refusal says why a line is no thing that came.
func (l Line) refusal() string {
	switch {
	case l.Why != "":
		return strings.TrimSuffix(l.Why+"; "+l.Meant(), "; ")
	case l.Kind == Blank:
		return "it has no size and no price; write them behind its name, as in " + example
	}
	return "it is " + l.Kind.String() + ", and nothing that came; write what came first, as in " + example
}

// String is a kind of line in words.
func (k Kind) String() string {
	return [...]string{"no amount", "taken", "postage", "a discount", "a sum", "for all lines", "more of the line above", "not taken", "not understood"}[k]
}

// Meant says what may be meant where no name was understood, or nothing.
func (l Line) Meant() string {
	if len(l.Near) == 0 {
		return ""
	}
	return "did you mean " + strings.Join(l.Near, ", ") + "?"
}

func (l Line) odd(why string) Line {
	l.Kind, l.Why = Odd, why
	return l
}

// join hands what stands in lines of its own to the things it belongs to.
func (inv *Invoice) join() {
	supplier, bought := "", day.Day(0)
	for _, l := range inv.Lines { // lines above the first heading go by it too
		if l.Kind == Heading {
			supplier, bought = firstOf(supplier, l.reading.supplier), firstOf(bought, l.reading.bought)
		}
	}
	last := -1
	for i := range inv.Lines {
		l := &inv.Lines[i]
		switch l.Kind {
		case Heading:
			supplier, bought = firstOf(l.reading.supplier, supplier), firstOf(l.reading.bought, bought)
		case Detail:
			if last < 0 {
				*l = l.odd("of what? Write it behind the thing it belongs to, or in the line below it")
				continue
			}
			if twice := inv.Lines[last].reading.add(l.reading); twice != "" {
				*l = l.odd("the line above has " + twice + " already: leave one")
			}
		case Taken, Odd:
			last = i
		}
		l.reading.supplier, l.reading.bought = firstOf(l.reading.supplier, supplier), firstOf(l.reading.bought, bought)
	}
}

// firstOf is the first of two that is there.
func firstOf[T comparable](a, b T) T {
	var none T
	if a != none {
		return a
	}
	return b
}

// Count is how many lines are of each kind.
func (inv *Invoice) Count(k Kind) int {
	n := 0
	for _, l := range inv.Lines {
		if l.Kind == k {
			n++
		}
	}
	return n
}
