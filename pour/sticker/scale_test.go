package sticker_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour/label"
	"pourbench/pour/sticker"
	"pourbench/pour/vector/vectortest"
)

// Heights of letters of the faces, of their em, from the faces' own tables (OS/2 and glyf), read by another program: small letters, capitals, and
// the figure that is drawn lowest.
const (
	smallOf, boldSmallOf = 1086.0 / 2048, 1098.0 / 2048
	figureOf             = 1480.0 / 2048
)

// find is the words on a page that hold some.
func find(t *testing.T, p vectortest.Page, some string) vectortest.Text {
	t.Helper()
	for _, l := range p.Texts {
		if strings.Contains(l.Text, some) {
			return l
		}
	}
	t.Fatalf("%q is not printed", some)
	return vectortest.Text{}
}

// near fails where two lengths differ by more than files round.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 0.02) {
		t.Errorf("%s: %.3f mm, not %.3f", what, got, want)
	}
}

// marketOf is a market of the shelf.
func marketOf(t testing.TB, id string) label.Market {
	t.Helper()
	shelf, err := onShelf()
	if err != nil {
		t.Fatal(err)
	}
	m, ok := shelf.Market(id)
	if !ok {
		t.Fatalf("no market %q", id)
	}
	return m
}

// plain is a label that says little.
func plain(t testing.TB, market string, wide, high, g float64) sticker.Label {
	t.Helper()
	m := marketOf(t, market)
	return sticker.Label{
		Market: m, Title: "Meadow", Identity: "Soap", Net: label.Declare(label.Weighing{Forecast: g, ForecastLow: g, Market: m}).Text,
		NetMM: m.LetterMM(g, wide, high, max(wide, high)), List: "Ingredients: Sodium Olivate, Aqua", Wide: wide, High: high,
	}
}

// One loaf with icing, embeds and sprinkles, for six markets: the page is the label, everything on it stands inside its edges, says what it must
// and is as high as it must be, in both kinds of file.
func TestOneLoafIsLabelledForEveryMarket(t *testing.T) {
	for id, high := range map[string]float64{"eu": 55, "gb": 55, "us-soap": 55, "us-cosmetic": 55, "au": 55, "ca": 110} {
		p, shelf := loaf(t, id)
		p.Label.HighMM = high
		l := of(t, p, shelf, sticker.Details{Logo: logo(t)})
		for form, page := range both(t, l) {
			near(t, id+form+" wide", page.Wide, 80)
			near(t, id+form+" high", page.High, high)
			for _, want := range []string{"Meadow", l.Identity, "100 g", "Ingredients", "Keep out of eyes.", "Hill House Soap", "Lot 2026-11-29", "Best used before the end of 10/2028", "12M"} {
				page.Says(t, want)
			}
			var all []string
			for _, w := range page.Texts {
				all = append(all, w.Text)
			}
			if !strings.Contains(strings.Join(all, " "), l.List) {
				t.Errorf("%s%s: the list is not printed whole: %s", id, form, l.List)
			}
			if len(page.Pictures) != 1 {
				t.Fatalf("%s%s: %d logos", id, form, len(page.Pictures))
			}
			near(t, "logo", (page.Pictures[0].X2-page.Pictures[0].X1)/(page.Pictures[0].Y2-page.Pictures[0].Y1), 2)
			for _, w := range page.Texts {
				if strings.HasSuffix(w.Text, "CI") {
					t.Errorf("a colour loses its number: %q", w.Text)
				}
				if least := l.Market.Print.LeastMM(0.8 * high); w.Size*smallOf < max(least, 0.9)-0.001 {
					t.Errorf("%s%s: %q has small letters of %.3f mm", id, form, w.Text, w.Size*smallOf)
				}
			}
			net := find(t, page, "100 g")
			if is := net.Size * figureOf; is < l.NetMM {
				t.Errorf("%s%s: figures of %.3f mm where %.3f are asked for", id, form, is, l.NetMM)
			}
			if form == "svg" {
				inside(t, page, l.Market.Print.ClearMM)
			}
		}
	}
}

// inside fails where words leave the label or run into each other.
func inside(t *testing.T, page vectortest.Page, clear float64) {
	t.Helper()
	free := max(2.5, clear)
	for i, a := range page.Texts {
		if b := a.Box; b.X1 < free-0.3 || b.Y1 < free-0.3 || b.X2 > page.Wide-free+0.3 || b.Y2 > page.High-free+0.3 {
			t.Errorf("%q stands at %.2f %.2f to %.2f %.2f on %g by %g", a.Text, b.X1, b.Y1, b.X2, b.Y2, page.Wide, page.High)
		}
		for _, other := range page.Texts[i+1:] {
			if b, c := a.Box, other.Box; b.X1 < c.X2 && c.X1 < b.X2 && b.Y1 < c.Y2-0.05 && c.Y1 < b.Y2-0.05 {
				t.Errorf("%q runs into %q", a.Text, other.Text)
			}
		}
	}
}

// The worked heights of figures: a face of 80 by 55 with 100 g, one of 60 by 50 with 50 g and one of 120 by 140 with 250 g, by 76/211/EEC Annex I
// 3.1, 16 CFR 500.21(b), the NMI's guide and CPLR s. 14; and the edges of 50, 200 and 201 g. What is drawn is measured.
func TestTheWeightIsAsHighAsTheTablesAsk(t *testing.T) {
	for _, c := range []struct {
		market        string
		wide, high, g float64
		least         float64
	}{
		{"eu", 80, 55, 100, 3},
		{"us-soap", 80, 55, 100, 3.175},
		{"au", 80, 55, 100, 2},
		{"ca", 80, 55, 100, 3.2},
		{"eu", 60, 50, 50, 2},
		{"us-soap", 60, 50, 50, 1.5875},
		{"au", 60, 50, 50, 2},
		{"ca", 60, 50, 50, 1.6},
		{"eu", 120, 140, 250, 4},
		{"us-soap", 120, 140, 250, 4.7625},
		{"au", 120, 140, 250, 2.5},
		{"ca", 120, 140, 250, 3.2},
		{"eu", 80, 55, 200, 3},
		{"eu", 80, 55, 201, 4},
		{"gb", 80, 55, 50, 2},
		{"au", 120, 55, 100, 2},
	} {
		l := plain(t, c.market, c.wide, c.high, c.g)
		for form, page := range both(t, l) {
			net := find(t, page, " g")
			is := net.Size * figureOf
			if strings.HasPrefix(c.market, "us") { // mixed letters go by the small o, whose flat neighbours are lower
				is = net.Size * smallOf
			}
			if is < c.least-0.0005 {
				t.Errorf("%s, %gx%g, %g g: %.4f mm in the %s, and %g are asked for", c.market, c.wide, c.high, c.g, is, form, c.least)
			}
			if form == "svg" && !strings.HasPrefix(c.market, "us") {
				if drawn := net.Y - net.Box.Y1; drawn < c.least {
					t.Errorf("%s: the outlines stand %.3f mm high", c.market, drawn)
				}
			}
		}
	}
}

func TestCapitalsAreMeasuredAsCapitals(t *testing.T) {
	l := plain(t, "us-soap", 80, 55, 100)
	mixed := find(t, both(t, l)["svg"], "100")
	l.Net = "NET WT 3.5 OZ 100 G"
	l.LetterMM = 1
	capital := find(t, both(t, l)["svg"], "100")
	if high := capital.Size * 1480 / 2048; high < 3.175 || capital.Size > mixed.Size*0.8 {
		t.Errorf("capitals are %.3f mm high, their em is %.2f and that of mixed letters %.2f", high, capital.Size, mixed.Size)
	}
}

func TestCanadaHasItsFiguresBold(t *testing.T) {
	for market, bold := range map[string]bool{"ca": true, "eu": false} {
		page := both(t, plain(t, market, 90, 80, 100))["pdf"]
		title, list, net := find(t, page, "Meadow").Face, find(t, page, "Aqua").Face, find(t, page, "100 g").Face
		if title == list || (net == title) != bold || (net == list) == bold {
			t.Errorf("%s: the title is in %s, the list in %s, the weight in %s", market, title, list, net)
		}
	}
}

func TestTheWeightStandsInTheLowestPartOfAnAmericanLabel(t *testing.T) {
	for _, size := range [][2]float64{{80, 55}, {120, 140}, {90, 40}} {
		l := plain(t, "us-cosmetic", size[0], size[1], 100)
		net := find(t, both(t, l)["svg"], "oz")
		if net.Box.Y1 < 0.7*size[1] {
			t.Errorf("on %gx%g it begins at %.2f", size[0], size[1], net.Box.Y1)
		}
	}
}
