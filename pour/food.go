package pour

import (
	"slices"
	"strings"

	"pourbench/chem"
)

// FoodLike is why a bar could be taken for food by what is poured: it wears icing, or its name, a scent or an extra speaks of food. Empty: nothing says
// so. Better once too often.
func (s *Sheet) FoodLike(shelf Shelf) string {
	if s.Icing != nil {
		return "it wears icing"
	}
	if why := foodWord("its name", s.Plan.Name); why != "" {
		return why
	}
	for _, b := range s.Batches() {
		for _, x := range b.Scents {
			sc := inList(shelf.Scents, x.ID, func(x *Scent) string { return x.ID })
			if why := foodWord("a scent of it, "+x.Name+",", x.Name+" "+sc.Notes+" "+strings.Join(sc.Families, " ")); why != "" {
				return why
			}
		}
		for _, x := range b.Extras {
			if foodWord("", x.Name) != "" {
				return "there is " + x.Name + " in it"
			}
		}
	}
	return ""
}

// foodOnTop is why what lies on it or is set into it could be taken for food.
func (s *Sheet) foodOnTop(shelf Shelf) string {
	for _, l := range s.Toppings {
		for _, p := range l.Parts {
			m := inList(shelf.Toppings, p.ID, func(m *ToppingMaterial) string { return m.ID })
			if slices.Contains(m.Wet.Crystals, chem.Sucrose) || foodWord("", m.Name) != "" {
				return "there is " + m.Name + " on it"
			}
		}
	}
	for _, k := range s.Embeds {
		if why := foodWord("a piece set into it, "+k.Name+",", k.Name); why != "" {
			return why
		}
	}
	return ""
}

// foodWord says that something speaks of food, where it does.
func foodWord(what, text string) string {
	text = strings.ToLower(text)
	for _, word := range foodWords() {
		if strings.Contains(text, word) {
			return what + " speaks of food"
		}
	}
	return ""
}

func foodWords() []string {
	return []string{
		"cake", "bak", "biscuit", "cookie", "bread", "chocolate", "cocoa", "vanilla", "caramel", "candy", "sweet", "sugar", "honey", "milk", "cream",
		"fruit", "berry", "apple", "lemon", "orange", "citrus", "coffee", "gourmand", "spice", "cinnamon", "dessert", "pudding",
	}
}

// labelFood is why the bar could be taken for food: as the plan says of its label or, where it says nothing, by its design.
func (s *Sheet) labelFood(shelf Shelf) string {
	switch s.Plan.Label.LikeFood {
	case LikeFoodNo:
		return ""
	case LikeFoodYes:
		return "the plan says so"
	}
	if why := s.FoodLike(shelf); why != "" {
		return why
	}
	return s.foodOnTop(shelf)
}
