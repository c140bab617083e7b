package pour

import (
	"fmt"
	"strings"

	"pourbench/chem"
)

// Joining is when an extra joins the batch.
type Joining string

// When an extra joins.
const (
	JoinsOils     Joining = "oils"     // stirred into the melted oils
	JoinsEmulsion Joining = "emulsion" // stirred into the batter once it is an emulsion, before the split
	JoinsBefore   Joining = "before"   // dissolved in the lye's water before the alkali
	JoinsOnIce    Joining = "on ice"   // it is the lye's water, frozen or chilled before the alkali
	JoinsHot      Joining = "hot"      // into the lye while it is hot
	JoinsCooled   Joining = "cooled"   // into the cooled lye
)

// wateryPercent is the water from which an extra can be the lye's water itself: milk, beer, juice or purée, not a syrup.
const wateryPercent = 50

// KeepUnderC is how warm a lye of milk, beer or purée may grow as it is mixed, °C: above it milk scorches and foams (common practice, no source).
const KeepUnderC = 35

// onIceMin is how long the alkali takes to go little by little into what is frozen, where the plan does not say, min (common practice, no source).
const onIceMin = 30

// joining is when an extra joins: where the plan puts it and, in the lye, when the shelf says.
func joining(x Extra, in string) Joining {
	switch {
	case in == InOils && x.atEmulsion():
		return JoinsEmulsion
	case in == InOils:
		return JoinsOils
	case in == InWater && x.WaterPercent >= wateryPercent:
		return JoinsOnIce
	case in == InWater || x.LyeWhen == LyeBefore:
		return JoinsBefore
	case x.LyeWhen == LyeHot:
		return JoinsHot
	}
	return JoinsCooled
}

// atEmulsion says whether what is put with the oils waits for the batter: milk, sugar, alcohol and whatever is mostly water would lie under melted fat, keep it
// from being seen clear and meet the lye in one place (common practice, no source).
func (x *Extra) atEmulsion() bool {
	return x.Kind == ExtraMilk || x.Kind == ExtraSugar || x.Kind == ExtraAlcohol || x.WaterPercent >= wateryPercent
}

// InTheLye says whether an extra goes into the lye, before or after the alkali.
func (x ExtraLine) InTheLye() bool { return x.Joins != JoinsOils && x.Joins != JoinsEmulsion }

// IntoOils says what is stirred into the melted oils before the lye; empty: nothing is.
func (s *BatchSheet) IntoOils() string {
	if names := s.joining(JoinsOils); names != "" {
		return names + " into the clear oils"
	}
	return ""
}

// AtEmulsion says what is stirred into the batter once it is an emulsion, and how; empty: nothing is.
func (s *BatchSheet) AtEmulsion() string {
	if names := s.joining(JoinsEmulsion); names != "" {
		return "at emulsion, no oil streaks left, before the split: " + names + ", cool, in a thin stream, stirred in"
	}
	return ""
}

// joining names the extras of a batch that join at a moment.
func (s *BatchSheet) joining(at Joining) string {
	var names []string
	for _, x := range s.ExtrasJoining(at) {
		names = append(names, x.Name)
	}
	return strings.Join(names, " and ")
}

// allOfTheWater says of every extra that is mostly water how much of it would leave no other water to add. More acid wants more alkali
// and so more water: both grow in a straight line with the extra.
func (s *BatchSheet) allOfTheWater(lye chem.Lye) {
	alkaliKOHG := s.alkaliKOHG(s.Lye.NaOH.PureG, s.Lye.KOH.PureG)
	oilsG := 0.0
	for _, o := range s.Oils {
		oilsG += o.G
	}
	for i := range s.Extras {
		x := &s.Extras[i]
		if x.WaterPercent < wateryPercent || x.G <= 0 {
			continue
		}
		perG := x.WaterPercent/100 - x.AcidKOHG/x.G*(lye.WaterToAddG+s.Lye.WaterInExtrasG)/alkaliKOHG
		if perG > 0 {
			x.AllPercent = Know(x.Percent + 100*lye.WaterToAddG/perG/oilsG)
		}
	}
}

// ExtrasJoining lists the extras of a batch that join at a moment.
func (s *BatchSheet) ExtrasJoining(at Joining) []ExtraLine {
	var out []ExtraLine
	for _, x := range s.Extras {
		if x.Joins == at {
			out = append(out, x)
		}
	}
	return out
}

// MakeLye says in a few clauses, in their order, how the lye of a batch is made, without amounts.
func (s *BatchSheet) MakeLye(show Show) []string {
	var out []string
	say := func(at Joining, format string) {
		if names := s.joining(at); names != "" {
			out = append(out, fmt.Sprintf(format, names))
		}
	}
	alkali := "alkali"
	if s.Lye.Stock.StrengthPercent > 0 {
		alkali = "stock lye"
	}
	say(JoinsBefore, "%s into the water, stirred until dissolved")
	say(JoinsOnIce, "%s, frozen or ice-cold, in a jug in ice water")
	if s.Lye.OnIce {
		out = append(out, alkali+" a spoonful at a time, under "+show.Temp(KeepUnderC))
	} else {
		out = append(out, alkali+" into the water a little at a time")
	}
	say(JoinsHot, "%s into the hot lye")
	say(JoinsCooled, "%s into the cooled lye")
	return out
}
