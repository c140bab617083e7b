package pour

import (
	"fmt"
	"slices"
	"strings"
)

// highInJugPercent is a load inside one jug that is called very high, percent of that jug's oils: twice the usual 3 to 5 (common practice, no source).
const highInJugPercent = 8

func (s *Sheet) inspectScents(b *BatchSheet, shelf Shelf) {
	show := s.Plan.Show
	s.inspectNowhere(b)
	for i, x := range b.Scents {
		where := b.Name.scent(x.Name)
		sc, _ := shelf.Scent(x.ID)
		behaviour := shelf.BehaviourOf(sc)
		if sc.Rices {
			s.warn(warning("scent-rices", where, x.Name+" is known to rice or separate: lumps, not trace", "stir it in by hand into thin batter, a little first"))
		}
		if behaviour == BehaviourSeizes {
			s.warn(warning("scent-seizes", where, x.Name+" can set the batter within seconds", "have the mould ready, scent last and cool, in one small jug"))
		}
		if b.Name == Icing && fast(behaviour) && behaviour != BehaviourSeizes {
			s.warn(warning("scent-fast-icing", where, x.Name+" is fast, and the piping window is short as it is", "leave the icing unscented or take a slow scent"))
		}
		switch {
		case x.LimitPercent == 0 && !sc.Invented:
			s.warn(warning("scent-no-certificate", where, "the shelf has no certificate limit for "+x.Name, "ask the supplier for the certificate and put its category 9 figure on your shelf"))
		case x.LimitPercent > 0 && x.InBarPercent > x.LimitPercent:
			s.warn(warning("scent-over-limit", where, fmt.Sprintf("%s of the cured bar is %s; its certificate allows %s", show.Percent(x.InBarPercent, 2), x.Name, show.Percent(x.LimitPercent, 2)), "lower its load; check the certificate of your own lot"))
		}
		if s.Plan.Batch(b.Name).Scents[i].AtMin < s.Plan.Batch(b.Name).SplitAtMin {
			s.warn(warning("scent-before-split", where, x.Name+" is planned before the split; it goes in when its jug is there", "put it in after the split, or split earlier"))
		}
	}
	for _, j := range b.Jugs {
		if j.ScentLoadPercent > highInJugPercent {
			s.warn(warning("scent-high-in-jug", b.Name.jug(j.Name), fmt.Sprintf("its scent is %s of the oils in it", show.Percent(j.ScentLoadPercent, 1)), "spread the scent over more jugs or lower the load"))
		}
		s.inspectSeveral(b, j, shelf)
	}
}

// inspectSeveral warns of several scents in one jug when together they are fast though none alone is.
func (s *Sheet) inspectSeveral(b *BatchSheet, j JugSheet, shelf Shelf) {
	if len(j.Scents) < 2 {
		return
	}
	names, quick := make([]string, len(j.Scents)), 0
	for i, x := range j.Scents {
		names[i] = x.Name
		sc, _ := shelf.Scent(x.ID)
		if bh := shelf.BehaviourOf(sc); fast(bh) || bh == BehaviourUnknown {
			quick++
		}
	}
	if quick > 0 {
		s.warn(warning("scents-add-up", b.Name.jug(j.Name), strings.Join(names, " and ")+" act together here: speed, limits and allergens add up", "judge them as one scent; try them together in a small jug first"))
	}
}

func fast(behaviour string) bool {
	return behaviour == BehaviourFast || behaviour == BehaviourStrong || behaviour == BehaviourSeizes
}

// behaviours lists the words for how scents behave, the slowest first.
func behaviours() []string {
	return []string{BehaviourSlows, BehaviourNone, BehaviourUnknown, BehaviourFast, BehaviourStrong, BehaviourSeizes}
}

// Faster says whether one scent is expected to be faster than another, or is known to rice where that is not.
func (s Shelf) Faster(one, other Scent) bool {
	rank := func(sc Scent) int { return slices.Index(behaviours(), s.BehaviourOf(sc)) }
	return rank(one) > rank(other) || one.Rices && !other.Rices
}

// BehaviourOf is how a scent is expected to behave: its own word, or the fastest of its families, or unknown.
func (s Shelf) BehaviourOf(sc Scent) string {
	if sc.Behaviour != "" {
		return sc.Behaviour
	}
	order := behaviours()
	best := -1
	for _, id := range sc.Families {
		f, ok := s.Family(id)
		if !ok {
			continue
		}
		for rank, word := range order {
			if f.Behaviour == word && rank > best {
				best = rank
			}
		}
	}
	if best < 0 {
		return BehaviourUnknown
	}
	return order[best]
}

// inspectLimits adds up scents that are each under their own limit: they may share a substance.
func (s *Sheet) inspectLimits() {
	sum, count, over := 0.0, 0, false
	seen := map[string]bool{}
	for _, b := range s.Batches() {
		for _, x := range b.Scents {
			if x.LimitPercent == 0 || seen[x.ID] {
				continue
			}
			seen[x.ID] = true
			part := x.InBarPercent / x.LimitPercent
			sum, count, over = sum+part, count+1, over || part > 1
		}
	}
	if count > 1 && sum > 1 && !over {
		s.warn(warning("scents-limit-sum", "bar", fmt.Sprintf("each scent is under its own limit, but together they use %s of it", s.Plan.Show.Percent(sum*100, 0)), "if they share a substance the sum counts: ask for its share in each"))
	}
}

// inspectNowhere says which scents are weighed for jugs that hold nothing.
func (s *Sheet) inspectNowhere(b *BatchSheet) {
	for _, x := range b.Scents {
		poured := slices.ContainsFunc(b.Jugs, func(j JugSheet) bool {
			return slices.ContainsFunc(j.Scents, func(g ScentGrams) bool { return g.ID == x.ID && g.G > 0 })
		})
		if x.G > 0 && !poured {
			s.warn(warning("scent-nowhere", b.Name.scent(x.Name), fmt.Sprintf("none of its jugs has a share, so %s of %s goes nowhere", s.Plan.Show.Dose(x.G), x.Name),
				"give one of its jugs a share, or send it into another jug"))
		}
	}
}
