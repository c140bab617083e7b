package pour

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/label"
)

func labelCodes() []CodeInfo {
	return []CodeInfo{
		{"label-name-unverified", Note, false, "a name or an amount of the list of ingredients is not sure"},
		{"label-made-of", Caution, false, "what a piece or a topping is made of is not stated: the list lacks it"},
		{"label-allergen-open", Note, false, "a number of a scent's statement stands for more than one allergen"},
		{"label-allergen-unstated", Caution, false, "nothing says which allergens a scent brings: the list lacks them"},
		{"label-prohibited", Caution, false, "a substance of a scent that is prohibited or over what is allowed"},
		{"label-claim", Caution, false, "the label's own words claim more than the bar may be sold as"},
		{"label-weight", Caution, false, "the weight in the plan is more than the label may declare"},
		{"label-food", Caution, false, "the bar could be taken for food"},
		{"outside-report", Caution, false, "something leaves what the assessor's report allows of it"},
	}
}

// placeLabel is where a warning of the label stands.
const placeLabel = "label"

// mostNamed is how many names a warning tells.
const mostNamed = 4

// inspectLabel looks at what the label says.
func (s *Sheet) inspectLabel() {
	l := &s.Label
	if l.Refused != "" {
		s.warn(warning("figure-unknown", placeLabel, "the label cannot be worked out: "+l.Refused, "mend that first"))
		return
	}
	s.unsureNames()
	for _, gap := range label.Gaps(l.Lines) {
		s.warn(warning("label-made-of", placeLabel, gap+" is not stated, so that the list lacks it and no label is printed",
			"write what it is made of with the percent of each, by its packet or its maker: made_of, of a piece in the plan and of all else on your shelf; of a piece of the base's own soap, as_base"))
	}
	if names := l.Unstated; len(names) > 0 {
		s.warn(warning("label-allergen-unstated", placeLabel, "nothing on the shelf says which allergens "+few(names)+" holds, so that the list lacks them",
			"ask the supplier for the scent's allergen statement and put its substances on your shelf, with the percent of each"))
	}
	s.allergenWarnings()
	s.warnOutside()
	for _, c := range l.Claims {
		s.warn(warning("label-claim", placeLabel, "on the label "+c.Tell(), "say it otherwise, or sell the bar as what the word makes of it; look the current text up"))
	}
	if of := s.Plan.Cure.LabelG; l.Net.Most > 0 && of > l.Net.Most && s.Cure.PackG.Mid.Known && !s.overMass() {
		s.warn(warning("label-weight", placeLabel, fmt.Sprintf("the plan has a label of %s, and by the %s %s holds", s.Plan.Show.Weight(of), l.Net.System, s.Plan.Show.Weight(l.Net.Most)),
			"put less on the label, or cut thicker bars; weigh the cured bars before labels are printed"))
	}
	if own := strings.ToLower(s.Plan.Label.Cautions); l.Food != "" && !strings.Contains(own, "food") && !strings.Contains(own, "child") {
		s.warn(warning("label-food", placeLabel, l.Food+", so that it could be taken for food, by a child first",
			"the label says by itself that it is not food; write among its cautions to keep it from children, and leave no small loose parts; find out what holds where you sell: some places forbid such soap. Where it cannot be taken for food, say so in the plan"))
	}
}

// unsureNames notes the lines of the list that are not sure.
func (s *Sheet) unsureNames() {
	names := s.Label.unsure()
	if len(names) == 0 {
		return
	}
	first := slices.IndexFunc(s.Label.Lines, func(x label.Line) bool { return x.Text == names[0] })
	why := s.Label.Lines[first].Unverified
	s.warn(warning("label-name-unverified", placeLabel, fmt.Sprintf("not sure in the list: %s; of the first: %s", few(names), why),
		"look at the suppliers' own sheets and state the name on your shelf; ask whoever assesses the bar"))
}

// few names the first of them and how many there are beside.
func few(names []string) string {
	if len(names) <= mostNamed {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:mostNamed], ", "), len(names)-mostNamed)
}

// allergenWarnings tells what of the scents is not allowed, or asks which substance is meant.
func (s *Sheet) allergenWarnings() {
	show := s.Plan.Show
	for i := range s.Label.Allergens {
		a := &s.Label.Allergens[i]
		from := ""
		if len(a.From) > 0 {
			from = ", most of it from " + a.From[0].Scent
		}
		switch {
		case a.Prohibited:
			s.warn(warning("label-prohibited", placeLabel, fmt.Sprintf("%s may not be in a cosmetic at all by the list this is held against; %s of the cured bar%s", a.Name, show.Percent(a.CuredPercent, 4), from),
				"choose another scent, or ask its supplier whether the statement is right; look the current text up"))
		case a.Over:
			s.warn(warning("label-prohibited", placeLabel, fmt.Sprintf("%s is %s of the cured bar, over the %s that the list this is held against allows%s", a.Name, show.Percent(a.CuredPercent, 4), show.Percent(a.Most, 4), from),
				"use less of the scent, or another; look the current text up"))
		case len(a.Either) > 0:
			s.warn(warning("label-allergen-open", placeLabel, fmt.Sprintf("%s can be %s by its number", a.Name, strings.Join(a.Either, " or ")),
				"ask the scent's supplier which it is, and state its name instead of the number on your shelf"))
		}
	}
}
