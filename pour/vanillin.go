package pour

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/chem"
)

// vanillin works out how much of it is in each jug's own part of the cured bar.
func (s *BatchSheet) vanillin(moisturePercent float64) {
	for i := range s.Jugs {
		j, g := &s.Jugs[i], 0.0
		for _, x := range j.Scents {
			g += x.G * s.vanillinIn(x.ID) / 100
		}
		j.VanillinPercent = 0
		if g > 0 && !(s.Size.BatterG <= 0) {
			j.VanillinPercent = chem.PercentOfBar(g, s.Size.DryG*j.BatterG/s.Size.BatterG/(1-moisturePercent/100))
		}
	}
}

// vanillinIn is the vanillin in a scent of the batch, percent of the scent, however often the scent stands there.
func (s *BatchSheet) vanillinIn(scent string) float64 {
	for _, line := range s.Scents {
		if line.ID == scent {
			return line.VanillinPercent
		}
	}
	return 0
}

// browns says whether a jug's vanillin is enough to be seen.
func (j JugSheet) browns() bool {
	tint := chem.VanillinTint(j.VanillinPercent)
	return tint != "" && tint != chem.BrowningNone
}

// inspectVanillin warns of browning that will be seen: in a white jug, in any other, and beside a white one, base and icing together.
func (s *Sheet) inspectVanillin(b *BatchSheet, shelf Shelf) {
	for _, j := range b.Jugs {
		where, white := b.Name.jug(j.Name), shelf.whitens(b, j)
		if j.browns() {
			text := fmt.Sprintf("%s leaves %s vanillin in its part of the bar, enough for %s", vanillinNames(b, j), s.Plan.Show.Percent(j.VanillinPercent, 2), chem.VanillinTint(j.VanillinPercent))
			if white {
				s.warn(warning("vanillin-white", where, text+", and this jug is white: it will brown over some weeks", "scent a dark jug instead, or plan the brown"))
			} else {
				s.warn(warning("vanillin-browns", where, text+": its colour will brown over some weeks", "plan the brown, or take a scent without"))
			}
			continue
		}
		if brown := s.brownBeside(b); white && len(brown) > 0 {
			s.warn(warning("vanillin-near-white", where, "the brown of "+strings.Join(brown, " and ")+" creeps into touching white over some weeks", "keep another colour between them, or scent a jug that does not touch it"))
		}
	}
}

// brownBeside names every jug that will brown, as seen from a batch: its own by their names, the other's as base or icing too.
func (s *Sheet) brownBeside(b *BatchSheet) []string {
	var out []string
	for _, other := range s.Batches() {
		for _, j := range other.Jugs {
			switch {
			case !j.browns():
			case other.Name == b.Name:
				out = append(out, j.Name)
			default:
				out = append(out, j.Name+" of the "+string(other.Name))
			}
		}
	}
	return out
}

// vanillinNames names the scents of a jug that hold vanillin.
func vanillinNames(b *BatchSheet, j JugSheet) string {
	var names []string
	for _, x := range j.Scents {
		if b.vanillinIn(x.ID) > 0 && !slices.Contains(names, x.Name) {
			names = append(names, x.Name)
		}
	}
	return strings.Join(names, " and ")
}

// whitens says whether a jug counts as white: nothing but whites colours it, titanium, zinc oxide or pearl mica, from the batch and from its
// own jug together at least as much as the least usual dose of one (common practice, no source).
func (s Shelf) whitens(b *BatchSheet, j JugSheet) bool {
	var white []Dose
	for _, x := range b.Extras {
		if isColour(s, x.ID) {
			white = append(white, Dose{Colourant: x.ID, DosePercent: x.G / b.Size.BatterG * 100})
		}
	}
	for _, d := range j.Colourants {
		white = append(white, Dose{Colourant: d.ID, DosePercent: d.DosePercent})
	}
	parts := 0.0
	for _, d := range white {
		c, _ := s.Colourant(d.Colourant)
		if !c.White {
			return false
		}
		parts += d.DosePercent / max(c.DoseLowPercent, leastWhitePercent)
	}
	const slack = 1e-9 // a dose at the bound itself counts
	return parts >= 1-slack
}

// leastWhitePercent stands in for a white colourant whose usual dose begins at nothing, percent of the batter.
const leastWhitePercent = 0.05
