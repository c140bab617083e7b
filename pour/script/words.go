package script

import (
	"fmt"
	"math"
	"strconv"
)

// How says in words how an act is done, without its jug and its grams; length draws a length in mm as the maker reads it.
func (s Script) How(a Act, length func(mm float64) string) string {
	from := ""
	if s.Brief.HeightMM > 0 {
		from = " from " + length(s.Brief.HeightMM)
	}
	switch a.Kind {
	case Pour:
		return s.pouring(a, from)
	case IntoPot:
		return s.potting(a)
	case Turn:
		return turnsOf(s.Brief.Turns) + " of the spoon through the pot, no more"
	case PourOut:
		if s.Brief.Technique == PotEnd {
			return "from the marked end, and let it run" + from
		}
		return "along the middle, there and back" + from
	case Wire:
		return s.wiring()
	case Comb:
		if a.Along {
			return "along the mould, from end to end, there and back, " + count(math.Round(s.Brief.Turns)) + " tines side by side"
		}
		return "across the mould, from wall to wall, there and back, " + count(math.Round(2*s.Brief.Turns)) + " tines side by side"
	case Spoon:
		return "here and there over the whole mould"
	case Level:
		return "tap the mould down"
	case Pipe:
		if a.Jug == Whole {
			return "side by side in one bag"
		}
	case Watch:
		return "stir every half minute and mark each stage when it is seen"
	}
	return ""
}

func (s Script) pouring(a Act, from string) string {
	switch {
	case a.Bed:
		return "level, as the bed"
	case s.Brief.Technique == Drop:
		return "in a thin stream" + from
	case s.Brief.Technique == Column:
		return "down one line" + from
	case s.Brief.Technique == Combed:
		return "in stripes side by side from the left wall on, each round going on to the right of the last"
	}
	return "level over the whole width, over a spoon"
}

func (s Script) potting(a Act) string {
	switch {
	case s.Brief.Technique == PotStripes:
		return "in stripes side by side across the " + half(a) + " half of it" + s.apart()
	case s.Brief.Technique != PotSpots:
		return "side by side, like slices of a cake, round the " + half(a) + " half of it" + s.apart()
	case a.Round <= 1:
		return "one into the other in the middle of the pot"
	}
	return "one into the other in a new place beside it"
}

// half is which half of the pot a round fills; there are two.
func half(a Act) string {
	if a.Round <= 1 {
		return "near"
	}
	return "far"
}

// apart says where the pot's own batter is left to be seen between the colours.
func (s Script) apart() string {
	switch {
	case s.Brief.Shares[0] == 0:
		return ""
	case s.Brief.PotBetween:
		return ", some of the pot left free between every two"
	}
	return ", some of the pot left free before the first"
}

func (s Script) wiring() string {
	n := count(s.Brief.Turns)
	switch s.Brief.Technique {
	case HangerLoops:
		return "in " + n + " loops while it crosses the mould, along the whole loaf"
	case HangerSpiral:
		return "in a spiral of " + n + " turns from the middle out and back across it, along the whole loaf"
	}
	return "down and up " + n + " times while it crosses the mould, along the whole loaf"
}

func count(turns float64) string { return strconv.FormatFloat(turns, 'g', 3, 64) }

func turnsOf(turns float64) string {
	switch {
	case turns == 1:
		return "one turn"
	case math.Abs(turns-0.5) < 1e-9:
		return "half a turn"
	}
	return count(turns) + " turns"
}

// Where says in a word or two where along the mould an act is poured, left and right as seen from the marked end; "" where it is poured
// over the whole width or along one line that all share.
func (s Script) Where(a Act) string {
	if s.Brief.Technique != Drop || len(a.Lines) == 0 {
		return ""
	}
	if len(a.Lines) == 1 {
		return "(" + side(a.Lines[0]) + ")"
	}
	return fmt.Sprintf("(%s, then %s)", side(a.Lines[0]), side(a.Lines[1]))
}

func side(line float64) string {
	switch {
	case line < 0.2:
		return "far left"
	case line < 0.42:
		return "left"
	case line <= 0.58:
		return "middle"
	case line <= 0.8:
		return "right"
	}
	return "far right"
}
