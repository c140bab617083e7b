package stock

import (
	"pourbench/pour/lot"
	"pourbench/pour/money"
)

// tub is a pack while its entries are laid onto it. Of what is left of it, part is usual loss to come, which costs nothing because its cost is spread
// over the rest; the rest is what the cost layers of its material hold of it.
type tub struct {
	lot.Pack
	spare lot.Quantity // usual loss still to come, at most what is left
	usual lot.Quantity // lost within the usual
	off   lot.Layer    // lost beyond it, and what was written off with it
}

func newTub(p lot.Pack) *tub { return &tub{Pack: p, spare: p.Loss} }

// usable is what the cost layers hold of it.
func (t *tub) usable() lot.Quantity { return max(t.Left-t.spare, 0) }

// settle brings what is left up to date; no more can be lost than is left. It returns how much less is usable than before.
func (t *tub) settle(before lot.Quantity) lot.Quantity {
	t.Left = t.Size - t.Taken - t.Lost
	t.spare = min(t.spare, max(t.Left, 0))
	return before - t.usable()
}

// take takes a quantity out: what is usable first, then what nobody thought could be used, which costs nothing more.
func (t *tub) take(q lot.Quantity, l *lot.Layers) money.Amount {
	before := t.usable()
	t.Taken += q
	cost, _ := l.Issue(t.settle(before))
	return cost
}

// lose writes off what was spilled or thrown away: what is usable first, for a mishap is not the usual loss.
func (t *tub) lose(q lot.Quantity, l *lot.Layers) (money.Amount, Shrink) {
	return t.shrink(q, 0, l)
}

// count brings the pack to what was found in it: what is missing is usual loss as far as that goes.
func (t *tub) count(found lot.Quantity, l *lot.Layers) (money.Amount, Shrink) {
	missing := t.Left - found
	if missing >= 0 {
		return t.shrink(missing, min(missing, t.spare), l)
	}
	return t.find(-missing, l)
}

// shrink loses a quantity, of which so much is the usual loss.
func (t *tub) shrink(q, usual lot.Quantity, l *lot.Layers) (money.Amount, Shrink) {
	before, spare := t.usable(), t.spare
	t.spare -= usual
	t.Lost += q
	off := t.settle(before)
	cost, _ := l.Issue(off)
	usual = min(spare-t.spare, q-off)
	t.usual, t.off.Q, t.off.Cost = t.usual+usual, t.off.Q+off, t.off.Cost.Plus(cost)
	return cost, Shrink{Usual: usual, Beyond: q - usual}
}

// find gives back what was found again: first what was taken beyond the book, then what was written off, at the cost it was written off with, then the
// usual loss. What is more than was ever lost has no cost.
func (t *tub) find(q lot.Quantity, l *lot.Layers) (money.Amount, Shrink) {
	hole := min(q, max(-t.Left, 0))
	again := min(q-hole, t.off.Q)
	usual := min(q-hole-again, t.usual)
	more := q - hole - again - usual
	var back money.Amount
	if again > 0 {
		back = t.off.Cost.Part(int64(again), int64(t.off.Q))
		t.off.Q, t.off.Cost = t.off.Q-again, t.off.Cost.Minus(back)
	}
	t.usual, t.spare = t.usual-usual, t.spare+usual
	t.Lost -= q
	t.Left += q
	l.Return(lot.Layer{Pack: t.ID, Q: again + more, Cost: back})
	return money.Amount{}.Minus(back), Shrink{Usual: -usual, Beyond: usual - q}
}
