// Package trace follows lots through a maker's house: from a supplier's lot by its packs to blends and embeds, to batches, to their bars and to
// where these are; and from bars back to every lot that is in them or around them. It only reads: the ledger has what moved, the logbook what
// became of the bars.
package trace

import (
	"strings"

	"pourbench/pour/lot"
)

// Kind is what a thing is.
type Kind string

// The kinds of thing, in the order in which material runs through a house.
const (
	Lot   Kind = "lot"   // what bears one lot number of one material, in one pack or in several
	Pack  Kind = "pack"  // a pack that came, or was made
	Batch Kind = "batch" // a pour
	Bars  Kind = "bars"  // the bars of one batch that were labelled with one lot
	Place Kind = "place" // bars of one batch that are at one place: sold, given, kept, seconds, missing, left
)

// Kinds lists the kinds in the order in which material runs.
func Kinds() []Kind { return []Kind{Lot, Pack, Batch, Bars, Place} }

// Thing is one thing that can be traced. Two are the same when they compare as equal.
type Thing struct {
	Kind     Kind
	ID       string       // of a lot its number, in small letters; of a pack and a batch theirs; of bars their label's lot; of a place the event's or a word
	Material lot.Material // of a lot; where no ledger names it, its ID is what was weighed and its kind is empty
	Of       string       // of bars and of a place: the id of their batch
}

// PackOf is the pack with an id.
func PackOf(id string) Thing { return Thing{Kind: Pack, ID: id} }

// BatchOf is the batch with an id.
func BatchOf(id string) Thing { return Thing{Kind: Batch, ID: id} }

// LotOf is all of a material that bears a number.
func LotOf(m lot.Material, number string) Thing {
	return Thing{Kind: Lot, Material: m, ID: folded(number)}
}

// BarsOf are the bars of a batch that are labelled with a lot.
func BarsOf(batch, label string) Thing { return Thing{Kind: Bars, ID: folded(label), Of: batch} }

// folded is a number or a name as it is compared: without regard to capitals and to blanks around and between, which labels are typed with as it comes.
func folded(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }

// Way is the direction in which a thing is followed.
type Way string

// The ways.
const (
	Forward  Way = "forward"  // where it went
	Backward Way = "backward" // what went into it
)

// Link is what goes from one thing into another.
type Link struct {
	From, To Thing
	Q        lot.Quantity // that was taken, in the unit of the pack; 0 where the link is none of material
	Entries  []string     // ids of the ledger's entries
	Jugs     []string     // into which it went; none: the whole batch
	Whole    bool         // some of it went into the whole batch beside what went into the jugs
	Planned  lot.Quantity // of Q, was weighed by nobody: it is what the plan has
	Doubt    string       // what is odd about it; empty: nothing
}
