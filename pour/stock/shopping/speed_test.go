package shopping_test

import (
	"fmt"
	"testing"

	"pourbench/pour"
	"pourbench/pour/lot"
	"pourbench/pour/stock"
	"pourbench/pour/stock/shopping"
	"pourbench/pour/stock/stocktest"
)

// tenYears is the stock of ten years of a business, and pours that are planned, each of twenty materials.
func tenYears(planned int) (lot.Stock, []shopping.Pour) {
	b := stocktest.Draw(stocktest.Seeded(7), stocktest.TenYears())
	s := stock.Of(b.Entries, b.Today)
	var materials []lot.Material
	for m, h := range s.Held {
		if len(h.Packs) > 0 && !h.Packs[0].Made {
			materials = append(materials, m)
		}
	}
	const each = 20
	var pours []shopping.Pour
	for i := range planned {
		p := shopping.Pour{Name: fmt.Sprint("design ", i), On: b.Today}
		for k := range each {
			m := materials[(i*7+k)%len(materials)]
			p.Needs = append(p.Needs, pour.MaterialNeed{Material: m, Name: m.ID, Q: lot.Quantity(700+k*13) * lot.One})
		}
		pours = append(pours, p)
	}
	return s.Stock, pours
}

// The shopping list of twenty planned pours after ten years of 60 000 movements.
func BenchmarkShoppingListOfTenYears(b *testing.B) {
	s, pours := tenYears(20)
	b.ResetTimer()
	for b.Loop() {
		if l := shopping.Of(s, nil, pours, nil, shopping.Cheapest); len(l.Rows) == 0 {
			b.Fatal("the list is empty")
		}
	}
}

// The largest batch of an example, every oil of which is limited.
func BenchmarkLargestBatch(b *testing.B) {
	shelf, plans := examples(b)
	free := map[lot.Material]lot.Quantity{}
	for m, q := range wants(plans[0], shelf) {
		free[m] = q * 9 / 10
	}
	b.ResetTimer()
	for b.Loop() {
		if _, err := shopping.Grow(plans[0], shelf, free); err != nil {
			b.Fatal(err)
		}
	}
}
