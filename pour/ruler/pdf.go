package ruler

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/goregular"
)

// pointsPerMM is how many points of 1/72 inch a millimetre has; an inch is 25.4 mm exactly.
const pointsPerMM = 72 / 25.4

const face = "go"

// PDF writes the ruler for sheets of paper. Its millimetres are set once for each page, so that a length drawn is that length printed at 100 %,
// and the file asks the reader's printing not to scale. The letters are part of the file, the same on every printer.
func (r Ruler) PDF(w io.Writer, p Paper) error {
	sheets := r.sheets(p)
	if len(sheets) == 0 {
		return errors.New("draw the ruler: there is no length to lay it along")
	}
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "L", UnitStr: "pt", Size: fpdf.SizeType{Wd: p.High * pointsPerMM, Ht: p.Wide * pointsPerMM}})
	f.SetTitle(r.title(), true)
	f.SetCatalogSort(true)
	f.SetCreationDate(undated())
	f.SetModificationDate(undated())
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes(face, "", goregular.TTF)
	f.SetFillColor(0, 0, 0)
	for _, d := range sheets {
		f.AddPage()
		_, high := f.GetPageSize()
		f.TransformBegin()
		// The library counts y from the top of an untransformed page of the same height; the shift puts that top where it belongs.
		f.Transform(fpdf.TransformMatrix{A: pointsPerMM, D: pointsPerMM, F: high * (1 - pointsPerMM)})
		page{f}.draw(d)
		f.TransformEnd()
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return fmt.Errorf("draw the ruler: %w", err)
	}
	whole, err := unscaled(out.Bytes())
	if err != nil {
		return err
	}
	if _, err := w.Write(whole); err != nil {
		return fmt.Errorf("write the ruler: %w", err)
	}
	return nil
}

// undated is the day that stands in the file: nothing reads today's date, and the same plan gives the same file.
func undated() time.Time { return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) }

// page is a page of the PDF whose units are mm from its upper left corner.
type page struct{ *fpdf.Fpdf }

func (p page) draw(d drawing) {
	for _, s := range d.strokes {
		p.SetLineWidth(s.thick)
		p.Line(s.x1-d.left, s.y1, s.x2-d.left, s.y2)
	}
	for _, s := range d.signs {
		var points []fpdf.PointType
		for _, at := range s.points {
			points = append(points, fpdf.PointType{X: at[0] - d.left, Y: at[1]})
		}
		p.Polygon(points, "F")
	}
	for _, l := range d.labels {
		p.SetFont(face, "", l.size)
		x := l.x - d.left
		switch l.anchor {
		case start:
		case middle:
			x -= p.GetStringWidth(l.text) / 2
		case end:
			x -= p.GetStringWidth(l.text)
		}
		p.Text(x, l.y, l.text)
	}
}

// unscaled asks the program that prints the file to leave its size alone: /ViewerPreferences with /PrintScaling /None in the catalog (PDF 1.6,
// from memory), which the library has no call for. The catalog is the last object before the table of where each object begins, so that only
// the place of that table moves.
func unscaled(pdf []byte) ([]byte, error) {
	catalog, table, wish := []byte("/Type /Catalog\n"), []byte("\nstartxref\n"), "/ViewerPreferences << /PrintScaling /None >>\n"
	at, foot := bytes.LastIndex(pdf, catalog), bytes.LastIndex(pdf, table)
	if at < 0 || foot < at {
		return nil, errors.New("draw the ruler: the PDF has no catalog where one is looked for; this is a fault of the program")
	}
	at += len(catalog)
	begins, rest, _ := bytes.Cut(pdf[foot+len(table):], []byte("\n"))
	n, err := strconv.Atoi(string(begins))
	if err != nil || n < at {
		return nil, fmt.Errorf("draw the ruler: the PDF says that its table of objects begins at %q; this is a fault of the program", begins)
	}
	out := bytes.NewBuffer(make([]byte, 0, len(pdf)+len(wish)))
	out.Write(pdf[:at])
	out.WriteString(wish)
	out.Write(pdf[at : foot+len(table)])
	fmt.Fprintf(out, "%d\n", n+len(wish))
	out.Write(rest)
	return out.Bytes(), nil
}
