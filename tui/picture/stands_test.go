package picture

import (
	"image/color"
	"strings"
	"testing"

	"pourbench/pour/relief"
	"pourbench/pour/shape"
	"pourbench/pour/swirl"
)

// moons is the meadow with a ball in the middle of every bar, 6 mm out, and no icing.
func moons(view View, w, h int) Shot {
	s := meadow(view, w, h)
	r := &relief.Recipe{L: 250, W: 80, H: 62}
	for x := 12.5; x < 250; x += 25 {
		r.Pieces = append(r.Pieces, relief.Piece{Outline: shape.RoundOutline(20), X: x, Y: 40, High: 20, Out: 6, Ball: true})
	}
	s.Stands, s.Cuts = r, []float64{25, 50}
	return s
}

// moonDyes is the dyes of the moons: one stuff, orange.
func moonDyes(depth Depth) Dye {
	d := dyes(depth)
	d.Top, d.TopL = []color.NRGBA{{255, 128, 0, 255}}, []string{"1"}
	return d
}

func TestPiecesShowInEveryViewAtEveryDepth(t *testing.T) {
	for view := View(0); int(view) < Views; view++ {
		for _, depth := range []Depth{True, Many, Few} {
			s := moons(view, 100, 40)
			s.Flat = depth != True
			p := draft(t, s).Print(moonDyes(depth))
			if len(p.Top) != 1 || p.Top[0].Colour == 0 {
				t.Fatalf("%v: the moon's ink is %+v", view, p.Top)
			}
			n := 0
			for i := range p.Plate.tiles {
				over := &p.Plate.tiles[i].over
				for j := range over.Dots {
					if over.Dots[j].Part[0] > half {
						n++
					}
				}
			}
			if n < 8 {
				t.Errorf("%v at depth %d shows %d pixels of the pieces", view, depth, n)
			}
			if depth == Few && !shows(p, p.Top[0]) {
				t.Errorf("%v: no cell has the moon's colour", view)
			}
		}
	}
}

// shows says whether any cell of a print has an ink's colour.
func shows(p *Print, k Ink) bool {
	for _, c := range p.cells {
		if c.on == k.Colour || c.off == k.Colour {
			return true
		}
	}
	return false
}

func TestPiecesHaveTheirSignWithoutColour(t *testing.T) {
	s := moons(Stands, 100, 40)
	s.Letters, s.Flat = true, true
	d := moonDyes(Plain)
	d.Letters = true
	if text := drawn(draft(t, s).Print(d)); strings.Count(text, "1") < 10 {
		t.Errorf("the moons are not lettered:\n%s", text)
	}
}

func TestNothingStandsOnAPourUnderWay(t *testing.T) {
	s := moons(Bar, 60, 30)
	whole := draft(t, s)
	s.Done = 3
	p := draft(t, s)
	if p.Tiles()[0] != whole.Tiles()[0] {
		t.Error("the picture jumps when the pour is done")
	}
	if p.dressed(&p.tiles[0]) || len(p.tiles[0].over.Dots) > 0 {
		t.Error("pieces stand in an unfinished pour")
	}
}

func TestShotsWithOtherPiecesAreNotTheSame(t *testing.T) {
	a := moons(Stands, 60, 30)
	for i, change := range []func(*Shot){
		func(s *Shot) { s.Stands = nil },
		func(s *Shot) { s.Stands.Pieces[2].Y++ },
		func(s *Shot) { s.Cuts = []float64{25, 51} },
		func(s *Shot) { s.Bars = swirl.Even(250, 26) },
	} {
		b := moons(Stands, 60, 30)
		change(&b)
		if a.Same(b) || b.Same(a) {
			t.Errorf("change %d is not seen", i)
		}
	}
	if !a.Same(moons(Stands, 60, 30)) {
		t.Error("equal shots are not the same")
	}
}
