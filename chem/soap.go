package chem

import "math"

// Reaction is what a lye makes of a blend, unrounded, and how far it went.
//
// Acids take up alkali before esters do: first those beside the fats, then the free acids among them, each in full as long as there is alkali.
// Triglycerides and wax esters share the rest and all react to the same fraction, so that what is left over is in proportion to each of them (common
// practice: real pots need not do so, and nobody can tell better without analysis). Sodium and potassium go everywhere in proportion to their moles.
// Unsaponifiable matter stays where it was, in soap and in leftover fat; free acid already in an oil would lower its glycerol and is not taken off.
type Reaction struct {
	Fats                []Soap  // in the order of the blend
	Acids               float64 // fraction of the acids beside the fats that is neutralised; 1 where there are none
	NaOHLeftG, KOHLeftG float64 // pure alkali that found nothing to react with
	SodiumShare         float64 // NaOH's part of the alkali by moles, a fraction; 1 without any alkali
}

// Soap is what becomes of one fat, g.
type Soap struct {
	SodiumG, PotassiumG float64 // the soaps; of a wax ester with the fatty alcohol that is set free
	GlycerolG           float64 // 1 mol for 3 mol of alkali taken by a triglyceride, else 0
	WaterG              float64 // of neutralising a free acid, 1 mol for 1 mol of alkali
	LeftG               float64 // fat that did not react
}

// Reacted returns what that much pure alkali, g and ≥ 0, makes of the blend, when acids beside the fats take up acidKOHG, g KOH. Mass is kept: fats
// and alkali in are soaps, glycerol, water, leftover fat and leftover alkali out, but for what the acids beside take, which is theirs to tell. A fat
// without a saponification value stays as it is.
func (b Blend) Reacted(naohG, kohG, acidKOHG float64) Reaction {
	naoh, koh := naohG/MolarNaOH, kohG/MolarKOH
	r := Reaction{Fats: make([]Soap, len(b)), SodiumShare: 1}
	if naoh+koh > 0 {
		r.SodiumShare = naoh / (naoh + koh)
	}
	acids, esters := b.mol()
	left := naoh + koh
	var free, bound float64
	r.Acids, left = take(acidKOHG/MolarKOH, left)
	free, left = take(acids, left)
	bound, left = take(esters, left)
	for i := range b {
		part := bound
		if b[i].Fat.Kind == FreeAcid {
			part = free
		}
		r.Fats[i] = b[i].reacted(part, r.SodiumShare)
	}
	r.NaOHLeftG = left * r.SodiumShare * MolarNaOH
	r.KOHLeftG = left * (1 - r.SodiumShare) * MolarKOH
	return r
}

// mol is the alkali that the blend's free acids take up, and its triglycerides and waxes.
func (b Blend) mol() (acids, esters float64) {
	for i := range b {
		n := b[i].G * b[i].Fat.Sap / mgPerMolKOH
		if b[i].Fat.Kind == FreeAcid {
			acids += n
		} else {
			esters += n
		}
	}
	return acids, esters
}

// even is the part of a want by which the alkali may differ from it and still be just enough: rounding leaves neither fat nor alkali over.
const even = 1e-12

// take is the fraction of a want that is met out of so much, and what is left of it.
func take(want, of float64) (part, left float64) {
	if math.Abs(want-of) <= even*want {
		return 1, 0
	}
	if want <= of {
		return 1, of - want
	}
	return of / want, 0
}

// glycerolG is what triglycerides set free when they take up that much alkali, mol.
func glycerolG(mol float64) float64 { return mol / 3 * MolarGlycerol }

// reacted is the part of one fat, to that fraction.
func (p Part) reacted(fraction, sodium float64) Soap {
	n := fraction * p.G * p.Fat.Sap / mgPerMolKOH
	if n <= 0 {
		return Soap{LeftG: p.G}
	}
	s := Soap{LeftG: (1 - fraction) * p.G}
	switch p.Fat.Kind {
	case Triglyceride:
		s.GlycerolG = glycerolG(n)
	case FreeAcid:
		s.WaterG = n * MolarWater
	case WaxEster:
	}
	acyl := fraction*p.G - s.GlycerolG - s.WaterG
	s.SodiumG = sodium * (acyl + n*MolarNaOH)
	s.PotassiumG = (1 - sodium) * (acyl + n*MolarKOH)
	return s
}
