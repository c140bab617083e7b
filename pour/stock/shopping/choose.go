package shopping

import (
	"cmp"
	"math/bits"
	"slices"

	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// Rule is what counts first where several choices of packs are enough.
type Rule string

// The rules. Enough always comes before both.
const (
	Cheapest  Rule = "cheapest"   // lowest price, of equal ones the least left over, then the fewest packs
	LeastLeft Rule = "least left" // least left over, of equal ones the lowest price, then the fewest packs
)

// Buy is so many packs of one offer.
type Buy struct {
	Offer Offer
	Count int
}

// Choice is which packs are bought.
type Choice struct {
	Buys     []Buy
	Cost     money.Amount // of all that have a price
	Priced   bool         // all have one
	Leftover lot.Quantity // usable and not needed
	Packs    int
	Coarse   bool // there were too many ways to look at each of them: enough, but nobody can say it is the best
}

// mostSteps bounds how finely a need is divided. What is bought by the pack is a few dozen packs: only sizes that share no round measure, or a
// need that is thousands of packs, come near it.
const mostSteps = 1 << 17

// sum is what a choice comes to. All parts of it add up, so that the best choice for a need is the best for a smaller one and a pack more.
type sum struct {
	hi, lo uint64 // cost in units of money, 128 bits of it: no sum of prices overflows
	steps  int64  // usable
	packs  int32
	last   int32 // the offer taken last
}

// Choose picks packs for a need: enough in all, and of all choices that are enough the best one by the rule. Where an offer has a price, those
// without are passed over; where none has, the least left over counts. False: there is no offer, or it would take more packs than anybody buys.
//
// It is a shortest way over the need in steps of the largest quantity that divides every pack: best(q) is the best of best(q - pack) and that
// pack. Any choice that is enough is such a way, and what it comes to adds up, so the way found is the best there is.
func Choose(need lot.Quantity, offers []Offer, rule Rule) (Choice, bool) {
	if slices.ContainsFunc(offers, func(o Offer) bool { return o.Priced }) {
		offers = slices.DeleteFunc(slices.Clone(offers), func(o Offer) bool { return !o.Priced })
	}
	if need <= 0 {
		return Choice{Priced: true}, true
	}
	if len(offers) == 0 {
		return Choice{}, false
	}
	offers = worthwhile(offers, rule)
	step, coarse := stepOf(need, offers)
	n := int((need + step - 1) / step)
	var packs []sum
	for i, o := range offers {
		units, ok := o.Price.Units()
		if s := int64(o.Usable / step); s > 0 && ok && units >= 0 {
			packs = append(packs, sum{lo: uint64(units), steps: s, packs: 1, last: int32(i)})
		}
	}
	if len(packs) == 0 {
		return Choice{}, false
	}
	best := make([]sum, n+1)
	for q := 1; q <= n; q++ {
		for i, p := range packs {
			if c := best[max(q-int(p.steps), 0)].plus(p); i == 0 || c.less(best[q], rule) {
				best[q] = c
			}
		}
	}
	return gathered(need, offers, best, packs, coarse), true
}

// worthwhile leaves out the offers that no best choice has a pack of: where so many packs of another hold at least as much and cost less in all,
// they would be taken in its place. What leaves least over may be any.
func worthwhile(offers []Offer, rule Rule) []Offer {
	if rule != Cheapest {
		return offers
	}
	return slices.DeleteFunc(slices.Clone(offers), func(a Offer) bool {
		return slices.ContainsFunc(offers, func(b Offer) bool {
			n := int((a.Usable + b.Usable - 1) / b.Usable)
			return a.Priced && b.Priced && n <= mostInPlace && b.Price.Times(n).Compare(a.Price) < 0
		})
	})
}

// mostInPlace is how many packs are tried in the place of one.
const mostInPlace = 1000

// stepOf is the largest quantity that divides all packs; where the need is too many of those, a larger one, and then packs count for a little
// less than they hold.
func stepOf(need lot.Quantity, offers []Offer) (step lot.Quantity, coarse bool) {
	for _, o := range offers {
		step = common(step, o.Usable)
	}
	if need/step > mostSteps {
		return need / mostSteps, true
	}
	return step, false
}

// common is the largest quantity that divides both.
func common(a, b lot.Quantity) lot.Quantity {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// plus adds a pack.
func (s sum) plus(p sum) sum {
	lo, carry := bits.Add64(s.lo, p.lo, 0)
	hi, _ := bits.Add64(s.hi, p.hi, carry)
	return sum{hi: hi, lo: lo, steps: s.steps + p.steps, packs: s.packs + p.packs, last: p.last}
}

// less says whether a choice is better than another by the rule.
func (s sum) less(o sum, rule Rule) bool {
	cost := cmp.Or(cmp.Compare(s.hi, o.hi), cmp.Compare(s.lo, o.lo))
	left := cmp.Compare(s.steps, o.steps)
	if rule == LeastLeft {
		cost, left = left, cost
	}
	return cmp.Or(cost, left, cmp.Compare(s.packs, o.packs)) < 0
}

// gathered goes the best way back and counts its packs.
func gathered(need lot.Quantity, offers []Offer, best, packs []sum, coarse bool) Choice {
	count := make([]int, len(offers))
	steps := map[int32]int{}
	for _, p := range packs {
		steps[p.last] = int(p.steps)
	}
	for q := len(best) - 1; q > 0; q = max(q-steps[best[q].last], 0) {
		count[best[q].last]++
	}
	c := Choice{Priced: true, Leftover: -need, Coarse: coarse}
	for i, o := range offers {
		if count[i] == 0 {
			continue
		}
		c.Buys = append(c.Buys, Buy{o, count[i]})
		c.Packs += count[i]
		c.Cost = c.Cost.Plus(o.Price.Times(count[i]))
		c.Priced = c.Priced && o.Priced
		c.Leftover += o.Usable * lot.Quantity(count[i])
	}
	return c
}
