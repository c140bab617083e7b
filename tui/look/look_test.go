package look

import (
	"testing"

	"github.com/charmbracelet/colorprofile"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/tui/screen"
)

// contrast is the contrast ratio of WCAG 2.2, success criterion 1.4.3, which asks for 4.5 for text.
func contrast(a, b screen.Colour) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
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

// Colour only adds to a sign: every severity has its own, and so has every stage.
func TestEverySeverityAndStageHasASignOfItsOwn(t *testing.T) {
	l := New(true)
	for s, want := range map[pour.Severity]struct {
		mark  string
		style screen.Style
	}{pour.Stop: {"■", l.Stop}, pour.Caution: {"!", l.Caution}, pour.Note: {"·", l.Note}} {
		if Mark(s) != want.mark || l.Severity(s) != want.style {
			t.Errorf("%s is marked %q in %+v", s, Mark(s), l.Severity(s))
		}
	}
	signs := ""
	for s := range chem.Stage(chem.Stages) {
		signs += StageGlyph(s)
	}
	if signs != "·░▒▓█" {
		t.Errorf("the stages are drawn %q", signs)
	}
	if l.Stop.Attr&screen.Reverse == 0 || l.Caution.Attr&screen.Bold == 0 || l.Note.Attr != 0 {
		t.Error("without colour a stop, a caution and a note look alike")
	}
}

// Black on white and white on black contrast 21 to 1, the most there is (WCAG 2.2).
func TestTheLuminanceIsThatOfTheStandard(t *testing.T) {
	if got := contrast(screen.RGB(0, 0, 0), screen.RGB(255, 255, 255)); got < 20.999 || got > 21.001 {
		t.Errorf("black on white contrasts %v to 1", got)
	}
	for c, want := range map[screen.Colour]float64{screen.RGB(255, 0, 0): 0.2126, screen.RGB(0, 255, 0): 0.7152, screen.RGB(0, 0, 255): 0.0722} {
		if got := luminance(c); got < want-1e-6 || got > want+1e-6 {
			t.Errorf("a pure channel has the luminance %v, want %v", got, want)
		}
	}
	if got := contrast(screen.RGB(0x76, 0x76, 0x76), screen.RGB(255, 255, 255)); got < 4.5 || got > 4.6 {
		t.Errorf("#767676 on white, the lightest grey that passes 4.5, contrasts %.3f", got)
	}
}

func TestTheProfileIsThatOfTheFlagThenOfTheEnvironment(t *testing.T) {
	none, some := []string{"NO_COLOR=1"}, []string{"TERM=xterm-256color", "COLORTERM=truecolor"}
	for _, c := range []struct {
		colour  string
		environ []string
		want    colorprofile.Profile
		known   bool
	}{
		{"never", some, colorprofile.ASCII, true},
		{"truecolor", none, colorprofile.TrueColor, true},
		{"256", none, colorprofile.ANSI256, true},
		{"16", some, colorprofile.ANSI, true},
		{"always", some, colorprofile.TrueColor, true},
		{"always", []string{"TERM=dumb"}, colorprofile.ANSI, true},
		{"auto", none, colorprofile.ASCII, true},
		{"", none, colorprofile.ASCII, true},
		{"auto", some, colorprofile.ASCII, false},
		{"auto", []string{"NO_COLOR="}, colorprofile.ASCII, false},
		{"auto", []string{"NO_COLORS=1"}, colorprofile.ASCII, false},
	} {
		if got, known := Profile(c.colour, c.environ); known != c.known || known && got != c.want {
			t.Errorf("%q with %q is %v, known %v; want %v, %v", c.colour, c.environ, got, known, c.want, c.known)
		}
	}
}
