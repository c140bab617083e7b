package layout

import (
	"image"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func wants(p Panel) int {
	switch p.Kind {
	case Warnings:
		return 3
	case Grid, Clock:
		return 7
	case Weigh:
		return 20
	default:
		return 6
	}
}

// drawing draws a layout at a fifth of its width and a third of its height, one letter per rectangle.
func drawing(l Layout, w, h int) string {
	var b strings.Builder
	at := func(x, y int) byte {
		p := image.Pt(x, y)
		switch {
		case p.In(l.Title):
			return 'T'
		case p.In(l.Tabs):
			return 't'
		case p.In(l.Warnings):
			return '!'
		case p.In(l.Status):
			return 's'
		case p.In(l.Footer):
			return 'f'
		}
		if p.In(l.Face) {
			return '*'
		}
		for _, x := range l.Panels {
			if p.In(x.Rect) {
				return "GCFWVSBAOEULYXTHNRQPDIM"[x.Panel.Kind]
			}
		}
		return ' '
	}
	for y := 0; y < h; y++ {
		for x := 0; x < w; x += 5 {
			b.WriteByte(at(x, y))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func TestJugsAtEightyByTwentyFourShareOneColumn(t *testing.T) {
	got := drawing(Split(Ask{W: 80, H: 24, Station: Jugs, Focus: Panel{Kind: Grid}, Want: wants}), 80, 24)
	want := `TTTTTTTTTTTTTTTT
tttttttttttttttt
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
GGGGGGGGGGGGGGGG
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
CCCCCCCCCCCCCCCC
!!!!!!!!!!!!!!!!
ssssssssssssssss
ffffffffffffffff
`
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestAFocusedPanelOnALaterPageIsShown(t *testing.T) {
	got := drawing(Split(Ask{W: 80, H: 24, Station: Jugs, Focus: Panel{Kind: Weigh}, Want: wants}), 80, 5)
	want := `TTTTTTTTTTTTTTTT
tttttttttttttttt
WWWWWWWWWWWWWWWW
WWWWWWWWWWWWWWWW
WWWWWWWWWWWWWWWW
`
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestJugsAtAHundredAndTwentyHaveTwoColumns(t *testing.T) {
	got := drawing(Split(Ask{W: 120, H: 36, Station: Jugs, Focus: Panel{Kind: Grid}, Want: wants}), 120, 36)
	want := `TTTTTTTTTTTTTTTTTTTTTTTT
tttttttttttttttttttttttt
` + strings.Repeat("GGGGGGGGGGGGGGGG********\n", 9) + strings.Repeat("CCCCCCCCCCCCCCCC********\n", 5) + strings.Repeat("CCCCCCCCCCCCCCCCWWWWWWWW\n", 13) + strings.Repeat("!!!!!!!!!!!!!!!!!!!!!!!!\n", 5) + `ssssssssssssssssssssssss
ffffffffffffffffffffffff
`
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestATooSmallScreenSaysSo(t *testing.T) {
	if !Split(Ask{W: MinW - 1, H: 24, Want: wants}).TooSmall || !Split(Ask{W: 80, H: MinH - 1, Want: wants}).TooSmall {
		t.Error("a screen below the least size was laid out")
	}
}

func TestEveryScreenIsCoveredOnceAndTheFocusIsAlwaysShown(t *testing.T) {
	for w := MinW; w <= 210; w += 7 {
		for h := MinH; h <= 70; h += 3 {
			for s := Station(0); int(s) < Stations; s++ {
				for _, focus := range Panels(s, true) {
					l := Split(Ask{W: w, H: h, Station: s, Icing: true, Focus: focus, Want: wants})
					if _, ok := l.Find(focus); !ok {
						t.Fatalf("%v at %d×%d does not show its focus %v", s, w, h, focus)
					}
					covered(t, l, w, h)
				}
			}
		}
	}
}

func covered(t *testing.T, l Layout, w, h int) {
	t.Helper()
	rects := []image.Rectangle{l.Title, l.Tabs, l.Warnings, l.Status, l.Footer, l.Face}
	for _, p := range l.Panels {
		rects = append(rects, p.Rect)
		if p.Rect.Dy() < 3 {
			t.Fatalf("panel %v is %d high at %d×%d", p.Panel, p.Rect.Dy(), w, h)
		}
	}
	area := 0
	for i, r := range rects {
		area += r.Dx() * r.Dy()
		for _, o := range rects[i+1:] {
			if r.Overlaps(o) {
				t.Fatalf("%v and %v overlap at %d×%d", r, o, w, h)
			}
		}
	}
	if area != w*h {
		t.Fatalf("%d of %d cells are covered at %d×%d", area, w*h, w, h)
	}
}

func TestTheSwirlKeepsItsPictureInSightBesideThePanelInFocus(t *testing.T) {
	got := drawing(Split(Ask{W: 80, H: 24, Station: Swirl, Focus: Panel{Kind: Technique}, Want: wants}), 80, 4)
	want := `TTTTTTTTTTTTTTTT
tttttttttttttttt
PPPPPPPPSSSSSSSS
PPPPPPPPSSSSSSSS
`
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	l := Split(Ask{W: 80, H: 24, Station: Swirl, Focus: Panel{Kind: Face}, Want: wants})
	if r, _ := l.Find(Panel{Kind: Face}); r.Dx() != 80 {
		t.Errorf("the picture in focus is %d wide on a narrow screen", r.Dx())
	}
}

func TestWideScreensShowTheFaceOnEveryStation(t *testing.T) {
	for s := range Stations {
		for _, size := range [][2]int{{120, 30}, {120, 36}, {200, 60}} {
			for _, icing := range []bool{true, false} {
				l := Split(Ask{W: size[0], H: size[1], Station: Station(s), Icing: icing, Focus: Panels(Station(s), icing)[0], Want: wants})
				_, own := l.Find(Panel{Kind: Face})
				if l.Face.Empty() && !own {
					t.Errorf("%v at %v shows no face", Station(s), size)
				}
			}
		}
	}
}
