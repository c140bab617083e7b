package ruler_test

import (
	"bytes"
	"encoding/xml"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pourbench/pour/ruler"
)

// drawn is an SVG read as XML, in mm: where its viewBox says so, its numbers.
type drawn struct {
	Width   string `xml:"width,attr"`
	Height  string `xml:"height,attr"`
	ViewBox string `xml:"viewBox,attr"`
	Title   string `xml:"title"`
	Group   struct {
		Lines []struct {
			Class string  `xml:"class,attr"`
			X1    float64 `xml:"x1,attr"`
			Y1    float64 `xml:"y1,attr"`
			X2    float64 `xml:"x2,attr"`
			Y2    float64 `xml:"y2,attr"`
		} `xml:"line"`
		Signs []struct {
			Class  string `xml:"class,attr"`
			Points string `xml:"points,attr"`
		} `xml:"polygon"`
		Texts []string `xml:"text"`
	} `xml:"g"`
}

func svgOf(t *testing.T, r ruler.Ruler) drawn {
	t.Helper()
	var b bytes.Buffer
	if err := r.SVG(&b); err != nil {
		t.Fatal(err)
	}
	if dir := os.Getenv("POURBENCH_LOOK"); dir != "" {
		_ = os.WriteFile(dir+"/"+t.Name()+".svg", b.Bytes(), 0o600)
	}
	var d drawn
	if err := xml.Unmarshal(b.Bytes(), &d); err != nil {
		t.Fatal(err)
	}
	return d
}

// lengths is every number of mm in a text such as "-10 0 270 106".
func lengths(t *testing.T, text string) (out []float64) {
	t.Helper()
	for _, word := range strings.Fields(text) {
		v, err := strconv.ParseFloat(strings.TrimSuffix(word, "mm"), 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// A user unit of the file is 1 mm where width in mm and width of the viewBox are the same number (SVG 1.1, 7.7; CSS: 1in = 96px = 25.4mm).
func TestAnSVGIsInTrueMillimetres(t *testing.T) {
	for _, r := range []ruler.Ruler{e1(), metre()} {
		d := svgOf(t, r)
		box := lengths(t, d.ViewBox)
		if size := lengths(t, d.Width+" "+d.Height); len(box) != 4 || size[0] != box[2] || size[1] != box[3] || !strings.HasSuffix(d.Width, "mm") || !strings.HasSuffix(d.Height, "mm") {
			t.Fatalf("%s by %s shows %s: one unit is no millimetre", d.Width, d.Height, d.ViewBox)
		}
		if least := r.Edges[0].LengthMM + 20; box[2] < least {
			t.Errorf("%g mm are no room for %g", box[2], r.Edges[0].LengthMM)
		}
		checks := 0
		for _, l := range d.Group.Lines {
			if l.Class == "check" && l.Y1 == l.Y2 {
				checks++
				if l.X2-l.X1 != 100 {
					t.Errorf("the bar to measure is %g mm", l.X2-l.X1)
				}
			}
		}
		if checks != 1 {
			t.Errorf("there are %d bars to measure", checks)
		}
	}
}

func TestAnSVGHasEveryMarkAtItsDistance(t *testing.T) {
	for _, r := range []ruler.Ruler{e1(), metre()} {
		d, e := svgOf(t, r), r.Edges[0]
		var cuts, middles, want []float64
		for _, l := range d.Group.Lines {
			if l.Class == "cut" {
				cuts = append(cuts, l.X1)
			}
		}
		for _, s := range d.Group.Signs {
			if s.Class == "centre" {
				x, _, _ := strings.Cut(s.Points, ",")
				v, err := strconv.ParseFloat(x, 64)
				if err != nil {
					t.Fatal(err)
				}
				middles = append(middles, v)
			}
		}
		for _, c := range e.Centres {
			want = append(want, c.MM)
		}
		exactly(t, "cuts", cuts, e.Cuts)
		exactly(t, "middles", middles, want)
	}
}

func exactly(t *testing.T, what string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d %s are drawn, not %d", len(got), what, len(want))
	}
	for i := range want {
		if math.Abs(got[i]-want[i]) > 0.00051 {
			t.Errorf("%s: %g is drawn for %g", what, got[i], want[i])
		}
	}
}

func TestANameCannotBreakAnSVG(t *testing.T) {
	r := e1()
	r.Plan = `<Meadow> & "sky" ]]>`
	if d := svgOf(t, r); d.Title != r.Plan+": ruler" {
		t.Errorf("%q is titled %q", r.Plan, d.Title)
	}
}
