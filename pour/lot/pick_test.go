package lot_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/day"
	"pourbench/pour/lot"
)

func on(t *testing.T, s string) day.Day {
	t.Helper()
	d, err := day.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The case of the reference (cost and stock, FEFO check): three lots of 4 kg, of which 6 kg are wanted. First expired goes out first; on 1 September
// the second is past its date and passed over.
func TestFirstExpiredGoesOutFirst(t *testing.T) {
	packs := []lot.Pack{
		{ID: "L1", Bought: on(t, "2026-03-03"), Expires: on(t, "2026-11-30"), Left: 4000 * lot.One},
		{ID: "L2", Bought: on(t, "2026-03-20"), Expires: on(t, "2026-08-15"), Left: 4000 * lot.One},
		{ID: "L3", Bought: on(t, "2026-04-02"), Expires: on(t, "2027-01-31"), Left: 4000 * lot.One},
	}
	for when, want := range map[string][]lot.Part{
		"2026-05-01": {{Pack: "L2", Q: 4000 * lot.One}, {Pack: "L1", Q: 2000 * lot.One}},
		"2026-08-15": {{Pack: "L2", Q: 4000 * lot.One}, {Pack: "L1", Q: 2000 * lot.One}}, // its last day
		"2026-09-01": {{Pack: "L1", Q: 4000 * lot.One}, {Pack: "L3", Q: 2000 * lot.One}},
	} {
		parts, short := lot.Pick(packs, 6000*lot.One, on(t, when))
		if diff := cmp.Diff(want, parts); diff != "" || short != 0 {
			t.Errorf("on %s, short of %s:\n%s", when, short, diff)
		}
	}
	if _, short := lot.Pick(packs, 9000*lot.One, on(t, "2026-09-01")); short != 1000*lot.One {
		t.Errorf("of 9 kg 8 are there that may be used, and %s g are short", short)
	}
	if _, short := lot.Pick(packs, lot.One, on(t, "2027-02-01")); short != lot.One {
		t.Error("something past its date was picked")
	}
}

// What has no date goes last, and of like dates the older receipt first (reference: FEFO ties).
func TestTiesGoToTheOlderReceipt(t *testing.T) {
	packs := []lot.Pack{
		{ID: "undated", Bought: 1, Left: lot.One},
		{ID: "younger", Bought: 9, Expires: 50, Left: lot.One},
		{ID: "empty", Bought: 1, Expires: 40},
		{ID: "owed", Bought: 1, Expires: 40, Left: -lot.One},
		{ID: "older", Bought: 5, Expires: 50, Left: lot.One},
	}
	parts, _ := lot.Pick(packs, 3*lot.One, 20)
	want := []lot.Part{{Pack: "older", Q: lot.One}, {Pack: "younger", Q: lot.One}, {Pack: "undated", Q: lot.One}}
	if diff := cmp.Diff(want, parts); diff != "" {
		t.Error(diff)
	}
}
