package paper

import (
	"bytes"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
)

// demo is the built-in example plan on the built-in shelf.
func demo(t testing.TB) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan("alpine-meadow")
	if err != nil {
		t.Fatal(err)
	}
	p, err := planfile.Read("alpine-meadow", bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	return p, shelf
}

func TestChecklistOfTheExample(t *testing.T) {
	p, shelf := demo(t)
	golden.RequireEqual(t, Checklist(pour.Work(p, shelf, pour.Hand{}), shelf))
}

func TestBenchPaperOfTheExample(t *testing.T) {
	p, shelf := demo(t)
	golden.RequireEqual(t, Bench(pour.Work(p, shelf, pour.Hand{}), shelf, false))
}

func TestLargeBenchPaperOfTheExample(t *testing.T) {
	p, shelf := demo(t)
	golden.RequireEqual(t, Bench(pour.Work(p, shelf, pour.Hand{}), shelf, true))
}

func TestCheckOfTheExample(t *testing.T) {
	p, shelf := demo(t)
	text, _ := Check(pour.Work(p, shelf, pour.Hand{}), nil)
	golden.RequireEqual(t, text)
}

func TestEveryExamplePlanFitsThePaper(t *testing.T) {
	_, shelf := demo(t)
	for _, name := range presets.Plans() {
		text, err := presets.Plan(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planfile.Read(name, bytes.NewReader(text), shelf)
		if err != nil {
			t.Fatal(err)
		}
		s := pour.Work(p, shelf, pour.Hand{})
		if line, w := widest(Checklist(s, shelf)); w > fullFormat().wide {
			t.Errorf("%s: %d columns: %s", name, w, line)
		}
		if s.LyeStopped() {
			t.Errorf("%s: an example plan has a stop on its lye", name)
		}
	}
}

func BenchmarkChecklist(b *testing.B) {
	p, shelf := demo(b)
	s := pour.Work(p, shelf, pour.Hand{})
	for b.Loop() {
		Checklist(s, shelf)
	}
}
