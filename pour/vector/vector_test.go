package vector_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"strings"
	"testing"

	"pourbench/pour/vector"
	"pourbench/pour/vector/vectortest"
)

func letters(t *testing.T) *vector.Letters {
	t.Helper()
	l, err := vector.ReadLetters()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// square is a picture of some pixels, blue and half to be seen through.
func square(t *testing.T, wide, high int) *image.NRGBA {
	t.Helper()
	m := image.NewNRGBA(image.Rect(0, 0, wide, high))
	for i := range wide * high {
		m.Set(i%wide, i/wide, color.NRGBA{B: 200, A: 128})
	}
	return m
}

func photo(t *testing.T) vector.Picture {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, square(t, 20, 10)); err != nil {
		t.Fatal(err)
	}
	p, err := vector.Photo(b.Bytes(), 8)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// scene is a stamp put down twice on a page that lies upright.
func scene(t *testing.T) vector.Drawing {
	t.Helper()
	of := &vector.Drawing{Wide: 40, High: 30, Texts: []vector.Text{{X: 5, Y: 12, Size: 10, Text: "HxH"}, {X: 38, Y: 25, Size: 4, At: vector.End, Face: vector.Bold, Text: "l0l"}}}
	of.Line("edge", 1, 2, 1, 22, 0.25)
	p := photo(t)
	p.X, p.Y = 20, 3
	of.Pictures = append(of.Pictures, p)
	d := vector.Drawing{Wide: 100, High: 200, Stamps: []vector.Stamp{{X: 10, Y: 20, Of: of}, {X: 50, Y: 120, Of: of}}}
	d.Signs = append(d.Signs, vector.Sign{Points: [][2]float64{{1, 1}, {3, 1}, {3, 4}}, Class: "mark"})
	return d
}

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.01 {
		t.Errorf("%s: %.4f, not %g", what, got, want)
	}
}

func TestWhatIsStampedStandsWhereItIsPut(t *testing.T) {
	d, l := scene(t), letters(t)
	file, err := vector.PDF("scene", []vector.Drawing{d})
	if err != nil {
		t.Fatal(err)
	}
	pages, catalog := vectortest.ReadPDF(t, file)
	if !strings.Contains(catalog, "/PrintScaling /None") {
		t.Errorf("the PDF may be scaled: %s", catalog)
	}
	text, err := vector.SVG("scene", &d, l)
	if err != nil {
		t.Fatal(err)
	}
	for form, p := range map[string]vectortest.Page{"pdf": pages[0], "svg": vectortest.ReadSVG(t, []byte(text))} {
		same(t, form+" wide", p.Wide, 100)
		same(t, form+" high", p.High, 200)
		if len(p.Lines) != 2 || len(p.Pictures) != 2 || len(p.Texts) != 4 {
			t.Fatalf("%s: %d lines, %d pictures, %d texts", form, len(p.Lines), len(p.Pictures), len(p.Texts))
		}
		for i, at := range [][2]float64{{10, 20}, {50, 120}} {
			n, box := p.Lines[i], p.Pictures[i]
			same(t, form+" line", n.X1, at[0]+1)
			same(t, form+" line", math.Min(n.Y1, n.Y2), at[1]+2)
			same(t, form+" line", math.Abs(n.Y2-n.Y1), 20)
			same(t, form+" picture", box.X1, at[0]+20)
			same(t, form+" picture", box.Y1, at[1]+3)
			same(t, form+" picture wide", box.X2-box.X1, 8)
			same(t, form+" picture high", box.Y2-box.Y1, 4)
			same(t, form+" words", p.Texts[2*i].X, at[0]+5)
			same(t, form+" words", p.Texts[2*i].Y, at[1]+12)
			same(t, form+" em", p.Texts[2*i].Size, 10)
			same(t, form+" words that end", p.Texts[2*i+1].X, at[0]+38-l.Wide(vector.Bold, "l0l", 4))
		}
	}
	if n := strings.Count(text, "<image"); n != 1 {
		t.Errorf("a picture that is put down twice is written %d times", n)
	}
}

// The outlines that an SVG draws are as high and as wide as they were measured. The heights are those in the faces' own OS/2 tables, read by
// another program: x 1086 and, bold, 1098; capitals 1480 of 2048. The width is in hmtx.
func TestLettersAreAsHighAndWideAsTheyWereMeasured(t *testing.T) {
	l := letters(t)
	for _, f := range []vector.Face{vector.Regular, vector.Bold} {
		d := vector.Drawing{Wide: 50, High: 50, Texts: []vector.Text{{X: 1, Y: 20, Size: 10, Face: f, Text: "H"}, {X: 1, Y: 40, Size: 10, Face: f, Text: "x"}}}
		text, err := vector.SVG("letters", &d, l)
		if err != nil {
			t.Fatal(err)
		}
		p := vectortest.ReadSVG(t, []byte(text))
		for i, r := range []rune{'H', 'x'} {
			same(t, "drawn "+string(r), 20*float64(i+1)-p.Texts[i].Box.Y1, 10*l.High(f, r))
		}
		same(t, "capital", 2048*l.High(f, 'H'), 1480)
		same(t, "small", 2048*l.High(f, 'x'), [...]float64{1086, 1098}[f])
	}
	same(t, "wide", l.Wide(vector.Regular, "HH", 2048), 2*1479)
	if got := l.Missing(vector.Regular, "CI 77891 мыло 石鹸石"); string(got) != "石鹸" {
		t.Errorf("the face cannot write %q", string(got))
	}
}

func TestAPictureIsReadOrRefusedWithAReason(t *testing.T) {
	var as bytes.Buffer
	if err := jpeg.Encode(&as, square(t, 30, 60), nil); err != nil {
		t.Fatal(err)
	}
	p, err := vector.Photo(as.Bytes(), 10)
	if err != nil || p.High != 20 || !bytes.HasPrefix(p.PNG, []byte("\x89PNG")) {
		t.Errorf("a JPEG of 30 by 60: %g high, %v", p.High, err)
	}
	var huge bytes.Buffer
	if err := png.Encode(&huge, image.NewGray(image.Rect(0, 0, 40001, 1000))); err != nil {
		t.Fatal(err)
	}
	for want, file := range map[string][]byte{
		"save it as PNG or JPEG":       []byte("<svg/>"),
		"save it anew as PNG or JPEG":  as.Bytes()[:40],
		"not enough pixel data":        photo(t).PNG[:60],
		"40001 by 1000 pixels":         huge.Bytes(),
		"it is no picture that can be": nil,
	} {
		if _, err := vector.Photo(file, 10); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", want, err)
		}
	}
}
