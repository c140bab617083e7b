package pour

import (
	"cmp"
	"math"
	"slices"

	"pourbench/chem/clock"
	"pourbench/chem/colour"
)

// orders puts the orders to choose from side by side: the maker's own, the cleanest, and the one that follows the clock.
func (s *Sheet) orders(own []int, shelf Shelf, h clock.Hand) {
	s.Look.Orders = append(s.Look.Orders, s.priced(OrderOwn, own, *s))
	problem := s.orderProblem(own, shelf)
	if order, _, _, err := colour.BestOrder(problem); err == nil {
		if problem.Spacer != colour.None {
			order = append([]int{problem.Spacer}, order...)
		}
		s.addOrder(OrderByColour, order, shelf, h)
	}
	s.addOrder(OrderByClock, s.byClock(own, shelf), shelf, h)
}

// orderProblem asks for the cleanest order under the plan's pins.
func (s *Sheet) orderProblem(own []int, shelf Shelf) colour.OrderProblem {
	at := func(name string) int {
		i := slices.IndexFunc(s.Base.Jugs, func(j JugSheet) bool { return name != "" && j.Name == name })
		if i < 0 {
			return colour.None
		}
		return i
	}
	p := colour.OrderProblem{Mud: s.Look.Mud, Ring: s.ring(), First: at(s.first(shelf)), Last: at(s.Plan.Swirl.Last), Spacer: colour.None, Current: own}
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
	return p
}

// first is the jug that has to be poured first: the one pinned, or the pot where the technique pours into it.
func (s *Sheet) first(shelf Shelf) string {
	if s.Plan.Swirl.First != "" {
		return s.Plan.Swirl.First
	}
	if t, ok := shelf.Technique(s.Plan.Swirl.Technique); ok && t.PotFirst() && s.Plan.Swirl.Last != s.Base.Jugs[0].Name {
		return s.Base.Jugs[0].Name
	}
	return ""
}

// byClock sorts the jugs by when they are past what the technique allows; a jug without an end comes last. Pins stay.
func (s *Sheet) byClock(own []int, shelf Shelf) []int {
	first := s.first(shelf)
	ends := func(j int) float64 {
		switch jug := s.Base.Jugs[j]; {
		case jug.Name == first:
			return math.Inf(-1)
		case jug.Name == s.Plan.Swirl.Last:
			return math.Inf(1)
		case jug.Window.To.Known:
			return jug.Window.To.V
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

// addOrder prices an order by working the plan out with it.
func (s *Sheet) addOrder(kind string, order []int, shelf Shelf, h clock.Hand) {
	if slices.Equal(order, s.Look.Orders[0].Jugs) {
		price := s.Look.Orders[0]
		price.Kind = kind
		s.Look.Orders = append(s.Look.Orders, price)
		return
	}
	names := make([]string, len(order))
	for i, j := range order {
		names[i] = s.Base.Jugs[j].Name
	}
	next, err := Apply(s.Plan, shelf, SetPourOrder(*s, names))
	if err != nil {
		return // an order the hands cannot follow is not offered
	}
	s.Look.Orders = append(s.Look.Orders, s.priced(kind, order, Weigh(next, shelf).Time(shelf, h)))
}

// priced is what an order costs in mud, and in time as the sheet worked out with it says.
func (s *Sheet) priced(kind string, order []int, timed Sheet) Order {
	out := Order{Kind: kind, Jugs: order}
	for _, pair := range s.neighbours(order) {
		score := s.Look.Mud[pair[0]][pair[1]]
		out.Worst, out.Total = max(out.Worst, score), out.Total+score
	}
	for _, j := range timed.Base.Jugs {
		if j.LateChancePercent.Known && (!out.LatePercent.Known || j.LateChancePercent.V > out.LatePercent.V) {
			out.LatePercent, out.LateJug = j.LateChancePercent, j.Name
		}
	}
	return out
}

// neighbours lists the pairs that touch in an order.
func (s *Sheet) neighbours(order []int) [][2]int {
	var out [][2]int
	if s.Plan.Swirl.PotBetween {
		for _, j := range order {
			if j != 0 {
				out = append(out, [2]int{0, j})
			}
		}
		return out
	}
	for i := 1; i < len(order); i++ {
		out = append(out, [2]int{order[i-1], order[i]})
	}
	if s.ring() && len(order) > 2 {
		out = append(out, [2]int{order[len(order)-1], order[0]})
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
