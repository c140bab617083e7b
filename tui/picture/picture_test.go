package picture

import (
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/relief"
	"pourbench/pour/script"
	"pourbench/pour/swirl"
	"pourbench/tui/screen"
)

// meadow is a shot of a loaf of five colours under an icing of two.
func meadow(view View, w, h int) Shot {
	return Shot{
		Recipe: swirl.Recipe{Script: dropped(7, 0.38, 0.16, 0.16, 0.15, 0.15), Thickness: 0.35, Box: swirl.Box{L: 250, W: 80, H: 62}},
		Stands: piped(0.6, 0.4),
		View:   view, Bars: swirl.Even(250, 25), Done: Whole, W: w, H: h,
	}
}

// piped is icing of so many shares on that loaf, 15 mm deep on average.
func piped(shares ...float64) *relief.Recipe {
	return &relief.Recipe{L: 250, W: 80, H: 62, Seed: 7, Icing: relief.Icing{
		Shape: relief.Piped, Volume: 15 * 80 * 250, Spots: []relief.Spot{{X: 125, Y: 40}}, Shares: shares,
	}}
}

// dropped is the script of a drop.
func dropped(seed int64, shares ...float64) script.Script {
	s, err := script.New(script.Brief{Technique: script.Drop, Shares: shares, First: script.Whole, Last: script.Whole, Seed: seed})
	if err != nil {
		panic(err)
	}
	return s
}

func dyes(depth Depth) Dye {
	return Dye{
		Base:  []color.NRGBA{{243, 238, 222, 255}, {85, 102, 176, 255}, {168, 71, 49, 255}, {208, 160, 52, 255}, {96, 128, 80, 255}},
		Top:   []color.NRGBA{{244, 238, 220, 255}, {157, 180, 216, 255}},
		BaseL: []string{"A", "B", "C", "D", "E"}, TopL: []string{"a", "b"},
		Depth: depth, Ground: color.NRGBA{A: 255}, DarkTerminal: true,
	}
}

// draft traces a shot or fails.
func draft(t testing.TB, s Shot) *Plate {
	t.Helper()
	p, err := Draft(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// drawn is a print as the terminal gets it.
func drawn(p *Print) string {
	s := screen.New(p.w, p.h)
	p.Draw(s.Area())
	return s.String()
}

func TestEveryViewStaysInsideItsRoomAtEverySize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := meadow(View(rapid.IntRange(0, Views-1).Draw(t, "view")), rapid.IntRange(-2, 70).Draw(t, "w"), rapid.IntRange(-2, 24).Draw(t, "h"))
		s.Done = rapid.IntRange(-1, 40).Draw(t, "done")
		s.Letters = rapid.Bool().Draw(t, "letters")
		s.Flat = true
		d := dyes(Depth(rapid.IntRange(0, 3).Draw(t, "depth")))
		p, err := Draft(s)
		if err != nil {
			t.Fatal(err)
		}
		room := image.Rect(0, 0, s.W, s.H)
		for i, x := range p.Tiles() {
			if !x.Rect.In(room) {
				t.Fatalf("tile %v does not lie in %v", x.Rect, room)
			}
			for _, y := range p.Tiles()[i+1:] {
				if x.Rect.Overlaps(y.Rect) {
					t.Fatalf("tiles %v and %v overlap", x.Rect, y.Rect)
				}
			}
		}
		p.Print(d)
	})
}

func TestAllBarsAreShownEachOnce(t *testing.T) {
	tiles := draft(t, meadow(Bars, 90, 30)).Tiles()
	if len(tiles) != 10 {
		t.Fatalf("%d bars are shown, want the 10 of a loaf of 250 mm cut every 25 mm", len(tiles))
	}
	for i, x := range tiles {
		if x.Bar != i {
			t.Errorf("place %d shows bar %d", i, x.Bar)
		}
	}
}

func TestASmallPaletteNeverGivesTwoPortionsTheSameColour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Dye{Depth: rapid.SampledFrom([]Depth{Many, Few}).Draw(t, "depth")}
		n := rapid.IntRange(1, 12).Draw(t, "portions")
		near := color.NRGBA{uint8(rapid.IntRange(0, 255).Draw(t, "r")), uint8(rapid.IntRange(0, 255).Draw(t, "g")), uint8(rapid.IntRange(0, 255).Draw(t, "b")), 255}
		for i := range n {
			c := near
			c.B += uint8(rapid.IntRange(0, 9).Draw(t, "away")) // nearly or quite the same colour
			d.Base, d.BaseL = append(d.Base, c), append(d.BaseL, string(rune('A'+i)))
		}
		base, _ := d.inks()
		seen := map[screen.Colour]bool{}
		for _, k := range base {
			if seen[k.Colour] {
				t.Fatalf("two of %d portions are drawn alike", n)
			}
			seen[k.Colour] = true
		}
	})
}

func TestAFlatPrintHoldsOnlyTheColoursOfItsInks(t *testing.T) {
	for _, depth := range []Depth{Many, Few} {
		s := meadow(Bar, 60, 30)
		s.Flat = true
		plate, err := draft(t, s).Refine(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		p := plate.Print(dyes(depth))
		allowed := map[screen.Colour]bool{0: true}
		for _, k := range append(p.Base, p.Top...) {
			allowed[k.Colour] = true
		}
		for _, c := range p.cells {
			if !allowed[c.on] || !allowed[c.off] {
				t.Fatalf("depth %d: a pixel is blended", depth)
			}
		}
	}
}

func TestWithoutColourEveryPortionHasItsOwnSignAndNoColourIsSent(t *testing.T) {
	s := meadow(Bar, 60, 24)
	s.Letters, s.Flat = true, true
	p := draft(t, s).Print(dyes(Plain))
	signs := map[string]bool{}
	for _, k := range append(p.Base, p.Top...) {
		if signs[k.Glyph] {
			t.Errorf("two portions share the sign %q", k.Glyph)
		}
		signs[k.Glyph] = true
	}
	text := drawn(p)
	if strings.Contains(text, "\x1b") {
		t.Error("a print without colour holds an escape sequence")
	}
	for sign := range signs {
		if !strings.Contains(text, sign) {
			t.Errorf("no cell shows %q", sign)
		}
	}
}

func TestLettersTakeThePlaceOfSignsWithoutColour(t *testing.T) {
	s := meadow(Bar, 60, 24)
	s.Letters, s.Flat = true, true
	d := dyes(Plain)
	d.Letters = true
	text := drawn(draft(t, s).Print(d))
	for _, letter := range append(d.BaseL, d.TopL...) {
		if !strings.Contains(text, letter) {
			t.Errorf("no cell shows %q", letter)
		}
	}
}

func TestRefiningIsStoppedByItsContext(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := draft(t, meadow(Bar, 60, 30)).Refine(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("a stopped refinement gave %v", err)
	}
}

func TestRefiningLeavesItsDraftAlone(t *testing.T) {
	p := draft(t, meadow(Bar, 40, 20))
	before := drawn(p.Print(dyes(True)))
	if _, err := p.Refine(context.Background()); err != nil {
		t.Fatal(err)
	}
	if drawn(p.Print(dyes(True))) != before || p.Fine {
		t.Error("the draft has changed")
	}
}

func TestThePictureStandsStillWhileThePourGrows(t *testing.T) {
	s := meadow(Bar, 60, 24)
	whole := draft(t, s)
	for _, done := range []int{0, 5, 12, whole.Steps} {
		s.Done = done
		if got := draft(t, s).Tiles()[0]; got != whole.Tiles()[0] {
			t.Errorf("after %d steps the picture stands at %v, at the end at %v", done, got.Rect, whole.Tiles()[0].Rect)
		}
	}
	s.Done = 0
	if text := drawn(draft(t, s).Print(dyes(True))); strings.Contains(text, "\x1b") {
		t.Error("the empty mould holds colour")
	}
}

func TestSharpenedPartsStillSumToTheWhole(t *testing.T) {
	p := draft(t, meadow(Bar, 30, 15))
	fine, err := p.Refine(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for i, px := range crisp(&fine.tiles[0].base).Pixels {
		sum := int(px.Part[0]) + int(px.Part[1]) + int(px.Part[2])
		if px.Part[0] != 0 && sum != 255 || px.Part[0] < fine.tiles[0].base.Pixels[i].Part[0] {
			t.Fatalf("pixel %d has the parts %v, of %v", i, px.Part, fine.tiles[0].base.Pixels[i].Part)
		}
	}
}

func TestARecipeThatCannotBePouredIsRefused(t *testing.T) {
	s := meadow(Bar, 40, 20)
	s.Recipe.Script.Acts = nil
	if _, err := Draft(s); !errors.Is(err, swirl.ErrRecipe) {
		t.Errorf("drawing it gave %v", err)
	}
	if _, err := Measure(s); !errors.Is(err, swirl.ErrRecipe) {
		t.Errorf("measuring it gave %v", err)
	}
}

func TestShotsThatDifferAnywhereAreNotTheSame(t *testing.T) {
	a := meadow(Bar, 40, 20)
	for i, change := range []func(*Shot){
		func(s *Shot) { s.Recipe.Script = dropped(8, 0.38, 0.16, 0.16, 0.15, 0.15) },
		func(s *Shot) { s.Recipe.Script = dropped(7, 0.37, 0.17, 0.16, 0.15, 0.15) },
		func(s *Shot) { s.Recipe.Thickness = 0.4 },
		func(s *Shot) { s.Stands = nil },
		func(s *Shot) { s.Stands = piped(0.5, 0.5) },
		func(s *Shot) { s.Stands.Icing.Volume++ },
		func(s *Shot) { s.Stands.Icing.Striped = true },
		func(s *Shot) { s.View = Top },
		func(s *Shot) { s.Bar++ },
		func(s *Shot) { s.Done = 3 },
		func(s *Shot) { s.W++ },
		func(s *Shot) { s.Letters = true },
		func(s *Shot) { s.Grain.X = 8 },
	} {
		b := meadow(Bar, 40, 20)
		change(&b)
		if a.Same(b) || b.Same(a) {
			t.Errorf("change %d is not seen", i)
		}
	}
	if !a.Same(meadow(Bar, 40, 20)) {
		t.Error("equal shots are not the same")
	}
}

// BenchmarkEncode measures drawing a print of 120 by 30 cells and writing it with its colours: the aim is 0.5 ms and no allocation per cell.
func BenchmarkEncode(b *testing.B) {
	s := meadow(Bar, 122, 30)
	s.Stands, s.Recipe.Box = nil, swirl.Box{L: 250, W: 120, H: 60} // fills the cells
	for _, depth := range []Depth{True, Many} {
		b.Run(fmt.Sprint(depth), func(b *testing.B) {
			fine, err := draft(b, s).Refine(context.Background())
			if err != nil {
				b.Fatal(err)
			}
			p := fine.Print(dyes(depth))
			b.ReportAllocs()
			for b.Loop() {
				drawn(p)
			}
			b.ReportMetric(float64(len(drawn(p))), "bytes")
		})
	}
}

// BenchmarkPrint measures printing a plate again with other colours.
func BenchmarkPrint(b *testing.B) {
	for _, depth := range []Depth{True, Many, Few} {
		b.Run(fmt.Sprint(depth), func(b *testing.B) {
			s := meadow(Bar, 120, 45)
			s.Flat = depth != True
			p := draft(b, s)
			for b.Loop() {
				p.Print(dyes(depth))
			}
		})
	}
}

// BenchmarkDraft measures what stands between a key and the first picture of the new design.
func BenchmarkDraft(b *testing.B) {
	for _, view := range []View{Bar, Bars, Long, Top} {
		b.Run(view.String(), func(b *testing.B) {
			for b.Loop() {
				draft(b, meadow(view, 76, 30)).Print(dyes(True))
			}
		})
	}
}
