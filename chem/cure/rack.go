package cure

import (
	"math"
	"slices"
)

// LeastBatches is how many of a maker's own batches must have told something before they say anything of the next (own, no source).
const LeastBatches = 3

// How much batches of one maker differ, before hers have shown it, and how many batches that guess counts for (own, no source).
const (
	batchLnDSD      = 0.20  // of ln diffusivity: recipe, weather, place on the rack
	batchMoistureSD = 0.015 // of the moisture they end at
	batchGuess      = 4
)

// Learnt is one number that own batches taught: its mean, how well the next batch is known by it, and how many taught it. The
// zero value is nothing learnt.
type Learnt struct {
	Mean, SD float64
	Batches  int
}

// Known reports whether enough batches taught it.
func (l Learnt) Known() bool { return l.Batches >= LeastBatches }

// Diffusivity is what a learnt logarithm of it stands for, m²/s.
func (l Learnt) Diffusivity() float64 { return math.Exp(l.Mean) }

// Rack is what a maker's own batches taught of her room and her soap: how quickly water goes through it, whatever the bar's size, and how moist
// it ends, whatever it was cut at. The zero Rack is a maker without batches.
type Rack struct {
	LnD      Learnt // of the diffusivity, m²/s
	Moisture Learnt // in the end, a fraction
	From     []Said // what taught it
}

// Without is what all but one batch taught: a batch is not forecast from itself, which would count its weighings twice.
func (r Rack) Without(batch string) Rack {
	if !slices.ContainsFunc(r.From, func(s Said) bool { return s.Batch == batch }) {
		return r
	}
	return Learn(slices.DeleteFunc(slices.Clone(r.From), func(s Said) bool { return s.Batch == batch }))
}

// Said is what the weighings of one batch say without any prior: the logarithm of its diffusivity, m²/s, and the moisture it ends at.
type Said struct {
	Batch         string // which it is of
	LnD, Moisture Told
}

// Told is a number with its variance; a variance of 0 says that nothing was told.
type Told struct{ Mean, Variance float64 }

// Known reports whether something was told.
func (t Told) Known() bool { return t.Variance > 0 }

// Says is what a fit says without its prior (own, no source), given the moisture at the first weighing that the recipe gives, a fraction: y = -ln(π²·Σ1/l²) - u for
// its own box, and for the moisture in the end M = 1 - (1 - Mc)/(1 - λ), λ = B/m1. What the prior put into it is taken out again: with the fit's sd s and
// the prior's s0 the weighings alone say p = 1/s² - 1/s0², (u/s² - u0/s0²)/p. Nothing is told before the weighings have halved the prior's sd, p ≥ 3/s0², nor
// by weighings that do not follow the law.
func (f *Fit) Says(cutMoisture float64) Said {
	if f == nil || len(f.Weighings) == 0 || f.Lumped || f.Check() != nil {
		return Said{}
	}
	return Said{LnD: f.speedAlone(), Moisture: f.moistureAlone(cutMoisture)}
}

// Learn works out what batches taught together (own, no source). They are taken to lie about one mean with an sd ω:
// ω² = (4·ω0² + max(0, Σ(y - ȳ)² - (1 - 1/n)·Σ1/p))/(4 + n - 1). Each weighs 1/(1/p + ω²); the next batch is at their mean, good to
// √(1/Σweights + ω²). Fewer than [LeastBatches] teach nothing.
func Learn(batches []Said) Rack {
	var speed, moisture []Told
	var from []Said
	for _, b := range batches {
		if b.LnD.Known() || b.Moisture.Known() {
			from = append(from, b)
		}
		if b.LnD.Known() {
			speed = append(speed, b.LnD)
		}
		if b.Moisture.Known() {
			moisture = append(moisture, b.Moisture)
		}
	}
	return Rack{LnD: together(speed, batchLnDSD), Moisture: together(moisture, batchMoistureSD), From: from}
}

// alone takes a prior out of what was found with it.
func alone(mean, sd, priorMean, priorSD float64) Told {
	all, before := 1/square(sd), 1/square(priorSD)
	if p := all - before; p >= 3*before {
		return Told{(mean*all - priorMean*before) / p, 1 / p}
	}
	return Told{}
}

func (f *Fit) speedAlone() Told {
	t := alone(f.LnTau, math.Sqrt(f.Covariance[2][2]), f.Prior.LnTau, f.Prior.LnTauSD)
	if t.Known() {
		t.Mean = math.Log(f.Box.Diffusivity(math.Exp(t.Mean)))
	}
	return t
}

func (f *Fit) moistureAlone(cutMoisture float64) Told {
	first, dry := f.Weighings[0].G, 1-cutMoisture
	t := alone(f.BG/first, math.Sqrt(f.Covariance[1][1])/first, f.Prior.Loss, f.Prior.LossSD)
	if !t.Known() || !(dry > 0 && dry <= 1) || !(t.Mean < 1) {
		return Told{}
	}
	slope := dry / square(1-t.Mean) // of the moisture by the loss
	return Told{1 - dry/(1-t.Mean), t.Variance * square(slope)}
}

func together(all []Told, guessSD float64) Learnt {
	n := float64(len(all))
	if len(all) < LeastBatches {
		return Learnt{Batches: len(all)}
	}
	middle, noise, off := 0.0, 0.0, 0.0
	for _, t := range all {
		middle += t.Mean / n
		noise += t.Variance * (1 - 1/n)
	}
	for _, t := range all {
		off += square(t.Mean - middle)
	}
	between := (batchGuess*square(guessSD) + math.Max(0, off-noise)) / (batchGuess + n - 1)
	sum, weights := 0.0, 0.0
	for _, t := range all {
		w := 1 / (t.Variance + between)
		sum, weights = sum+w*t.Mean, weights+w
	}
	return Learnt{Mean: sum / weights, SD: math.Sqrt(1/weights + between), Batches: len(all)}
}

// Prior returns the prior of a bar that is not weighed yet, as [FromRecipe] does, by what own batches taught where they have (own, no source): tau is that
// of their diffusivity in this box. The moisture in the end is theirs and the recipe's together, each by one over its variance, so that a recipe that
// says otherwise still counts, and stating what was learnt counts it twice by a little and shifts it by nothing.
func (r Rack) Prior(box Box, cutMoisture, finalMoisture, finalSD float64) (Prior, error) {
	if l := r.Moisture; l.Known() {
		mine, recipe := 1/square(l.SD), 1/square(finalSD)
		finalMoisture = math.Max(0, (mine*l.Mean+recipe*finalMoisture)/(mine+recipe))
		finalSD = 1 / math.Sqrt(mine+recipe)
	}
	p, err := FromRecipe(cutMoisture, finalMoisture, finalSD)
	if err != nil {
		return Prior{}, err
	}
	if err := box.Check(); err != nil {
		return Prior{}, err
	}
	if l := r.LnD; l.Known() {
		p.LnTau, p.LnTauSD = math.Log(box.TauDays(l.Diffusivity())), math.Min(l.SD, PriorLnTauSD)
	}
	return p, nil
}
