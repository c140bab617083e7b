package whatif

import (
	"strconv"
	"strings"

	"pourbench/pour"
)

// toppingWays mends what goes on the top, and when. That something burns or flies as dust, no edit takes away: its words say what to do.
func toppingWays(m *mender, w pour.Warning) []ladder {
	name, ok := strings.CutPrefix(w.Where, "topping ")
	if !ok {
		return nil
	}
	var ways func(i int) []ladder
	switch w.Code {
	case "topping-bleeds", "topping-untested", "topping-browns":
		ways = func(i int) []ladder { return []ladder{m.strewn(i, pour.StrewCure), m.swapped(i), m.bare(i)} }
	case "topping-dissolves":
		ways = func(i int) []ladder { return []ladder{m.strewn(i, pour.StrewSkin), m.swapped(i), m.bare(i)} }
	case "topping-weeps", "topping-plastic":
		ways = func(i int) []ladder { return []ladder{m.swapped(i), m.bare(i)} }
	case "topping-melts":
		ways = func(i int) []ladder {
			return []ladder{m.strewn(i, pour.StrewCut), m.bed(pour.BedChill, "chill the loaf"), m.swapped(i), m.bare(i)}
		}
	case "topping-wire":
		side := ladder{{"cut with the loaf on its side", pour.SetWord("cut.lay", pour.LaySide)}}
		ways = func(i int) []ladder { return []ladder{side, m.strewn(i, pour.StrewCut), m.swapped(i)} }
	case "topping-order":
		ways = func(i int) []ladder { return []ladder{m.strewnLater(i)} }
	case "topping-dose":
		ways = func(i int) []ladder {
			return []ladder{{{"strew as much " + name + " as is usual", pour.UsualTopping(i)}}}
		}
	default:
		return nil
	}
	return each(m.toppings(name), ways)
}

// toppings are the places at which a topping of that name stands.
func (m *mender) toppings(name string) []int {
	var out []int
	for i, l := range m.before.Toppings {
		if l.Name == name {
			out = append(out, i)
		}
	}
	return out
}

// strewn lets a topping go on at another time.
func (m *mender) strewn(i int, when string) ladder {
	says := map[string]string{
		pour.StrewSkin: " on once the top has skinned", pour.StrewCut: " on after the cut", pour.StrewCure: " on the cured bars",
	}
	return ladder{{"put " + m.before.Toppings[i].Name + says[when], pour.SetWord("top.topping["+strconv.Itoa(i)+"].when", when)}}
}

// strewnLater lets a topping go on after one, two or more of those that stand behind it.
func (m *mender) strewnLater(i int) ladder {
	var out ladder
	for to := i + 1; to < len(m.before.Toppings); to++ {
		out = append(out, Mend{"put " + m.before.Toppings[i].Name + " on after " + m.before.Toppings[to].Name, pour.MoveTopping(i, to-i)})
	}
	return out
}

// swapped puts another material of the same kind in the place of one of a topping: first those that are called alike, a glitter for a glitter.
func (m *mender) swapped(i int) ladder {
	var alike, others ladder
	for k, part := range m.plan.Top.Toppings[i].Parts {
		old, _ := m.shelf.Topping(part.Material)
		word, _, _ := strings.Cut(old.Name, " ")
		for _, x := range m.shelf.Toppings {
			if x.ID == old.ID || x.Kind != old.Kind {
				continue
			}
			mend := Mend{"take " + x.Name + " in place of " + old.Name, swap(i, k, x.ID)}
			if strings.HasPrefix(x.Name, word+" ") {
				alike = append(alike, mend)
			} else {
				others = append(others, mend)
			}
		}
	}
	return append(alike, others...)
}

// swap puts another material in a place, as much of it as is usual: what covers well of one spills of another.
func swap(i, part int, id string) pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		p, err := pour.SwapToppingPart(i, part, id)(p)
		if err != nil {
			return p, err
		}
		return pour.UsualTopping(i)(p)
	}
}

// bare leaves a topping out.
func (m *mender) bare(i int) ladder {
	return ladder{{"leave " + m.before.Toppings[i].Name + " out", pour.RemoveTopping(i)}}
}
