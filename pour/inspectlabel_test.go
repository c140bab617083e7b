package pour_test

import (
	"math"
	"strings"

	"pourbench/pour"
	"pourbench/pour/label"
)

// sold puts a label into the plan, for a market of the rules of the EU, on a shelf that knows what its list needs.
func sold(more ...bend) bend {
	return func(p *pour.Plan, shelf *pour.Shelf) {
		p.Label.Market = "here"
		shelf.Markets = []label.Market{eu()}
		for _, b := range more {
			b(p, shelf)
		}
	}
}

// lists puts allergens on the shelf and what of them lavender's statement names.
func lists(a label.Allergen, percent float64, more ...label.Allergen) bend {
	return func(_ *pour.Plan, shelf *pour.Shelf) {
		shelf.Allergens = append(more, a)
		shelf.Scents = append([]pour.Scent(nil), shelf.Scents...)
		for i := range shelf.Scents {
			if strings.Contains(shelf.Scents[i].ID, "lavender") {
				shelf.Scents[i].Allergens = []pour.Allergen{{Name: "what it holds", CAS: "64-17-5", Percent: percent}}
			}
		}
	}
}

// moon sets a piece of bought soap into every bar.
func moon(of ...pour.MadeOf) bend {
	return func(p *pour.Plan, _ *pour.Shelf) {
		p.Top.Embeds = []pour.Embed{{Name: "moon", Outline: pour.OutlineBall, LengthMM: 10, Material: pour.EmbedMelt, MadeOf: of}}
	}
}

// known leaves nothing in the list that was not looked up.
func known(p *pour.Plan, shelf *pour.Shelf) {
	p.Icing = nil
	p.Base.Extras = nil
	p.Label.List = string(label.AsAdded)
	for i := range p.Base.Jugs {
		p.Base.Jugs[i].Colourants = nil
	}
	shelf.Names = nil
	for _, n := range []string{"Aqua", "Sodium Hydroxide", "Parfum"} {
		shelf.Names = append(shelf.Names, pour.ListName{Name: label.Name{INCI: n}, Source: pour.Source{Confidence: "read"}})
	}
	prepared, err := shelf.Prepared()
	if err != nil {
		panic(err) // the built-in shelf can always be prepared
	}
	*shelf = prepared
}

func labelRows() []codeRow {
	like := func(word string) bend { return func(p *pour.Plan, _ *pour.Shelf) { p.Label.LikeFood = word } }
	capped := label.Allergen{Name: "Capped", CAS: []string{"64-17-5"}, MostRinse: 0.02, CapOnly: true}
	twice := label.Allergen{Name: "Also", CAS: []string{"64-17-5"}}
	says := func(text string) bend { return func(p *pour.Plan, _ *pour.Shelf) { p.Label.Says = text } }
	return []codeRow{
		{"label-claim", sold(says("heals the skin")), sold(says("smells of hay"))},
		{"label-weight", sold(lightly(1)), sold(lightly(0))},
		{"label-name-unverified", sold(func(p *pour.Plan, shelf *pour.Shelf) {
			known(p, shelf)
			moon(pour.MadeOf{Name: "Nobody Knows"})(p, shelf)
		}), sold(known)},
		{"label-made-of", sold(moon()), sold(moon(pour.MadeOf{Name: "Glycerin", Percent: 100}))},
		{"label-allergen-open", sold(lists(capped, 1, twice)), sold(lists(twice, 1))},
		{"label-prohibited", sold(lists(capped, 20)), sold(lists(capped, 0.1))},
		{"outside-report", allows("oil olive", 0.95), reported(nil)},
		{"label-food", sold(like(pour.LikeFoodYes)), sold(like(pour.LikeFoodNo))},
	}
}

// lightly puts a label into the plan that the usual bar is forecast to carry by so much of what its band is below the middle, so that the lightest does
// not; by 0 it is what the lightest carries.
func lightly(part float64) bend {
	return func(p *pour.Plan, shelf *pour.Shelf) {
		s := pour.Work(*p, *shelf, pour.Hand{})
		p.Cure.LabelG = math.Floor(s.Label.Net.Most + part*(s.Cure.PackG.Mid.V-s.Label.Net.Most))
	}
}
