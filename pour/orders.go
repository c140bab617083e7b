package pour

import (
	"cmp"
	"math"
	"slices"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/chem/colour"
	"pourbench/pour/script"
)

// orders puts the orders to choose from side by side: the maker's own, the cleanest, and the one that follows the clock. Only orders the
// technique can pour are among them: each is worked out with its own script. touching is who lies beside whom in the maker's own, as measured.
func (s *Sheet) orders(own []int, touching [][]float64, shelf Shelf, h Hand) {
	s.Mingling.Orders = append(s.Mingling.Orders, s.priced(OrderOwn, *s, touching))
	problem := s.orderProblem(own)
	if order, _, _, err := colour.BestOrder(problem); err == nil {
		if problem.Spacer != colour.None {
			order = append([]int{problem.Spacer}, order...)
		}
		s.byColour([][]int{s.cleaner(order, shelf), order}, shelf, h)
	}
	if s.Base.Refused.Times == "" {
		if price, ok := s.offer(OrderByClock, s.byClock(own), shelf, h); ok {
			s.Mingling.Orders = append(s.Mingling.Orders, price)
		}
	}
}

// byColour offers the least muddy of some orders, each with what really touches in it; the maker's own where none is cleaner: the search
// counts neighbours in a plain row or as the acts alone have them, the faces may have more.
func (s *Sheet) byColour(tries [][]int, shelf Shelf, h Hand) {
	own := s.Mingling.Orders[0]
	best, offered := own, false
	for i, order := range tries {
		if i > 0 && (slices.Equal(order, tries[0]) || !s.technique().Shuffles()) {
			continue // told already, or known from its acts to be no cleaner
		}
		price, ok := s.offer(OrderByColour, order, shelf, h)
		offered = offered || ok
		if ok && best.muddier(price) {
			best = price
		}
	}
	if offered {
		best.Kind = OrderByColour
		s.Mingling.Orders = append(s.Mingling.Orders, best)
	}
}

// muddier says whether an order has a muddier worst pair than another or, with the same, more mud in all.
func (o Order) muddier(than Order) bool {
	if math.Abs(o.Worst-than.Worst) > 1e-9 {
		return o.Worst > than.Worst
	}
	return o.Total > than.Total+1e-9
}

// orderProblem asks for the cleanest order under the plan's pins.
func (s *Sheet) orderProblem(own []int) colour.OrderProblem {
	at := func(name string) int {
		i := slices.IndexFunc(s.Base.Jugs, func(j JugSheet) bool { return name != "" && j.Name == name })
		if i < 0 {
			return colour.None
		}
		return i
	}
	p := colour.OrderProblem{Mud: s.Mingling.Mud, Ring: s.ring(), First: at(s.first()), Last: at(s.Plan.Swirl.Last), Spacer: colour.None, Current: own}
	if s.Plan.Swirl.PotBetween && len(s.Base.Jugs) > 1 {
		p.Spacer = 0
		p.Current = slices.DeleteFunc(slices.Clone(own), func(j int) bool { return j == 0 })
		if p.First == 0 {
			p.First = colour.None // the pot lies between them all: there is nothing to pin
		}
		if p.Last == 0 {
			p.Last = colour.None
		}
	}
	if s.technique().InPot() && p.Last == 0 {
		p.Last = colour.None // the pot is the pot
	}
	return p
}

// technique is how the base's jugs meet.
func (s *Sheet) technique() script.Technique { return s.Base.Script.Brief.Technique }

// ring says whether the last jug lies beside the first: round the pot, and where the order is poured again and again.
func (s *Sheet) ring() bool {
	if s.technique().InPot() {
		return true
	}
	for _, a := range s.Base.Script.Acts {
		if a.Kind == script.Pour && a.Rounds > 1 {
			return true
		}
	}
	return false
}

// first is the jug that has to be poured first: the pot where the others are poured into it, or the one pinned.
func (s *Sheet) first() string {
	pot := s.Base.Jugs[0].Name
	if s.technique().InPot() {
		return pot
	}
	if s.Plan.Swirl.First != "" {
		return s.Plan.Swirl.First
	}
	if s.technique().IntoBed() && s.Plan.Swirl.Last != pot {
		return pot
	}
	return ""
}

// byClock sorts the jugs by when they are past what the technique allows; a jug without an end comes last. Pins stay.
func (s *Sheet) byClock(own []int) []int {
	first := s.first()
	ends := func(j int) float64 {
		switch jug := s.Base.Jugs[j]; {
		case jug.Name == first:
			return math.Inf(-1)
		case jug.Name == s.Plan.Swirl.Last:
			return math.Inf(1)
		case jug.Clock.Window.To.Known:
			return jug.Clock.Window.To.V
		case !jug.Clock.Stages[chem.Light].Mid.Known:
			return 0 // the clock knows nothing of it: the sooner it is used, the less can go wrong
		}
		return clock.HorizonMin
	}
	order := slices.Clone(own)
	slices.SortStableFunc(order, func(a, b int) int {
		if math.Abs(ends(a)-ends(b)) < sameEndMin {
			return 0
		}
		return cmp.Compare(ends(a), ends(b))
	})
	return order
}

// sameEndMin is how near two windows may end and still count as the same: the clock knows no better.
const sameEndMin = 0.25

// offer prices an order by working the plan out with it. An order the hands cannot follow is not offered.
func (s *Sheet) offer(kind string, order []int, shelf Shelf, h Hand) (Order, bool) {
	names := make([]string, len(order))
	for i, j := range order {
		names[i] = s.Base.Jugs[j].Name
	}
	next, err := Apply(s.Plan, shelf, SetPourOrder(*s, names))
	if err != nil {
		return Order{}, false
	}
	sheet := Weigh(next, shelf)
	for _, known := range s.Mingling.Orders {
		if slices.Equal(sheet.PourOrder(), known.Jugs) {
			known.Kind = kind
			return known, true
		}
	}
	timed := sheet.Time(shelf, h)
	if !s.technique().Shuffles() {
		return s.priced(kind, timed, nil), true
	}
	return s.priced(kind, timed, timed.touching()), true
}

// priced is what an order costs in mud, weighed by who touches whom, and in time as the sheet worked out with it says. touching is what was
// measured on its faces; where the technique does not shuffle what is poured, or nothing was drawn, its script says who touches whom.
func (s *Sheet) priced(kind string, timed Sheet, touching [][]float64) Order {
	if touching == nil || !s.technique().Shuffles() {
		touching = timed.Base.Script.Contact()
	}
	out := s.muddy(touching)
	out.Kind, out.Jugs = kind, timed.PourOrder()
	for _, j := range timed.Base.Jugs {
		if j.Clock.LateChancePercent.Known && (!out.LatePercent.Known || j.Clock.LateChancePercent.V > out.LatePercent.V) {
			out.LatePercent, out.LateJug = j.Clock.LateChancePercent, j.Name
		}
	}
	return out
}

// SetPourOrder pours the base's jugs in that order: every one named once. The jugs keep their places in the batch.
func SetPourOrder(s Sheet, names []string) Edit {
	return func(p Plan) (Plan, error) {
		p.Run.Order = s.orderKeys(Base, names)
		return p, nil
	}
}
