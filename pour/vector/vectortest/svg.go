package vectortest

import (
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"
)

// node is an element of an SVG and what stands in it.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Kids    []node     `xml:",any"`
	Chars   string     `xml:",chardata"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// mm is an attribute that is a number; 0 where it is not there.
func (n node) mm(t *testing.T, name string) float64 {
	t.Helper()
	if n.attr(name) == "" {
		return 0
	}
	return number(t, n.attr(name))
}

// ReadSVG reads an SVG whose numbers must be mm: width and height in mm as wide and high as its viewBox (SVG 1.1, 7.7). What is used again is
// followed to where it is defined.
func ReadSVG(t *testing.T, file []byte) Page {
	t.Helper()
	var root node
	if err := xml.Unmarshal(file, &root); err != nil {
		t.Fatal(err)
	}
	box := strings.Fields(root.attr("viewBox"))
	if len(box) != 4 || root.attr("width") != box[2]+"mm" || root.attr("height") != box[3]+"mm" {
		t.Fatalf("%s by %s shows %s: one unit is no millimetre", root.attr("width"), root.attr("height"), box)
	}
	r := reader{t: t, page: Page{Wide: number(t, box[2]), High: number(t, box[3])}, defs: map[string]node{}}
	for _, kid := range root.Kids {
		if kid.XMLName.Local == "defs" {
			for _, d := range kid.Kids {
				r.defs["#"+d.attr("id")] = d
			}
		}
	}
	for _, kid := range root.Kids {
		if kid.XMLName.Local == "g" {
			r.walk(kid, place{-number(t, box[0]), -number(t, box[1]), 1})
		}
	}
	return r.page
}

// place is where something stands and how large.
type place struct{ x, y, k float64 }

func (p place) of(x, y float64) (float64, float64) { return p.x + p.k*x, p.y + p.k*y }

type reader struct {
	t     *testing.T
	page  Page
	defs  map[string]node
	words *Text // whose outlines are being walked
}

func (r *reader) walk(n node, at place) {
	if form := n.attr("transform"); form != "" {
		var x, y, k float64
		if _, err := fmt.Sscanf(form, "translate(%f %f) scale(%f)", &x, &y, &k); err != nil {
			r.t.Fatalf("the form %q cannot be followed: %v", form, err)
		}
		at.x, at.y = at.of(x, y)
		at.k *= k
	}
	switch n.XMLName.Local {
	case "line":
		x1, y1 := at.of(n.mm(r.t, "x1"), n.mm(r.t, "y1"))
		x2, y2 := at.of(n.mm(r.t, "x2"), n.mm(r.t, "y2"))
		r.page.Lines = append(r.page.Lines, Line{x1, y1, x2, y2, n.mm(r.t, "stroke-width") * at.k})
	case "image":
		x, y := at.of(n.mm(r.t, "x"), n.mm(r.t, "y"))
		r.page.Pictures = append(r.page.Pictures, Box{x, y, x + at.k*n.mm(r.t, "width"), y + at.k*n.mm(r.t, "height")})
	case "path":
		r.path(n.attr("d"), at)
	case "use":
		at.x, at.y = at.of(n.mm(r.t, "x"), n.mm(r.t, "y"))
		to, known := r.defs[n.attr("href")]
		if !known {
			r.t.Fatalf("%q is used and nowhere defined", n.attr("href"))
		}
		r.walk(to, at)
	case "text":
		x, y := at.of(n.mm(r.t, "x"), n.mm(r.t, "y"))
		r.page.Texts = append(r.page.Texts, Text{X: x, Y: y, Size: n.mm(r.t, "font-size"), Text: n.Chars})
	case "g":
		r.group(n, at)
	}
}

// group is words where it says what they are, and else what it holds.
func (r *reader) group(n node, at place) {
	if label := n.attr("aria-label"); label != "" {
		r.words = &Text{X: at.x, Y: at.y, Size: at.k, Text: label, Box: Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}}
		defer func() { r.page.Texts, r.words = append(r.page.Texts, *r.words), nil }()
	}
	for _, kid := range n.Kids {
		r.walk(kid, at)
	}
}

// path widens the box of the words by every corner of an outline.
func (r *reader) path(d string, at place) {
	if r.words == nil {
		r.t.Fatal("an outline stands in no words")
	}
	numbers := strings.Fields(strings.NewReplacer("M", " ", "L", " ", "Q", " ", "C", " ", "Z", " ").Replace(d))
	for i := 0; i+1 < len(numbers); i += 2 {
		x, y := at.of(number(r.t, numbers[i]), number(r.t, numbers[i+1]))
		b := &r.words.Box
		b.X1, b.Y1, b.X2, b.Y2 = min(b.X1, x), min(b.Y1, y), max(b.X2, x), max(b.Y2, y)
	}
}
