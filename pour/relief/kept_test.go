package relief

import (
	"sync"
	"testing"
)

// Pictures of one loaf share what stands on it, whoever asks first; another loaf has its own, and what was not asked for lately is let go.
func TestOneLoafIsWorkedOutOnce(t *testing.T) {
	loaf := func(seed int64) *Recipe {
		return &Recipe{L: 60, W: 40, H: 50, Seed: seed, Icing: Icing{Shape: Piped, Volume: 60 * 40 * 9, Spots: []Spot{{30, 20}}, Shares: []float64{1}}}
	}
	var k Kept
	var each [4]*Field
	var all sync.WaitGroup
	for i := range each {
		all.Go(func() { each[i] = k.Field(loaf(1)) })
	}
	all.Wait()
	for _, f := range each {
		if f != each[0] || f == nil {
			t.Fatal("a loaf was worked out more than once")
		}
	}
	if got, want := each[0].PeakMM(), New(*loaf(1)).PeakMM(); got != want || got == 0 {
		t.Errorf("it stands %v mm high, worked out by itself %v", got, want)
	}
	other := k.Field(loaf(2))
	if other == each[0] || other.PeakMM() == each[0].PeakMM() {
		t.Error("another loaf got what stands on the first")
	}
	for seed := range int64(keptFields - 1) {
		k.Field(loaf(3 + seed))
		if k.Field(loaf(2)) != other {
			t.Fatalf("what was asked for a moment ago was let go after %d others", seed+1)
		}
	}
	if k.Field(loaf(1)) == each[0] || len(k.all) != keptFields {
		t.Errorf("%d are kept, and what was not asked for lately is among them", len(k.all))
	}
	sunk := loaf(2)
	sunk.Icing.Sinks = 1
	deep := k.Field(sunk)
	if a, b := deep.PeakMM(), New(*sunk).PeakMM(); deep == other || deep.form != other.form || a != b || a == other.PeakMM() {
		t.Errorf("sunk in it stands %v mm high, worked out by itself %v, not sunk in %v", a, b, other.PeakMM())
	}
	sunk.Icing.Volume *= 1.1
	if fuller := k.Field(sunk); fuller.form == deep.form || fuller.PeakMM() != New(*sunk).PeakMM() {
		t.Error("more icing has the form of less")
	}
	if k.Field(nil) != nil {
		t.Error("something stands where nothing does")
	}
	var none *Kept
	if a, b := none.Field(loaf(1)), none.Field(loaf(1)); a == b || a.PeakMM() != each[0].PeakMM() {
		t.Error("without a place to keep it, it is not worked out")
	}
}
