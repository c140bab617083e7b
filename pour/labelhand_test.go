package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/label"
)

// s1 is the worked example S1 of salts and glycerin as a plan: olive 500, coconut 300, shea 200 g at 5 % superfat, lye of 33 % from pure NaOH, 30 g of a
// scent of which nothing is stated, 4 g of titanium white.
func s1(t *testing.T, market string, style label.Style) (pour.Plan, pour.Shelf) {
	t.Helper()
	p := handMade(t)
	_, shelf := shelved(t)
	p.Base.LyeConcentrationPercent = 33
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 50}, {Oil: "coconut", Percent: 30}, {Oil: "shea", Percent: 20}}
	p.Base.Extras = []pour.ExtraPart{{Extra: "titanium-white-oil", PercentOfOils: 0.4}}
	shelf.Scents = append([]pour.Scent{{ID: "plain", Name: "plain scent", Behaviour: pour.BehaviourNone}}, shelf.Scents...)
	p.Base.Scents = []pour.ScentPart{{Scent: "plain", PercentOfOils: 3}}
	p.Label.Market, p.Label.List = market, string(style)
	return p, shelf
}

// The lists of S1 as the reference has them (salts and glycerin, section 3: read, derived), worked out from a plan on the built-in shelf; a bar is a tenth
// of the loaf. The whole is 1461.28 g.
func TestTheWorkedListsComeFromAPlan(t *testing.T) {
	for _, x := range []struct {
		market, text string
		style        label.Style
		grams        map[string]float64
	}{
		{
			"eu", "Ingredients: Sodium Olivate, Sodium Cocoate, Aqua, Sodium Shea Butterate, Glycerin, Parfum, Olea Europaea Fruit Oil, Cocos Nucifera Oil, Butyrospermum Parkii Butter, CI 77891", label.AsSalts,
			map[string]float64{"Sodium Olivate": 490.08, "Sodium Cocoate": 297.12, "Aqua": 286.28, "Sodium Shea Butterate": 195.59, "Glycerin": 108.22, "Parfum": 30, "Olea Europaea Fruit Oil": 25, "CI 77891": 4},
		},
		{
			"eu", "Ingredients: Olea Europaea Fruit Oil, Cocos Nucifera Oil, Aqua, Butyrospermum Parkii Butter, Sodium Hydroxide, Parfum, CI 77891", label.AsAdded,
			map[string]float64{"Olea Europaea Fruit Oil": 500, "Aqua": 286.28, "Sodium Hydroxide": 141},
		},
		{"us-cosmetic", "Ingredients: Olea Europaea (Olive) Fruit Oil, Cocos Nucifera (Coconut) Oil, Water, Butyrospermum Parkii (Shea) Butter, Sodium Hydroxide, Fragrance, Titanium Dioxide", label.AsAdded, nil},
		{"ca", "Olea Europaea (Olive) Fruit Oil, Cocos Nucifera (Coconut) Oil, Aqua, Butyrospermum Parkii (Shea) Butter, Sodium Hydroxide, Titanium Dioxide, Parfum", label.AsAdded, nil},
	} {
		p, shelf := s1(t, x.market, x.style)
		l := pour.Work(p, shelf, pour.Hand{}).Label
		if l.Refused != "" || !strings.HasSuffix(strings.ToLower(l.Text), strings.ToLower(x.text)) {
			t.Errorf("%s, %s: the list is %q (%s), want %q", x.market, x.style, l.Text, l.Refused, x.text)
		}
		if math.Abs(l.MadeG.V-146.128) > 0.001 {
			t.Errorf("%s: a bar as made is %v", x.market, l.MadeG)
		}
		got := map[string]float64{}
		for _, line := range l.Lines {
			got[line.Text] = 10 * line.G
		}
		for name, want := range x.grams {
			if math.Abs(got[name]-want) > 0.01 {
				t.Errorf("%s, %s: %s is %.4f g of the batch, want %v", x.market, x.style, name, got[name], want)
			}
		}
	}
}

// grams are the charges of a mixing by what they came with, "aqua" being all its water.
func grams(charges []label.Charge, in string) map[string]float64 {
	out := map[string]float64{}
	for _, c := range charges {
		if c.In == in && c.Kind == label.Water {
			out["aqua"] += c.G
		} else if c.In == in {
			out[c.From+" "+string(c.Kind)] += c.G
		}
	}
	return out
}

// By hand: a cold-process piece of 10 g made 28 days before has lost a tenth of its mass as water, so that it was 11.11111 g of the base. Of 1 000 g of oils in
// 1 459.235 of base, 600 of amber: 11.11111 × 600 / 1459.235 = 4.56860; its water was 11.11111 × 307.976 / 1459.235 = 2.34502, less 1.11111.
func TestByHandAPieceOfTheSameSoapIsDrierSoap(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	p.Top.Embeds = []pour.Embed{{Name: "moon", Outline: pour.OutlineBall, LengthMM: 20, G: 10, MadeDays: 28, AsBase: true}}
	s := pour.Weigh(p, shelf)
	charges, err := s.Contents(shelf, nil)
	if err != nil {
		t.Fatal(err)
	}
	naoh := 214 * 0.95 * 39.99677 / 56.1053
	water := naoh * 68 / 32
	all := 1000 + naoh + water
	got := grams(charges, "moon")
	for what, want := range map[string]float64{"amber fat": 10 / 0.9 * 600 / all, "birch fat": 10 / 0.9 * 400 / all, pour.NameNaOH + " naoh": 10 / 0.9 * naoh / all, "aqua": 10/0.9*water/all - 1/0.9} {
		if math.Abs(got[what]-want) > 1e-9 {
			t.Errorf("%s of the piece is %v g, by hand %v", what, got[what], want)
		}
	}
	if sum := allOf(charges); !near(sum, s.Bars.CutG, 1e-9) {
		t.Errorf("all is %v, the bar %v", sum, s.Bars.CutG)
	}
	amounts, err := s.Amounts(shelf, nil)
	if err != nil {
		t.Fatal(err)
	}
	amber := 0.0
	for _, a := range amounts {
		if a.ID == "amber" {
			amber += a.Percent
		}
	}
	base := s.Bars.CutG - 10
	if want := 100 * (base*600/all + 10/0.9*600/all) / s.Bars.CutG; math.Abs(amber-want) > 1e-9 {
		t.Errorf("amber is %v %% of the bar, by hand %v", amber, want)
	}
}

// A piece that the plan says is made as the base is counts as its soap: the label says so, and the account of an allergen says how much of the scent
// comes with it. By hand: 10 g that were 10 / 0.9 of the base hold of the scent what so much base holds.
func TestThatAPieceIsCountedAsTheBaseIsSaid(t *testing.T) {
	p, shelf := shelved(t)
	p.Icing, p.Label.Market = nil, "eu"
	p.Base.Scents = []pour.ScentPart{{Scent: "lavender-oil", PercentOfOils: 3}}
	p.Top.Embeds = []pour.Embed{{Name: "moon", Outline: pour.OutlineBall, LengthMM: 20, G: 10, MadeDays: 28, AsBase: true}}
	s := pour.Work(p, shelf, pour.Hand{})
	if said := s.Label.SameSoapWhy(); said != "moon is counted as the base's own soap, its colours and scents in it: made as the base, the plan says." {
		t.Errorf("of the piece is said %q, %s", said, s.Label.Refused)
	}
	a, err := s.Explain("label.allergens[0].from[0].g", shelf, pour.Hand{})
	if err != nil {
		t.Fatal(err)
	}
	checkAccount(t, p.Name, a)
	scent, all := s.Base.Scents[0].G, 0.0
	for _, j := range s.Base.Jugs {
		all += j.TotalG
	}
	told := false
	for _, in := range a.How.Inputs() {
		if in.Name == s.Base.Scents[0].Name+" in moon" {
			told = strings.Contains(in.From, "moon is counted as the base's own soap") && near(in.V, 10/0.9*scent/all, 1e-5) // a jug holds what the scales made of it
		}
	}
	if !told {
		t.Errorf("the account does not tell the piece's part, by hand %v g: %+v", 10/0.9*scent/all, a.How.Inputs())
	}
	line, err := s.Explain("label.lines[0].g", shelf, pour.Hand{})
	if err != nil || !strings.Contains(line.How.Inputs()[0].From, "moon counted as the base's own soap") {
		t.Errorf("a line of the list is told as from %+v, %v", line.How.Inputs(), err)
	}
	p.Top.Embeds = append(p.Top.Embeds, pour.Embed{Name: "star", Outline: pour.OutlineBall, LengthMM: 15, G: 3, AsBase: true})
	if l := pour.Work(p, shelf, pour.Hand{}).Label; !strings.HasPrefix(l.SameSoapWhy(), "moon, star are counted") {
		t.Errorf("of two is said %q", l.SameSoapWhy())
	}
	for k := range p.Top.Embeds {
		p.Top.Embeds[k].MadeOf = []pour.MadeOf{{Name: "Glycerin"}}
	}
	if l := pour.Work(p, shelf, pour.Hand{}).Label; l.SameSoapWhy() != "" {
		t.Errorf("of pieces whose parts are stated is said %q", l.SameSoapWhy())
	}
}

// A piece of bought soap is what the plan says, or stands in the list under its own name, marked.
func TestAPieceIsWhatThePlanSaysItIsMadeOf(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	p.Top.Embeds = []pour.Embed{{
		Name: "moon", Outline: pour.OutlineBall, LengthMM: 20, G: 8, Material: pour.EmbedMelt,
		MadeOf: []pour.MadeOf{{Name: "Glycerin", Percent: 25}, {Name: "Aqua", Percent: 75}},
	}}
	made := func() map[string]float64 {
		s := pour.Weigh(p, shelf)
		charges, err := s.Contents(shelf, nil)
		if err != nil {
			t.Fatal(err)
		}
		return grams(charges, "moon")
	}
	if got := made(); math.Abs(got["moon other"]-2) > 1e-12 || math.Abs(got["aqua"]-6) > 1e-12 {
		t.Errorf("it is %v", got)
	}
	p.Top.Embeds[0].MadeOf = []pour.MadeOf{{Name: "Glycerin"}, {Name: "Aqua"}}
	if got := made(); math.Abs(got["moon other"]-4) > 1e-12 || math.Abs(got["aqua"]-4) > 1e-12 {
		t.Errorf("without percentages it is %v, want equal parts", got)
	}
	p.Top.Embeds[0].MadeOf = nil
	l := labelled(t, p, shelf)
	marked := false
	for _, x := range l.Lines {
		marked = marked || x.Text == "moon" && strings.Contains(x.Unverified, "not stated")
	}
	if !marked {
		t.Errorf("what nobody stated is not marked: %+v", l.Lines)
	}
	if gaps := label.Gaps(l.Lines); len(gaps) != 1 || strings.Contains(l.Text, "moon") {
		t.Errorf("the list lacks %v and says %q: a piece's name is no ingredient", gaps, l.Text)
	}
}

// Soap of another day has colours and scents of its own: of a cold-process piece of which the plan says neither what it is made of nor that it is the
// base's own soap, 8 g of every bar are not known, in either style of list. Nothing of it may pass as the base's.
func TestAPieceOfSoapThatNobodyStatedIsNoBase(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	p.Top.Embeds = []pour.Embed{{Name: "moon", Outline: pour.OutlineBall, LengthMM: 20, G: 8, MadeDays: 7}}
	for _, style := range []label.Style{label.AsSalts, label.AsAdded} {
		p.Label.List = string(style)
		l := labelled(t, p, shelf)
		if gaps := label.Gaps(l.Lines); len(gaps) != 1 || gaps[0] != "what moon is made of" || strings.Contains(l.Text, "moon") {
			t.Errorf("as %s the list lacks %v and says %q", style, gaps, l.Text)
		}
		for _, x := range l.Lines {
			if x.Text == "moon" && math.Abs(x.Percent-100*8/l.MadeG.V) > 1e-9 {
				t.Errorf("as %s moon is %v %% of the bar, want 8 of %v g", style, x.Percent, l.MadeG.V)
			}
		}
	}
	for _, known := range []func(*pour.Embed){
		func(e *pour.Embed) { e.AsBase = true },
		func(e *pour.Embed) { e.MadeOf = []pour.MadeOf{{Name: "Glycerin", Percent: 100}} },
	} {
		told := p
		told.Top.Embeds = slices.Clone(p.Top.Embeds)
		known(&told.Top.Embeds[0])
		if gaps := label.Gaps(labelled(t, told, shelf).Lines); len(gaps) > 0 {
			t.Errorf("it is stated, and the list lacks %v", gaps)
		}
	}
	p.Top.Embeds[0].AsBase, p.Top.Embeds[0].Material = true, pour.EmbedMelt
	if gaps := label.Gaps(labelled(t, p, shelf).Lines); len(gaps) != 1 {
		t.Errorf("melt-and-pour soap is no soap of the base, and the list lacks %v", gaps)
	}
}

// What is strewn on the loaf is in the bar as cut, what goes on later comes on top, and of what evaporates only what stays.
func TestByHandWhatIsStrewnIsInTheBar(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	shelf.Toppings = []pour.ToppingMaterial{
		{ID: "sugar", Name: "sugar", Kind: pour.ToppingGrain, When: pour.StrewSkin, Use: pour.ToppingUse{StaysPercent: 100}},
		{ID: "spray", Name: "spray", Kind: pour.ToppingSpray, When: pour.StrewCure, MadeOf: []pour.Ingredient{{Name: "Mica", Percent: 60}, {Name: "Alcohol", Percent: 40}}, Use: pour.ToppingUse{StaysPercent: 5}},
	}
	p.Top.Toppings = []pour.Topping{
		{GPerBar: 2, Parts: []pour.ToppingPart{{Material: "sugar", Percent: 100}}},
		{GPerBar: 3, Parts: []pour.ToppingPart{{Material: "spray", Percent: 100}}},
	}
	s := pour.Weigh(p, shelf)
	charges, err := s.Contents(shelf, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := grams(charges, "sugar")["sugar other"]; math.Abs(got-2) > 1e-9 {
		t.Errorf("%v g of sugar on a bar, by hand 2", got)
	}
	if got := grams(charges, "spray")["spray other"]; math.Abs(got-0.15) > 1e-9 {
		t.Errorf("%v g of the spray stay on a bar, by hand 0.15", got)
	}
	if sum := allOf(charges); !near(sum, s.Bars.CutG+0.15, 1e-9) {
		t.Errorf("all is %v, the bar as cut %v", sum, s.Bars.CutG)
	}
}

// What only a packet can name is in the balance and never printed.
func TestColoursOfAPacketAreNeverPrinted(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	shelf.Toppings = []pour.ToppingMaterial{{
		ID: "pearls", Name: "pearls", Kind: pour.ToppingGrain, When: pour.StrewSkin, Use: pour.ToppingUse{StaysPercent: 100},
		MadeOf: []pour.Ingredient{{Name: "Sucrose", Percent: 99}, {Name: "colours as on the packet", Percent: 1}},
	}}
	p.Top.Toppings = []pour.Topping{{GPerBar: 2, Parts: []pour.ToppingPart{{Material: "pearls", Percent: 100}}}}
	l := labelled(t, p, shelf)
	gaps := label.Gaps(l.Lines)
	if len(gaps) != 1 || gaps[0] != "colours as on the packet of pearls" || strings.Contains(l.Text, "packet") || !strings.Contains(l.Text, "Sucrose") {
		t.Errorf("the list lacks %q and says %q", gaps, l.Text)
	}
}
