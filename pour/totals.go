package pour

import (
	"cmp"
	"slices"
)

// Kinds of things to weigh.
const (
	WeighOil      = "oil"
	WeighAlkali   = "alkali"
	WeighWater    = "water"
	WeighExtra    = "extra"
	WeighColour   = "colourant"
	WeighCarrier  = "carrier"
	WeighScent    = "scent"
	NameNaOH      = "sodium hydroxide (NaOH)"
	NameKOH       = "potassium hydroxide (KOH)"
	NameStock     = "stock lye"
	NameWater     = "water"
	nameReadyOils = "ready-mixed oils: "
)

// totals adds up everything to weigh, base and icing together, largest first and what is unknown last.
func (s *Sheet) totals() {
	var list []Weighing
	add := func(kind, name string, g float64) {
		if g <= 0 {
			return // nothing of it; what is unknown is listed
		}
		for i := range list {
			if list[i].Kind == kind && list[i].Name == name {
				list[i].G += g
				return
			}
		}
		list = append(list, Weighing{Name: name, Kind: kind, G: g})
	}
	for _, b := range s.Batches() {
		b.weighings(add)
	}
	slices.SortStableFunc(list, func(a, b Weighing) int { return cmp.Compare(b.G, a.G) })
	s.Totals = list
}

func (b *BatchSheet) weighings(add func(kind, name string, g float64)) {
	if b.ReadyBlend != "" {
		add(WeighOil, nameReadyOils+b.ReadyBlend, b.Size.OilsG)
	} else {
		for _, o := range b.Oils {
			add(WeighOil, o.Name, o.G)
		}
	}
	add(WeighAlkali, NameNaOH, b.Lye.NaOH.WeighedG)
	add(WeighAlkali, NameKOH, b.Lye.KOH.WeighedG)
	add(WeighAlkali, NameStock, b.Lye.Stock.WeighedG)
	add(WeighWater, NameWater, b.Lye.WaterToAddG.orUnknown())
	for _, x := range b.Extras {
		add(WeighExtra, x.Name, x.G)
	}
	for _, j := range b.Jugs {
		for _, d := range j.Colourants {
			add(WeighColour, d.Name, d.PigmentG)
			add(WeighCarrier, d.CarrierName, d.CarrierG)
		}
		for _, x := range j.Scents {
			add(WeighScent, x.Name, x.G)
		}
	}
}
