package batches

import (
	"pourbench/pour/logbook/life"
	"pourbench/tui/screen"
)

func (m *Model) drying(b *life.Batch) []line { return nil }

func (m *Model) plotRows(b *life.Batch) int { return 0 }

func (m *Model) drawPlot(a screen.Area, b *life.Batch) {}

func (m *Model) plotWords(b *life.Batch) []string { return nil }
