package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// The example combed: the poppy is too thick from 9:30 on. In the first round it is poured at 8:32; in the second, which begins at 9:20, at 9:52,
// then in the third, and the tines are drawn at 12:00 and 13:00. Those four steps say so on every paper; in layers no jug is warned of and no step
// says it.
func TestAStepThatComesTooLateSaysSoOnPaper(t *testing.T) {
	p, shelf := demo(t)
	const late = "; likely too thick by then: poppy"
	for technique, want := range map[string]int{"comb": 4, "layers": 0} {
		p.Swirl.Technique = technique
		s := pour.Work(p, shelf, pour.Hand{})
		for name, text := range map[string]string{"full": Checklist(s, shelf), "bench": Bench(s, shelf, false), "large": Bench(s, shelf, true)} {
			if got := strings.Count(flat(text), "likely too thick by then"); got != want {
				t.Errorf("%s, %s: %d steps are told to come too late, want %d", technique, name, got, want)
			}
			if want == 0 {
				continue
			}
			_, acts, _ := strings.Cut(flat(text), "round 2 of 3")
			if got := strings.Count(acts, late); got != want {
				t.Errorf("%s, %s: %d of them from the second round on, want %d: %s", technique, name, got, want, acts)
			}
		}
	}
}
