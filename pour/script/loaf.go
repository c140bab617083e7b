package script

// Dressing is what is set into and put onto the poured loaf. All places are those of the plan's lists, from 0.
type Dressing struct {
	Into  []int // embeds that go into the base, before any icing
	Wet   []int // toppings that run over the fresh top, before any piece stands on it
	Onto  []int // embeds that stand in the icing
	Grain []int // toppings on the fresh top, after the pieces
	Skin  []int // toppings that wait until the top has skinned
}

// Top is the script of what is done to the loaf before it is put to bed, in the order in which it is done: what would stain or loosen what
// lies under it comes later (common practice, no source).
func Top(d Dressing) Script {
	s := loaf()
	s.each(Act{Kind: Embed, Into: true}, d.Into)
	s.each(Act{Kind: Strew}, d.Wet)
	s.each(Act{Kind: Embed}, d.Onto)
	s.each(Act{Kind: Strew}, d.Grain)
	s.each(Act{Kind: Strew, Wait: true}, d.Skin)
	return s
}

// Knife is how a loaf is cut and what is done with what comes of it.
type Knife struct {
	Cuts   int   // one after the other
	Gang   bool  // all of them at once
	Aside  bool  // there are trims or a slice to set aside
	Pieces int   // that are weighed: the bars, then what was set aside
	Strewn []int // toppings that go on after the cut
	Cured  []int // toppings that go on the cured bar
}

// Cutting is the script of the cut, its own day. A loaf that is not cut, because it is poured in single cavities, is taken out, weighed and
// strewn.
func Cutting(k Knife) Script {
	s := loaf()
	s.Acts = make([]Act, 0, k.Cuts+k.Pieces+len(k.Strewn)+len(k.Cured)+4)
	s.Acts = append(s.Acts, Act{Kind: Firm, Jug: Whole})
	if k.Cuts > 0 {
		s.Acts = append(s.Acts, Act{Kind: Mark, Jug: Whole})
	}
	cuts := k.Cuts
	if k.Gang {
		cuts = min(cuts, 1)
	}
	for i := range cuts {
		a := Act{Kind: Cut, Jug: Whole, Item: i}
		if cuts > 1 {
			a.Round, a.Rounds = i+1, cuts
		}
		s.Acts = append(s.Acts, a)
	}
	if k.Aside {
		s.Acts = append(s.Acts, Act{Kind: Aside, Jug: Whole})
	}
	for i := range k.Pieces {
		s.Acts = append(s.Acts, Act{Kind: Weigh, Jug: Whole, Item: i})
	}
	if k.Cuts > 0 {
		s.Acts = append(s.Acts, Act{Kind: Wipe, Jug: Whole})
	}
	s.each(Act{Kind: Strew}, k.Strewn)
	s.each(Act{Kind: Strew, Wait: true}, k.Cured)
	return s
}

// loaf is a script that belongs to no batch.
func loaf() Script { return Script{Brief: Brief{First: Whole, Last: Whole}} }

// each adds an act for every place of a list.
func (s *Script) each(a Act, places []int) {
	for _, i := range places {
		a.Jug, a.Item = Whole, i
		s.Acts = append(s.Acts, a)
	}
}
