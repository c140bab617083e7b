package pour

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pourbench/pour/strict"
)

func editOil(n BatchName, oil int, edit func(*Plan, *Batch) error) Edit {
	return editBatch(n, func(p *Plan, b *Batch) error {
		if err := inRange(b.Oils, oil, "oil"); err != nil {
			return err
		}
		return edit(p, b)
	})
}

// oilsGiveWay lets the oils that are not held take what the held ones leave.
func (b *Batch) oilsGiveWay() {
	parts, held := make([]*float64, len(b.Oils)), make([]bool, len(b.Oils))
	for i := range b.Oils {
		parts[i], held[i] = &b.Oils[i].Percent, b.Oils[i].Held
	}
	giveWay(parts, held)
}

func (b *Batch) holdsAnOil() bool {
	return slices.ContainsFunc(b.Oils, func(o OilPart) bool { return o.Held })
}

func (b *Batch) hasOil(id string) bool {
	return slices.ContainsFunc(b.Oils, func(o OilPart) bool { return o.Oil == id })
}

// setOil sets an oil's part and holds it: what a maker sets stays as she set it.
func (b *Batch) setOil(oil int, percent float64) error {
	if err := partOf100(percent, "the part of "+b.Oils[oil].Oil); err != nil {
		return err
	}
	b.Oils[oil].Percent, b.Oils[oil].Held = percent, true
	b.oilsGiveWay()
	return nil
}

// SetOilPercent sets an oil's part of the blend and holds it. The oils that are not held give way in proportion; where they cannot, the part
// stands all the same and the blend is not finished, see [Batch.Unfinished].
func SetOilPercent(n BatchName, oil int, percent float64) Edit {
	return editOil(n, oil, func(_ *Plan, b *Batch) error { return b.setOil(oil, percent) })
}

// SetOilGrams sets an oil's part of the blend by its mass, g, at the size the batch has with it, and holds the part: see [SetOilPercent]. A
// batch that fills a volume holds a little more of a heavier blend, so the part is worked out again until it comes to that mass.
func SetOilGrams(n BatchName, oil int, g float64, s Shelf) Edit {
	return editOil(n, oil, func(p *Plan, b *Batch) error {
		const rounds, settled = 20, 1e-9
		what := fmt.Sprintf("set %s to %s g", b.Oils[oil].Oil, strict.Short(g))
		if math.IsNaN(g) || g < 0 {
			return fmt.Errorf("%s: write grams, 0 or more", what)
		}
		percent := b.Oils[oil].Percent
		for range rounds {
			all, taken, err := p.oilMass(n, oil, percent, s)
			if err != nil {
				return fmt.Errorf("%s: %w; type its percent instead", what, err)
			}
			next := (g + taken) / all * 100
			if next > 100 {
				return fmt.Errorf("%s: all oils of the %s together are %s g; type at most that, or make the batch larger", what, n, strict.Short(math.Round(all*10)/10))
			}
			if math.Abs(next-percent) < settled {
				break
			}
			percent = next
		}
		return b.setOil(oil, math.Round(percent*1e6)/1e6) // a millionth is less than any scale shows, and a file is read by people
	})
}

// oilMass is the mass of all oils of a batch, g, were one of them such a part of it, and what carriers take of that one. The mass of a blend
// that is not finished is that of the same oils in the same proportions.
func (p *Plan) oilMass(n BatchName, oil int, percent float64, s Shelf) (all, taken float64, err error) {
	q := p.Clone()
	b := q.Batch(n)
	if err := b.setOil(oil, percent); err != nil {
		return 0, 0, err
	}
	if b.Unfinished() != "" {
		b.spread()
	}
	sheet := Weigh(q, s)
	of := sheet.Batch(n)
	if of == nil || len(of.Oils) == 0 {
		return 0, 0, errors.New("this plan cannot be worked out")
	}
	if of.Refused.Masses != "" {
		return 0, 0, errors.New(of.Refused.Masses)
	}
	if b.Carrier != CarrierBatch {
		return of.Size.OilsG, 0, nil
	}
	for i := range of.Jugs {
		taken += of.Jugs[i].carrierOilG(0)
	}
	all = of.Size.OilsG + taken
	if b.carrierOil() != b.Oils[oil].Oil {
		taken = 0
	}
	return all, taken, nil
}

// HoldOil keeps an oil's part when another changes, or lets it go. Once none is held any more, they all give way.
func HoldOil(n BatchName, oil int, held bool) Edit {
	return editOil(n, oil, func(_ *Plan, b *Batch) error {
		b.Oils[oil].Held = held
		if !b.holdsAnOil() {
			b.oilsGiveWay()
		}
		return nil
	})
}

// AddOil adds an oil to the blend with no part of it yet, so that it disturbs none of the others.
func AddOil(n BatchName, id string) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		b.Oils = append(b.Oils, OilPart{Oil: id})
		return nil
	})
}

// RemoveOil takes an oil out of the blend; the oils that are not held take its place in proportion, and where none is free it stays open.
func RemoveOil(n BatchName, oil int) Edit {
	return editOil(n, oil, func(_ *Plan, b *Batch) error {
		if len(b.Oils) == 1 {
			return errors.New("remove the last oil: a batch needs one")
		}
		b.Oils = slices.Delete(b.Oils, oil, oil+1)
		b.oilsGiveWay()
		return nil
	})
}

// SwapOil puts another oil in an oil's place, with the same percentage.
func SwapOil(n BatchName, oil int, id string) Edit {
	return editOil(n, oil, func(_ *Plan, b *Batch) error {
		b.Oils[oil].Oil = id
		return nil
	})
}

// SpreadOils makes a blend that is not finished whole: what is to go is spread over the oils that are not held, in proportion; where none can
// take it, all oils are scaled in proportion, held ones too.
func SpreadOils(n BatchName) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if b.Unfinished() == "" {
			return fmt.Errorf("spread what is to go: the oils of the %s sum to 100 %% already", n)
		}
		b.spread()
		return nil
	})
}

func (b *Batch) spread() {
	b.oilsGiveWay()
	if b.Unfinished() == "" {
		return
	}
	sum := b.oilSum()
	for i := range b.Oils {
		if sum > 0 {
			b.Oils[i].Percent *= 100 / sum
		} else {
			b.Oils[i].Percent = 100 / float64(len(b.Oils))
		}
	}
}

// SetBlend puts another blend in the place of a batch's. A batch that is sized by its oils takes the mass of all of them, g, where it is more
// than 0. It is no ready-mixed blend any more, and a carrier oil that is not in it goes back to its largest.
func SetBlend(n BatchName, oils []OilPart, allG float64) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		b.Oils, b.ReadyBlend = slices.Clone(oils), ""
		if b.Size == SizeOils && allG > 0 {
			b.OilsG = allG
		}
		if b.Carrier == CarrierBatch && !b.hasOil(b.CarrierOil) {
			b.CarrierOil = ""
		}
		return nil
	})
}
