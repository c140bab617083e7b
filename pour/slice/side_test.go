package slice

import (
	"context"
	"math"
	"testing"

	"pourbench/pour/relief"
	"pourbench/pour/swirl"
)

// What stands on the loaf and reaches its long side is icing there up to its height, here and there it was pressed a little down the wall, all of it from
// above, and below that is batter.
func TestWhatLayAgainstTheMouldIsIcing(t *testing.T) {
	box := swirl.Box{L: 100, W: 60, H: 40}
	pour, r := poured(t, box, false)
	on := relief.New(relief.Recipe{L: box.L, W: box.W, H: box.H, Seed: 7, Icing: relief.Icing{
		Shape: relief.Piped, Volume: 16 * box.L * box.W, Spots: []relief.Spot{{X: 60, Y: box.W - 6}}, Shares: []float64{0.5, 0.5}, Sinks: 2.5,
	}})
	s := New(pour, r, on, swirl.Bar{From: 20, To: 40})
	st, err := s.stage(context.Background(), 120, 90, true)
	if err != nil {
		t.Fatal(err)
	}
	b, above, pressed, not := st.blocks[0], 0, 0, 0
	for along := b.low.x + 1; along < b.high.x-1; along += 2 {
		stands := b.height(along, b.high.y)
		x, _ := b.real(along, 0)
		if stuff, _, ok := b.long(vec{along, b.high.y, box.H - squeezeMM - 0.1}); !ok || int(stuff) >= s.portions {
			t.Errorf("%.0f mm along, under the fill height, stuff %d shows: %v", x, stuff, ok)
		}
		on := true
		for _, below := range [...]float64{0.3, 1, 1.7, 2.4} {
			stuff, _, _ := b.long(vec{along, b.high.y, box.H - below})
			if now := int(stuff) >= s.portions; now && !on {
				t.Errorf("%.0f mm along, icing shows %.1f mm down and not above", x, below)
			} else {
				on = now
			}
			if below == 1 && on {
				pressed++
			} else if below == 1 {
				not++
			}
		}
		if stands < 2 {
			continue
		}
		above++
		if stuff, _, ok := b.long(vec{along, b.high.y, box.H + stands/2}); !ok || int(stuff) < s.portions {
			t.Errorf("%.0f mm along, half way up %.1f mm of icing, stuff %d shows: %v", x, stands, stuff, ok)
		}
	}
	if above < 5 {
		t.Errorf("icing reaches the side in %d places only", above)
	}
	if pressed < 5 || not < 5 {
		t.Errorf("a millimetre down the side icing shows in %d places, and batter in %d", pressed, not)
	}
}

// A wall that runs aslant over the points of the surface faces one way all along, though it climbs in stairs.
func TestAWallFacesOneWay(t *testing.T) {
	const n, step = 60, 0.25
	s := &top{step: step, wide: n, high: n, z: make([]float32, n*n)}
	for j := range n {
		for i := range n {
			if 6*i > j+120 { // almost across
				s.z[j*n+i] = 4
			}
		}
	}
	s.even = evened(evened(s.z, n, 1), n, n)
	far := 0.0
	way := vec{-6, 1, 0}.unit()
	for k := range 40 {
		y := 4 + 0.2*float64(k)
		v := s.normal((y+120*step)/6, y)
		far = max(far, math.Acos(v.dot(way)/math.Hypot(v.x, v.y)))
	}
	if far > 0.2 {
		t.Errorf("its way wavers by %.2f radians", far)
	}
}

// Veins of the batter are seen on the sides of a planed slice: where blade and pores are left out, the cut face is not of one brightness.
func TestASliceShowsVeins(t *testing.T) {
	pour, r := poured(t, swirl.Box{L: 100, W: 60, H: 40}, false)
	s := New(pour, r, nil, swirl.Bar{From: 20, To: 40}).Planed(swirl.Material{Veins: 0.18})
	st, err := s.stage(context.Background(), 400, 300, true)
	if err != nil {
		t.Fatal(err)
	}
	face := st.blocks[0].face
	least, most := 2.0, 0.0
	for y := 5.; y < 55; y++ {
		_, bright, _ := face.at(y, 12)
		least, most = min(least, bright), max(most, bright)
	}
	if most-least < 0.01 || most-least > 0.2 {
		t.Errorf("the face is %.3f to %.3f bright", least, most)
	}
}
