package picture

import (
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/script"
	"pourbench/pour/swirl"
)

// By hand: 74 columns for 250 mm are 0.296 pixels a mm, so that 77 mm of loaf and icing are 11 rows high; with 20 rows it may be 1.75 times as high.
func TestACutAlongTheLoafIsWorthLookingAt(t *testing.T) {
	if got := LengthsFor(250, 77, 74, 20); got.N != 1 || got.Tall < 1.7 || got.Tall > 1.8 {
		t.Errorf("in 74 by 20 cells it is shown as %+v, want one length, 1.75 times as high", got)
	}
	if got := LengthsFor(250, 77, 74, 60); got.N < 2 {
		t.Errorf("in 74 by 60 cells it is shown as %+v, want more than one length", got)
	}
	p := draft(t, meadow(Long, 74, 20))
	if r := p.Tiles()[0].Rect; r.Dy() < 18 || r.Dx() < 70 {
		t.Errorf("in 74 by 20 cells it stands in %v", r)
	}
	if p.tiles[0].crown == 0 {
		t.Error("it has no icing")
	}
	rapid.Check(t, func(t *rapid.T) {
		long, high := rapid.Float64Range(60, 600).Draw(t, "long"), rapid.Float64Range(20, 150).Draw(t, "high")
		l := LengthsFor(long, high, rapid.IntRange(1, 160).Draw(t, "w"), rapid.IntRange(1, 60).Draw(t, "h"))
		if l.N < 1 || l.N > mostLengths || l.Tall < 1-1e-9 || l.Tall > mostTall {
			t.Fatalf("%+v", l)
		}
	})
}

func TestTheLengthsOfALoafAreItsParts(t *testing.T) {
	s := meadow(Long, 60, 60)
	s.Flat = true
	p := draft(t, s)
	n := p.Cut.N
	if n < 2 || len(p.tiles) != n {
		t.Fatalf("%d lengths are shown in %d tiles", n, len(p.tiles))
	}
	whole, err := swirl.New(s.Recipe)
	if err != nil {
		t.Fatal(err)
	}
	for i := range p.tiles {
		base := &p.tiles[i].base
		for _, x := range []int{0, base.W / 2, base.W - 1} {
			along := 250 / float64(n) * (float64(i) + (float64(x)+0.5)/float64(base.W))
			for y := range base.H {
				if got, want := base.Label(x, y), whole.Label(along, 40, 62*(1-(float64(y)+0.5)/float64(base.H))); got != want {
					t.Errorf("length %d shows %d at (%d, %d), want %d", i, got, x, y, want)
				}
			}
		}
	}
}

func TestWhileThePotIsFilledItIsShown(t *testing.T) {
	s := meadow(Bar, 60, 24)
	acts, err := script.New(script.Brief{Technique: script.Pot, Shares: []float64{0.4, 0.3, 0.3}, First: script.Whole, Last: script.Whole, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	s.Recipe.Script = acts
	for n := range len(acts.Acts) + 1 {
		s.Done = n
		p := draft(t, s)
		poured := n > 0 && acts.Acts[n-1].Kind == script.PourOut || n == len(acts.Acts)
		if p.Pot == poured {
			t.Errorf("after %d acts the pot is shown: %v", n, p.Pot)
		}
		if r := p.Tiles()[0].Rect; p.Pot && (len(p.Tiles()) != 1 || r.Dx() < 2*r.Dy()-1 || r.Dx() > 2*r.Dy()+1) {
			t.Errorf("the pot stands in %v", r)
		}
	}
	s.Done = Whole
	if draft(t, s).Pot {
		t.Error("the pot is shown when all is poured")
	}
}
