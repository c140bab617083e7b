package paper

import (
	"strings"

	"pourbench/pour"
)

// cautions is the first section: what hurts, and what this plan was warned of. Each number keeps its meaning in every plan.
func (d *desk) cautions() {
	d.heading(sectionCautions, "cautions: read, then tick", "", "")
	d.tick(row{text: "Lye and fresh batter burn skin and eyes, and so do icing in its bag, scraps and washing-up. Goggles, gloves that stand lye, " +
		"long sleeves and closed shoes stay on to the end."})
	d.tick(row{text: "Children and pets are out of the room. Nothing to eat or drink on the bench; lye tools never go back to food."})
	d.tick(row{text: "No aluminium, zinc or tin anywhere: lye eats it and gives off a gas that explodes. Stainless steel or PP or HDPE plastic only; glass can crack."})
	d.tick(row{text: "Lye goes into cold water, a little at a time, never water onto lye. It grows very hot and steams: keep air moving, do not lean over it, " +
		"keep it away from acids and from anything that burns."})
	d.tick(row{text: "Splash on skin or in an eye: clothing and lenses off, rinse at once with plenty of running water, keep rinsing, and get medical help. " +
		"No vinegar on skin. Swallowed: rinse the mouth, do not bring on vomiting, get medical help at once."})
	d.tick(row{text: "Heat: melted oil scalds, a hot loaf can swell and crack. Do not leave either alone; no flame near scents."})
	d.when(d.powders(), "Dry powders, lye among them, must not be breathed: no draught, a dust mask, lid on, wet them at once.")
	d.when(d.scented(), "Scents undiluted can harm skin, eyes and lungs: gloves on, lids on, air moving. The certificate of your own lot sets the limit.")
	d.when(d.foodLike(), "This design may look or smell like food. Say so on the wrapping (not food, keep from children), leave no small loose parts, "+
		"and find out what rules hold where you sell: some places forbid such soap.")
	d.tick(row{text: "This paper is a plan, not a promise: it cannot say that a batch, a bar or a label is safe or lawful. The labels and safety data " +
		"sheets of what you use come first, then the rules of your place and the advice of people licensed to give it."})
	d.planned()
}

// when writes a caution where it matters and keeps its number where it does not.
func (d *desk) when(matters bool, text string) {
	if !matters {
		d.skip()
		return
	}
	d.tick(row{text: text})
}

// planned lists every stop and caution of this plan, and the notes that belong to no later section.
func (d *desk) planned() {
	for _, severity := range severities() {
		for _, w := range ofSeverity(d.sheet.Warnings, severity) {
			if severity != pour.Note || placeOfWarning(w) == placeFront {
				d.tick(row{text: strings.ToUpper(string(severity)) + ": " + told(w)})
			}
		}
	}
}

// powders says whether any powder of this plan dusts; dry alkali always does.
func (d *desk) powders() bool {
	for _, b := range d.sheet.Batches() {
		if b.Lye.Stock.WeighedG == 0 {
			return true
		}
		for _, j := range b.Jugs {
			for _, dose := range j.Colourants {
				if c, ok := d.shelf.Colourant(dose.ID); ok && c.Dust {
					return true
				}
			}
		}
	}
	return false
}

func (d *desk) scented() bool {
	for _, b := range d.sheet.Batches() {
		if len(b.Scents) > 0 {
			return true
		}
	}
	return false
}

// foodLike says whether a bar could be taken for food: it wears icing, or its name or a scent speaks of food. Better once too often.
func (d *desk) foodLike() bool {
	if d.sheet.Icing != nil {
		return true
	}
	said := []string{d.sheet.Plan.Name}
	for _, b := range d.sheet.Batches() {
		for _, x := range b.Scents {
			sc, _ := d.shelf.Scent(x.ID)
			said = append(said, x.Name, sc.Notes, strings.Join(sc.Families, " "))
		}
		for _, x := range b.Extras {
			said = append(said, x.Name)
		}
	}
	text := strings.ToLower(strings.Join(said, " "))
	for _, word := range foodWords() {
		if strings.Contains(text, word) {
			return true
		}
	}
	return false
}

func foodWords() []string {
	return []string{
		"cake", "bak", "biscuit", "cookie", "bread", "chocolate", "cocoa", "vanilla", "caramel", "candy", "sweet", "sugar", "honey", "milk", "cream",
		"fruit", "berry", "apple", "lemon", "orange", "citrus", "coffee", "gourmand", "spice", "cinnamon", "dessert", "pudding",
	}
}
