package presets_test

import "testing"

// The shelf is read at every start.
func BenchmarkReadingTheShelf(b *testing.B) {
	for b.Loop() {
		shelf(b)
	}
}
