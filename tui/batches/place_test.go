package batches

import (
	"image"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// plan draws where the parts stand, at a fifth of the width and a third of the height: T title, ? search, L list, B batch, S season, s status, f footer.
func drawing(p place, w, h int) string {
	var b strings.Builder
	for y := 0; y < h; y += 3 {
		for x := 0; x < w; x += 5 {
			at, sign := image.Pt(x, y), byte(' ')
			for _, part := range []struct {
				image.Rectangle
				sign byte
			}{{p.title, 'T'}, {p.search, '?'}, {p.list, 'L'}, {p.batch, 'B'}, {p.board, 'S'}, {p.status, 's'}, {p.footer, 'f'}} {
				if at.In(part.Rectangle) {
					sign = part.sign
				}
			}
			b.WriteByte(sign)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func TestTheListStandsAloneBesideItsBatchOrGivesWayToIt(t *testing.T) {
	for _, c := range []struct {
		w, h          int
		inside, board bool
		want          string
	}{
		{80, 24, false, false, "TTTTTTTTTTTTTTTT\n" + strings.Repeat("LLLLLLLLLLLLLLLL\n", 7)},
		{80, 24, true, false, "TTTTTTTTTTTTTTTT\n" + strings.Repeat("BBBBBBBBBBBBBBBB\n", 7)},
		{80, 24, true, true, "TTTTTTTTTTTTTTTT\n" + strings.Repeat("SSSSSSSSSSSSSSSS\n", 7)},
		{120, 36, false, false, "TTTTTTTTTTTTTTTTTTTTTTTT\n" + strings.Repeat("LLLLLLLLLLLLLLBBBBBBBBBB\n", 11)},
		{120, 36, true, false, "TTTTTTTTTTTTTTTTTTTTTTTT\n" + strings.Repeat("LLLLLLLLLLLLLLBBBBBBBBBB\n", 11)},
		{200, 60, false, false, strings.Repeat("T", 40) + "\n" + strings.Repeat(strings.Repeat("L", 22)+strings.Repeat("B", 18)+"\n", 19)},
		{200, 60, false, true, strings.Repeat("T", 40) + "\n" + strings.Repeat(strings.Repeat("S", 40)+"\n", 19)},
	} {
		if d := cmp.Diff(c.want, drawing(places(c.w, c.h, c.inside, c.board), c.w, c.h)); d != "" {
			t.Errorf("%d × %d, inside %v, board %v:\n%s", c.w, c.h, c.inside, c.board, d)
		}
	}
	if !places(minW-1, minH, false, false).tooSmall || !places(minW, minH-1, false, false).tooSmall || places(minW, minH, false, false).tooSmall {
		t.Error("the smallest screen is another than is said")
	}
}

func TestPartsNeverOverlapAndCoverTheScreen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(minW, 300).Draw(t, "w"), rapid.IntRange(minH, 100).Draw(t, "h")
		p := places(w, h, rapid.Bool().Draw(t, "inside"), rapid.Bool().Draw(t, "board"))
		area := 0
		parts := []image.Rectangle{p.title, p.search, p.list, p.batch, p.board, p.status, p.footer}
		for i, r := range parts {
			area += r.Dx() * r.Dy()
			for _, other := range parts[:i] {
				if r.Overlaps(other) {
					t.Fatalf("%v overlaps %v", r, other)
				}
			}
		}
		if area != w*h {
			t.Fatalf("%d of %d cells are covered", area, w*h)
		}
	})
}

func TestColumnsStandBesideEachOtherAndEndWithTheList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.IntRange(minW-4, 200).Draw(t, "w")
		c := columnsIn(w)
		x := mark
		for _, col := range []column{c.colours, c.name, c.state, c.poured, c.due} {
			if col.w == 0 {
				continue
			}
			if col.x != x || col.w < 5 {
				t.Fatalf("in %d a column stands at %d, %d wide; the one before ends at %d", w, col.x, col.w, x)
			}
			x = col.x + col.w + 1
		}
		if x-1 != w {
			t.Fatalf("the columns end at %d of %d", x-1, w)
		}
	})
}
