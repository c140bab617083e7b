package clock

import "math"

// What is known of a maker before any log, as standard deviations of ln speed (assumed; the spread of makers' reports).
const (
	PriorPaceSD   = 0.45 // β: this maker's blender, kitchen and way of judging
	PriorRecipeSD = 0.25 // u: one recipe against what its oils say
	PourSD        = 0.20 // τ: pour to pour
	JudgeSD       = 0.15 // ω: judging one stage
	SameBatchSD   = 0.15 // shared by jugs of one batch when two of them are logged
	PriorFreedom  = 4    // degrees of freedom of the noise before any log
)

// TraitKind is what a learnt number belongs to.
type TraitKind string

// The kinds of trait.
const (
	PaceTrait   TraitKind = "pace"   // β, the maker; one at most, ID empty
	RecipeTrait TraitKind = "recipe" // u, by Batter.Recipe
	ScentTrait  TraitKind = "scent"  // δf, by Scent.ID: ln speed at the test load, over the prior
)

// Trait is one learnt number.
type Trait struct {
	Kind  TraitKind
	ID    string
	Mean  float64 // posterior mean
	Pours int     // logged pours that bear on it
}

// Hand is what a maker's logs taught the clock (trace model, section 3). A trait that is not listed stands at its prior,
// independent of the rest; so the zero Hand is a maker without logs.
type Hand struct {
	Traits     []Trait
	Covariance [][]float64 // posterior, in the order of Traits, symmetric
	Noise      float64     // c_n, by which the variance is inflated, ≥ 1; 0: not learnt, counts as 1
	Freedom    int         // degrees of freedom, 4 + exact logs; 0: no logs, the normal distribution is used
	Pours      int         // logged pours in all
}

func (h Hand) find(k TraitKind, id string) (int, bool) {
	for i, t := range h.Traits {
		if t.Kind == k && t.ID == id {
			return i, true
		}
	}
	return 0, false
}

func (h Hand) mean(k TraitKind, id string) float64 {
	if i, ok := h.find(k, id); ok {
		return h.Traits[i].Mean
	}
	return 0
}

func (h Hand) meanPace(recipe string) float64 {
	return h.mean(PaceTrait, "") + h.recipeMean(recipe)
}

func (h Hand) recipeMean(recipe string) float64 {
	if recipe == "" {
		return 0
	}
	return h.mean(RecipeTrait, recipe)
}

func (h Hand) scentShift(id string) float64 {
	if id == "" {
		return 0
	}
	return h.mean(ScentTrait, id)
}

func (h Hand) recipePours(recipe string) int {
	if i, ok := h.find(RecipeTrait, recipe); ok && recipe != "" {
		return h.Traits[i].Pours
	}
	return 0
}

// variance is that of β + u + Σ w·f for a recipe and scents, w being each scent's load against its test load. Listed traits
// come from the posterior with all their covariances, others from their priors.
func (h Hand) variance(recipe string, scents []Scent) float64 {
	row := make([]float64, len(h.Traits))
	prior := 0.0
	add := func(k TraitKind, id string, w, sd float64) {
		if i, ok := h.find(k, id); ok && (id != "" || k == PaceTrait) {
			row[i] += w
			return
		}
		prior += w * w * sd * sd
	}
	add(PaceTrait, "", 1, PriorPaceSD)
	add(RecipeTrait, recipe, 1, PriorRecipeSD)
	for _, s := range scents {
		add(ScentTrait, s.ID, s.Ratio(), s.SD)
	}
	learnt := 0.0
	for i, a := range row {
		for k, b := range row {
			learnt += a * b * h.Covariance[i][k]
		}
	}
	return prior + math.Max(0, learnt)
}

// inflation is c_n.
func (h Hand) inflation() float64 { return math.Max(1, h.Noise) }

// quantile90 is the 0.90 quantile of the hand's distribution.
func (h Hand) quantile90() float64 {
	if h.Freedom == 0 {
		return normal90
	}
	return student90(h.Freedom)
}

// quantile is the place of the hand's standardised error under which it lies with that probability, over 0 and under 1.
func (h Hand) quantile(probability float64) float64 {
	lo, hi := -10.0, 10.0
	for range 50 {
		mid := (lo + hi) / 2
		if h.below(mid) < probability {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// below is the distribution function of the hand's standardised error.
func (h Hand) below(z float64) float64 {
	if h.Freedom == 0 {
		return math.Erfc(-z/math.Sqrt2) / 2
	}
	return studentCDF(z, h.Freedom)
}
