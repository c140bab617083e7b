package look

import (
	"testing"

	"pourbench/tui/screen"
)

// contrast is the contrast ratio of WCAG 2.2, success criterion 1.4.3, which asks for 4.5 for text.
func contrast(a, b screen.Colour) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func TestEveryRoleReadsOnItsBackground(t *testing.T) {
	for _, c := range []struct {
		dark bool
		bg   screen.Colour
	}{
		{true, screen.RGB(0x00, 0x00, 0x00)},
		{true, screen.RGB(0x28, 0x28, 0x2c)},
		{false, screen.RGB(0xff, 0xff, 0xff)},
		{false, screen.RGB(0xfb, 0xf3, 0xdf)},
	} {
		l := New(c.dark)
		roles := map[string]screen.Style{
			"quiet": l.Quiet, "focus": l.Focus, "accent": l.Accent, "typing": l.Typing, "wrong": l.Wrong,
			"good": l.Good, "note": l.Note, "caution": l.Caution, "stop": l.Stop, "stale": l.Stale,
			"light": l.Stages[1], "medium": l.Stages[2], "thick": l.Stages[3], "stiff": l.Stages[4],
		}
		for name, st := range roles {
			if got := contrast(st.Fg, c.bg); got < 4.5 {
				t.Errorf("%s on %06x (dark %v) has a contrast of %.2f, want at least 4.5", name, uint32(c.bg)&0xffffff, c.dark, got)
			}
		}
	}
}

func TestReadableContrastsWithEveryGrey(t *testing.T) {
	for v := range 256 {
		bg := screen.RGB(uint8(v), uint8(v), uint8(v))
		if got := contrast(Readable(bg), bg); got < 4.5 {
			t.Errorf("text on grey %d has a contrast of %.2f", v, got)
		}
	}
}

func TestLettersGoOnAfterZ(t *testing.T) {
	for jug, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 63: "BL"} {
		if got := Letter(jug); got != want {
			t.Errorf("Letter(%d) = %q, want %q", jug, got, want)
		}
	}
}
