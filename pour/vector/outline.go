package vector

import (
	"fmt"
	"slices"
	"strings"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// defs writes once what is put down often: the outlines of letters, and what is stamped. A drawing without either has none.
func (w *svg) defs(d *Drawing) error {
	w.stamps = map[*Drawing]int{}
	stamps := w.gather(d, nil)
	w.letter(d)
	for _, s := range stamps {
		w.letter(s)
	}
	if len(stamps) == 0 && w.letters == nil {
		return nil
	}
	w.printf("<defs>\n")
	for f := range faces {
		var letters []rune
		for r := range w.used[f] {
			letters = append(letters, r)
		}
		slices.Sort(letters)
		for _, r := range letters {
			path, err := w.letters.outline(f, r)
			if err != nil {
				return err
			}
			w.printf("<path id=\"%s\" d=\"%s\"/>\n", glyph(f, r), path)
		}
	}
	for i, s := range stamps { // the innermost first
		w.printf("<g id=\"stamp%d\">\n", i)
		w.draw(s)
		w.printf("</g>\n")
	}
	w.printf("</defs>\n")
	return nil
}

// gather numbers what is stamped, each once, the innermost first.
func (w *svg) gather(d *Drawing, out []*Drawing) []*Drawing {
	for _, s := range d.Stamps {
		if _, known := w.stamps[s.Of]; !known {
			out = w.gather(s.Of, out)
			w.stamps[s.Of] = len(out)
			out = append(out, s.Of)
		}
	}
	return out
}

// letter notes the letters of a drawing whose outlines are needed.
func (w *svg) letter(d *Drawing) {
	if w.letters == nil {
		return
	}
	for i := range d.Texts {
		f := d.Texts[i].Face
		if w.used[f] == nil {
			w.used[f] = map[rune]bool{}
		}
		for _, r := range d.Texts[i].Text {
			w.used[f][r] = true
		}
	}
}

// glyph is the name of a letter's outline in the file.
func glyph(f Face, r rune) string {
	return fmt.Sprintf("%s%d", [...]string{Regular: "r", Bold: "b"}[f], r)
}

// outlined draws the letters of a text where they stand; what it says is there to be read, by people and programs that see no shapes.
func (w *svg) outlined(l *Text) {
	x := l.X
	switch wide := w.letters.Wide(l.Face, l.Text, l.Size); l.At {
	case Start:
	case Middle:
		x -= wide / 2
	case End:
		x -= wide
	}
	w.printf("<g class=\"words\" stroke=\"none\" aria-label=\"%s\" transform=\"translate(%s %s) scale(%s)\">", escaped(l.Text), coordinate(x), coordinate(l.Y), fine(l.Size))
	at := 0.0
	for _, r := range l.Text {
		if r != ' ' {
			w.printf("<use href=\"#%s\" x=\"%s\"/>", glyph(l.Face, r), fine(at))
		}
		at += w.letters.Wide(l.Face, string(r), 1)
	}
	w.printf("</g>\n")
}

// outline is the path of a letter at an em of 1, its foot at 0 and y down. A letter that the face has not is its box.
func (l *Letters) outline(f Face, r rune) (string, error) {
	i, err := l.fonts[f].GlyphIndex(&l.buf, r)
	if err != nil {
		return "", fmt.Errorf("draw the letter %q: %w", r, err)
	}
	path, err := l.fonts[f].LoadGlyph(&l.buf, i, l.em(f), nil)
	if err != nil {
		return "", fmt.Errorf("draw the letter %q: %w", r, err)
	}
	em := float64(l.em(f))
	var b strings.Builder
	for _, s := range path {
		points := map[sfnt.SegmentOp]int{sfnt.SegmentOpMoveTo: 1, sfnt.SegmentOpLineTo: 1, sfnt.SegmentOpQuadTo: 2, sfnt.SegmentOpCubeTo: 3}[s.Op]
		b.WriteString([...]string{sfnt.SegmentOpMoveTo: "M", sfnt.SegmentOpLineTo: "L", sfnt.SegmentOpQuadTo: "Q", sfnt.SegmentOpCubeTo: "C"}[s.Op])
		for j, p := range s.Args[:points] {
			if j > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(pair(p, em))
		}
	}
	if b.Len() > 0 {
		b.WriteByte('Z')
	}
	return b.String(), nil
}

func pair(p fixed.Point26_6, em float64) string {
	return fine(float64(p.X)/em) + " " + fine(float64(p.Y)/em)
}

// fine is a number to the hundred-thousandth, for what is drawn in ems.
func fine(v float64) string {
	text := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.5f", v), "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}
