package ruler

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// SVG writes the ruler in one piece, however long the mould: its width and height are stated in mm and its numbers are mm, x being the distance
// from end A, so that a plotter, a laser or a roll printer takes it as it is. For sheets of paper there is the PDF.
func (r Ruler) SVG(w io.Writer) error {
	if len(r.Edges) == 0 {
		return errors.New("draw the ruler: there is no length to lay it along")
	}
	d := r.whole()
	var b strings.Builder
	b.WriteString(xml.Header)
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"%s 0 %s %s\">\n",
		coordinate(d.wide), coordinate(d.high), coordinate(d.left), coordinate(d.wide), coordinate(d.high))
	fmt.Fprintf(&b, "<title>%s</title>\n", escaped(r.title()))
	fmt.Fprintf(&b, "<rect x=\"%s\" y=\"0\" width=\"%s\" height=\"%s\" fill=\"white\"/>\n", coordinate(d.left), coordinate(d.wide), coordinate(d.high))
	b.WriteString("<g stroke=\"black\" fill=\"black\" font-family=\"sans-serif\">\n")
	for _, s := range d.strokes {
		fmt.Fprintf(&b, "<line class=\"%s\" x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke-width=\"%s\"/>\n",
			s.class, coordinate(s.x1), coordinate(s.y1), coordinate(s.x2), coordinate(s.y2), coordinate(s.thick))
	}
	for _, s := range d.signs {
		var points []string
		for _, at := range s.points {
			points = append(points, coordinate(at[0])+","+coordinate(at[1]))
		}
		fmt.Fprintf(&b, "<polygon class=\"%s\" points=\"%s\" stroke=\"none\"/>\n", s.class, strings.Join(points, " "))
	}
	for _, l := range d.labels {
		if l.text != "" {
			fmt.Fprintf(&b, "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\" stroke=\"none\">%s</text>\n",
				coordinate(l.x), coordinate(l.y), coordinate(l.size), [...]string{start: "start", middle: "middle", end: "end"}[l.anchor], escaped(l.text))
		}
	}
	b.WriteString("</g>\n</svg>\n")
	if _, err := io.WriteString(w, b.String()); err != nil {
		return fmt.Errorf("write the ruler: %w", err)
	}
	return nil
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
