package vector

import (
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
)

// SVG is a drawing whose width and height are stated in mm and whose numbers are mm, so that a plotter, a laser or a roll printer takes it as it
// is. Its words are words, in whatever sans-serif face the reader has; where the letters must be as high and as wide as they were measured, hand
// in the letters and their outlines are drawn.
func SVG(title string, d *Drawing, outlines *Letters) (string, error) {
	w := svg{letters: outlines}
	w.printf("%s<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"%s 0 %s %s\">\n",
		xml.Header, coordinate(d.Wide), coordinate(d.High), coordinate(d.Left), coordinate(d.Wide), coordinate(d.High))
	w.printf("<title>%s</title>\n", escaped(title))
	if err := w.defs(d); err != nil {
		return "", err
	}
	w.printf("<rect x=\"%s\" y=\"0\" width=\"%s\" height=\"%s\" fill=\"white\"/>\n", coordinate(d.Left), coordinate(d.Wide), coordinate(d.High))
	w.printf("<g stroke=\"black\" fill=\"black\" font-family=\"sans-serif\">\n")
	w.draw(d)
	w.printf("</g>\n</svg>\n")
	return w.String(), nil
}

type svg struct {
	strings.Builder

	letters *Letters             // nil: words are written as words
	stamps  map[*Drawing]int     // by their numbers
	used    [faces]map[rune]bool // letters whose outlines are needed
}

// printf writes.
func (w *svg) printf(format string, args ...any) {
	_, _ = fmt.Fprintf(w, format, args...) // a builder takes everything
}

// draw writes what is drawn, where it is put.
func (w *svg) draw(d *Drawing) {
	for i := range d.Pictures {
		p := &d.Pictures[i]
		w.printf("<image x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" preserveAspectRatio=\"none\" href=\"data:image/png;base64,%s\"/>\n",
			coordinate(p.X), coordinate(p.Y), coordinate(p.Wide), coordinate(p.High), base64.StdEncoding.EncodeToString(p.PNG))
	}
	for _, s := range d.Strokes {
		w.printf("<line class=\"%s\" x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke-width=\"%s\"/>\n",
			s.Class, coordinate(s.X1), coordinate(s.Y1), coordinate(s.X2), coordinate(s.Y2), coordinate(s.Thick))
	}
	for _, s := range d.Signs {
		var points []string
		for _, at := range s.Points {
			points = append(points, coordinate(at[0])+","+coordinate(at[1]))
		}
		w.printf("<polygon class=\"%s\" points=\"%s\" stroke=\"none\"/>\n", s.Class, strings.Join(points, " "))
	}
	for i := range d.Texts {
		switch l := &d.Texts[i]; {
		case l.Text == "":
		case w.letters != nil:
			w.outlined(l)
		default:
			w.printf("<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\" stroke=\"none\"%s>%s</text>\n",
				coordinate(l.X), coordinate(l.Y), coordinate(l.Size), [...]string{Start: "start", Middle: "middle", End: "end"}[l.At],
				[...]string{Regular: "", Bold: " font-weight=\"bold\"", Mono: " font-family=\"monospace\""}[l.Face], escaped(l.Text))
		}
	}
	for _, s := range d.Stamps {
		w.printf("<use href=\"#stamp%d\" x=\"%s\" y=\"%s\"/>\n", w.stamps[s.Of], coordinate(s.X), coordinate(s.Y))
	}
}

// coordinate is a number of mm to the thousandth, in as few digits as it takes.
func coordinate(mm float64) string {
	text := strconv.FormatFloat(mm, 'f', 3, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func escaped(text string) string {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(text)); err != nil {
		return "" // a builder takes everything
	}
	return b.String()
}
