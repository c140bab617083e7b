package tui

import (
	"testing"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/panel"
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
