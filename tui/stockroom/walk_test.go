package stockroom

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"pourbench/pour/day"
	"pourbench/tui/keys"
)

// alphabet is what a walk presses: every key of the page and of what opens on it, and some letters and digits to type.
func alphabet() []string {
	out := strings.Fields("1 2 3 . , a e o x 7 8")
	for _, b := range keys.BuiltIn().All() {
		if !strings.Contains(" stock form pad list line page question ", " "+b.Mode.Word()+" ") {
			continue
		}
		for _, k := range b.Keys {
			if k != keys.Leaves && k != "ctrl+z" && k != "q" && !strings.HasPrefix(k, "shift+") {
				out = append(out, k)
			}
		}
	}
	return out
}

// Whatever is pressed, nothing panics, no frame leaves its screen, the file stays readable and only grows, and what came is what was taken, lost and
// is left.
func TestARandomWalkKeepsTheLedgerWhole(t *testing.T) {
	steps, walks := 150, 2
	if os.Getenv("POURBENCH_LONG") != "" {
		steps, walks = 3000, 6
	}
	signs := alphabet()
	for seed := range walks {
		rnd := rand.New(rand.NewPCG(uint64(seed), 12)) //nolint:gosec // a walk, no secret
		r := stocked(t)
		sizes := [][2]int{{80, 24}, {120, 36}, {44, 12}, {20, 5}}
		was := r.file()
		var pressed []string
		for i := range steps {
			if rnd.IntN(40) == 0 {
				size := sizes[rnd.IntN(len(sizes))]
				r.size(size[0], size[1])
			}
			name := signs[rnd.IntN(len(signs))]
			pressed = append(pressed, name)
			r.press(name)
			if h := strings.Count(r.m.View().Content, "\n") + 1; h > max(r.m.dialogs.Frame.H, 1) {
				t.Fatalf("walk %d, step %d: %d lines", seed, i, h)
			}
			now := r.file()
			if !strings.HasPrefix(now, was) {
				t.Fatalf("walk %d: after %v the file was changed where it stood", seed, pressed)
			}
			if now == was {
				continue
			}
			was = now
			s, err := r.ledger.State(day.Of(r.wall))
			must(t, err)
			for _, h := range s.Held {
				for _, p := range h.Packs {
					if p.Size != p.Taken+p.Lost+p.Left || p.Left < 0 {
						t.Fatalf("walk %d: after %v the pack is %+v", seed, pressed, p)
					}
				}
			}
		}
	}
}

func TestAnEmptyPageTakesEveryKey(t *testing.T) {
	r := opened(t, nil)
	for _, k := range alphabet() {
		r.press(k)
	}
}
