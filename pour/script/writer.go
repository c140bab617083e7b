package script

import (
	"cmp"
	"math"
	"slices"
)

// writer writes the acts of one brief down.
type writer struct {
	Brief
	dice Dice
	acts []Act
}

func (w *writer) write() {
	switch w.Technique {
	case Drop:
		w.bedded(w.dropLines())
	case Column:
		w.bedded(w.columnLine())
	case Pot, PotStripes, PotSpots, PotEnd:
		w.pot()
	case Combed:
		w.stripes()
		w.tool(Comb, w.Passes)
	case Spooned:
		w.spoonfuls()
	default:
		w.layers()
	}
	w.acts = append(w.acts, Act{Kind: Level, Jug: Whole})
}

// turn is one jug's turn in a round.
type turn struct{ jug, round int }

// turns lists whose turn it is, round by round: every jug that has a share once in each, and with the pot between, some of the pot
// before every one that would otherwise follow another.
func (w *writer) turns(rounds int) []turn {
	var plain []turn
	for r := 1; r <= rounds; r++ {
		for _, j := range w.Order {
			if w.Shares[j] > 0 {
				plain = append(plain, turn{j, r})
			}
		}
	}
	if !w.PotBetween || w.Shares[0] == 0 {
		return plain
	}
	var out []turn
	for i, t := range plain {
		ends := i == 0 || i == len(plain)-1
		if t.jug == 0 && !ends {
			continue // it comes of itself, between the others
		}
		if n := len(out); n > 0 && out[n-1].jug != 0 && t.jug != 0 {
			out = append(out, turn{0, t.round})
		}
		out = append(out, t)
	}
	return out
}

// parts says how often each jug has a turn, from which follows what part of it is used in one.
func (w *writer) times(turns []turn) []float64 {
	n := make([]float64, len(w.Shares))
	for _, t := range turns {
		n[t.jug]++
	}
	return n
}

// use writes one act with part of a jug. Rounds are told only where there is more than one.
func (w *writer) use(kind Kind, t turn, rounds int, part float64) *Act {
	a := Act{Kind: kind, Jug: t.jug, Part: part, Share: part * w.Shares[t.jug]}
	if rounds > 1 {
		a.Round, a.Rounds = t.round, rounds
	}
	w.acts = append(w.acts, a)
	return &w.acts[len(w.acts)-1]
}

// layers pours every jug over the whole width, and draws a wire through where the technique has one.
func (w *writer) layers() {
	turns := w.turns(w.Passes)
	times := w.times(turns)
	for _, t := range turns {
		w.use(Pour, t, w.Passes, 1/times[t.jug])
	}
	if w.Technique != Layers {
		w.tool(Wire, 1)
	}
}

// tool writes the strokes of a tool through the whole mould.
func (w *writer) tool(kind Kind, strokes int) {
	for k := range strokes {
		a := Act{Kind: kind, Jug: Whole, Along: kind == Comb && k%2 == 1}
		if strokes > 1 {
			a.Round, a.Rounds = k+1, strokes
		}
		w.acts = append(w.acts, a)
	}
}

// bed is how much of the first jug makes the bed, when some of it is poured later again: streams need one to fall into, what runs down one
// line only one to run on.
func (w *writer) bed() float64 {
	if w.Technique == Column {
		return 0.3
	}
	return 0.62
}

// bedded pours a bed of the first jug, then every jug in turn along lines of the mould. The first round's turn of the bed's jug is the bed.
func (w *writer) bedded(lines func(turn) []float64) {
	turns := w.turns(w.Passes)
	times := w.times(turns)
	bed := turns[0].jug
	for i, t := range turns {
		part := 1 / times[t.jug]
		switch {
		case t.jug != bed || times[bed] == 1:
		case i == 0:
			part = w.bed()
		default:
			part = (1 - w.bed()) / (times[bed] - 1)
		}
		a := w.use(Pour, t, w.Passes, part)
		if i == 0 {
			a.Bed, a.Round, a.Rounds = true, 0, 0
			continue
		}
		a.Lines = lines(t)
	}
}

// lanes are the lines a drop comes back to: what falls where something fell before is poured into it and leaves the rest of the bed free.
const lanes = 6

// dropLines changes sides from jug to jug and, for each jug, from round to round; every other stream is led over to the far side. The lanes
// are not evenly apart, nor is one hit twice at the same place.
func (w *writer) dropLines() func(turn) []float64 {
	var at [lanes]float64
	for i := range at {
		at[i] = (float64(i)+0.5)/lanes + w.dice.Between(-0.045, 0.045)
	}
	lane := func(side int) float64 { // 0 left of the middle, 1 right of it
		i := side*(lanes/2) + int(w.dice.Float()*(lanes/2))
		return at[i] + w.dice.Between(-0.03, 0.03)
	}
	return func(t turn) []float64 {
		side := (w.used(t.jug) + slices.Index(w.Order, t.jug)) % 2
		line := lane(side)
		if w.dice.Float() < 0.5 {
			return []float64{line}
		}
		return []float64{line, lane(1 - side)}
	}
}

// used is how many acts of a jug are written before the last.
func (w *writer) used(jug int) (n int) {
	for _, a := range w.acts[:len(w.acts)-1] {
		if a.Jug == jug {
			n++
		}
	}
	return n
}

// columnLine is one line near the middle for the whole pour.
func (w *writer) columnLine() func(turn) []float64 {
	line := w.dice.Between(0.4, 0.6)
	return func(turn) []float64 { return []float64{line} }
}

// potRounds is how often the colours go round the pot.
func (t Technique) potRounds() int {
	if t == PotSpots {
		return 5
	}
	return 2
}

// pot pours the colours into the pot, turns them and pours it out. In spots one colour goes into the other, another one outermost each
// time, so the order goes on by one from round to round.
func (w *writer) pot() {
	var colours []int
	for _, j := range w.Order {
		if j != 0 && w.Shares[j] > 0 {
			colours = append(colours, j)
		}
	}
	rounds := w.Technique.potRounds()
	for r := range rounds {
		for k := range colours {
			j := colours[k]
			if w.Technique == PotSpots {
				j = colours[(k+r)%len(colours)]
			}
			w.use(IntoPot, turn{j, r + 1}, rounds, 1/float64(rounds))
		}
	}
	if len(colours) > 0 {
		w.tool(Turn, 1)
	}
	side := w.dice.Sign()
	for k := range w.Passes {
		part := 1 / float64(w.Passes)
		a := Act{Kind: PourOut, Jug: Whole, Part: part, Share: part}
		if w.Passes > 1 {
			a.Round, a.Rounds = k+1, w.Passes
		}
		side = -side
		a.Lines = []float64{0.5 + side*w.dice.Between(0, 0.28)}
		w.acts = append(w.acts, a)
	}
}

// stripesAcross is about how many stripes lie side by side before they are combed; a pour that would be wide among them is poured in several.
const stripesAcross = 17

// stripes lays the jugs side by side, the whole order again and again from the left wall to the right.
func (w *writer) stripes() {
	jugs := 0
	for _, v := range w.Shares {
		if v > 0 {
			jugs++
		}
	}
	rounds := max(1, int(math.Round(stripesAcross/float64(jugs))))
	if jugs == 1 {
		rounds = 1
	}
	turns := w.turns(rounds)
	times := w.times(turns)
	from := len(w.acts)
	for _, t := range turns {
		w.use(Pour, t, rounds, 1/times[t.jug])
	}
	at := 0.0
	for pours := w.acts[from:]; len(pours) > 0; {
		n := 1
		for n < len(pours) && pours[n].Round == pours[0].Round {
			n++
		}
		at = among(pours[:n], at)
		pours = pours[n:]
	}
}

// among finds the middles of the stripes of one round, from where the round begins to where it ends: what is poured in several has the others
// between them.
func among(pours []Act, at float64) (end float64) {
	type stripe struct {
		of      *Act
		after   float64 // what part of its jug's stripes lie before it
		breadth float64
	}
	var list []stripe
	for i := range pours {
		a := &pours[i]
		n := max(1, math.Round(a.Share*stripesAcross))
		for k := range int(n) {
			list = append(list, stripe{a, (float64(k) + float64(i)/float64(len(pours))) / n, a.Share / n})
		}
	}
	slices.SortStableFunc(list, func(a, b stripe) int { return cmp.Compare(a.after, b.after) })
	for _, s := range list {
		s.of.Lines = append(s.of.Lines, at+s.breadth/2)
		at += s.breadth
	}
	return at
}

// spoonfuls lays every jug by the spoonful in each round and taps the mould down after it.
func (w *writer) spoonfuls() {
	turns := w.turns(w.Passes)
	times := w.times(turns)
	for i, t := range turns {
		w.use(Spoon, t, w.Passes, 1/times[t.jug])
		if i < len(turns)-1 && turns[i+1].round != t.round {
			w.acts = append(w.acts, Act{Kind: Level, Jug: Whole, Round: t.round, Rounds: w.Passes})
		}
	}
}
