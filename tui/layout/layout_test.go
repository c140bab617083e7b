package layout

import (
	"image"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// of is panels that are named by a letter each and want so many rows.
func of(letters string) []Panel {
	var out []Panel
	for _, l := range letters {
		p := Panel{ID: ID(l), Want: 6, Least: 6}
		switch l {
		case 'G':
			p.Want, p.Least = 7, 7
		case 'C': // the clock can do with less
			p.Want, p.Least = 7, 4
		case 'W':
			p.Want, p.Least = 20, 20
		}
		out = append(out, p)
	}
	return out
}

// asked asks for panels in three columns.
func asked(w, h int, focus ID, columns ...string) Ask {
	ask := Ask{W: w, H: h, Focus: focus, Warnings: 3}
	for i, c := range columns {
		ask.Columns[i] = of(c)
		if strings.Contains(c, "P") {
			ask.Picture = "P"
		}
	}
	return ask
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
				return x.ID[0]
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
	got := drawing(Split(asked(80, 24, "G", "GC", "", "W")), 80, 24)
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
	got := drawing(Split(asked(80, 24, "W", "GC", "", "W")), 80, 5)
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
	got := drawing(Split(asked(120, 36, "G", "GC", "", "W")), 120, 36)
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
	if !Split(asked(MinW-1, 24, "G", "G")).TooSmall || !Split(asked(80, MinH-1, "G", "G")).TooSmall {
		t.Error("a screen below the least size was laid out")
	}
}

func TestEveryScreenIsCoveredOnceAndTheFocusIsAlwaysShown(t *testing.T) {
	for _, columns := range [][]string{{"GC", "", "W"}, {"P", "SQ", "DM"}, {"GCOEU", "L", "YF"}, {"N", "F", "W"}, {"VB", "FA", "W"}} {
		for w := MinW; w <= 210; w += 7 {
			for h := MinH; h <= 70; h += 3 {
				for _, focus := range strings.Join(columns, "") {
					l := Split(asked(w, h, ID(focus), columns...))
					if _, ok := l.Find(ID(focus)); !ok {
						t.Fatalf("%v at %d×%d does not show its focus %c", columns, w, h, focus)
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
			t.Fatalf("panel %s is %d high at %d×%d", p.ID, p.Rect.Dy(), w, h)
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
	got := drawing(Split(asked(80, 24, "S", "P", "SQ", "DM")), 80, 4)
	want := `TTTTTTTTTTTTTTTT
tttttttttttttttt
PPPPPPPPSSSSSSSS
PPPPPPPPSSSSSSSS
`
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	l := Split(asked(80, 24, "P", "P", "SQ", "DM"))
	if r, _ := l.Find("P"); r.Dx() != 80 {
		t.Errorf("the picture in focus is %d wide on a narrow screen", r.Dx())
	}
}

// The picture gets the room of panels that do not need a column of their own.
func TestOnALargeScreenThePanelsBesideThePictureShareAColumn(t *testing.T) {
	wide := func(h int) []int {
		l, out := Split(asked(200, h, "P", "P", "SQ", "DM")), []int(nil)
		for _, id := range []ID{"P", "S", "Q", "D", "M"} {
			r, _ := l.Find(id)
			out = append(out, r.Min.X, r.Dx())
		}
		return out
	}
	if d := cmp.Diff([]int{0, 132, 132, 68, 132, 68, 132, 68, 132, 68}, wide(60)); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff([]int{0, 84, 84, 54, 84, 54, 138, 62, 138, 62}, wide(40)); d != "" { // lower, all of them need two
		t.Error(d)
	}
}

func TestWideScreensShowTheFaceOnEveryStation(t *testing.T) {
	for _, columns := range [][]string{{"GC", "", "W"}, {"P", "SQ", "DM"}, {"GCOEU", "L", "YF"}, {"N", "F", "W"}, {"VB", "FA", "W"}} {
		for _, size := range [][2]int{{120, 30}, {120, 36}, {200, 60}} {
			l := Split(asked(size[0], size[1], ID(columns[0][:1]), columns...))
			_, own := l.Find("P")
			if l.Face.Empty() && !own {
				t.Errorf("%v at %v shows no face", columns, size)
			}
		}
	}
}

func TestNineJugsAtEightyByTwentyFourLeaveTheClockInSight(t *testing.T) {
	ask := Ask{W: 80, H: 24, Focus: "G", Columns: [3][]Panel{{{ID: "G", Want: 11, Least: 11}, {ID: "C", Want: 20, Least: 5}}, nil, of("W")}, Warnings: 3}
	l := Split(ask)
	if r, ok := l.Find("C"); !ok || r.Dy() < 7 {
		t.Errorf("the clock stands in %v, %v", r, ok)
	}
}

// A face takes what the panels below it do not want, up to its own shape.
func TestOnALargeScreenTheFaceTakesTheRoomThatIsLeft(t *testing.T) {
	few, many := Split(asked(200, 60, "N", "N", "F", "G")), Split(asked(200, 60, "N", "N", "F", "WW"))
	if few.Face.Dy() <= many.Face.Dy() {
		t.Errorf("above few lines the face is %d high, above many %d", few.Face.Dy(), many.Face.Dy())
	}
	if beside := Split(asked(200, 60, "G", "GC", "", "W")); beside.Face.Dx() < 60 {
		t.Errorf("where it has a column the face is %d wide", beside.Face.Dx())
	}
}
