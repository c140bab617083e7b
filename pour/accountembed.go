package pour

import (
	"math"

	"pourbench/pour/shape"
)

// kind is the kind of embed that a path leads to.
func (t teller) kind() (*EmbedSheet, *Embed) {
	return &t.sheet.Embeds[t.ix[0]], &t.sheet.Plan.Top.Embeds[t.ix[0]]
}

// Piece is a piece by its place among all pieces, kind after kind, and the kind's place in the list; false: there are not so many.
func (s *Sheet) Piece(n int) (piece EmbedPiece, kind int, ok bool) {
	for i := range s.Embeds {
		if n < len(s.Embeds[i].Pieces) {
			return s.Embeds[i].Pieces[n], i, true
		}
		n -= len(s.Embeds[i].Pieces)
	}
	return EmbedPiece{}, 0, false
}

// pieces is how many pieces there are of all kinds.
func (s *Sheet) pieces() int {
	n := 0
	for i := range s.Embeds {
		n += len(s.Embeds[i].Pieces)
	}
	return n
}

// Worst is the piece of a kind that has the least room; false: none has a cut beside it.
func (k *EmbedSheet) Worst() (EmbedPiece, bool) {
	worst, found := EmbedPiece{}, false
	for _, p := range k.Pieces {
		if p.ClearMM.Known && (!found || p.ClearMM.V < worst.ClearMM.V) {
			worst, found = p, true
		}
	}
	return worst, found
}

// ofKind is a number of the plan's of the kind a path leads to.
func (t teller) ofKind(key string) Term { return t.whole("top.embed[" + decimal(t.ix[0]) + "]." + key) }

// embedAccounts are the kinds of embeds: what one weighs, what it takes the place of, how it is held.
func embedAccounts() []accountRow {
	of := func(f func(*EmbedSheet) Figure) func(teller) Figure {
		return func(t teller) Figure { k, _ := t.kind(); return f(k) }
	}
	return []accountRow{
		{pattern: "embed_kinds[].whole_ml", label: "volume of one {}", unit: UnitML, value: of(func(k *EmbedSheet) Figure { return Know(k.WholeMM3 / 1000) }), how: func(t teller) Term { return t.ofOutline(false) }},
		{
			pattern: "embed_kinds[].submerged_ml", label: "below the surface of one {}", unit: UnitML, feeds: []string{"embed-crowd", "embed-deep"},
			value: of(func(k *EmbedSheet) Figure { return Know(k.SubmergedMM3.V / 1000) }), how: func(t teller) Term { return t.ofOutline(true) },
		},
		{pattern: "embed_kinds[].piece_g", label: "one {}", unit: UnitGram, value: of(func(k *EmbedSheet) Figure { return k.PieceG }), how: teller.pieceG},
		{pattern: "embed_kinds[].all_g", label: "{}, all pieces", unit: UnitGram, value: of(func(k *EmbedSheet) Figure { return k.AllG }), how: func(t teller) Term {
			k, _ := t.kind()
			return product(t.fig("embed_kinds[].piece_g", t.ix[0]), t.known("pieces", float64(len(k.Pieces)), UnitCount, "your plan and its cuts"))
		}},
		{
			pattern: "embed_kinds[].cured_g", label: "one {} in a cured bar", unit: UnitGram, value: of(func(k *EmbedSheet) Figure { return k.CuredG }), how: teller.curedPiece,
			why: "a cold-process piece is taken to be mixed as the base is, to lose a tenth of itself in four weeks and then to dry with its bar; others keep their water",
		},
		{pattern: "embed_kinds[].displaces_g", label: "batter that {} takes the place of", unit: UnitGram, value: of(func(k *EmbedSheet) Figure { return k.DisplacesG }), how: func(t teller) Term {
			k, _ := t.kind()
			n := t.known("pieces in the loaf", float64(k.inLoaf(t.sheet.Plan.Mould.AlongMM())), UnitCount, "your plan and its cuts")
			base := t.at(&t.sheet.Base)
			return product(t.fig("embed_kinds[].submerged_ml", t.ix[0]), n, ratio(base.fig("batch.poured_g"), base.fig("batch.poured_ml")))
		}},
		extentAccount("embed_kinds[].extent_mm", "{} takes of the loaf's length", of(func(k *EmbedSheet) Figure { return Know(k.ExtentMM) }), func(along, _ float64) float64 { return along }),
		extentAccount("embed_kinds[].extent_across_mm", "{} takes of the loaf's width", of(func(k *EmbedSheet) Figure { return Know(k.AcrossMM) }), func(_, across float64) float64 { return across }),
		{
			pattern: "embed_kinds[].need_mm", label: "room {} needs on each side", unit: UnitMM, feeds: []string{"embed-cut", "embed-tight"}, value: of(func(k *EmbedSheet) Figure { return k.NeedMM }),
			how: func(t teller) Term { return larger(t.overKind("embeds[].need_mm", math.Max), t.whole("cut.clear_mm")) }, why: "where every error goes the same way, and at least what you want",
		},
		{
			pattern: "embed_kinds[].clear_mm", label: "least room beside {}", unit: UnitMM, feeds: []string{"embed-cut", "embed-tight", "embed-sight"},
			value: func(t teller) Figure { k, _ := t.kind(); p, _ := k.Worst(); return p.ClearMM },
			how:   func(t teller) Term { return t.overKind("embeds[].clear_mm", math.Min) },
		},
		{pattern: "embed_kinds[].buried_percent", label: "of {}'s height below the surface", unit: UnitPercent, feeds: []string{"embed-high"}, value: of(func(k *EmbedSheet) Figure { return k.BuriedPercent }), how: func(t teller) Term {
			k, _ := t.kind()
			part := func(v []float64) float64 { return min(max(v[0]-v[1], 0), v[2]) / v[0] * 100 }
			return modelled("what is below of it ", part, t.known("its height", k.HeightMM, UnitMM, "your plan"), t.ofKind("out_mm"), t.deep())
		}},
		{pattern: "embed_kinds[].hold_n", label: "what holds {} in a fresh loaf", unit: "N", feeds: []string{"embed-high"}, value: of(func(k *EmbedSheet) Figure { return k.HoldN }), how: func(t teller) Term {
			_, e := t.kind()
			m := t.sheet.Plan.Mould
			_, sides := e.buried(e.outline(m.AlongMM()), m.deepMM())
			return product(t.known("its sides below the surface", sides, "mm²", "its outline and depth"), t.law("strength of a soft fresh loaf", shape.FreshLoafPa, "Pa", "assumed: no measurement of a day-old soap was found", "assumed"), bare(1e-6))
		}, why: "an estimate: grip on its sides alone"},
	}
}

// extentAccount is what a kind takes of the loaf in one direction.
func extentAccount(pattern, label string, value func(teller) Figure, of func(along, across float64) float64) accountRow {
	return accountRow{
		pattern: pattern, label: label, unit: UnitMM, feeds: []string{"embed-cut", "embed-tight"}, value: value,
		how: func(t teller) Term {
			_, e := t.kind()
			takes := func([]float64) float64 { return of(e.takes(e.outline(t.sheet.Plan.Mould.AlongMM()))) }
			return modelled("from the furthest points of its outline ", takes, t.ofKind("length_mm"), t.ofKind("width_mm"), t.ofKind("turn_deg"))
		}, why: "where it may lie any way round: of the smallest circle around it",
	}
}

// ofOutline is the volume of a piece, or of what of it is below the surface.
func (t teller) ofOutline(below bool) Term {
	_, e := t.kind()
	m := t.sheet.Plan.Mould
	run := func([]float64) float64 {
		under, whole := e.below(e.outline(m.AlongMM()), m.AlongMM(), m.deepMM())
		if below {
			return under / 1000
		}
		return whole / 1000
	}
	of := []Term{t.ofKind("length_mm"), t.ofKind("width_mm"), t.ofKind("height_mm")}
	if below {
		of = append(of, t.ofKind("out_mm"), t.deep())
	}
	return modelled("volume of its outline ", run, of...)
}

// deep is how deep a piece can reach.
func (t teller) deep() Term {
	if t.sheet.Plan.Mould.Shape == ShapeTube {
		return t.whole("mould.length_mm")
	}
	return t.whole("mould.fill_mm")
}

// pieceG is what one piece weighs: as the maker weighed it, or by its volume.
func (t teller) pieceG() Term {
	_, e := t.kind()
	if e.G > 0 {
		return t.ofKind("g")
	}
	density := t.ofKind("density_g_ml")
	if e.DensityGML == 0 {
		density = t.law("density of such a piece", e.gml(), UnitDensity, "usual for what it is made of", "memory")
	}
	return product(t.fig("embed_kinds[].whole_ml", t.ix[0]), density)
}

// curedPiece is what a piece weighs once its bar has cured.
func (t teller) curedPiece() Term {
	g, base := t.fig("embed_kinds[].piece_g", t.ix[0]), t.at(&t.sheet.Base)
	k, e := t.kind()
	if !e.soap() {
		return g
	}
	run := func(v []float64) float64 {
		return v[0] * min(v[1]*(1-v[2]/100)/v[3]/(1-agedLoss(v[4]))/(1-v[5]/100), 1)
	}
	return modelled("what dries less and less away ", run, g, base.fig("batch.dry_g"), base.fig("batch.loss_percent"), base.fig("batch.poured_g"),
		t.known("days between its making and the pour", k.MadeDays, UnitDay, "your plan, or as long as it has to harden"), t.whole("base.final_moisture_percent"))
}

// overKind is the least or the most of a figure of all pieces of a kind.
func (t teller) overKind(pattern string, of func(a, b float64) float64) Term {
	first := 0
	for i := range t.ix[0] {
		first += len(t.sheet.Embeds[i].Pieces)
	}
	var all []Term
	for n := range t.sheet.Embeds[t.ix[0]].Pieces {
		if x := t.fig(pattern, first+n); !math.IsNaN(x.Value()) {
			all = append(all, x)
		}
	}
	return modelled("of all its pieces ", func(v []float64) float64 {
		best := v[0]
		for _, x := range v[1:] {
			best = of(best, x)
		}
		return best
	}, all...)
}

// displacedML is what all embeds take the place of.
func (t teller) displacedML() Term {
	s := t.sheet
	if len(s.Embeds) == 0 {
		return bare(0)
	}
	of := make([]Term, 0, len(s.Embeds)+1)
	of = append(of, t.known("nine tenths of the loaf", mostDisplaced*s.Plan.Mould.AreaMM2()*s.Plan.Mould.FillMM/1000, UnitML, "no more is reckoned with"))
	for i := range s.Embeds {
		n := t.known("pieces of "+s.Embeds[i].Name, float64(s.Embeds[i].inLoaf(s.Plan.Mould.AlongMM())), UnitCount, "your plan and its cuts")
		of = append(of, product(t.fig("embed_kinds[].submerged_ml", i), n))
	}
	return modelled("what embeds take the place of, at most ", func(v []float64) float64 {
		all := 0.0
		for _, x := range v[1:] {
			all += x
		}
		return min(all, v[0])
	}, of...)
}
