package pour

import (
	"math"
	"strings"

	"pourbench/pour/lot"
)

// Packaging lists the pieces that the plan's saleable bars want on and around them, whole ones.
func (s *Sheet) Packaging() []MaterialNeed { return s.Plan.Cost.PackagingFor(s.SaleableBars().Good) }

// PackagingFor lists the pieces that so many bars want on and around them, whole ones.
func (c Cost) PackagingFor(bars int) []MaterialNeed {
	var out []MaterialNeed
	for _, p := range c.Packaging {
		if q, ok := lot.Weighed(math.Ceil(p.pieces()*float64(bars) - noise)); ok && q > 0 {
			out = append(out, MaterialNeed{Material: lot.Material{Kind: lot.Packaging, ID: p.Of}, Name: strings.ReplaceAll(p.Of, "-", " "), Q: q})
		}
	}
	return out
}

// Wants is all that has to be there for one pour: what is weighed and laid into it, and what its bars are packed in.
func (s *Sheet) Wants(shelf Shelf) []MaterialNeed { return append(s.Needs(shelf), s.Packaging()...) }
