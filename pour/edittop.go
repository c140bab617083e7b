package pour

import (
	"fmt"
	"slices"
)

// AddTopping puts a topping behind the others.
func AddTopping(t Topping) Edit {
	return func(p Plan) (Plan, error) {
		p.Top.Toppings = append(p.Top.Toppings, t)
		return p, nil
	}
}

// RemoveTopping takes a topping away.
func RemoveTopping(i int) Edit {
	return editTopping(i, func(p *Plan, _ *Topping) error {
		p.Top.Toppings = slices.Delete(p.Top.Toppings, i, i+1)
		return nil
	})
}

// MoveTopping moves a topping by so many places: they go on in the order of the list.
func MoveTopping(i, by int) Edit {
	return func(p Plan) (next Plan, err error) {
		p.Top.Toppings, err = moved(p.Top.Toppings, i, by, "topping")
		return p, err
	}
}

// AddToppingPart mixes a material of the shelf into a topping, as much of it as each of the others has on average; they give way in
// proportion.
func AddToppingPart(i int, material string) Edit {
	return editTopping(i, func(_ *Plan, t *Topping) error {
		if slices.ContainsFunc(t.Parts, func(x ToppingPart) bool { return x.Material == material }) {
			return fmt.Errorf("mix %s into the topping: it is in it already; give it a larger part", material)
		}
		t.Parts = append(t.Parts, ToppingPart{Material: material})
		return t.balance(len(t.Parts)-1, round3(100/float64(len(t.Parts))))
	})
}

// RemoveToppingPart takes a material out of a topping; the others take its place in proportion.
func RemoveToppingPart(i, part int) Edit {
	return editTopping(i, func(_ *Plan, t *Topping) error {
		if err := inRange(t.Parts, part, "part"); err != nil {
			return err
		}
		if len(t.Parts) == 1 {
			return fmt.Errorf("take %s out of the topping: it is all there is in it; remove the topping", t.Parts[part].Material)
		}
		t.Parts = slices.Delete(t.Parts, part, part+1)
		all, held := t.parts()
		giveWay(all, held)
		return nil
	})
}

// SetToppingPart sets the percent of one material of a topping; the others give way in proportion.
func SetToppingPart(i, part int, percent float64) Edit {
	return editTopping(i, func(_ *Plan, t *Topping) error {
		if err := inRange(t.Parts, part, "part"); err != nil {
			return err
		}
		return t.balance(part, percent)
	})
}

// SwapToppingPart puts another material in the place of one.
func SwapToppingPart(i, part int, material string) Edit {
	return editTopping(i, func(_ *Plan, t *Topping) error {
		if err := inRange(t.Parts, part, "part"); err != nil {
			return err
		}
		t.Parts[part].Material = material
		return nil
	})
}

// UsualTopping lets as much of a topping go on as is usual of its first material.
func UsualTopping(i int) Edit {
	return editTopping(i, func(_ *Plan, t *Topping) error { t.GPerBar, t.CoveragePercent = 0, 0; return nil })
}

func editTopping(i int, edit func(*Plan, *Topping) error) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(p.Top.Toppings, i, "topping"); err != nil {
			return p, err
		}
		return p, edit(&p, &p.Top.Toppings[i])
	}
}

// parts points at the percentages of a topping; none of them is held.
func (t *Topping) parts() (all []*float64, held []bool) {
	for k := range t.Parts {
		all = append(all, &t.Parts[k].Percent)
	}
	return all, make([]bool, len(all))
}

func (t *Topping) balance(part int, percent float64) error {
	all, held := t.parts()
	return balance(all, held, part, percent, "the part of "+t.Parts[part].Material)
}

// AddEmbed puts an embed behind the others.
func AddEmbed(e Embed) Edit {
	return func(p Plan) (Plan, error) {
		p.Top.Embeds = append(p.Top.Embeds, e)
		return p, nil
	}
}

// RemoveEmbed takes an embed away.
func RemoveEmbed(i int) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(p.Top.Embeds, i, "embed"); err != nil {
			return p, err
		}
		p.Top.Embeds = slices.Delete(p.Top.Embeds, i, i+1)
		return p, nil
	}
}

// MoveEmbed moves an embed by so many places.
func MoveEmbed(i, by int) Edit {
	return func(p Plan) (next Plan, err error) {
		p.Top.Embeds, err = moved(p.Top.Embeds, i, by, "embed")
		return p, err
	}
}

// moved is a list in which an item stands so many places on.
func moved[T any](list []T, i, by int, what string) ([]T, error) {
	if err := inRange(list, i, what); err != nil {
		return list, err
	}
	to := i + by
	if to < 0 || to >= len(list) {
		return list, fmt.Errorf("move %s %d: it is at the end already", what, i+1)
	}
	item := list[i]
	return slices.Insert(slices.Delete(list, i, i+1), to, item), nil
}
