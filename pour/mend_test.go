package pour_test

import (
	"slices"
	"testing"

	"pourbench/pour"
	"pourbench/pour/whatif"
)

// unmended are the codes whose warnings no edit takes away: they stand on what things are, on what only the maker can find out, or are good to know.
func unmended() []string {
	return []string{
		"plan-fault", "lye-near-boil", "lye-meets-sugar", "lye-meets-milk", "lye-meets-alcohol", "lye-meets-acid", "lye-on-ice", "purity-assumed",
		"scent-no-certificate", "jugs-alike", "dust", "salt-bar", "glycerin-sweat", "gel", "clock-refused", "clock-wide", "times-learnt", "pour-odd", "figure-unknown", "topping-damp", "topping-flammable", "topping-dust", "icing-rest",
		"label-name-unverified", "label-made-of", "label-allergen-open", "label-allergen-unstated", "label-claim",
	}
}

// mendable is another cause of a code, where the one in the table leaves nothing to mend: a temperature that was measured is what it is, and two
// jugs alone cannot be kept apart.
func mendable(code string) bend {
	switch code {
	case "false-trace":
		return all(number("base.oils_c", 24), number("base.lye_c", 24))
	case "wires-twice": // with a bar less the icing would be piped sooner, and be another matter
		return func(p *pour.Plan, _ *pour.Shelf) {
			p.Icing, p.Cut = nil, pour.Cut{By: pour.CutGang, KerfMM: 0.6, WiresMM: []float64{0, 50, 100, 100, 150, 200}}
		}
	case "muddy-neighbours":
		return func(p *pour.Plan, _ *pour.Shelf) {
			snow := p.Base.Jugs[1]
			for _, id := range []string{"ultramarine-blue", "yellow-iron-oxide"} {
				p.Base.Jugs = append(p.Base.Jugs, pour.Jug{Name: id, SharePercent: 15, Colourants: []pour.Dose{{Colourant: id, DosePercent: 0.4}}})
			}
			p.Base.Jugs[0].SharePercent, snow.SharePercent = 40, 30
			p.Base.Jugs[1] = snow
			p.Swirl.Technique = "layers"
		}
	}
	return nil
}

// stops are the codes and places of a sheet's stops.
func stops(s pour.Sheet) []string {
	var out []string
	for _, w := range s.Warnings {
		if w.Severity == pour.Stop {
			out = append(out, w.Code+" "+w.Where)
		}
	}
	return out
}

// Over the cause of every code: each mend that is offered takes the warning away and brings no stop, as a whole sheet of its own shows. A code
// without mends is one that says so here.
func TestEveryMendTakesItsWarningAway(t *testing.T) {
	plan, full := hanger(t)
	for _, r := range slices.Concat(lyeRows(), scentRows(), colourRows(), mouldRows(), pipingRows(), runRows(), toppingRows(), embedRows(), cutRows(), cureRows(), labelRows()) {
		if with := mendable(r.code); with != nil {
			r.with = with
		}
		p, shelf := r.with.of(plan, full)
		sheet := pour.Work(p, shelf, handFor(r.code))
		all := whatif.MendsOf(sheet, shelf, handFor(r.code), func(w pour.Warning) bool { return w.Code == r.code }) // of the others their own rows ask
		if len(all) != len(sheet.Warnings) {
			t.Fatalf("%s: mends for %d of %d warnings", r.code, len(all), len(sheet.Warnings))
		}
		offered := 0
		for i, w := range sheet.Warnings {
			if w.Code != r.code {
				continue
			}
			offered += len(all[i])
			for _, mend := range all[i] {
				mends(t, sheet, shelf, w, mend)
			}
		}
		if want := !slices.Contains(unmended(), r.code); want != (offered > 0) {
			t.Errorf("%s: %d mends are offered", r.code, offered)
		}
	}
}

func mends(t *testing.T, before pour.Sheet, shelf pour.Shelf, w pour.Warning, mend whatif.Mend) {
	t.Helper()
	next, err := pour.Apply(before.Plan, shelf, mend.Edit)
	if err != nil {
		t.Errorf("%s, %s: %v", w.Code, mend.Says, err)
		return
	}
	after := pour.Work(next, shelf, pour.Hand{})
	same := func(x pour.Warning) bool { return x.Code == w.Code && x.Where == w.Where && x.Text == w.Text }
	if slices.ContainsFunc(after.Warnings, same) {
		t.Errorf("%s, %s: still said of %s", w.Code, mend.Says, w.Where)
	}
	number := func(s pour.Sheet) (n int) {
		for _, x := range s.Warnings {
			if x.Code == w.Code && x.Where == w.Where {
				n++
			}
		}
		return n
	}
	if number(after) >= number(before) {
		t.Errorf("%s, %s: said %d times of %s, was %d times", w.Code, mend.Says, number(after), w.Where, number(before))
	}
	was := stops(before)
	for _, s := range stops(after) {
		if !slices.Contains(was, s) {
			t.Errorf("%s, %s: brings a stop, %s", w.Code, mend.Says, s)
		}
	}
}
