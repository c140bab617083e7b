// Package script is what is done with batter and tool, act by act, from the first jug to the last touch.
//
// The acts are worked out once from what a plan says: technique, passes, order, what is poured first and last, the pot between,
// and the shares. The picture, the run, the papers, the live run, the clock and the orders all read that one list, so that none
// of them can tell another pour than the others.
//
// The package knows jugs by their place in the batch alone, and neither plans nor moulds. Shares and parts are fractions.
package script

import (
	"errors"
	"fmt"
	"math"
)

// Kind says what is done in an act. The words are those of the run, the papers and the figures.
type Kind string

// The kinds of act.
const (
	Pour    Kind = "pour"          // a jug, or part of it, into the mould
	IntoPot Kind = "into the pot"  // a jug, or part of it, into the pot
	Turn    Kind = "turn"          // of a spoon or stick in the pot
	PourOut Kind = "pour out"      // the pot, or part of it, into the mould
	Wire    Kind = "draw the wire" // through the batter in the mould
	Comb    Kind = "comb"          // through the batter in the mould
	Spoon   Kind = "spoon"         // a jug, or part of it, by the spoonful into the mould
	Level   Kind = "level"         // the mould is tapped down, the top made even
	Pipe    Kind = "pipe"          // a bag of icing onto the bars
	Watch   Kind = "watch"         // a jug of a trial: stirred and looked at, poured nowhere

	Peak  Kind = "try a peak"             // whether the base carries what is piped on it
	Fill  Kind = "fill the bag"           // with a jug of icing, or with all of them side by side
	Embed Kind = "set embeds"             // one kind of piece into the base or the icing
	Strew Kind = "strew"                  // a topping, sprayed and dusted ones too
	Firm  Kind = "try whether it is firm" // the loaf, before it is cut
	Mark  Kind = "lay the marks"          // along the loaf
	Cut   Kind = "cut"                    // one wire or blade through the loaf, or all wires of a gang
	Aside Kind = "set aside"              // trims and the sample slice
	Weigh Kind = "weigh"                  // one piece of what was cut
	Wipe  Kind = "wipe"                   // what cut, and the bed under it
)

// Kinds lists every kind of act: those of a batch, then those done to the loaf.
func Kinds() []Kind {
	return []Kind{Pour, IntoPot, Turn, PourOut, Wire, Comb, Spoon, Level, Pipe, Watch, Peak, Fill, Embed, Strew, Firm, Mark, Cut, Aside, Weigh, Wipe}
}

// Whole stands in the place of a jug where an act concerns everything in the pot, in the bag or in the mould.
const Whole = -1

// Act is one thing done with batter or tool.
type Act struct {
	Kind   Kind
	Jug    int       // its place in the batch, or Whole
	Part   float64   // of the jug that the act uses, of the pot where it is poured out: above 0 to 1; 0 for a tool
	Share  float64   // of the batch's batter that the act moves into the pot or the mould; 0 for a tool
	Round  int       // the pass it belongs to, from 1; 0 where the technique has none
	Rounds int       // how many passes of its kind there are; 0 where the technique has none
	Lines  []float64 // where along the mould it is poured, each from 0 at the left wall to 1 at the right, seen from the marked end; none: over the whole width
	Bed    bool      // the first pour, into which the others are poured
	Along  bool      // a comb drawn from end to end; else from wall to wall
	Item   int       // of what is set, strewn, cut or weighed: its place among its kind, from 0
	Times  int       // a bag is filled so often, a jug piped in so many units; 0: not told
	Wait   bool      // it waits until the top has skinned
	Into   bool      // an embed that goes into the base, before any icing
}

// Script is every act of a batch in the order they are done. It never changes.
type Script struct {
	Brief Brief // what it was worked out from, with the technique's own dials and the order settled
	Acts  []Act
}

// Brief is everything a script depends on; equal briefs give equal scripts.
type Brief struct {
	Technique  Technique
	Shares     []float64 // of the batter by jug, the pot first; they sum to 1 within 0.001
	Order      []int     // jugs as they are poured; one that is left out comes after the others in the batch's order
	First      int       // the jug poured first whatever the order says, or Whole for none
	Last       int       // the jug poured last, or Whole for none
	PotBetween bool      // some of the pot between every two other jugs
	Passes     int       // 0: the technique's own; at most [Technique.MostPasses] are done
	Turns      float64   // of the tool; 0: the technique's own; at most 8 are done
	HeightMM   float64   // poured from, above the batter; 0: the technique's own; at most 600 is used
	Seed       int64     // which of the many faces
}

// MostJugs is the greatest number of jugs a brief may have.
const MostJugs = 32

// ErrBrief is wrapped by every error of [New]: no script can be made of the brief.
var ErrBrief = errors.New("the pour cannot be scripted")

// New works out the acts of a brief. It refuses a technique it does not know, shares that are none and places that are no jug's
// with an error that wraps [ErrBrief].
func New(b Brief) (Script, error) {
	if err := b.check(); err != nil {
		return Script{}, err
	}
	b.Shares = append([]float64(nil), b.Shares...)
	sum := 0.0
	for _, v := range b.Shares {
		sum += v
	}
	for i := range b.Shares {
		b.Shares[i] /= sum
	}
	b.Order = b.settled()
	d := b.dials()
	b.Passes, b.Turns, b.HeightMM = d.Passes, d.Turns, d.HeightMM
	if !b.Technique.InPot() && b.Technique != Combed && (Script{Brief: b}).Filled() == 1 {
		b.Passes = min(b.Passes, 1) // one jug has no rounds
	}
	w := writer{Brief: b, dice: NewDice(b.Seed, 0x5c21)}
	w.write()
	return Script{Brief: b, Acts: w.acts}, nil
}

func (b Brief) check() error {
	if !b.Technique.Known() {
		return fmt.Errorf("%w: technique %q is not known; use one of %v", ErrBrief, b.Technique, Techniques())
	}
	n := len(b.Shares)
	if n < 1 || n > MostJugs {
		return fmt.Errorf("%w: it has %d jugs; use 1 to %d", ErrBrief, n, MostJugs)
	}
	sum := 0.0
	for i, v := range b.Shares {
		if !(v >= 0 && v <= 1.001) {
			return fmt.Errorf("%w: jug %d has a share of %g; use a fraction from 0 to 1", ErrBrief, i+1, v)
		}
		sum += v
	}
	if math.Abs(sum-1) > 0.001 {
		return fmt.Errorf("%w: the shares sum to %g; make them sum to 1", ErrBrief, sum)
	}
	for _, j := range append([]int{b.First, b.Last}, b.Order...) {
		if j < Whole || j >= n {
			return fmt.Errorf("%w: there is no jug at place %d among %d", ErrBrief, j, n)
		}
	}
	if b.Passes < 0 || !(b.Turns >= 0) || !(b.HeightMM >= 0) || math.IsInf(b.Turns+b.HeightMM, 0) {
		return fmt.Errorf("%w: passes %d, turns %g and height %g mm must not be negative or infinite; use 0 for the technique's own",
			ErrBrief, b.Passes, b.Turns, b.HeightMM)
	}
	return nil
}

// settled is the order as it is poured: every jug once, the pins at their ends, and the pot first where everything goes into it.
func (b Brief) settled() []int {
	seen := make([]bool, len(b.Shares))
	order := make([]int, 0, len(b.Shares))
	add := func(j int) {
		if j >= 0 && !seen[j] && j != b.Last {
			seen[j] = true
			order = append(order, j)
		}
	}
	last := b.Last
	if b.Technique.InPot() {
		add(0)
		if last == 0 {
			last = Whole // the pot cannot be poured into itself last
		}
		if b.Last == 0 && !seen[0] {
			seen[0] = true
			order = append(order, 0)
		}
	}
	add(b.First)
	for _, j := range b.Order {
		add(j)
	}
	for j := range b.Shares {
		add(j)
	}
	if last != Whole && !seen[last] {
		order = append(order, last)
	}
	return order
}

// Equal says whether two briefs give the same script.
func (b Brief) Equal(o Brief) bool {
	if len(b.Shares) != len(o.Shares) || len(b.Order) != len(o.Order) {
		return false
	}
	for i := range b.Shares {
		if b.Shares[i] != o.Shares[i] {
			return false
		}
	}
	for i := range b.Order {
		if b.Order[i] != o.Order[i] {
			return false
		}
	}
	return b.Technique == o.Technique && b.First == o.First && b.Last == o.Last && b.PotBetween == o.PotBetween &&
		b.Passes == o.Passes && b.Turns == o.Turns && b.HeightMM == o.HeightMM && b.Seed == o.Seed
}
