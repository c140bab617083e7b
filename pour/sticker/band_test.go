package sticker_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/sticker"
	"pourbench/pour/vector/vectortest"
)

// upright is every upright line that begins at the upper edge, by where it stands.
func upright(p vectortest.Page) []float64 {
	var out []float64
	for _, l := range p.Lines {
		if l.X1 == l.X2 && math.Abs(math.Min(l.Y1, l.Y2)) < 0.02 && math.Abs(math.Abs(l.Y1-l.Y2)-1.5) < 0.02 {
			out = append(out, l.X1)
		}
	}
	return out
}

// A band goes round the cured bar: its folds stand a front and a side apart, its lap is over, its words stay on their sides.
func TestABandHasTheSidesOfItsBar(t *testing.T) {
	l := plain(t, "eu", 80, 55, 100)
	l.Title, l.Lot, l.Best, l.OpenMonths = "Meadow in March", "2026-11-29", "10/2028", 6
	l.Maker = []string{"Hill House Soap", "3 Upper Lane, 6020 Innsbruck, Austria"}
	l.Bar, l.BandHigh = sticker.Bar{Front: 77, Side: 24, Up: 66}, 0
	p := sticker.Print{Band: true}
	pages, _ := vectortest.ReadPDF(t, written(t, l, ".pdf", p))
	for form, page := range map[string]vectortest.Page{"pdf": pages[0], "svg": vectortest.ReadSVG(t, written(t, l, ".svg", p))} {
		near(t, form+" long", page.Wide, 2*(77+24)+12)
		near(t, form+" high", page.High, 66-2*5)
		folds := upright(page)
		if len(folds) != 4 {
			t.Fatalf("%s: folds at %v", form, folds)
		}
		for i, want := range []float64{77, 101, 178, 202} {
			near(t, form+" fold", folds[i], want)
		}
		hatch := 0
		for _, n := range page.Lines {
			if math.Min(n.X1, n.X2) > 201.9 && n.X1 != n.X2 {
				hatch++
			}
		}
		if hatch < 10 {
			t.Errorf("%s: %d lines say where it is glued", form, hatch)
		}
		if form == "svg" {
			panels(t, page, [][2]float64{{0, 77}, {77, 101}, {101, 178}})
			if net := find(t, page, "100 g"); net.X < 101 || net.Y < 40 {
				t.Errorf("the weight stands at %.1f %.1f", net.X, net.Y)
			}
			if list := find(t, page, "Aqua"); list.X > 77 {
				t.Errorf("the list stands at %.1f", list.X)
			}
		}
	}
}

// panels fails where words do not stand within one of the sides of a band, or run into each other.
func panels(t *testing.T, page vectortest.Page, sides [][2]float64) {
	t.Helper()
	inside(t, page, 0)
	for _, w := range page.Texts {
		in := false
		for _, s := range sides {
			in = in || w.Box.X1 > s[0]+1.9 && w.Box.X2 < s[1]-1.9
		}
		if !in {
			t.Errorf("%q stands across a fold: %.2f to %.2f", w.Text, w.Box.X1, w.Box.X2)
		}
	}
}

// Where the side is narrower than the jar, that stands on the back.
func TestAJarHasRoomOnABand(t *testing.T) {
	l := plain(t, "eu", 80, 55, 100)
	l.OpenMonths, l.Bar, l.BandHigh = 6, sticker.Bar{Front: 77, Side: 12, Up: 66}, 0
	if jar := find(t, vectortest.ReadSVG(t, written(t, l, ".svg", sticker.Print{Band: true})), "6M"); jar.Box.X2 > 75 {
		t.Errorf("it stands at %.2f", jar.Box.X2)
	}
}

// A batch number is not broken for the sake of a narrow side.
func TestALotStaysInOnePieceOnABand(t *testing.T) {
	l := plain(t, "eu", 80, 55, 100)
	l.Lot, l.Bar, l.BandHigh = "2026-11-29-meadow-summer-hill", sticker.Bar{Front: 77, Side: 24, Up: 66}, 0
	find(t, vectortest.ReadSVG(t, written(t, l, ".svg", sticker.Print{Band: true})), l.Lot)
}

// A round has its front on 40 % of the way round, by 16 CFR 500.21(a), and no folds.
func TestABandRoundARoundHasNoFolds(t *testing.T) {
	l := plain(t, "us-soap", 80, 55, 100)
	l.Lot, l.BandHigh = "7", 32
	l.Bar = sticker.Bar{Front: 70, Side: 70, Up: 40, Round: true}
	page := vectortest.ReadSVG(t, written(t, l, ".svg", sticker.Print{Band: true}))
	near(t, "long", page.Wide, 219.911+12)
	near(t, "high", page.High, 32)
	if folds := upright(page); len(folds) != 0 {
		t.Errorf("it is folded at %v", folds)
	}
	if net := find(t, page, "oz"); net.Box.X1 < 0.6*219.911 || net.Size*smallOf < 3.175 {
		t.Errorf("the weight of %.2f mm stands at %.1f", net.Size*smallOf, net.Box.X1)
	}
	oz := find(t, page, "oz")
	if middle := (oz.Box.X1 + oz.Box.X2) / 2; math.Abs(middle-0.8*219.911) > 0.5 {
		t.Errorf("the middle of its front stands at %.2f", middle)
	}
	panels(t, page, [][2]float64{{0, 0.6 * 219.911}, {0.6 * 219.911, 219.911}})
}

// The bar is what was cut, each length times the cube root of what is left of its mass when it is packed: worked out here again from the sheet's
// own masses.
func TestABandIsAsLongAsTheCuredBarIsRound(t *testing.T) {
	p, shelf := loaf(t, "eu")
	p.Cure.PackDays = 14
	s := pour.Work(p, shelf, pour.Hand{})
	l := of(t, p, shelf, sticker.Details{})
	left := 1 - s.Cure.LossPercent.V/100 + (s.Cure.PackG.Mid.V-s.Cure.FinalG.V)/s.Bars.CutG
	if !(left > 0.8 && left < 0.95) {
		t.Fatalf("%.4f of the bar is left", left)
	}
	k := math.Pow(left, 1.0/3)
	near(t, "front", l.Bar.Front, p.Mould.WidthMM*k)
	near(t, "side", l.Bar.Side, s.Cut.UsualMM*k)
	near(t, "up", l.Bar.Up, s.Base.Size.HeightMM*k)
	p.Cure.PackDays = 365
	if later := of(t, p, shelf, sticker.Details{}).Bar; !(later.Front < l.Bar.Front && later.Front > 0.9*p.Mould.WidthMM) {
		t.Errorf("after a year the front is %.2f mm, after two weeks %.2f", later.Front, l.Bar.Front)
	}
	if notes := strings.Join(l.Notes(sticker.Print{Band: true}), "\n"); !strings.Contains(notes, "cube root of the mass left") {
		t.Errorf("nothing says how the size was found: %s", notes)
	}
}

// A bar that lies flat, with nothing on it, has its band round its waist.
func TestABandGoesRoundTheWaistOfAFlatBar(t *testing.T) {
	p, shelf := loaf(t, "eu")
	p.Icing, p.Top = nil, pour.Top{}
	p.Mould.FillMM, p.Mould.BarMM = 25, 60
	l := of(t, p, shelf, sticker.Details{})
	k := l.Bar.Shrunk
	near(t, "front", l.Bar.Front, 60*k)
	near(t, "up", l.Bar.Up, p.Mould.WidthMM*k)
	if l.Bar.Side > 30 {
		t.Errorf("its side is %.1f mm", l.Bar.Side)
	}
}

func TestABandThatCannotBeIsRefused(t *testing.T) {
	for _, c := range []struct {
		want   string
		change func(*sticker.Label)
	}{
		{"60.0 mm is higher than the cured bar, which is 55.0", func(l *sticker.Label) { l.BandHigh = 60 }},
		{"the size of the cured bar cannot be told", func(l *sticker.Label) { l.Bar = sticker.Bar{} }},
		{"no room for words", func(l *sticker.Label) { l.BandHigh = 7 }},
		{"too high for it", func(l *sticker.Label) { l.BandHigh = 10; l.List = strings.Repeat("Sodium Olivate, ", 60) }},
		{"does not fit on a sheet", func(l *sticker.Label) { l.Bar.Front = 200 }},
	} {
		l := plain(t, "eu", 80, 55, 100)
		l.Bar = sticker.Bar{Front: 77, Side: 24, Up: 55}
		c.change(&l)
		if _, err := l.For("band.pdf", sticker.Print{Band: true, Paper: sticker.Papers()[0]}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v", c.want, err)
		}
	}
	l := plain(t, "ca", 80, 55, 100)
	if notes := strings.Join(l.Notes(sticker.Print{Band: true}), "\n"); !strings.Contains(notes, "band") {
		t.Errorf("Canada says nothing of a band: %s", notes)
	}
}
