package pixels

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"image"
	"image/color"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"pourbench/tui/screen"
)

// received is a picture as a terminal would hold it, read by the protocol's page and not by the code that wrote it.
type received struct {
	id, columns, rows, w, h int
	rgb                     []byte
}

// receive reads what was sent: control data of the first part, payloads of all parts joined, base64, zlib.
func receive(t *testing.T, sequence string) received {
	t.Helper()
	var r received
	var payload strings.Builder
	parts := regexp.MustCompile(`\x1b_G([^;\x1b]*)(?:;([^\x1b]*))?\x1b\\`).FindAllStringSubmatch(sequence, -1)
	size := 0
	for i, part := range parts {
		size += len(part[0])
		set := map[string]string{}
		for _, kv := range strings.Split(part[1], ",") {
			k, v, _ := strings.Cut(kv, "=")
			set[k] = v
		}
		if len(part[2]) > 4096 {
			t.Errorf("part %d holds %d bytes; the most is 4096", i, len(part[2]))
		}
		more := "1"
		if i == len(parts)-1 {
			more = "0"
		}
		if len(parts) > 1 && set["m"] != more {
			t.Errorf("part %d of %d says m=%s", i+1, len(parts), set["m"])
		}
		if set["q"] != "2" {
			t.Errorf("part %d wants answers, which would come as keys", i)
		}
		if i == 0 {
			for k, want := range map[string]string{"a": "T", "U": "1", "f": "24", "o": "z"} {
				if set[k] != want {
					t.Errorf("the first part says %s=%s, want %s", k, set[k], want)
				}
			}
			if d, ok := set["t"]; ok && d != "d" {
				t.Errorf("it is sent by t=%s", d)
			}
			for k, at := range map[string]*int{"i": &r.id, "c": &r.columns, "r": &r.rows, "s": &r.w, "v": &r.h} {
				*at, _ = strconv.Atoi(set[k])
			}
		}
		payload.WriteString(part[2])
	}
	if size != len(sequence) {
		t.Errorf("%d of %d bytes are no part of a picture", len(sequence)-size, len(sequence))
	}
	packed, err := base64.StdEncoding.DecodeString(payload.String())
	if err != nil {
		t.Fatal(err)
	}
	z, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	if r.rgb, err = io.ReadAll(z); err != nil {
		t.Fatal(err)
	}
	return r
}

// motley is a picture whose every pixel is another.
func motley(w, h int) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			v := uint32(x*2654435761 + y*40503*97)
			img.SetNRGBA(x, y, color.NRGBA{uint8(v), uint8(v >> 8), uint8(v >> 16), 255})
		}
	}
	return img
}

func TestAPictureArrivesPixelByPixel(t *testing.T) {
	for _, size := range []image.Point{{1, 1}, {7, 5}, {150, 90}} {
		img := motley(size.X, size.Y)
		text, err := Send(img, 0x123456, 15, 9, Auto)
		if err != nil {
			t.Fatal(err)
		}
		got := receive(t, text)
		if got.id != 0x123456 || got.columns != 15 || got.rows != 9 || got.w != size.X || got.h != size.Y {
			t.Errorf("it arrives as %+v", got)
		}
		for i := range size.X * size.Y {
			c := img.NRGBAAt(i%size.X, i/size.X)
			if !bytes.Equal(got.rgb[3*i:3*i+3], []byte{c.R, c.G, c.B}) {
				t.Fatalf("pixel %d arrives as %v, want %v", i, got.rgb[3*i:3*i+3], c)
			}
		}
		if len(got.rgb) != 3*size.X*size.Y {
			t.Errorf("%d bytes arrive", len(got.rgb))
		}
		wrapped, err := Send(img, 0x123456, 15, 9, Tmux)
		if err != nil {
			t.Fatal(err)
		}
		// tmux(1): ESC P tmux; then the sequence with each ESC doubled, then ESC \
		inside := strings.Split(strings.TrimSuffix(strings.TrimPrefix(wrapped, "\x1bPtmux;"), "\x1b\\"), "\x1b\\\x1bPtmux;")
		if plain := strings.ReplaceAll(strings.Join(inside, ""), "\x1b\x1b", "\x1b"); plain != text {
			t.Errorf("through tmux another picture arrives")
		}
	}
	for _, bad := range []image.Point{{0, 5}, {5, 0}, {MostCells + 1, 5}, {5, MostCells + 1}} {
		if _, err := Send(motley(2, 2), 1, bad.X, bad.Y, Auto); err == nil {
			t.Errorf("%v cells are sent", bad)
		}
	}
}

func TestANewPictureNeverTakesTheNumberOfOneThatShows(t *testing.T) {
	seen := map[int]int{}
	for _, process := range []int{1, 2, 4711, 1 << 22} {
		n := NumbersFor(process)
		for place := range places {
			a, b, c := n.Next(place), n.Next(place), n.Next(place)
			if a == b || a != c {
				t.Errorf("process %d, place %d: %d, %d, %d", process, place, a, b, c)
			}
			for _, id := range []int{a, b} {
				if seen[id]++; seen[id] > 1 || id < 1 || id > 0xffffff {
					t.Errorf("number %d is given %d times", id, seen[id])
				}
			}
		}
	}
}

func TestEveryPictureThatWasSentIsForgottenOnceAndNoOther(t *testing.T) {
	n := NumbersFor(4711)
	if text := n.Forget(Auto); text != "" {
		t.Errorf("nothing was sent, and forgotten is %q", text)
	}
	want := map[string]bool{}
	for _, place := range []int{0, 0, 0, 1} {
		want[strconv.Itoa(n.Next(place))] = true
	}
	got := map[string]bool{}
	for _, m := range regexp.MustCompile(`\x1b_G([^\x1b]*)\x1b\\`).FindAllStringSubmatch(n.Forget(Auto), -1) {
		set := "," + m[1] + ","
		if !strings.Contains(set, ",a=d,") || !strings.Contains(set, ",d=I,") || !strings.Contains(set, ",q=2,") {
			t.Errorf("it is forgotten by %q", m[1])
		}
		got[regexp.MustCompile(`,i=(\d+),`).FindStringSubmatch(set)[1]] = true
	}
	if len(got) != 3 || len(want) != 3 {
		t.Errorf("forgotten are %v, sent were %v", got, want)
	}
	for id := range want {
		if !got[id] {
			t.Errorf("%s is not forgotten", id)
		}
	}
	if text := n.Forget(Auto); text != "" {
		t.Errorf("forgotten again: %q", text)
	}
}

// The signs are those of the protocol's list of row and column diacritics: its first five, its eleventh and its last.
func TestAPictureShowsWhereItIsPutCellByCell(t *testing.T) {
	signs := map[int]rune{0: 0x0305, 1: 0x030D, 2: 0x030E, 3: 0x0310, 4: 0x0312, 10: 0x034B, 296: 0x1D244}
	for i, sign := range signs {
		if got := placeholder(i, 0); got != string([]rune{0x10EEEE, sign, 0x0305}) {
			t.Errorf("row %d is %+q", i, got)
		}
		if got := placeholder(0, i); got != string([]rune{0x10EEEE, 0x0305, sign}) {
			t.Errorf("column %d is %+q", i, got)
		}
	}
	s := screen.New(6, 4)
	p := Picture{ID: 0x0a0b0c, Cells: []image.Rectangle{image.Rect(1, 1, 3, 2), image.Rect(4, 3, 9, 9)}}
	p.Draw(s.Area())
	text := s.String()
	if !strings.Contains(text, "38;2;10;11;12") {
		t.Errorf("the number is not its colour: %q", text)
	}
	rows := strings.Split(ansi.Strip(text), "\n")
	cellAt := func(y, x int) string { return string([]rune{0x10EEEE, signs[y], signs[x]}) }
	if rows[1] != " "+cellAt(1, 1)+cellAt(1, 2) || strings.TrimSpace(rows[0]) != "" || strings.TrimSpace(rows[2]) != "" || !strings.HasPrefix(rows[3], "    "+cellAt(3, 4)) {
		t.Errorf("it is drawn as %+q", rows)
	}
	if screen.Width(cellAt(1, 2)) != 1 {
		t.Error("a sign takes more or less than a cell")
	}
}
