package ruler_test

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

// printed is one page as a printer at 100 % puts it on paper, mm from the upper left corner. It is read by this file alone, which knows nothing
// of how the ruler is made: objects by the file's own table, the page's stream decompressed, its operators carried out.
type printed struct {
	wide, high float64
	lines      []printedLine
	texts      []printedText
	fills      [][][2]float64
}

type printedLine struct{ x1, y1, x2, y2, thick float64 }

type printedText struct {
	x, y float64
	text string
}

// readPDF reads every page. The table at the end must lead to every object.
func readPDF(t *testing.T, file []byte) (pages []printed, catalog string) {
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
		p := printed{wide: number(t, string(box[1])) * mmPerPoint, high: number(t, string(box[2])) * mmPerPoint}
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
func (p *printed) carryOut(t *testing.T, stream string) {
	t.Helper()
	now, saved := matrix{1, 0, 0, 1, 0, 0}, []matrix{}
	var stack []string
	var path [][2]float64
	var at [2]float64
	thick := 1.0
	point := func(from int) [2]float64 {
		x, y := now.of(number(t, stack[from]), number(t, stack[from+1]))
		return [2]float64{x * mmPerPoint, p.high - y*mmPerPoint}
	}
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
			k := math.Sqrt(math.Abs(now[0]*now[3]-now[1]*now[2])) * mmPerPoint
			p.lines = append(p.lines, printedLine{path[0][0], path[0][1], path[1][0], path[1][1], thick * k})
			path = nil
		case "f":
			p.fills, path = append(p.fills, path), nil
		case "Td":
			at = point(0)
		case "Tj":
			p.texts = append(p.texts, printedText{at[0], at[1], stack[0]})
		case "J", "j", "d", "Tf", "BT", "ET", "rg", "g", "G", "RG", "h":
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
	t.Helper()
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
