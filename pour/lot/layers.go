package lot

import "pourbench/pour/money"

// Formula is how the cost of what goes out is found: one for all that is bought (IAS 2.25; read 2nd-hand).
type Formula string

// The formulas.
const (
	FIFO    Formula = "fifo"    // the earliest receipt's cost goes out first
	Average Formula = "average" // moving: the mean of all that lies there, anew at every receipt
)

// Layer is what is left of one receipt's usable quantity, and its cost.
type Layer struct {
	Pack string
	Q    Quantity
	Cost money.Amount
}

// Layers are the cost of what lies there of one material, oldest receipt first. The zero value holds nothing.
type Layers struct {
	Formula Formula // empty: FIFO
	List    []Layer
}

// Receive lays a receipt on top: its usable quantity, which is what was bought less the usual loss, and what it cost.
func (l *Layers) Receive(x Layer) {
	if x.Q <= 0 {
		return
	}
	l.List = append(l.List, x)
	if l.Formula == Average && len(l.List) > 1 {
		q, cost := l.Total()
		l.List = []Layer{{Pack: x.Pack, Q: q, Cost: cost}}
	}
}

// Return lays back what was issued and is there after all, so that it is the next to go out.
func (l *Layers) Return(x Layer) {
	if l.Formula == Average {
		l.Receive(x)
		return
	}
	if x.Q > 0 {
		l.List = append([]Layer{x}, l.List...)
	}
}

// Issue takes a quantity out and says what it cost. Uncovered is what goes beyond what lies there: no cost is known for it.
func (l *Layers) Issue(want Quantity) (cost money.Amount, uncovered Quantity) {
	for want > 0 && len(l.List) > 0 {
		top := &l.List[0]
		q := min(top.Q, want)
		part := top.Cost.Part(int64(q), int64(top.Q))
		top.Q, top.Cost, want = top.Q-q, top.Cost.Minus(part), want-q
		cost = cost.Plus(part)
		if top.Q == 0 {
			l.List = l.List[1:]
		}
	}
	return cost, want
}

// Total is all that lies there and what it cost.
func (l *Layers) Total() (q Quantity, cost money.Amount) {
	for _, x := range l.List {
		q, cost = q+x.Q, cost.Plus(x.Cost)
	}
	return q, cost
}

// Clone is the layers in a list of their own, so that what is issued of them leaves these alone.
func (l Layers) Clone() Layers {
	l.List = append([]Layer(nil), l.List...)
	return l
}
