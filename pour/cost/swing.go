package cost

import "pourbench/pour/money"

// Swing is what it does to a bar when one cost of the batch changes.
type Swing struct {
	Line     Line
	Share    money.Percent // of the bar's cost
	Up, Down Swung         // the line is so much dearer, and so much cheaper
}

// Swung is a bar as it then is.
type Swung struct {
	Unit money.Amount
	Earn *Earning // on the terms asked about; nil: nothing can be said of it
}

// Swings is what it does to a bar when each of the n largest costs becomes so many percent dearer and cheaper, worked out anew: nothing is taken to be
// in proportion. Without terms, or where nothing can be earned on them, it tells the cost alone. Nothing where the bill is not known whole.
func (b Bill) Swings(t *Terms, n int, by money.Percent) []Swing {
	if _, known := b.Unit(); !known {
		return nil
	}
	total, _ := b.Total()
	out := make([]Swing, 0, n)
	for _, i := range b.Largest(n) {
		share, _ := b.Lines[i].Amount.InPercentOf(total)
		out = append(out, Swing{b.Lines[i], share, b.Changed(i, by, false).swung(t), b.Changed(i, by, true).swung(t)})
	}
	return out
}

func (b Bill) swung(t *Terms) Swung {
	unit, _ := b.Unit()
	s := Swung{Unit: unit}
	if t != nil {
		if e, err := b.Earns(*t); err == nil {
			s.Earn = &e
		}
	}
	return s
}
