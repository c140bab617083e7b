package planfile

import "testing"

func TestWhatMayBeTheEchoOfAFaultIsNotToldAgain(t *testing.T) {
	for _, x := range []struct {
		path, said string
		want       bool
	}{
		{"base.jug", "base.jug", true},
		{"base.jug", "base.jug[1].share_percent", true},
		{"base.jug[1].name", "base.jug", true},
		{"base.jug[1].name", "base.jug[1]", true},
		{"base.scent[0].into", "base.jug[1].name", true},
		{"base.scent[0].scent", "base.jug[1].name", false},
		{"base.scent[0].into", "icing.jug[1].name", false},
		{"base.scent[0].into", "base.oil[1].percent", false},
		{"base.jug[1].into", "base.jugs", false},
		{"base.oil", "base.oils_g", false},
		{"base.oils_g", "base.oil", false},
		{"mould.bar_width_mm", "mould.bar", false},
		{"name", "", false},
	} {
		if got := follows(x.path, x.said); got != x.want {
			t.Errorf("%s after %q: %v, want %v", x.path, x.said, got, x.want)
		}
	}
}
