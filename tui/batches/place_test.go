package batches

import (
	"image"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/tui/listing"
)

// plan draws where the parts stand, at a fifth of the width and a third of the height: T title, ? search, L list, B batch, S season, s status, f footer.
func drawing(p listing.Place, w, h int) string {
	var b strings.Builder
	for y := 0; y < h; y += 3 {
		for x := 0; x < w; x += 5 {
			at, sign := image.Pt(x, y), byte(' ')
			for _, part := range []struct {
				image.Rectangle
				sign byte
			}{{p.Title, 'T'}, {p.Search, '?'}, {p.List, 'L'}, {p.Chosen, 'B'}, {p.Whole, 'S'}, {p.Status, 's'}, {p.Footer, 'f'}} {
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
		if d := cmp.Diff(c.want, drawing(listing.Places(c.w, c.h, c.inside, c.board), c.w, c.h)); d != "" {
			t.Errorf("%d × %d, inside %v, board %v:\n%s", c.w, c.h, c.inside, c.board, d)
		}
	}
	if !listing.Places(listing.MinW-1, listing.MinH, false, false).TooSmall || !listing.Places(listing.MinW, listing.MinH-1, false, false).TooSmall || listing.Places(listing.MinW, listing.MinH, false, false).TooSmall {
		t.Error("the smallest screen is another than is said")
	}
}

func TestPartsNeverOverlapAndCoverTheScreen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(listing.MinW, 300).Draw(t, "w"), rapid.IntRange(listing.MinH, 100).Draw(t, "h")
		p := listing.Places(w, h, rapid.Bool().Draw(t, "inside"), rapid.Bool().Draw(t, "board"))
		area := 0
		parts := []image.Rectangle{p.Title, p.Search, p.List, p.Chosen, p.Whole, p.Status, p.Footer}
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
		w := rapid.IntRange(listing.MinW-4, 200).Draw(t, "w")
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
