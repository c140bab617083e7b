package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// cautions is the first section: what hurts in every pour, and where the warnings of this plan stand.
func (d *desk) cautions() {
	d.heading("cautions: read, then tick", "", "")
	d.tick(row{text: "Lye and fresh batter burn skin and eyes, and so do icing in its bag, scraps, rags and washing-up, for a day or two yet. Goggles, gloves " +
		"that stand lye, long sleeves and closed shoes stay on to the end."})
	d.tick(row{text: "Children and pets are out of the room. Nothing to eat or drink on the bench; lye tools never go back to food."})
	d.tick(row{text: "No aluminium, zinc or tin anywhere: lye eats it and gives off a gas that explodes. Stainless steel or PP or HDPE plastic only; glass can crack."})
	d.tick(row{text: "Lye grows very hot and steams as it is made: into cold water with it, never water onto it. Do not lean over it; keep it away from acids " +
		"and from anything that burns."})
	for _, text := range emergency() {
		d.tick(row{text: text})
	}
	d.tick(row{text: "Melted oil scalds: do not leave it alone. No flame near oil or scents."})
	d.when(d.powders(), "Breathe in no powder, dry lye among them: no draught, a mask.")
	d.when(d.scented(), "Scents undiluted can harm skin, eyes and lungs: gloves on, lids on, air moving. The certificate of your own lot sets the limit.")
	d.when(d.sheet.FoodLike(d.shelf) != "", "This design may look or smell like food. Say so on the wrapping (not food, keep from children), leave no small loose parts, "+
		"and find out what rules hold where you sell: some places forbid such soap.")
	d.tick(row{text: "This paper is a plan, not a promise: it cannot say that a batch, a bar or a label is safe or lawful. The labels and safety data " +
		"sheets of what you use come first, then the rules of your place and the advice of people licensed to give it."})
	d.alerts(placeFront, anywhere)
	d.index()
}

// emergency is what to do when it has happened, in our own words after the first aid of the state fact sheet on sodium hydroxide (New Jersey,
// 2015: 30 minutes) and the international chemical safety card 0360 (swallowed).
func emergency() []string {
	return []string{
		"Splash of lye, batter or icing on skin or in an eye: clothing and lenses off, running water at once and for 30 minutes, medical help. No vinegar.",
		"Swallowed: rinse the mouth, do not bring on vomiting, medical help at once. Breathed in: fresh air, and medical help, also hours later.",
	}
}

// when writes a caution where it matters.
func (d *desk) when(matters bool, text string) {
	if matters {
		d.tick(row{text: text})
	}
}

// index says in which sections this plan's own cautions and notes stand.
func (d *desk) index() {
	type tally struct{ cautions, notes int }
	in, stands := make([]tally, len(d.sections)+1), map[string]int{}
	for _, w := range d.sheet.Warnings {
		at := d.placeOf(w)
		if len(d.sections) == 0 || at == placeFront || d.said[once(w)] {
			continue
		}
		n, ok := stands[once(w)] // what is so of both batches is said with the first
		if !ok {
			n = d.number(batchOf(w), at)
			stands[once(w)] = n
		}
		if w.Severity == pour.Caution {
			in[n].cautions++
		} else {
			in[n].notes++
		}
	}
	var parts []string
	for n, t := range in {
		words := []string{counted(t.cautions, "caution"), counted(t.notes, "note")}
		if said := strings.Join(strings.Fields(strings.Join(words, " and ")), " "); t != (tally{}) {
			parts = append(parts, strings.TrimSuffix(strings.TrimPrefix(said, "and "), " and")+fmt.Sprintf(" in section %d", n))
		}
	}
	if len(parts) > 0 {
		d.tick(row{text: "What this plan was warned of stands where it matters, behind a !: " + strings.Join(parts, ", ") + ". Read it before lye meets oil."})
	}
}

// counted is a number of things in words; none is nothing.
func counted(n int, what string) string {
	switch n {
	case 0:
		return ""
	case 1:
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
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
