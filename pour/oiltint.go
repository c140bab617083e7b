package pour

import (
	"fmt"
	"slices"

	"pourbench/chem/colour"
)

// tinted makes the paint of every oil from its tint, once for all that share it. cream is that of an oil without one.
func tinted(oils []Oil, cream colour.Paint) ([]Oil, error) {
	oils = slices.Clone(oils)
	made := map[string]colour.Paint{"": cream}
	for i := range oils {
		o := &oils[i]
		paint, ok := made[o.Tint]
		if !ok {
			rgb, err := colour.ParseHex(o.Tint)
			if err == nil {
				paint, err = colour.NewPaint(rgb, 0)
			}
			if err != nil {
				return nil, fmt.Errorf("prepare the tint of %s: %w", o.ID, err)
			}
			made[o.Tint] = paint
		}
		o.tint = paint
	}
	return oils, nil
}

// plain is the paint of the batter before anything colours it: the tints of its oils, mixed by their parts. On a shelf that is not prepared
// it is what the mixer has. Gel phase, milk and what else the batch carries are not in it.
func (b *bill) plain(cream colour.Paint) colour.Paint {
	tints, parts := make([]colour.Paint, len(b.oils)), make([]float64, len(b.oils))
	for i, o := range b.oils {
		tints[i], parts[i] = o.tint, b.Oils[i].Percent
	}
	mixed, err := colour.Mix(tints, parts)
	if err != nil {
		return cream
	}
	return mixed
}
