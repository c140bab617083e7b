package sticker

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"pourbench/pour/vector"
)

// Papers lists what labels can be printed on.
func Papers() []vector.Paper { return vector.Papers() }

// PaperOf is the paper of a name.
func PaperOf(name string) (vector.Paper, error) {
	p, err := vector.PaperOf(name)
	if err != nil {
		return p, fmt.Errorf("print the labels %w", err)
	}
	return p, nil
}

// For is what writes the label into a file of a name: its ending says as what. The error is why it cannot be printed as it is asked for.
func (l Label) For(file string, p Print) (func(io.Writer) error, error) {
	if len(l.gaps) > 0 {
		return nil, fmt.Errorf("print the label: its list lacks %s; write made_of by the packet or the maker, of a piece in the plan and of all else on your shelf; as_base of a piece of the base's own soap", strings.Join(l.gaps, ", "))
	}
	form := strings.ToLower(filepath.Ext(file))
	switch form {
	case ".txt":
		return written(l.Text()), nil
	case ".pdf", ".svg":
	default:
		return nil, fmt.Errorf("write the label to %s: give the file a name that ends in .pdf or .svg, at true scale, or .txt, its words alone", file)
	}
	letters, err := vector.ReadLetters()
	if err != nil {
		return nil, err
	}
	pages, err := l.pages(letters, p)
	if err != nil {
		return nil, err
	}
	if form == ".pdf" {
		whole, err := vector.PDF(l.heading(), pages)
		if err != nil {
			return nil, fmt.Errorf("draw the label: %w", err)
		}
		return written(string(whole)), nil
	}
	if len(pages) > 1 {
		return nil, fmt.Errorf("write the label to %s: an SVG is one sheet, and this is %d; ask for fewer labels, or for a PDF", file, len(pages))
	}
	text, err := vector.SVG(l.heading(), &pages[0], letters)
	if err != nil {
		return nil, fmt.Errorf("draw the label: %w", err)
	}
	return written(text), nil
}

// written writes what is there.
func written(whole string) func(io.Writer) error {
	return func(w io.Writer) error {
		if _, err := io.WriteString(w, whole); err != nil {
			return fmt.Errorf("write the label: %w", err)
		}
		return nil
	}
}

// pages are the sheets, or the one label as large as itself.
func (l *Label) pages(letters *vector.Letters, p Print) ([]vector.Drawing, error) {
	f, err := l.drawn(letters, p.Band)
	if err != nil {
		return nil, err
	}
	if len(f.faults) > 0 {
		return nil, errors.New("print the label: " + strings.Join(f.faults, "; "))
	}
	if p.Paper == (vector.Paper{}) {
		return []vector.Drawing{*f.drawing}, nil
	}
	g, err := gridOf(f.drawing, p)
	if err != nil {
		return nil, err
	}
	pages := make([]vector.Drawing, g.sheetOf)
	for i := range pages {
		pages[i] = g.sheet(i, l.heading())
	}
	return pages, nil
}

// drawn is one label, or one band, and all that is wrong with it.
func (l *Label) drawn(letters *vector.Letters, round bool) (fitted, error) {
	wide, high, cm2, lay := l.Wide, l.High, l.Wide*l.High/100, l.single
	if round {
		b, err := l.banded()
		if err != nil {
			return fitted{}, err
		}
		wide, high, cm2, lay = b.long(), b.high, b.cm2(), b.lay
	}
	f := l.fit(letters, wide, high, l.Market.Print.LeastMM(cm2), lay)
	f.faults = append(f.faults, l.sayable(letters)...)
	return f, nil
}

// Drawn is how a label comes out.
type Drawn struct {
	NetMM   float64 // height of its weight's letters, by what the market measures; 0: it has no weight
	SmallMM float64 // height of its small letters
	Fault   string  // why it cannot be printed so; empty: it can
}

// Measure lays the label out as it would be printed and says how it comes out.
func (l Label) Measure(p Print) (Drawn, error) {
	letters, err := vector.ReadLetters()
	if err != nil {
		return Drawn{}, err
	}
	f, err := l.drawn(letters, p.Band)
	return Drawn{f.net, f.small, strings.Join(f.faults, "; ")}, err
}

// Notes is what is missing on the label, what on it is not sure, and what is to be known of how it is printed, each a sentence or a part of one.
func (l Label) Notes(p Print) []string {
	out := append([]string(nil), l.notes...)
	if p.Band {
		if why := l.Market.Print.NoBand; why != "" {
			out = append(out, l.Market.Name+": "+why)
		}
		if l.Bar.known() {
			out = append(out, fmt.Sprintf("the band is %.1f mm round, with %.0f to glue: a forecast, all lengths of the bar as cut times %.4f, the cube root of the mass left when it is packed; measure a cured bar before you print many", l.Bar.Around(), lap, l.Bar.Shrunk))
		}
	}
	return append(out, l.asOf())
}
