package tui

import (
	"fmt"
	"image"
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/panel"
	"pourbench/tui/pixels"
)

// BenchmarkKeyToFrame measures what stands between a key and the frame it draws: Update with its edit and the figures, and View.
// The clock's figures come beside it. The aim is 5 ms at 200×60.
func BenchmarkKeyToFrame(b *testing.B) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"80x24", 80, 24}, {"200x60", 200, 60}} {
		for _, k := range []string{"+", "down"} {
			b.Run(size.name+"/"+k, func(b *testing.B) {
				m := opened(b, size.w, size.h)
				for b.Loop() {
					m.Update(key(k))
					if m.View().Content == "" {
						b.Fatal("an empty frame")
					}
					if k == "+" && base(m).Jugs[0].SharePercent > 90 {
						b.StopTimer()
						m.Update(key("u"))
						b.StartTimer()
					}
				}
			})
		}
	}
}

// BenchmarkKeyToFrameOfTheCut moves a cut to and fro in a plan with icing of a shape, toppings, embeds and a gang of wires.
func BenchmarkKeyToFrameOfTheCut(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			m := topped(b, size[0], size[1])
			visit(m, panel.Cut)
			for n := 0; b.Loop(); n++ {
				m.Update(key([]string{"+", "-"}[n%2]))
				if m.View().Content == "" {
					b.Fatal("an empty frame")
				}
			}
		})
	}
}

// BenchmarkKeyToFrameWithPixels measures a key while the picture stands on the screen in real pixels: the half blocks come back.
func BenchmarkKeyToFrameWithPixels(b *testing.B) {
	g := onPixels(b, 200, 60)
	g.tell(key("f5"))
	for b.Loop() {
		g.Update(key("down"))
		if g.View().Content == "" {
			b.Fatal("an empty frame")
		}
	}
	if _, cells := g.shown(); cells == 0 {
		b.Fatal("no picture stood on the screen")
	}
}

// BenchmarkPixels measures what is done beside the keyboard when the hand rests: a picture drawn in real pixels and made ready to be sent.
func BenchmarkPixels(b *testing.B) {
	g := onPixels(b, 120, 36)
	g.tell(key("f5"))
	f := &g.studio.mounts[placeNow]
	shot := f.shot
	shot.Grain = image.Pt(8, 16)
	for b.Loop() {
		text, err := developPixels(b.Context(), shot, f.dye, 1, pixels.Auto)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(text)), "bytes")
	}
}

// BenchmarkEveryStation draws each station at 200×60.
func BenchmarkEveryStation(b *testing.B) {
	for s := range panel.Places {
		b.Run(panel.Stations()[s].Name, func(b *testing.B) {
			m := opened(b, 200, 60)
			m.station = panel.Place(s)
			for b.Loop() {
				m.Update(tea.FocusMsg{})
				m.View()
			}
		})
	}
}

// BenchmarkWeigh and BenchmarkClock measure the two halves of the figures on the example.
func BenchmarkWeigh(b *testing.B) {
	shelf, plan := built(b)
	for b.Loop() {
		pour.Weigh(plan, shelf)
	}
}

// BenchmarkOpen measures what stands between the plan and the first frame.
func BenchmarkOpen(b *testing.B) {
	for b.Loop() {
		m := opened(b, 200, 60)
		m.View()
	}
}
