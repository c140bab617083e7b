package cure

import "math"

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
}

// Dried is one batch that was fitted: with the moisture at the first weighing that its recipe gives, a fraction.
type Dried struct {
	Fit         *Fit
	CutMoisture float64
}

// Learn works out what batches taught (own, no source). Each fit gives y = -ln(π²·Σ1/l²) - u for its own box, and for the moisture in the end
// M = 1 - (1 - Mc)/(1 - λ), λ = B/m1. What the prior of its fit put into it is taken out again: with the fit's sd s and the prior's s0 the
// weighings alone say p = 1/s² - 1/s0², (u/s² - u0/s0²)/p. A batch counts once its weighings have halved the prior's sd, p ≥ 3/s0².
// The batches are taken to lie about one mean with an sd ω: ω² = (4·ω0² + max(0, Σ(y - ȳ)² - (1 - 1/n)·Σ1/p))/(4 + n - 1). Each weighs
// 1/(1/p + ω²); the next batch is at their mean, good to √(1/Σweights + ω²).
func Learn(batches []Dried) Rack {
	var speed, moisture []told
	for _, b := range batches {
		if b.Fit == nil || len(b.Fit.Weighings) == 0 || b.Fit.Lumped || b.Fit.Check() != nil {
			continue
		}
		if t, ok := b.Fit.toldSpeed(); ok {
			speed = append(speed, t)
		}
		if t, ok := b.toldMoisture(); ok {
			moisture = append(moisture, t)
		}
	}
	return Rack{LnD: together(speed, batchLnDSD), Moisture: together(moisture, batchMoistureSD)}
}

// told is what one batch says by its weighings alone, with its variance.
type told struct{ mean, variance float64 }

// alone takes a prior out of what was found with it; ok is false where the weighings have not halved its sd.
func alone(mean, sd, priorMean, priorSD float64) (told, bool) {
	all, before := 1/square(sd), 1/square(priorSD)
	if p := all - before; p >= 3*before {
		return told{(mean*all - priorMean*before) / p, 1 / p}, true
	}
	return told{}, false
}

func (f *Fit) toldSpeed() (told, bool) {
	t, ok := alone(f.LnTau, math.Sqrt(f.Covariance[2][2]), f.Prior.LnTau, f.Prior.LnTauSD)
	t.mean = math.Log(f.Box.Diffusivity(math.Exp(t.mean)))
	return t, ok
}

func (b Dried) toldMoisture() (told, bool) {
	first := b.Fit.Weighings[0].G
	t, ok := alone(b.Fit.BG/first, math.Sqrt(b.Fit.Covariance[1][1])/first, b.Fit.Prior.Loss, b.Fit.Prior.LossSD)
	dry := 1 - b.CutMoisture
	slope := dry / square(1-t.mean) // of the moisture by the loss
	return told{1 - dry/(1-t.mean), t.variance * square(slope)}, ok && dry > 0 && dry <= 1
}

func together(all []told, guessSD float64) Learnt {
	n := float64(len(all))
	if len(all) < LeastBatches {
		return Learnt{Batches: len(all)}
	}
	middle, noise, off := 0.0, 0.0, 0.0
	for _, t := range all {
		middle += t.mean / n
		noise += t.variance * (1 - 1/n)
	}
	for _, t := range all {
		off += square(t.mean - middle)
	}
	between := (batchGuess*square(guessSD) + math.Max(0, off-noise)) / (batchGuess + n - 1)
	sum, weights := 0.0, 0.0
	for _, t := range all {
		w := 1 / (t.variance + between)
		sum, weights = sum+w*t.mean, weights+w
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
