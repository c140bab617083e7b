package pour

import (
	"errors"
	"fmt"
	"slices"
)

func editJug(n BatchName, jug int, edit func(*Batch, *Jug) error) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if err := inRange(b.Jugs, jug, "jug"); err != nil {
			return err
		}
		return edit(b, &b.Jugs[jug])
	})
}

// setShare sets a jug's share; the jugs that are not held give way in proportion, so the total stays 100.
func (b *Batch) setShare(jug int, percent float64, what string) error {
	parts, held := make([]*float64, len(b.Jugs)), make([]bool, len(b.Jugs))
	for i := range b.Jugs {
		parts[i], held[i] = &b.Jugs[i].SharePercent, b.Jugs[i].Held
	}
	return balance(parts, held, jug, percent, what)
}

// SetShare sets a jug's share, percent of its batch; the jugs that are not held give way in proportion, so the total stays 100. It holds
// nothing: it is for nudges and mends. What a maker types is [TypeShare].
func SetShare(n BatchName, jug int, percent float64) Edit {
	return editJug(n, jug, func(b *Batch, j *Jug) error { return b.setShare(jug, percent, "the share of "+j.Name) })
}

// givingWay is how many jugs beside the one typed must be able to give way for it to be held: with one alone, every jug typed next would
// have none to give way, and the maker would be locked out of her own split.
const givingWay = 2

// TypeShare sets a jug's share as [SetShare] does and holds it, so that what was typed stays as it was typed. It is left free where fewer
// than two others would be: of two jugs neither is held, of three the first that is typed is, and after it the last two give way to each
// other. A jug that is held already stays held.
func TypeShare(n BatchName, jug int, percent float64) Edit {
	return editJug(n, jug, func(b *Batch, j *Jug) error {
		if err := b.setShare(jug, percent, "the share of "+j.Name); err != nil {
			return err
		}
		free := 0
		for i := range b.Jugs {
			if i != jug && !b.Jugs[i].Held {
				free++
			}
		}
		j.Held = j.Held || free >= givingWay
		return nil
	})
}

// HoldShare keeps a jug's share when another changes, or lets it go.
func HoldShare(n BatchName, jug int, held bool) Edit {
	return editJug(n, jug, func(_ *Batch, j *Jug) error { j.Held = held; return nil })
}

// AddJug adds a jug after another; its share comes from those that are not held: half of the pot's, at most an equal part and half of what
// those have together.
func AddJug(n BatchName, after int, name string) Edit {
	return editBatch(n, func(_ *Plan, b *Batch) error {
		if err := inRange(b.Jugs, after, "jug"); err != nil {
			return err
		}
		b.Jugs = slices.Insert(b.Jugs, after+1, Jug{Name: freeName(b.Jugs, name)})
		share := min(100/float64(len(b.Jugs)), b.Jugs[0].SharePercent/2)
		if free, some := b.freeShare(after + 1); some {
			share = min(share, free/2)
		}
		return b.setShare(after+1, round3(share), "the new jug")
	})
}

// freeShare is what the jugs that are not held have together, one left out, and whether there are any.
func (b *Batch) freeShare(but int) (percent float64, some bool) {
	for i, j := range b.Jugs {
		if i != but && !j.Held {
			percent, some = percent+j.SharePercent, true
		}
	}
	return percent, some
}

func freeName(jugs []Jug, name string) string {
	if name == "" {
		name = "jug"
	}
	taken := func(s string) bool { return slices.ContainsFunc(jugs, func(j Jug) bool { return j.Name == s }) }
	if !taken(name) {
		return name
	}
	for k := 2; ; k++ {
		if s := fmt.Sprintf("%s %d", name, k); !taken(s) {
			return s
		}
	}
}

// RemoveJug takes a jug away: its share goes back to the others that are not held, its scents go to the jugs they still name.
func RemoveJug(n BatchName, jug int) Edit {
	return editBatch(n, func(p *Plan, b *Batch) error {
		if err := inRange(b.Jugs, jug, "jug"); err != nil {
			return err
		}
		j := &b.Jugs[jug]
		if len(b.Jugs) == 1 {
			return errors.New("remove the last jug: a batch needs its pot")
		}
		name := j.Name
		p.Swirl.repin(n, name, "")
		if err := b.setShare(jug, 0, "the share of "+name); err != nil {
			return err
		}
		b.Jugs = slices.Delete(b.Jugs, jug, jug+1)
		scents := b.Scents[:0]
		for _, s := range b.Scents {
			named := len(s.Into) > 0
			s.Into = slices.DeleteFunc(s.Into, func(into string) bool { return into == name })
			if !named || len(s.Into) > 0 {
				scents = append(scents, s) // a scent only this jug had goes with it
			}
		}
		b.Scents = scents
		return nil
	})
}

// MoveJug changes a jug's place: the order they are poured in unless the run says otherwise. The first is the pot.
func MoveJug(n BatchName, from, to int) Edit {
	return editJug(n, from, func(b *Batch, j *Jug) error {
		if to < 0 || to >= len(b.Jugs) {
			return fmt.Errorf("move %s: it is at the end already", j.Name)
		}
		moved := *j
		b.Jugs = slices.Insert(slices.Delete(b.Jugs, from, from+1), to, moved)
		return nil
	})
}

// RenameJug renames a jug, and every place of the plan that names it.
func RenameJug(n BatchName, jug int, name string) Edit {
	return func(p Plan) (Plan, error) {
		b := p.Batch(n)
		if b == nil {
			return p, fmt.Errorf("rename a jug of the %s: this plan has none", n)
		}
		if err := inRange(b.Jugs, jug, "jug"); err != nil {
			return p, err
		}
		old := b.Jugs[jug].Name
		b.Jugs[jug].Name = name
		for i := range b.Scents {
			for k, into := range b.Scents[i].Into {
				if into == old {
					b.Scents[i].Into[k] = name
				}
			}
		}
		for i, key := range p.Run.Order {
			p.Run.Order[i] = renameInKey(key, n, old, name)
		}
		p.Swirl.repin(n, old, name)
		return p, nil
	}
}

// repin renames a pinned jug of the base, or lets it go when the new name is empty.
func (s *Swirl) repin(n BatchName, old, name string) {
	if n != Base {
		return
	}
	if s.First == old {
		s.First = name
	}
	if s.Last == old {
		s.Last = name
	}
}

// PinFirst pins a jug of the base to the beginning of every order that is worked out; empty: none.
func PinFirst(jug string) Edit {
	return func(p Plan) (Plan, error) { p.Swirl.First = jug; return p, nil }
}

// PinLast pins a jug of the base to the end of every order that is worked out; empty: none.
func PinLast(jug string) Edit {
	return func(p Plan) (Plan, error) { p.Swirl.Last = jug; return p, nil }
}

// PotBetween says whether some of the pot is poured between every two other jugs.
func PotBetween(between bool) Edit {
	return func(p Plan) (Plan, error) { p.Swirl.PotBetween = between; return p, nil }
}

// SetCapacity states what a jug holds, mL; 0: not stated.
func SetCapacity(n BatchName, jug int, ml float64) Edit {
	return editJug(n, jug, func(_ *Batch, j *Jug) error { j.CapacityML = ml; return nil })
}

// SetBatterColour states the colour of a jug's finished batter, "#rrggbb"; empty: estimate it.
func SetBatterColour(n BatchName, jug int, hex string) Edit {
	return editJug(n, jug, func(_ *Batch, j *Jug) error { j.BatterColour = hex; return nil })
}

// SetColourant puts a colourant into a place of a jug's list, at the middle of its usual dose; the place after the last adds one.
// Where it replaces one, the dose that stood there is kept when it lies in the new one's usual range. A batter colour the plan states was
// seen with what stood there before: it goes, unless the colourant stays the same.
func SetColourant(n BatchName, jug, place int, c Colourant) Edit {
	return editJug(n, jug, func(_ *Batch, j *Jug) error {
		d := Dose{Colourant: c.ID, DosePercent: round3((c.DoseLowPercent + c.DoseHighPercent) / 2), CarrierParts: c.CarrierParts}
		if place < 0 || place > len(j.Colourants) {
			return fmt.Errorf("colour %s: there is no place %d in its list", j.Name, place+1)
		}
		if place == len(j.Colourants) {
			j.Colourants, j.BatterColour = append(j.Colourants, d), ""
			return nil
		}
		if j.Colourants[place].Colourant != c.ID {
			j.BatterColour = ""
		}
		if old := j.Colourants[place].DosePercent; old >= c.DoseLowPercent && old <= c.DoseHighPercent {
			d.DosePercent = old
		}
		j.Colourants[place] = d
		return nil
	})
}

// Unstated names the jugs whose batter colour one plan states and the next, an edit of it, no longer does: they are estimated from then on.
func Unstated(before, after Plan) []string {
	var out []string
	for _, n := range [2]BatchName{Base, Icing} {
		was, is := before.Batch(n), after.Batch(n)
		if was == nil || is == nil || len(was.Jugs) != len(is.Jugs) {
			continue
		}
		for i, j := range was.Jugs {
			if j.BatterColour != "" && is.Jugs[i].BatterColour == "" && is.Jugs[i].Name == j.Name {
				out = append(out, j.Name)
			}
		}
	}
	return out
}

func editDose(n BatchName, jug, place int, edit func(*Dose)) Edit {
	return editJug(n, jug, func(_ *Batch, j *Jug) error {
		if place < 0 || place >= len(j.Colourants) {
			return fmt.Errorf("change a dose of %s: choose its colourant first", j.Name)
		}
		edit(&j.Colourants[place])
		return nil
	})
}

// SetDose sets a colourant's dose, percent of its jug's batter.
func SetDose(n BatchName, jug, place int, percent float64) Edit {
	return editDose(n, jug, place, func(d *Dose) { d.DosePercent = percent })
}

// SetCarrierParts sets the grams of carrier per gram of pigment.
func SetCarrierParts(n BatchName, jug, place int, parts float64) Edit {
	return editDose(n, jug, place, func(d *Dose) { d.CarrierParts = parts })
}

// RemoveColourant takes a colourant out of a jug, and with it the batter colour that was seen with it.
func RemoveColourant(n BatchName, jug, place int) Edit {
	return editJug(n, jug, func(_ *Batch, j *Jug) error {
		if err := inRange(j.Colourants, place, "colourant"); err != nil {
			return err
		}
		j.Colourants, j.BatterColour = slices.Delete(j.Colourants, place, place+1), ""
		return nil
	})
}
