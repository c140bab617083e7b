package colour

import "fmt"

// Verdict says what becomes of two batters where they touch.
type Verdict string

// The verdicts, best first.
const (
	Clean   Verdict = "clean"
	Softens Verdict = "softens"
	Muddy   Verdict = "muddy"
)

// Causes of mud.
const (
	GreysOut  = "greys out"
	GoesKhaki = "goes khaki/brown"
)

// Constants of the score: chroma that has to be lost, darkening into yellow that has to happen, for one
// full point each, and the limits of the verdicts. Judgement, fitted to a table of pairs, not to a panel
// of people.
const (
	greyFull    = 0.12
	khakiFull   = 0.30
	softensFrom = 0.35
	muddyFrom   = 0.60
)

// Mud is what becomes of two batters where they touch and blend. The swatches are the evidence: show
// them beside the score.
type Mud struct {
	Score    float64 // 0 clean to 1
	Grey     float64 // its part from lost chroma; the parts together can exceed the score, which is capped
	Khaki    float64 // its part from sliding into dark yellow: olive, khaki, brown
	Verdict  Verdict
	Cause    string     // GreysOut or GoesKhaki; empty for a clean pair
	Swatches [3]RGB     // mixtures of the two
	Parts    [3]float64 // of the second batter in each: a quarter, a half and three quarters, but of a pale batter beside a strong one
}

// Judge tells which batters go muddy beside each other. Make one with NewJudge and keep it: it holds
// the lightness of the most colourful colour of every hue. Nothing in it changes afterwards, so any
// number of goroutines may use one Judge at once.
type Judge struct{ cusp cusps }

// NewJudge returns a Judge. It takes a few tenths of a millisecond.
func NewJudge() *Judge { return &Judge{cusp: newCusps()} }

// Mud returns what becomes of a and b where they touch, averaged over mixtures with a quarter, a half
// and three quarters of b. It is symmetric but for the order of the swatches. Tinting with white or
// cream is not mud and scores about 0; a pale batter beside a strong one is judged by the line between them. A paint that is no paint is refused, as by Mix.
func (j *Judge) Mud(a, b Paint) (Mud, error) {
	pa, pb := a.RGB().OKLCH(), b.RGB().OKLCH()
	parents := max(j.khaki(pa), j.khaki(pb))
	full, shows := greyScale(pa, pb), 1-swallows*max(nearBlack(pa), nearBlack(pb))
	var m Mud
	m.Parts = [3]float64{0.25, 0.5, 0.75}
	for i, w := range m.Parts {
		mixed, err := Mix([]Paint{a, b}, []float64{1 - w, w})
		if err != nil {
			return Mud{}, fmt.Errorf("judge two batters: %w", err)
		}
		m.Swatches[i] = mixed.RGB()
		c := m.Swatches[i].OKLCH()
		grey := shows * max(0, expected(pa, pb, w)-c.C) / full
		khaki := shows * max(0, j.khaki(c)-parents) / khakiFull
		m.Grey += grey / 3
		m.Khaki += khaki / 3
		m.Score += min(1, grey+khaki) / 3
	}
	if err := m.paleBeside(a, b); err != nil {
		return Mud{}, err
	}
	m.judge()
	return m, nil
}

func (m *Mud) judge() {
	switch {
	case m.Score < softensFrom:
		m.Verdict = Clean
		return
	case m.Score < muddyFrom:
		m.Verdict = Softens
	default:
		m.Verdict = Muddy
	}
	m.Cause = GoesKhaki
	if m.Grey > m.Khaki {
		m.Cause = GreysOut
	}
}

// khaki says how far a colour lies below the most colourful yellow or olive of its hue: a dark yellow
// has another name and another standing, a dark blue is still blue.
func (j *Judge) khaki(c OKLCH) float64 {
	window := smooth(c.H, 45, 75) * (1 - smooth(c.H, 110, 140))
	return window * smooth(c.C, 0.01, 0.04) * max(0, j.cusp.at(c.H)-c.L)
}

// smooth rises from 0 at from to 1 at to.
func smooth(x, from, to float64) float64 {
	t := min(max((x-from)/(to-from), 0), 1)
	return t * t * (3 - 2*t)
}

// Table returns the mud scores of all pairs of paints, symmetric with zeros on the diagonal: what
// BestOrder reads. It is refused where one of them is no paint.
func (j *Judge) Table(paints []Paint) ([][]float64, error) {
	table := make([][]float64, len(paints))
	for i := range table {
		table[i] = make([]float64, len(paints))
	}
	for i := range paints {
		for k := range i {
			m, err := j.Mud(paints[i], paints[k])
			if err != nil {
				return nil, fmt.Errorf("compare batters %d and %d: %w", k, i, err)
			}
			table[i][k], table[k][i] = m.Score, m.Score
		}
	}
	return table, nil
}
