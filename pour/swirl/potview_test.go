package swirl

import (
	"context"
	"math"
	"testing"

	"pourbench/pour/script"
)

// inPot lists the techniques that pour colours into the pot.
func inPot() (list []script.Technique) {
	for _, t := range script.Techniques() {
		if t.InPot() {
			list = append(list, t)
		}
	}
	return list
}

// disk counts the portions of a drawn pot as parts of the disk; what is empty inside the disk counts for none.
func disk(p *PotView, portions int) []float64 {
	var pic Picture
	const n = 300
	p.Draft(&pic, n, n)
	got := make([]float64, portions)
	for i := range pic.Pixels {
		if pic.Pixels[i].Part[0] > 0 {
			got[pic.Pixels[i].Portion[0]] += 1 / (n * n * math.Pi / 4)
		}
	}
	return got
}

func TestThePotHoldsWhatHasBeenPouredIntoIt(t *testing.T) {
	for _, technique := range inPot() {
		for _, shares := range [][]float64{{0.38, 0.16, 0.16, 0.15, 0.15}, {0.9, 0.05, 0.05}, {0, 0.5, 0.3, 0.2}} {
			s := mustPour(t, scripted(technique, 5, shares...))
			want := make([]float64, len(shares))
			want[0] = shares[0]
			for n, a := range s.recipe.Script.Acts {
				if a.Kind == script.PourOut {
					break
				}
				if a.Kind == script.IntoPot {
					want[a.Jug] += a.Share
				}
				left := 1.0
				for _, v := range want[1:] {
					left -= v
				}
				if shares[0] > 0 {
					want[0] = left // the pot's own batter fills the pot until the colours come
				}
				if e := worst(disk(s.Upto(n+1).Pot(), len(shares)), want); e > 0.01 {
					t.Errorf("%s, %v: after act %d (%s) a portion is off by %.2f points", technique, shares, n+1, a.Kind, 100*e)
				}
			}
		}
	}
}

func TestThereIsAPotOnlyWhileItIsFilled(t *testing.T) {
	for _, technique := range script.Techniques() {
		s := mustPour(t, loaf(technique, 2))
		if s.Pot() != nil {
			t.Errorf("%s: there is still a pot when all is poured", technique)
		}
		if got := s.Upto(0).Pot() != nil; got != technique.InPot() {
			t.Errorf("%s: there is a pot before the first act: %v", technique, got)
		}
		out := false
		for n, a := range s.recipe.Script.Acts {
			out = out || a.Kind == script.PourOut
			if got := s.Upto(n+1).Pot() != nil; got != (technique.InPot() && !out) {
				t.Errorf("%s: after act %d (%s) there is a pot: %v", technique, n+1, a.Kind, got)
			}
		}
	}
}

// By hand: the share of the disk beyond a chord at u is its half plus (u√(1-u²) + asin u)/π. The batter that leaves the lip is that of the
// place in the pot it left.
func TestThePotAndThePourAgree(t *testing.T) {
	for _, technique := range inPot() {
		s := mustPour(t, loaf(technique, 8))
		turned := 0
		for n, a := range s.recipe.Script.Acts {
			if a.Kind == script.Turn {
				turned = n + 1
			}
		}
		pot, st := s.Upto(turned).Pot(), s.stream
		st.run, st.wound = wobble{}, wobble{} // as the pot stands before it is led along the loaf
		d := newDice(4)
		differ := 0
		for range 2000 {
			x, side, poured := d.Between(0, 250), d.Float(), d.Float()
			part, tau := st.course(side, poured)
			low, high := -1.0, 1.0
			for range 50 {
				if mid := (low + high) / 2; 0.5+(mid*math.Sqrt(1-mid*mid)+math.Asin(mid))/math.Pi < tau {
					low = mid
				} else {
					high = mid
				}
			}
			lip := math.Sqrt(1-low*low) * (2*part - 1)
			sin, cos := math.Sincos(st.surge.at(x))
			if pot.Label(low*cos-lip*sin, low*sin+lip*cos) != st.label(x, side, poured) {
				differ++
			}
		}
		if differ > 10 { // at borders, by the error of the table of chords
			t.Errorf("%s: %d of 2000 places differ", technique, differ)
		}
	}
}

func TestARefinedPotIsRoundAndSmooth(t *testing.T) {
	p := mustPour(t, loaf(script.Pot, 2)).Upto(5).Pot()
	var fine Picture
	if err := p.Refine(context.Background(), &fine, 60, 60); err != nil {
		t.Fatal(err)
	}
	blended := 0
	for i := range fine.Pixels {
		u, v := (float64(i%60)+0.5)/30-1, (float64(i/60)+0.5)/30-1
		if full := fine.Pixels[i].Part[0] > 0; math.Abs(math.Hypot(u, v)-1) > 0.05 && full != (u*u+v*v < 1) {
			t.Errorf("the pixel at (%.2f, %.2f) is full: %v", u, v, full)
		}
		if fine.Pixels[i].Part[1] > 0 {
			blended++
		}
	}
	if blended == 0 {
		t.Error("no border is smooth")
	}
}
