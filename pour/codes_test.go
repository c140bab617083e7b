package pour_test

import (
	"math"
	"slices"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

// bend is a small change of a plan, or of the shelf it draws from.
type bend func(p *pour.Plan, shelf *pour.Shelf)

// codeRow is a warning with a bend of an example that makes it fire and one, without the cause, that does not; no bend: as the example stands.
type codeRow struct {
	code          string
	with, without bend
}

// Every warning has a plan that makes it fire and one without its cause that does not, at the severity of the table.
func TestEveryCodeFiresForItsCauseAlone(t *testing.T) {
	plan, full := hanger(t)
	rows := slices.Concat(lyeRows(), scentRows(), colourRows(), mouldRows(), pipingRows(), runRows(), toppingRows(), embedRows(), cutRows(), cureRows(), labelRows())
	for _, c := range pour.Codes() {
		i := slices.IndexFunc(rows, func(r codeRow) bool { return r.code == c.Code })
		if i < 0 {
			t.Errorf("%s has no row here: bend a plan so that it fires", c.Code)
			continue
		}
		p, shelf := rows[i].with.of(plan, full)
		q, without := rows[i].without.of(plan, full)
		fires, quiet := pour.Weigh(p, shelf), pour.Weigh(q, without)
		if _, weighed := found(fires, c.Code); !weighed { // then it takes the clock or the colours
			fires, quiet = pour.Work(p, shelf, handFor(c.Code)), pour.Work(q, without, pour.Hand{})
		}
		if w, ok := found(fires, c.Code); !ok || w.Severity != c.Severity || w.Lye != c.Lye {
			t.Errorf("%s does not fire as the table has it: %+v", c.Code, w)
		}
		if w, ok := found(quiet, c.Code); ok {
			t.Errorf("%s fires without its cause: %+v", c.Code, w)
		}
		rows = slices.Delete(rows, i, i+1)
	}
	if len(rows) > 0 {
		t.Errorf("rows for no code, or twice for one: %+v", rows)
	}
}

// hanger is the two-jug example, a hanger swirl of white and cream with lavender, under the demo's icing; its NaOH is of a stated purity.
func hanger(t *testing.T) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := example(t, "first-snow")
	demo, _ := shelved(t)
	icing := demo.Icing.Clone()
	p.Icing = &icing
	p.Base.NaOHPurityPercent, p.Icing.NaOHPurityPercent = 98, 98
	return p, shelf
}

// of is a plan and a shelf after a bend; what was bent stays as it was.
func (b bend) of(p pour.Plan, shelf pour.Shelf) (pour.Plan, pour.Shelf) {
	p = p.Clone()
	if b != nil {
		b(&p, &shelf)
	}
	return p, shelf
}

func number(path string, v float64) bend {
	return func(p *pour.Plan, shelf *pour.Shelf) {
		next, err := pour.Apply(*p, *shelf, pour.SetNumber(path, v))
		if err != nil {
			panic(err) // the rows are constant: one that cannot be is a mistake in them
		}
		*p = next
	}
}

func extra(id string, percent float64, in string) bend {
	return func(p *pour.Plan, _ *pour.Shelf) {
		p.Base.Extras = []pour.ExtraPart{{Extra: id, PercentOfOils: percent, In: in}}
	}
}

// scents are put in place of the lavender.
func scents(list ...pour.ScentPart) bend {
	return func(p *pour.Plan, _ *pour.Shelf) { p.Base.Scents = list }
}

func scent(id string, percent float64, into ...string) pour.ScentPart {
	return pour.ScentPart{Scent: id, PercentOfOils: percent, Into: into, AtMin: 2}
}

// coloured colours the pot and the snow, with one dose each.
func coloured(pot, snow pour.Dose) bend {
	return func(p *pour.Plan, _ *pour.Shelf) {
		for i, d := range []pour.Dose{pot, snow} {
			if d.Colourant != "" {
				p.Base.Jugs[i].Colourants = []pour.Dose{d}
			}
		}
	}
}

// snow colours the second jug with the first colourant of the shelf that is so.
func snow(is func(pour.Colourant) bool) bend {
	return func(p *pour.Plan, shelf *pour.Shelf) {
		c, _ := by(shelf.Colourants, is)
		p.Base.Jugs[1].Colourants = []pour.Dose{{Colourant: c.ID, DosePercent: 0.2}}
	}
}

func all(bends ...bend) bend {
	return func(p *pour.Plan, shelf *pour.Shelf) {
		for _, b := range bends {
			b(p, shelf)
		}
	}
}

func lyeRows() []codeRow {
	return []codeRow{
		{"plan-fault", func(p *pour.Plan, _ *pour.Shelf) { p.Base.Jugs[0].SharePercent = 200 }, nil},
		{"blend-unfinished", func(p *pour.Plan, _ *pour.Shelf) { p.Base.Oils[0].Percent, p.Base.Oils[0].Held = 1, true }, func(p *pour.Plan, _ *pour.Shelf) { p.Base.Oils[0].Held = true }},
		{"lye-heavy", number("base.superfat_percent", -1), nil},
		{"lye-heavy-worst", number("base.superfat_percent", 0.5), number("base.superfat_percent", 6)},
		{"lye-mixed-strong", number("base.lye_concentration_percent", 51), nil},
		{"lye-short-water", extra("cow-milk", 50, pour.InLye), extra("cow-milk", 20, pour.InLye)},
		{"lye-near-boil", nil, all(number("base.lye_concentration_percent", 24), number("icing.lye_concentration_percent", 24))},
		{"lye-meets-sugar", extra("sugar", 1, pour.InLye), extra("salt", 1, pour.InLye)},
		{"lye-meets-milk", extra("cow-milk", 10, pour.InLye), extra("tea", 10, pour.InLye)},
		{"lye-meets-alcohol", extra("beer", 10, pour.InLye), extra("tea", 10, pour.InLye)},
		{"lye-meets-acid", extra("citric-acid", 1, pour.InLye), extra("sodium-citrate", 1, pour.InLye)},
		{"lye-on-ice", extra("pumpkin-puree", 10, pour.InWater), extra("pumpkin-puree", 10, pour.InOils)},
		{"alkali-rounding", number("show.lye_step_g", 5), number("show.lye_step_g", 0.1)},
		{"purity-assumed", number("icing.naoh_purity_percent", 100), nil},
		{"purity-unusual", number("base.naoh_purity_percent", 85), nil},
		{"carrier-short", all(carried("castor"), snowDose(10, 5)), all(carried("olive"), snowDose(10, 5))},
		{"superfat-jug", snowDose(3, 5), all(snowDose(3, 5), func(p *pour.Plan, _ *pour.Shelf) { p.Base.Jugs[1].Colourants[0].Carrier = pour.CarryGlycerin })},
	}
}

// carried takes the carriers out of the batch, of one oil.
func carried(oil string) bend {
	return func(p *pour.Plan, _ *pour.Shelf) { p.Base.Carrier, p.Base.CarrierOil = pour.CarrierBatch, oil }
}

func snowDose(percent, parts float64) bend {
	return func(p *pour.Plan, _ *pour.Shelf) {
		p.Base.Jugs[1].Colourants[0].DosePercent, p.Base.Jugs[1].Colourants[0].CarrierParts = percent, parts
	}
}

func scentRows() []codeRow {
	icing := func(id string) bend {
		return func(p *pour.Plan, _ *pour.Shelf) { p.Icing.Scents = []pour.ScentPart{scent(id, 1)} }
	}
	empty := func(p *pour.Plan, _ *pour.Shelf) { p.Base.Jugs[0].SharePercent, p.Base.Jugs[1].SharePercent = 100, 0 }
	rices := func(is bool) bend {
		return func(_ *pour.Plan, shelf *pour.Shelf) {
			shelf.Scents = slices.Clone(shelf.Scents)
			for i := range shelf.Scents {
				shelf.Scents[i].Rices = is
			}
		}
	}
	return []codeRow{
		{"scent-fast-late", all(scents(scent("alp-rose", 3)), number("base.split_at_min", 20)), all(scents(scent("tarn-mint", 3)), number("base.split_at_min", 20))},
		{"scents-add-up", scents(scent("meadow-hay", 1), scent("honey-clover", 1)), scents(scent("meadow-hay", 1, "pot"), scent("honey-clover", 1, "snow"))},
		{"scent-fast-icing", icing("alp-rose"), icing("tarn-mint")},
		{"scent-seizes", scents(scent("scree-carnation", 0.5)), scents(scent("alp-rose", 0.5))},
		{"scent-rices", rices(true), rices(false)},
		{"scent-over-limit", scents(scent("spring-lilac", 4)), scents(scent("spring-lilac", 2))},
		{"scents-limit-sum", scents(scent("alp-rose", 3), scent("meadow-hay", 6)), scents(scent("alp-rose", 3), scent("meadow-hay", 2))},
		{"scent-no-certificate", nil, scents(scent("meadow-hay", 3))},
		{"scent-high-in-jug", scents(scent("edelweiss-linen", 4, "snow")), scents(scent("edelweiss-linen", 4))},
		{"scent-nowhere", all(empty, scents(scent("meadow-hay", 1, "snow"))), all(empty, scents(scent("meadow-hay", 1, "snow", "pot")))},
		{"scent-before-split", number("base.split_at_min", 2.5), number("base.split_at_min", 2)},
		{"vanillin-white", scents(scent("warm-milk-vanilla", 2, "snow")), scents(scent("warm-milk-vanilla", 2, "pot"))},
		{"vanillin-near-white", scents(scent("warm-milk-vanilla", 2, "pot")), scents(scent("orchard-apple", 2, "pot"))},
		{"vanillin-browns", scents(scent("warm-milk-vanilla", 2, "pot")), scents(scent("warm-milk-vanilla", 2, "snow"))},
	}
}

func colourRows() []codeRow {
	alkali := func(word string) bend { return snow(func(c pour.Colourant) bool { return c.Alkali == word }) }
	wet := number("base.lye_concentration_percent", 28)
	warm := func(p *pour.Plan, _ *pour.Shelf) { p.Bed.Keep = pour.BedInsulate }
	plain := func(p *pour.Plan, _ *pour.Shelf) {
		p.Base.Jugs[1].Colourants, p.Icing.Jugs = nil, []pour.Jug{{Name: "cream", SharePercent: 100}}
	}
	in := func(carrier string) pour.Dose {
		return pour.Dose{Colourant: "mica-gold", DosePercent: 1, Carrier: carrier}
	}
	one := func(id string) pour.Dose { return pour.Dose{Colourant: id, DosePercent: 0.4} }
	return []codeRow{
		{"glycerin-rivers", all(wet, warm), all(warm, number("base.lye_concentration_percent", 30))},
		{"colour-shifts", alkali(pour.AlkaliShifts), alkali(pour.AlkaliStable)},
		{"colour-dies", alkali(pour.AlkaliDies), alkali(pour.AlkaliStable)},
		{"colour-untested", alkali(pour.AlkaliUnknown), alkali(pour.AlkaliStable)},
		{"colour-caution", snow(func(c pour.Colourant) bool { return c.Caution != "" }), snow(func(c pour.Colourant) bool { return c.Caution == "" })},
		{"colour-wrong-carrier", coloured(pour.Dose{}, in(pour.CarryWater)), coloured(pour.Dose{}, in(pour.CarryOil))},
		{"dose-unusual", snowDose(4, 2), snowDose(0.5, 2)},
		{"muddy-neighbours", coloured(one("ultramarine-blue"), one("yellow-iron-oxide")), coloured(one("ultramarine-blue"), one("titanium-white-oil"))},
		{"jugs-alike", nil, coloured(one("ultramarine-blue"), pour.Dose{})},
		{"dust", nil, plain},
	}
}

func mouldRows() []codeRow {
	keep := func(word string) bend { return func(p *pour.Plan, _ *pour.Shelf) { p.Bed.Keep = word } }
	oils := func(g float64) bend {
		return func(p *pour.Plan, _ *pour.Shelf) { p.Base.Size, p.Base.OilsG = pour.SizeOils, g }
	}
	passes := func(technique string, n int) bend {
		return func(p *pour.Plan, _ *pour.Shelf) { p.Swirl.Technique, p.Swirl.Passes = technique, n }
	}
	return []codeRow{
		{"swirl-ignored", passes("drop", 60), passes("drop", 4)},
		{"jug-too-small", func(p *pour.Plan, _ *pour.Shelf) { p.Base.Jugs[1].CapacityML = 300 }, nil},
		{"mould-overfull", number("mould.fill_mm", 76), number("mould.fill_mm", 71)},
		{"mould-high", number("mould.fill_mm", 73), number("mould.fill_mm", 71)},
		{"icing-over-rim", number("mould.fill_mm", 71), number("mould.fill_mm", 60)},
		{"mould-underfilled", oils(700), oils(900)},
		{"mould-offcut", number("mould.bar_mm", 30), nil},
		{"cured-heavier", number("base.final_moisture_percent", 28), nil},
		{"salt-bar", extra("salt", 16, pour.InOils), extra("salt", 3, pour.InOils)},
		{"glycerin-sweat", extra("salt", 1, pour.InOils), extra("sugar", 1, pour.InLye)},
		{"gel", nil, func(p *pour.Plan, _ *pour.Shelf) { p.Trial = true }},
		{"soda-ash", nil, keep(pour.BedInsulate)},
	}
}

// taughtFast is a maker whose pours, one of them odd, went twice as fast as the model says.
func taughtFast() pour.Hand {
	return pour.Hand{Odd: []string{"2026-12-05-slip"}, Clock: clock.Hand{
		Traits: []clock.Trait{{Kind: clock.PaceTrait, Mean: math.Ln2, Pours: 2}}, Covariance: [][]float64{{.01}}, Pours: 2,
	}}
}

// handFor is what pours have taught, for the codes of which that is the cause.
func handFor(code string) pour.Hand {
	if code == "times-learnt" || code == "pour-odd" {
		return taughtFast()
	}
	return pour.Hand{}
}

func runRows() []codeRow {
	at := func(batterC float64) bend {
		return func(p *pour.Plan, _ *pour.Shelf) { p.Base.BatterMeasured, p.Base.BatterC = true, batterC }
	}
	unknownAcids := func(_ *pour.Plan, shelf *pour.Shelf) {
		shelf.Oils = slices.Clone(shelf.Oils)
		for i := range shelf.Oils {
			if shelf.Oils[i].ID == "castor" {
				shelf.Oils[i].Fat.Profile, shelf.Oils[i].Fat.IodineLow, shelf.Oils[i].Fat.IodineHigh = chem.Profile{}, 0, 0
			}
		}
	}
	technique := func(id string) bend { return func(p *pour.Plan, _ *pour.Shelf) { p.Swirl.Technique = id } }
	byHand := func(p *pour.Plan, _ *pour.Shelf) { p.Base.Blend = nil }
	lateByHand := func(p *pour.Plan, _ *pour.Shelf) { p.Icing.StartAtMin, p.Icing.Blend = 20, nil }
	return []codeRow{
		{"clock-refused", at(10), at(36)},
		{"times-learnt", nil, nil},
		{"pour-odd", nil, nil},
		{"clock-wide", byHand, nil},
		{"false-trace", at(24), at(40)},
		{"jug-late", number("base.split_at_min", 90), nil},
		{"split-early", number("base.split_at_min", 0), nil},
		{"jug-early", technique("spoon"), nil},
		{"base-stiff", number("base.split_at_min", 90), nil},
		{"icing-thin", lateByHand, nil},
		{"icing-stiff", number("icing.start_at_min", -90), nil},
		{"hands-busy", number("icing.start_at_min", 1), nil},
		{"figure-unknown", unknownAcids, nil},
	}
}
