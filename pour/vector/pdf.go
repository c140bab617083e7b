package vector

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// pointsPerMM is how many points of 1/72 inch a millimetre has; an inch is 25.4 mm exactly.
const pointsPerMM = 72 / 25.4

const family = "go"

// PDF is a page for each drawing. The millimetres are set once for each page, so that a length drawn is that length printed at 100 %, and the
// file asks the reader's printing not to scale. The letters are part of the file, the same on every printer. All pages are as large as the first.
func PDF(title string, pages []Drawing) ([]byte, error) {
	if len(pages) == 0 {
		return nil, errors.New("there is nothing to draw")
	}
	f := fpdf.NewCustom(sizeOf(&pages[0]))
	f.SetTitle(title, true)
	f.SetCatalogSort(true)
	f.SetCreationDate(undated())
	f.SetModificationDate(undated())
	f.SetAutoPageBreak(false, 0)
	var used [faces]bool
	for i := range pages {
		pages[i].faces(&used)
	}
	for at, in := range used {
		if in {
			f.AddUTF8FontFromBytes(family, Face(at).style(), Face(at).file())
		}
	}
	f.SetFillColor(0, 0, 0)
	for i := range pages {
		f.AddPage()
		_, high := f.GetPageSize()
		f.TransformBegin()
		// The library counts y from the top of an untransformed page of the same height; the shift puts that top where it belongs.
		f.Transform(fpdf.TransformMatrix{A: pointsPerMM, D: pointsPerMM, F: high * (1 - pointsPerMM)})
		page{f}.draw(&pages[i])
		f.TransformEnd()
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return nil, err
	}
	return unscaled(out.Bytes())
}

// sizeOf is the size of the pages, which the library turns where they lie on their long side.
func sizeOf(d *Drawing) *fpdf.InitType {
	wide, high := d.Wide*pointsPerMM, d.High*pointsPerMM
	if wide > high {
		return &fpdf.InitType{OrientationStr: "L", UnitStr: "pt", Size: fpdf.SizeType{Wd: high, Ht: wide}}
	}
	return &fpdf.InitType{OrientationStr: "P", UnitStr: "pt", Size: fpdf.SizeType{Wd: wide, Ht: high}}
}

// undated is the day that stands in the file: nothing reads today's date, and the same drawing gives the same file.
func undated() time.Time { return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) }

// page is a page of the PDF whose units are mm from its upper left corner.
type page struct{ *fpdf.Fpdf }

func (p page) draw(d *Drawing) {
	for i := range d.Pictures {
		p.picture(&d.Pictures[i], d.Left)
	}
	for _, s := range d.Strokes {
		p.SetLineWidth(s.Thick)
		p.Line(s.X1-d.Left, s.Y1, s.X2-d.Left, s.Y2)
	}
	for _, s := range d.Signs {
		var points []fpdf.PointType
		for _, at := range s.Points {
			points = append(points, fpdf.PointType{X: at[0] - d.Left, Y: at[1]})
		}
		p.Polygon(points, "F")
	}
	for i := range d.Texts {
		p.text(&d.Texts[i], d.Left)
	}
	for _, s := range d.Stamps {
		p.TransformBegin()
		p.TransformTranslate(s.X-d.Left, s.Y)
		p.draw(s.Of)
		p.TransformEnd()
	}
}

func (p page) text(l *Text, left float64) {
	p.SetFont(family, l.Face.style(), l.Size)
	x := l.X - left
	switch l.At {
	case Start:
	case Middle:
		x -= p.GetStringWidth(l.Text) / 2
	case End:
		x -= p.GetStringWidth(l.Text)
	}
	p.Text(x, l.Y, l.Text)
}

// picture puts a picture down; the library knows one again by its name, and writes it once.
func (p page) picture(l *Picture, left float64) {
	as := fpdf.ImageOptions{ImageType: "PNG"}
	name := nameOf(l.PNG)
	if p.GetImageInfo(name) == nil {
		p.RegisterImageOptionsReader(name, as, bytes.NewReader(l.PNG))
	}
	p.ImageOptions(name, l.X-left, l.Y, l.Wide, l.High, false, as, 0, "")
}

// unscaled asks the program that prints the file to leave its size alone: /ViewerPreferences with /PrintScaling /None in the catalog (PDF 1.6,
// from memory), which the library has no call for. The catalog is the last object before the table of where each object begins, so that only
// the place of that table moves.
func unscaled(pdf []byte) ([]byte, error) {
	catalog, table, wish := []byte("/Type /Catalog\n"), []byte("\nstartxref\n"), "/ViewerPreferences << /PrintScaling /None >>\n"
	at, foot := bytes.LastIndex(pdf, catalog), bytes.LastIndex(pdf, table)
	if at < 0 || foot < at {
		return nil, errors.New("the PDF has no catalog where one is looked for; this is a fault of the program")
	}
	at += len(catalog)
	begins, rest, _ := bytes.Cut(pdf[foot+len(table):], []byte("\n"))
	n, err := strconv.Atoi(string(begins))
	if err != nil || n < at {
		return nil, fmt.Errorf("the PDF says that its table of objects begins at %q; this is a fault of the program", begins)
	}
	out := bytes.NewBuffer(make([]byte, 0, len(pdf)+len(wish)))
	out.Write(pdf[:at])
	out.WriteString(wish)
	out.Write(pdf[at : foot+len(table)])
	fmt.Fprintf(out, "%d\n", n+len(wish))
	out.Write(rest)
	return out.Bytes(), nil
}
