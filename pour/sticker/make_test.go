package sticker_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/label"
	"pourbench/pour/planfile"
	"pourbench/pour/sticker"
	"pourbench/pour/vector/vectortest"
	"pourbench/presets"
)

// onShelf is the built-in shelf, read once; nothing here changes what it holds.
var onShelf = sync.OnceValues(presets.Shelf)

// loaf is the built-in example, a loaf with icing, embeds and sprinkles, with a label in a market and who makes it.
func loaf(t testing.TB, market string) (pour.Plan, pour.Shelf) {
	t.Helper()
	shelf, err := onShelf()
	if err != nil {
		t.Fatal(err)
	}
	text, err := presets.Plan("alpine-meadow")
	if err != nil {
		t.Fatal(err)
	}
	p, err := planfile.Read("alpine-meadow", bytes.NewReader(text), shelf)
	if err != nil {
		t.Fatal(err)
	}
	p.PourAt = time.Date(2026, 11, 29, 9, 0, 0, 0, time.UTC)
	p.Label = pour.Label{Market: market, BestBeforeMo: 24, OpenMo: 12, Cautions: "Keep out of eyes. Outside use only."}
	shelf.Label = label.House{Makers: []label.Maker{{Name: "Hill House Soap", Address: "3 Upper Lane, 6020 Innsbruck, Austria", Contact: "post@hillhouse.example"}}}
	return p, shelf
}

// of is the label of a plan as the sheet has it, with the weight of a bar of 100 g.
func of(t testing.TB, p pour.Plan, shelf pour.Shelf, d sticker.Details) sticker.Label {
	t.Helper()
	s := pour.Work(p, shelf, pour.Hand{})
	m, _ := shelf.Market(p.Label.Market)
	s.Label.Net = label.Declare(label.Weighing{Forecast: 100.5, ForecastLow: 100.5, Market: m})
	s.Label.HeightMM = pour.Know(m.LetterMM(100, 80, 55, 80))
	l, err := sticker.Of(s, shelf, d)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// logo is a picture of her own, twice as wide as high.
func logo(t testing.TB) []byte {
	t.Helper()
	m := image.NewNRGBA(image.Rect(0, 0, 80, 40))
	for i := range 80 * 40 {
		if x, y := i%80-40, i/80-20; x*x/4+y*y < 300 {
			m.Set(i%80, i/80, color.NRGBA{R: 30, G: 90, B: 60, A: 255})
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// written is a label as a file of a form, which is kept where POURBENCH_LOOK names a folder.
func written(t testing.TB, l sticker.Label, form string, p sticker.Print) []byte {
	t.Helper()
	write, err := l.For("label"+form, p)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	if dir := os.Getenv("POURBENCH_LOOK"); dir != "" {
		name := strings.ReplaceAll(t.Name(), "/", "-") + "-" + l.Market.ID + "-" + p.Paper.Name
		if p.Band {
			name += "band"
		}
		_ = os.WriteFile(dir+"/"+name+form, b.Bytes(), 0o600)
	}
	return b.Bytes()
}

// both is the one page of a label, as PDF and as SVG.
func both(t *testing.T, l sticker.Label) map[string]vectortest.Page {
	t.Helper()
	pages, _ := vectortest.ReadPDF(t, written(t, l, ".pdf", sticker.Print{}))
	return map[string]vectortest.Page{"pdf": pages[0], "svg": vectortest.ReadSVG(t, written(t, l, ".svg", sticker.Print{}))}
}
