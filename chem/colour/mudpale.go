package colour

import "fmt"

// A pale batter beside a strong one. In grams the strong one has the border at once: a mixture with a quarter of it is nearly its own colour. What
// is seen of such a border lies on the pale side, where the first that runs in greys the pale colour before it takes its own: a dirty line, never a
// dirty bar, so such a pair softens at most. Judgement, as the other constants of the score.
const (
	palePart     = 0.8  // of a full point, for a pale batter that loses all its chroma
	paleMost     = 0.59 // softens still
	paleFrom     = 0.035
	paleFull     = 0.045 // chroma from which on a batter has a colour to lose: whites and creams have none
	paleTo       = 0.092
	paleEnd      = 0.100 // and up to which it is pale
	strongerFrom = 1.3
	strongerFull = 1.7 // how many times as much chroma makes the other a strong one
)

// firstParts are the parts of the strong batter in the first that runs in, and shownParts those of the swatches that show it.
func firstParts() [5]float64 { return [5]float64{0.02, 0.04, 0.08, 0.12, 0.2} }
func shownParts() [3]float64 { return [3]float64{0.05, 0.15, 0.5} }

// pale says how far the first is a pale batter beside a strong one, 0 to 1.
func pale(first, second OKLCH) float64 {
	if first.C <= 0 {
		return 0
	}
	return smooth(first.C, paleFrom, paleFull) * (1 - smooth(first.C, paleTo, paleEnd)) * smooth(second.C/first.C, strongerFrom, strongerFull)
}

// paleLine scores the grey line that a strong batter draws in a pale one.
func paleLine(weak, strong Paint) (float64, error) {
	p := weak.RGB().OKLCH()
	least := p.C
	for _, part := range firstParts() {
		mixed, err := Mix([]Paint{weak, strong}, []float64{1 - part, part})
		if err != nil {
			return 0, fmt.Errorf("judge a pale batter: %w", err)
		}
		least = min(least, mixed.RGB().OKLCH().C)
	}
	return min(paleMost, pale(p, strong.RGB().OKLCH())*palePart*(1-least/p.C)), nil
}

// paleBeside scores a and b again where one of them is pale beside the other, and shows its line in the swatches.
func (m *Mud) paleBeside(a, b Paint) error {
	pa, pb := a.RGB().OKLCH(), b.RGB().OKLCH()
	turned := pa.C > pb.C
	weak, strong := a, b
	if turned {
		weak, strong = b, a
	}
	if max(pale(pa, pb), pale(pb, pa)) == 0 {
		return nil
	}
	line, err := paleLine(weak, strong)
	if err != nil || line <= m.Score {
		return err
	}
	m.Score, m.Grey = line, max(m.Grey, line)
	for i, part := range shownParts() {
		k := i
		if turned {
			k, part = len(m.Parts)-1-i, 1-part
		}
		mixed, err := Mix([]Paint{a, b}, []float64{1 - part, part})
		if err != nil {
			return fmt.Errorf("judge a pale batter: %w", err)
		}
		m.Parts[k], m.Swatches[k] = part, mixed.RGB()
	}
	return nil
}
