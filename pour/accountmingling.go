package pour

import (
	"pourbench/chem/colour"
	"pourbench/pour/swirl"
)

// minglingAccounts are what the colours do beside each other.
func minglingAccounts() []accountRow {
	pair := func(t teller) *Pair { return &t.sheet.Mingling.Pairs[t.ix[0]] }
	return []accountRow{
		{
			pattern: "neighbours[].contact_percent", label: "boundary between {}", unit: UnitPercent, value: func(t teller) Figure { return AsFigure(pair(t).ContactPercent) },
			feeds: []string{"muddy-neighbours"}, how: teller.contact, why: "of all boundary between colours, measured on faces drawn from the script of the pour; another seed gives other faces",
		},
		{
			pattern: "neighbours[].mud", label: "mud between {}", unit: UnitCount, value: func(t teller) Figure { return AsFigure(pair(t).Score) },
			feeds: []string{"muddy-neighbours"}, how: teller.mud, why: "0 clean to 1: the colours of both as pigments mixed in thirds, against a clean blend of them",
		},
	}
}

// orderAccounts are what an order to pour in costs.
func orderAccounts() []accountRow {
	order := func(t teller) *Order { return &t.sheet.Mingling.Orders[t.ix[0]] }
	return []accountRow{
		{pattern: "orders[].worst", label: "worst mud of {}", unit: UnitCount, value: func(t teller) Figure { return Know(order(t).Worst) }, feeds: []string{"muddy-neighbours"}, how: func(t teller) Term {
			return t.priced("largest mud of two jugs that touch, as this order lets them touch, ", func(o Order) float64 { return o.Worst })
		}},
		{pattern: "orders[].total", label: "mud in all of {}", unit: UnitCount, value: func(t teller) Figure { return Know(order(t).Total) }, feeds: []string{"muddy-neighbours"}, how: func(t teller) Term {
			return t.priced("mean mud along all boundary, as this order lets them touch, ", func(o Order) float64 { return o.Total })
		}},
		{pattern: "orders[].late_percent", label: "largest chance to come too late in {}", unit: UnitPercent, value: func(t teller) Figure { return order(t).LatePercent }, feeds: []string{"jug-late"}, how: func(t teller) Term {
			return t.known("of "+order(t).LateJug, order(t).LatePercent.V, UnitPercent, "the clock, with the run in this order")
		}},
	}
}

// priced weighs an order's neighbours again, from the mud of every two jugs as shown.
func (t teller) priced(name string, of func(Order) float64) Term {
	var scores []Term
	mud := t.sheet.Mingling.Mud
	for a := range mud {
		for b := a + 1; b < len(mud); b++ {
			scores = append(scores, t.known("mud between "+t.sheet.Base.Jugs[a].Name+" and "+t.sheet.Base.Jugs[b].Name, mud[a][b], UnitCount, "the colours of both"))
		}
	}
	contact := t.sheet.Mingling.Orders[t.ix[0]].Contact
	return modelled(name, func(v []float64) float64 {
		s := Sheet{Mingling: Mingling{Mud: make([][]float64, len(mud))}}
		for a := range mud {
			s.Mingling.Mud[a] = make([]float64, len(mud))
		}
		for a := range mud {
			for b := a + 1; b < len(mud); b++ {
				s.Mingling.Mud[a][b], s.Mingling.Mud[b][a] = v[0], v[0]
				v = v[1:]
			}
		}
		return of(s.muddy(contact))
	}, scores...)
}

// contact draws the faces again, in the mould as shown, and measures who lies beside whom.
func (t teller) contact() Term {
	p := t.sheet.Mingling.Pairs[t.ix[0]]
	r := t.sheet.recipe()
	measure := func(v []float64) float64 {
		r.Box = swirl.Box{L: v[0], W: v[1], H: v[2]}
		poured, err := swirl.New(r)
		if err != nil {
			return t.sheet.Base.Script.Contact()[p.A][p.B] * 100
		}
		return poured.Touching()[p.A][p.B] * 100
	}
	base := t.at(&t.sheet.Base)
	height := base.known("how high it stands", r.Box.H, UnitMM, "worked out, at most the height of the mould")
	return modelled("faces drawn and measured ", measure, t.whole("mould.length_mm"), t.whole("mould.width_mm"), height)
}

// mud judges the two colours again.
func (t teller) mud() Term {
	p := t.sheet.Mingling.Pairs[t.ix[0]]
	base := t.at(&t.sheet.Base)
	judge := func(v []float64) float64 {
		var paints [2]colour.Paint
		for k, i := range [...]int{p.A, p.B} {
			rgb, err := colour.ParseHex(t.sheet.Base.Jugs[i].Colour.Hex)
			if err != nil {
				return Unknown()
			}
			if paints[k], err = colour.NewPaint(rgb, min(mostDose, v[k])); err != nil {
				return Unknown()
			}
		}
		m, err := colour.NewJudge().Mud(paints[0], paints[1])
		if err != nil {
			return Unknown()
		}
		return m.Score
	}
	a, b := &t.sheet.Base.Jugs[p.A], &t.sheet.Base.Jugs[p.B]
	return modelled("mud of "+a.Colour.Hex+" beside "+b.Colour.Hex+" ", judge, base.fig("batch.jugs[].white_percent", p.A), base.fig("batch.jugs[].white_percent", p.B))
}

// accountRows is the table of every figure that can be accounted for, in the order in which a pour comes about.
func accountRows() []accountRow {
	var all []accountRow
	for _, rows := range [...]func() []accountRow{
		sizeAccounts, lyeAccounts, waterAccounts, takingAccounts, superfatAccounts, jugFatAccounts, volumeAccounts, jugAccounts, barAccounts, pipingAccounts, runAccounts, clockAccounts, gelAccounts, minglingAccounts, orderAccounts, totalAccounts, familyAccounts, toppingAccounts,
		embedAccounts, pieceAccounts, cutAccounts, cureAccounts, labelAccounts,
	} {
		all = append(all, rows()...)
	}
	return all
}
