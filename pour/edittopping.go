package pour

import (
	"fmt"
	"slices"
)

// editTopping wraps an edit of one topping, which must be there.
func editTopping(topping int, edit func(*Plan, *Topping) error) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(p.Top.Toppings, topping, "topping"); err != nil {
			return p, err
		}
		return p, edit(&p, &p.Top.Toppings[topping])
	}
}

// editToppingPart wraps an edit of one material of a topping.
func editToppingPart(topping, part int, edit func(*Topping) error) Edit {
	return editTopping(topping, func(_ *Plan, t *Topping) error {
		if err := inRange(t.Parts, part, "material of the topping"); err != nil {
			return err
		}
		return edit(t)
	})
}

// AddTopping adds a topping of one material, as much of it as is usual, when it usually goes on.
func AddTopping(id string) Edit {
	return func(p Plan) (Plan, error) {
		p.Top.Toppings = append(p.Top.Toppings, Topping{Parts: []ToppingPart{{Material: id, Percent: 100}}})
		return p, nil
	}
}

// RemoveTopping takes a topping out.
func RemoveTopping(topping int) Edit {
	return editTopping(topping, func(p *Plan, _ *Topping) error {
		p.Top.Toppings = slices.Delete(p.Top.Toppings, topping, topping+1)
		return nil
	})
}

// MoveTopping lets a topping go on earlier (by −1) or later (by 1) among those of the list.
func MoveTopping(topping, by int) Edit {
	return editTopping(topping, func(p *Plan, t *Topping) error {
		to := topping + by
		if to < 0 || to >= len(p.Top.Toppings) {
			return fmt.Errorf("move topping %d: it is at the end already", topping+1)
		}
		moved := *t
		p.Top.Toppings = slices.Insert(slices.Delete(p.Top.Toppings, topping, topping+1), to, moved)
		return nil
	})
}

// UsualTopping lets a topping be as much as is usual of its first material.
func UsualTopping(topping int) Edit {
	return editTopping(topping, func(_ *Plan, t *Topping) error { t.GPerBar, t.CoveragePercent = 0, 0; return nil })
}

// AddToppingPart mixes another material into a topping: an equal part, for which the others give way.
func AddToppingPart(topping int, id string) Edit {
	return editTopping(topping, func(_ *Plan, t *Topping) error {
		if slices.ContainsFunc(t.Parts, func(p ToppingPart) bool { return p.Material == id }) {
			return fmt.Errorf("add %s to the topping: it is in it already", id)
		}
		t.Parts = append(t.Parts, ToppingPart{Material: id})
		return t.setPart(len(t.Parts)-1, 100/float64(len(t.Parts)))
	})
}

// RemoveToppingPart takes a material out of a topping; the others take its part. A topping keeps at least one.
func RemoveToppingPart(topping, part int) Edit {
	return editToppingPart(topping, part, func(t *Topping) error {
		if len(t.Parts) == 1 {
			return fmt.Errorf("take %s out of the topping: it is all there is; remove the topping instead", t.Parts[part].Material)
		}
		if err := t.setPart(part, 0); err != nil {
			return err
		}
		t.Parts = slices.Delete(t.Parts, part, part+1)
		return nil
	})
}

// SetToppingPart sets a material's part of a topping, percent by mass; the others give way in proportion.
func SetToppingPart(topping, part int, percent float64) Edit {
	return editToppingPart(topping, part, func(t *Topping) error { return t.setPart(part, percent) })
}

// SwapToppingMaterial puts another material in a material's place; a topping that is no blend takes its usual amount and hour.
func SwapToppingMaterial(topping, part int, id string) Edit {
	return editToppingPart(topping, part, func(t *Topping) error {
		t.Parts[part].Material = id
		if len(t.Parts) == 1 {
			t.Name, t.When, t.GPerBar, t.CoveragePercent, t.HandsMin = "", "", 0, 0, 0
		}
		return nil
	})
}

// setPart sets a part; the others give way.
func (t *Topping) setPart(part int, percent float64) error {
	if err := partOf100(percent, "the part of "+t.Parts[part].Material); err != nil {
		return err
	}
	if len(t.Parts) == 1 && percent != 100 {
		return fmt.Errorf("set the part of %s: it is all of the topping; mix another material in first", t.Parts[part].Material)
	}
	t.Parts[part].Percent = percent
	parts, held := make([]*float64, len(t.Parts)), make([]bool, len(t.Parts))
	for i := range t.Parts {
		parts[i], held[i] = &t.Parts[i].Percent, i == part
	}
	giveWay(parts, held)
	return nil
}
