package pour

import (
	"cmp"
	"fmt"
	"slices"

	"pourbench/chem/colour"
	"pourbench/pour/swirl"
)

// Mingling is what the colours of the base do beside each other. The zero Mingling is not worked out.
type Mingling struct {
	Known  bool
	Mud    [][]float64 // score of every two jugs, 0 clean to 1, by the jugs' places in the batch
	Pairs  []Pair      // who touches whom on the faces, most contact first
	Orders []Order     // the maker's own first
	Alike  []Alike     // jugs somebody can hardly tell apart
}

// Pair is two neighbours and what they make where they touch.
type Pair struct {
	A, B           int        // places of the jugs in the batch
	ContactPercent float64    // of all boundary between jugs on the loaf's faces; all pairs sum to 100
	Score          float64    // mud, 0 clean to 1
	Verdict        string     // "clean", "softens" or "muddy"
	Cause          string     // "greys out" or "goes khaki/brown"; empty for a clean pair
	Swatches       [3]string  // "#rrggbb" of three mixes: the evidence
	Parts          [3]float64 // of B in each, 0 to 1
}

// Kinds of pour order.
const (
	OrderOwn      = "yours"
	OrderByColour = "by colour" // cleanest worst neighbour, then least mud in all
	OrderByClock  = "by clock"  // the jug that thickens first is poured first
)

// Order is an order to pour the base's jugs in, with its price in mud and in time.
type Order struct {
	Kind        string
	Jugs        []int       // places of the jugs in the batch
	Worst       float64     // mud of the muddiest pair that touches
	Total       float64     // mean mud along all boundary
	Contact     [][]float64 // each two jugs' part of all boundary: measured where the technique shuffles pours, else as the script has it
	LatePercent Figure      // the largest chance that a jug is past what the technique allows at its turn
	LateJug     string      // whose it is
}

// Alike is two jugs that some eyes can hardly tell apart.
type Alike struct {
	A, B  int
	Sight string // whose eyes
	DE    float64
}

// Mingle adds what the colours do beside each other: mud, browning, confusable jugs and the orders to choose from.
// It measures drawn faces, takes some ten milliseconds and belongs beside a keystroke. The sheet it is called on is not changed.
func (s Sheet) Mingle(shelf Shelf, h Hand, judge *colour.Judge) Sheet {
	s = s.copied()
	for _, b := range s.Batches() {
		b.brown()
	}
	if len(s.Base.Jugs) == 0 {
		return s
	}
	paints, err := s.Base.paints()
	if err != nil {
		s.warn(warning("figure-unknown", string(Base), err.Error(), "state the batter's colour on the jug"))
		return s
	}
	table, err := judge.Table(paints)
	if err != nil {
		return s // paints made from checked colours are always paints
	}
	s.Mingling = Mingling{Known: true, Mud: table}
	own := s.PourOrder()
	touching := s.touching()
	s.Mingling.Pairs = s.pairs(touching, paints, judge)
	s.Mingling.Alike = alike(paints)
	s.orders(own, touching, shelf, h)
	s.inspectLook()
	s.sortWarnings()
	return s
}

// paints makes the paint of every jug from its colour and its white.
func (b *BatchSheet) paints() ([]colour.Paint, error) {
	out := make([]colour.Paint, len(b.Jugs))
	for i, j := range b.Jugs {
		rgb, err := colour.ParseHex(j.Colour.Hex)
		if err != nil {
			return nil, err
		}
		if out[i], err = colour.NewPaint(rgb, min(mostDose, j.WhitePercent)); err != nil {
			return nil, fmt.Errorf("mix the colour of %s: %w", j.Name, err)
		}
	}
	return out, nil
}

// brown works out the colour a jug takes over some weeks, from the vanillin in its own part of the bar.
func (b *BatchSheet) brown() {
	for i := range b.Jugs {
		j := &b.Jugs[i]
		if !(j.VanillinPercent > 0) {
			continue
		}
		fresh, err := colour.ParseHex(j.Colour.Hex)
		if err != nil {
			continue
		}
		if after, low, high, err := colour.Browned(fresh, j.VanillinPercent); err == nil {
			j.Colour.WeeksHex, j.Colour.WeeksLowHex, j.Colour.WeeksHighHex = after.Hex(), low.Hex(), high.Hex()
		}
	}
}

// PourOrder is the base's jugs, by their places in the batch, in the order they are poured; the pot of a pour in the pot comes first.
func (s *Sheet) PourOrder() []int { return s.Base.Script.Brief.Order }

// touching measures who lies beside whom on the drawn faces; where no face can be drawn the script's own estimate stands in.
func (s *Sheet) touching() [][]float64 {
	if len(s.Base.Script.Acts) == 0 || s.Plan.Trial {
		return nil
	}
	poured, err := swirl.New(s.recipe())
	if err != nil {
		return s.Base.Script.Contact()
	}
	return poured.Touching()
}

// pairs judges the jugs that touch, those with the most contact first.
func (s *Sheet) pairs(contact [][]float64, paints []colour.Paint, judge *colour.Judge) []Pair {
	var out []Pair
	for a := range contact {
		for b := a + 1; b < len(contact); b++ {
			if contact[a][b] <= 0 {
				continue
			}
			m, err := judge.Mud(paints[a], paints[b])
			if err != nil {
				continue
			}
			p := Pair{A: a, B: b, ContactPercent: contact[a][b] * 100, Score: m.Score, Verdict: string(m.Verdict), Cause: m.Cause, Parts: m.Parts}
			for i, sw := range m.Swatches {
				p.Swatches[i] = sw.Hex()
			}
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(x, y Pair) int { return cmp.Compare(y.ContactPercent, x.ContactPercent) })
	return out
}

// alike finds jugs that look nearly the same to some eyes.
func alike(paints []colour.Paint) []Alike {
	var out []Alike
	for a := range paints {
		for b := a + 1; b < len(paints); b++ {
			if sight, de := colour.Confusable(paints[a].RGB(), paints[b].RGB()); sight != "" {
				out = append(out, Alike{A: a, B: b, Sight: string(sight), DE: de})
			}
		}
	}
	return out
}

// hardlyPercent is the contact under which a muddy pair is no caution: so little of the boundary is lost among the rest (by eye, no source).
const hardlyPercent = 5

func (s *Sheet) inspectLook() {
	name := func(i int) string { return s.Base.Jugs[i].Name }
	for _, p := range s.Mingling.Pairs {
		if p.Verdict == string(colour.Muddy) && p.ContactPercent >= hardlyPercent {
			s.warn(warning("muddy-neighbours", Base.jug(name(p.A)), fmt.Sprintf("beside %s it %s where they blend, along %s of all boundary on the faces",
				name(p.B), p.Cause, s.Plan.Show.Percent(p.ContactPercent, 0)), "look at the other orders, or pour a white jug between them"))
		}
	}
	for _, a := range s.Mingling.Alike {
		s.warn(warning("jugs-alike", Base.jug(name(a.A)), "it can hardly be told from "+name(a.B)+eyes(a.Sight), "mark the jugs with their letters; make one lighter"))
	}
}

// eyes says in words who sees so; nothing where everybody does.
func eyes(sight string) string {
	switch colour.Sight(sight) {
	case colour.Protanopia:
		return " by eyes to which red looks dark (protanopia)"
	case colour.Deuteranopia:
		return " by eyes that mix up red and green (deuteranopia)"
	case colour.Tritanopia:
		return " by eyes that mix up blue and green (tritanopia, rare)"
	default:
		return ""
	}
}
