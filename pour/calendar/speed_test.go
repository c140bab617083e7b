package calendar_test

import (
	"bytes"
	"fmt"
	"path/filepath"
	"testing"

	"pourbench/pour/calendar"
	"pourbench/pour/disk"
)

// twoHundred is a season's calendar.
func twoHundred() []calendar.Entry {
	var out []calendar.Entry
	for i := range 67 {
		for _, e := range sampleEntries() {
			e.Batch, e.Sequence = fmt.Sprintf("2612%02dA", i), 0
			out = append(out, e)
		}
	}
	return out[:200]
}

// BenchmarkWrite200 is the file alone.
func BenchmarkWrite200(b *testing.B) {
	entries := twoHundred()
	var out bytes.Buffer
	for b.Loop() {
		out.Reset()
		if err := calendar.Write(&out, entries); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkExport200 is a second export: the register read, 200 entries compared, one moved, the register saved, the file written.
func BenchmarkExport200(b *testing.B) {
	entries, file := twoHundred(), filepath.Join(b.TempDir(), calendar.FileName)
	var out bytes.Buffer
	for b.Loop() {
		entries[7].Start, entries[7].End = entries[7].Start.AddDate(0, 0, 1), entries[7].End.AddDate(0, 0, 1)
		handed, err := calendar.HandOut(disk.OS(), file, 0, entries, all, at)
		if err != nil {
			b.Fatal(err)
		}
		out.Reset()
		if err := calendar.Write(&out, handed); err != nil {
			b.Fatal(err)
		}
	}
}
