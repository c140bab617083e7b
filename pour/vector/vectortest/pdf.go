// Package vectortest reads PDF and SVG back as a printer at 100 % puts them on paper. It knows nothing of how they are made. For tests only.
package vectortest

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"
)

// mmPerPoint is 1/72 inch of 25.4 mm.
const mmPerPoint = 25.4 / 72

// Page is one page as it lies on paper, mm from the upper left corner.
type Page struct {
	Wide, High float64
	Lines      []Line
	Texts      []Text
	Fills      [][][2]float64
	Pictures   []Box
}

// Line is a straight line.
type Line struct{ X1, Y1, X2, Y2, Thick float64 }

// Text is words, their foot's beginning, and of a PDF the letters' em and face.
type Text struct {
	X, Y, Size float64
	Face       string
	Text       string
	Box        Box // of an SVG: what encloses their outlines
}

// Box is what encloses something.
type Box struct{ X1, Y1, X2, Y2 float64 }

// Says fails the test where no words on the page hold some.
func (p Page) Says(t *testing.T, want string) {
	t.Helper()
	for _, l := range p.Texts {
		if strings.Contains(l.Text, want) {
			return
		}
	}
	t.Errorf("the page does not say %q", want)
}

// ReadPDF reads every page and the catalog: objects by the file's own table, a page's stream decompressed, its operators carried out. The table at the end must lead to every object.
func ReadPDF(t *testing.T, file []byte) (pages []Page, catalog string) {
	t.Helper()
	objects := objectsOf(t, file)
	root := regexp.MustCompile(`/Root (\d+) 0 R`).FindSubmatch(file)
	if root == nil {
		t.Fatal("the PDF names no root")
	}
	catalog = string(objects[atoi(t, root[1])])
	all := objects[atoi(t, regexp.MustCompile(`/Pages (\d+) 0 R`).FindStringSubmatch(catalog)[1])]
	kids := regexp.MustCompile(`/Kids \[([^\]]*)\]`).FindSubmatch(all)
	for _, kid := range regexp.MustCompile(`(\d+) 0 R`).FindAllSubmatch(kids[1], -1) {
		body := objects[atoi(t, kid[1])]
		if regexp.MustCompile(`/UserUnit|/Rotate`).Match(body) {
			t.Fatalf("a page changes its own scale or turns: %s", body)
		}
		box := regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`).FindSubmatch(slices.Concat(body, all))
		p := Page{Wide: number(t, string(box[1])) * mmPerPoint, High: number(t, string(box[2])) * mmPerPoint}
		p.carryOut(t, streamOf(t, objects[atoi(t, regexp.MustCompile(`/Contents (\d+) 0 R`).FindSubmatch(body)[1])]))
		pages = append(pages, p)
	}
	return pages, catalog
}

func objectsOf(t *testing.T, file []byte) map[int][]byte {
	t.Helper()
	start := regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`).FindSubmatch(file)
	if start == nil {
		t.Fatal("the PDF does not end with the place of its table")
	}
	table := file[atoi(t, start[1]):]
	rows := regexp.MustCompile(`(\d{10}) \d{5} n`).FindAllSubmatch(table, -1)
	if !bytes.HasPrefix(table, []byte("xref\n")) || len(rows) == 0 {
		t.Fatalf("the table of the PDF begins with %.40q", table)
	}
	out := map[int][]byte{}
	for i, row := range rows {
		body := file[atoi(t, row[1]):]
		if !bytes.HasPrefix(body, fmt.Appendf(nil, "%d 0 obj\n", i+1)) {
			t.Fatalf("object %d is not where the table says: %.40q", i+1, body)
		}
		before, _, _ := bytes.Cut(body, []byte("\nendobj"))
		out[i+1] = before
	}
	return out
}

func streamOf(t *testing.T, object []byte) string {
	t.Helper()
	_, packed, found := bytes.Cut(object, []byte("stream\n"))
	if !found || !bytes.Contains(object, []byte("/FlateDecode")) {
		t.Fatalf("no compressed stream in %.60q", object)
	}
	r, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// matrix is a b c d e f of ISO 32000-1, 8.3.3: x' = a·x + c·y + e, y' = b·x + d·y + f.
type matrix [6]float64

func (m matrix) of(x, y float64) (float64, float64) {
	return m[0]*x + m[2]*y + m[4], m[1]*x + m[3]*y + m[5]
}

// within is m set before n.
func (m matrix) within(n matrix) matrix {
	e, f := n.of(m[4], m[5])
	return matrix{m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3], m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3], e, f}
}

// carryOut does what the operators of a page say.
func (p *Page) carryOut(t *testing.T, stream string) {
	t.Helper()
	now, saved := matrix{1, 0, 0, 1, 0, 0}, []matrix{}
	var stack []string
	var path [][2]float64
	var at [2]float64
	thick := 1.0
	point := func(from int) [2]float64 {
		x, y := now.of(number(t, stack[from]), number(t, stack[from+1]))
		return [2]float64{x * mmPerPoint, p.High - y*mmPerPoint}
	}
	scale := func() float64 { return math.Sqrt(math.Abs(now[0]*now[3]-now[1]*now[2])) * mmPerPoint }
	var face string
	var size float64
	for _, word := range wordsOf(stream) {
		switch word {
		case "q":
			saved = append(saved, now)
		case "Q":
			now, saved = saved[len(saved)-1], saved[:len(saved)-1]
		case "cm":
			var m matrix
			for i := range m {
				m[i] = number(t, stack[i])
			}
			now = m.within(now)
		case "w":
			thick = number(t, stack[0])
		case "m", "l":
			path = append(path, point(len(stack)-2))
		case "S":
			p.Lines = append(p.Lines, Line{path[0][0], path[0][1], path[1][0], path[1][1], thick * scale()})
			path = nil
		case "f":
			p.Fills, path = append(p.Fills, path), nil
		case "Tf":
			face, size = stack[0], number(t, stack[1])
		case "Do":
			x1, y1 := now.of(0, 0)
			x2, y2 := now.of(1, 1)
			p.Pictures = append(p.Pictures, Box{x1 * mmPerPoint, p.High - y2*mmPerPoint, x2 * mmPerPoint, p.High - y1*mmPerPoint})
		case "Td":
			at = point(0)
		case "Tj":
			p.Texts = append(p.Texts, Text{X: at[0], Y: at[1], Size: size * scale(), Face: face, Text: stack[0]})
		case "J", "j", "d", "BT", "ET", "rg", "g", "G", "RG", "h":
		default:
			stack = append(stack, word)
			continue
		}
		stack = nil
	}
	if len(saved) != 0 {
		t.Errorf("a page ends with %d states saved", len(saved))
	}
}

// wordsOf parts a stream into numbers, operators, names and the text of strings, which are UTF-16 with the high byte first.
func wordsOf(stream string) []string {
	var out []string
	for i := 0; i < len(stream); {
		switch stream[i] {
		case ' ', '\n', '\r':
			i++
		case '(':
			var raw []byte
			for i++; stream[i] != ')'; i++ {
				if stream[i] == '\\' {
					i++
					if stream[i] == 'r' {
						raw = append(raw, '\r')
						continue
					}
				}
				raw = append(raw, stream[i])
			}
			i++
			var units []uint16
			for j := 0; j+1 < len(raw); j += 2 {
				units = append(units, uint16(raw[j])<<8|uint16(raw[j+1]))
			}
			out = append(out, string(utf16.Decode(units)))
		default:
			n := strings.IndexAny(stream[i:], " \n\r(")
			if n < 0 {
				n = len(stream) - i
			}
			out = append(out, stream[i:i+n])
			i += n
		}
	}
	return out
}

func number(t *testing.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func atoi[T string | []byte](t *testing.T, text T) int {
	t.Helper()
	v, err := strconv.Atoi(string(text))
	if err != nil {
		t.Fatal(err)
	}
	return v
}
