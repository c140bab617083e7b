package fresh

import (
	"cmp"
	"math"
	"slices"

	"pourbench/chem/colour"
	"pourbench/pour"
	"pourbench/pour/whatif"
)

// Plan makes a plan of wishes: complete, ready to be changed. What cannot be on this shelf is refused. It works out some dozens of sheets:
// not for every frame.
func Plan(w Wishes, s pour.Shelf, h pour.Hand) (pour.Plan, error) {
	p, err := w.plan(s)
	if err != nil {
		return p, err
	}
	t := trying{shelf: s, hand: h, judge: colour.NewJudge()}
	for _, step := range []func(pour.Plan, Wishes) (pour.Plan, error){t.colours, t.icing, t.scents, t.order, t.mixed, t.time} {
		if p, err = step(p, w); err != nil {
			return p, err
		}
	}
	return p, nil
}

// trying is what sheets are worked out with.
type trying struct {
	shelf pour.Shelf
	hand  pour.Hand
	judge *colour.Judge
}

func (t trying) work(p pour.Plan) pour.Sheet {
	return pour.Weigh(p, t.shelf).Time(t.shelf, t.hand).Mingle(t.shelf, t.hand, t.judge)
}

// colours gives every colour a jug of its own. The pot, the main vessel, keeps the most where the others go into it, and an equal part
// where the portions lie side by side.
func (t trying) colours(p pour.Plan, w Wishes) (pour.Plan, error) {
	for i, id := range w.Colours {
		c, err := named(t.shelf.Colourants, id, "colourant", func(c pour.Colourant) (string, string) { return c.ID, c.Name })
		if err != nil {
			return p, err
		}
		if p, err = pour.Apply(p, t.shelf, pour.AddJug(pour.Base, i, c.JugName())); err != nil {
			return p, err
		}
		if p, err = pour.Apply(p, t.shelf, pour.SetColourant(pour.Base, i+1, 0, c)); err != nil {
			return p, err
		}
	}
	n := len(p.Base.Jugs)
	pot := 100 / float64(n)
	if technique, _ := t.shelf.Technique(p.Swirl.Technique); n > 1 && technique.Kind != "layers" && technique.Kind != "comb" {
		pot = max(pot, potPercent)
	}
	for i := range p.Base.Jugs {
		p.Base.Jugs[i].SharePercent = (100 - pot) / float64(max(n-1, 1))
	}
	p.Base.Jugs[0].SharePercent = pot
	return p, nil
}

// potPercent is what stays in the pot where the colours go into or onto it (common practice, no source).
const potPercent = 40

// icing adds an icing that leans on the base, stiffer than it.
func (t trying) icing(p pour.Plan, w Wishes) (pour.Plan, error) {
	if !w.Icing {
		return p, nil
	}
	p, err := pour.Apply(p, t.shelf, pour.AddIcing())
	if err != nil {
		return p, err
	}
	p.Icing.Oils, p.Icing.Blend, p.Icing.LyeConcentrationPercent = onShelf(icingOils(), t.shelf), icingBursts(), icingLyePercent
	p.Icing.SplitAtMin = icingSplitAtMin
	return p, nil
}

// scents gives every scent to all jugs, or to the one in which it does less harm: it gets as much of it as it would have had among all.
// A scent has its usual load, or where that is less as much of the oils as its part of what its certificate allows of the bar, which weighs
// more than they do.
func (t trying) scents(p pour.Plan, w Wishes) (pour.Plan, error) {
	usual := scentPercent / float64(max(len(w.Scents), 1))
	loads := make([]float64, len(w.Scents))
	for i, id := range w.Scents {
		sc, err := named(t.shelf.Scents, id, "scent", func(s pour.Scent) (string, string) { return s.ID, s.Name })
		if err != nil {
			return p, err
		}
		id = sc.ID
		loads[i] = usual
		if sc.LimitPercent > 0 {
			loads[i] = max(min(usual, math.Floor(sc.LimitPercent/float64(len(w.Scents))*10)/10), leastScentPercent)
		}
		load := loads[i]
		best, err := pour.Apply(p, t.shelf, pour.AddScent(pour.Base, id, load, nil))
		if err != nil {
			return p, err
		}
		least := t.harm(best)
		for _, j := range slices.Backward(p.Base.Jugs) { // the pot last
			next, err := pour.Apply(p, t.shelf, pour.AddScent(pour.Base, id, round1(load*j.SharePercent/100), []string{j.Name}))
			if err != nil || len(p.Base.Jugs) == 1 {
				break
			}
			if h := t.harm(next); h.worse(least) < 0 {
				best, least = next, h
			}
		}
		p = best
	}
	return t.apart(p, loads), nil
}

// leastScentPercent is the least of a scent that is planned at all, percent of the oils.
const leastScentPercent = 0.1

// apart keeps scents that go everywhere out of a jug that has one of its own, where that is better: two in one jug add up.
func (t trying) apart(p pour.Plan, loads []float64) pour.Plan {
	var wide []string
	share := 0.0
	for _, j := range p.Base.Jugs {
		if !slices.ContainsFunc(p.Base.Scents, func(s pour.ScentPart) bool { return slices.Equal(s.Into, []string{j.Name}) }) {
			wide = append(wide, j.Name)
			share += j.SharePercent
		}
	}
	if len(wide) == 0 || len(wide) == len(p.Base.Jugs) {
		return p
	}
	next := p.Clone()
	for i := range next.Base.Scents {
		if s := &next.Base.Scents[i]; len(s.Into) == 0 {
			s.Into, s.PercentOfOils = slices.Clone(wide), round1(loads[i]*share/100)
		}
	}
	if t.harm(next).worse(t.harm(p)) < 0 {
		return next
	}
	return p
}

func round1(percent float64) float64 { return max(math.Round(percent*10)/10, leastScentPercent) }

// harm is how bad a plan is: what must not be, what wants a decision, and how likely a jug is too late.
type harm struct {
	stops, cautions int
	late            float64
}

// worse compares what is warned of.
func (h harm) worse(o harm) int {
	return cmp.Or(cmp.Compare(h.stops, o.stops), cmp.Compare(h.cautions, o.cautions))
}

// less says whether a plan is better than another: fewer warnings, or with as many less likely late.
func (h harm) less(o harm) bool { return cmp.Or(h.worse(o), cmp.Compare(h.late, o.late-1)) < 0 }

func (t trying) harm(p pour.Plan) (h harm) {
	sheet := t.work(p)
	for _, w := range sheet.Warnings {
		switch w.Severity {
		case pour.Stop:
			h.stops++
		case pour.Caution:
			h.cautions++
		}
	}
	for _, o := range sheet.Mingling.Orders {
		if o.Kind == pour.OrderOwn && o.LatePercent.Known {
			h.late = o.LatePercent.V
		}
	}
	return h
}

// order takes another order of pouring where one is better than that in which the colours were named.
func (t trying) order(p pour.Plan, _ Wishes) (pour.Plan, error) {
	sheet := t.work(p)
	best, least := p, t.harm(p)
	for _, o := range sheet.Mingling.Orders {
		if o.Kind == pour.OrderOwn {
			continue
		}
		names := make([]string, len(o.Jugs))
		for i, j := range o.Jugs {
			names[i] = sheet.Base.Jugs[j].Name
		}
		next, err := pour.Apply(p, t.shelf, pour.SetPourOrder(sheet, names))
		if err != nil {
			continue // the hands cannot follow it
		}
		if h := t.harm(next); h.less(least) {
			best, least = next, h
		}
	}
	return best, nil
}

// rounds is how often the what-ifs are asked: each may bring a plan only nearer.
const rounds = 3

// time brings every jug inside its window, as far as the what-ifs know how, without making anything else worse.
func (t trying) time(p pour.Plan, _ Wishes) (pour.Plan, error) {
	for range rounds {
		before, better := t.harm(p), false
		for _, s := range whatif.Suggest(p, t.shelf, t.hand) {
			next, err := pour.Apply(p, t.shelf, s.Edit)
			if err == nil {
				next, err = t.mixed(next, Wishes{})
			}
			if err == nil && t.harm(next).less(before) {
				p, better = next, true
				break
			}
		}
		if !better {
			break
		}
	}
	return p, nil
}
