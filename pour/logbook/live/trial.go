package live

import (
	"fmt"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

// TrialG is the batter in each jug of a scent trial, g.
const TrialG = 100

// The jugs of a scent trial.
const (
	TrialPlain   = "plain"
	TrialScented = "scented"
)

// TrialPlan makes a scent trial out of a plan: the base's own oils, lye and temperatures, in two jugs of [TrialG] g. One gets the
// scent at its test load, the other nothing: what differs between them is the scent's doing, whoever stirs.
func TrialPlan(from pour.Plan, scent string, shelf pour.Shelf) (pour.Plan, error) {
	sc, ok := shelf.Scent(scent)
	if !ok {
		return from, fmt.Errorf("plan a trial of %q: no such scent is on the shelf", scent)
	}
	p := from.Clone()
	p.Name, p.Notes, p.Icing = "Trial of "+sc.Name, "", nil
	if most := 80; len([]rune(p.Name)) > most {
		p.Name = string([]rune(p.Name)[:most])
	}
	p.Run.Order, p.Trial = nil, true
	b := &p.Base
	b.Size, b.OilsG, b.ReadyBlend = pour.SizeOils, 2*TrialG, ""
	b.Jugs = []pour.Jug{{Name: TrialPlain, SharePercent: 50}, {Name: TrialScented, SharePercent: 50}}
	load := sc.TestLoadPercent
	if load == 0 {
		load = clock.PriorLoadPercent
	}
	b.Scents = []pour.ScentPart{{Scent: scent, PercentOfOils: load / 2, Into: []string{TrialScented}, AtMin: b.SplitAtMin}}
	if faults := p.Check(shelf); len(faults) > 0 {
		return from, fmt.Errorf("plan a trial of %s: %w", sc.Name, faults[0])
	}
	sheet := pour.Weigh(p, shelf)
	if !(sheet.Base.Size.BatterG > 0) {
		return from, fmt.Errorf("plan a trial of %s: the plan's own figures do not work out", sc.Name)
	}
	b.OilsG *= 2 * TrialG / sheet.Base.Size.BatterG
	return p, nil
}

// TrialSteps tells, in order, what to do in a trial beside the steps of its run.
func TrialSteps() []string {
	out := []string{
		"Blend the batch only as long as planned, then divide it into two jugs of the same kind and stir both by hand alike.",
		"Stir the scent into the scented jug and go on stirring both every half minute.",
	}
	for s := chem.Light; s <= chem.Thick; s++ {
		out = append(out, fmt.Sprintf("Mark %s for each jug as soon as you see it.", s))
	}
	return append(out, "Mark rices, seizes, browns or separates when you see it. Stop when both jugs are thick or after 40 minutes.")
}
