package pour

import (
	"pourbench/chem"
	"pourbench/pour/label"
	"pourbench/pour/lot"
	"pourbench/pour/plain"
)

// Amounts is how much of everything there is in an average bar, percent of it as it was made, and the superfat of each batch: what an assessor's report
// is held against. What went into the batches is handed in as to [Sheet.Contents]. Pieces that are made as the base is count with what the base is of.
// The error is why it cannot be told.
func (s *Sheet) Amounts(shelf Shelf, went []Went) ([]label.Amount, error) {
	c, err := s.charged(&shelf, went)
	if err != nil {
		return nil, err
	}
	return c.amounts(went), nil
}

// amounts turns what was counted into percent and adds the superfats: those of the sheet or, of what was weighed, by what it takes up.
func (c *charger) amounts(went []Went) []label.Amount {
	all := c.sum()
	out := append(make([]label.Amount, 0, len(c.has)+2), c.has...)
	for i := range out {
		out[i].Percent *= 100 / all
	}
	for _, b := range c.sheet.Batches() {
		percent := b.Superfat.ExactPercent
		if went != nil {
			percent = c.superfat(b, went)
		}
		out = append(out, label.Amount{Kind: label.RangeSuperfat, Name: "superfat", Batch: string(b.Name), Percent: percent})
	}
	return out
}

// sum is the mass of all charges, g.
func (c *charger) sum() float64 {
	g := 0.0
	for i := range c.out {
		g += c.out[i].G
	}
	return g
}

// count notes so much of a mixing under what of the shelf it is.
func (c *charger) count(a label.Amount, g float64) {
	a.Percent = g * c.part
	c.has = append(c.has, a)
}

// superfat is the superfat of a batch by what went into it, percent: as [BatchSuperfat.ExactPercent], which leaves out oil that carries colours on top.
func (c *charger) superfat(b *BatchSheet, went []Went) float64 {
	p := c.sheet.Plan.Batch(b.Name)
	alkali, demand := 0.0, 0.0
	for _, w := range went {
		if w.Batch != b.Name {
			continue
		}
		switch {
		case w.Kind == WeighCarrier && p.Carrier != CarrierBatch:
		case w.Material.Kind == lot.Oil:
			demand += w.G * inList(c.shelf.Oils, w.Material.ID, func(o *Oil) string { return o.ID }).Fat.Sap / 1000
		case w.Material.Kind == lot.Extra:
			x, _ := c.shelf.Extra(w.Material.ID)
			alkali -= w.G * x.AlkaliKOHMgG / 1000
			demand += w.G * x.FatPercent / 100 * x.FatSapKOHMgG / 1000
		case w.Material.ID == lot.NaOH:
			alkali += w.G * p.NaOHPurityPercent / 100 / chem.AlkaliRatio
		case w.Material.ID == lot.KOH:
			alkali += w.G * p.KOHPurityPercent / 100
		case w.Material.ID == lot.StockLye:
			alkali += w.G * p.StockLyePercent / 100 / chem.AlkaliRatio
		case w.Material.Kind == lot.Blend:
			demand += w.G * b.blendSap() / 1000
		}
	}
	return fats{plannedPercent: b.Superfat.PlannedPercent}.superfatOf(alkali, demand)
}

// blendSap is the saponification value of the oils that are mixed, those for carriers taken out, mg KOH/g.
func (s *BatchSheet) blendSap() float64 {
	g, sap := 0.0, 0.0
	for _, o := range s.Oils {
		g, sap = g+o.G, sap+o.G*o.SapKOHMgG
	}
	return sap / g
}

// embedAmount is an embed that is not made as the base is.
func embedAmount(name string) label.Amount {
	return label.Amount{Kind: label.RangeEmbed, ID: plain.Slug(name, "embed"), Name: name}
}
