package look

import (
	"image/color"
	"testing"

	"github.com/charmbracelet/colorprofile"

	"pourbench/chem/colour"
	"pourbench/tui/screen"
)

// grounds are backgrounds in common use. The greys are those of dark schemes, some of them bluish.
func grounds(dark bool) []uint32 {
	if dark {
		return []uint32{0x000000, 0x1e1e1e, 0x28282c, 0x2e3440, 0x3f3f3f, 0x404552, 0x444444}
	}
	return []uint32{0xffffff, 0xfbf3df, 0xeee8d5, 0xe5e5e5}
}

func rgb(v uint32) screen.Colour { return screen.RGB(uint8(v>>16), uint8(v>>8), uint8(v)) }

// roles are the styles that text and signs are drawn in, by name.
func roles(l Look) map[string]screen.Style {
	return map[string]screen.Style{
		"text": l.Text, "strong": l.Strong,
		"quiet": l.Quiet, "focus": l.Focus, "accent": l.Accent, "typing": l.Typing, "wrong": l.Wrong,
		"good": l.Good, "note": l.Note, "caution": l.Caution, "stop": l.Stop, "stale": l.Stale,
		"emulsion": l.Stages[0], "light": l.Stages[1], "medium": l.Stages[2], "thick": l.Stages[3], "stiff": l.Stages[4],
	}
}

// WCAG 2.2 asks 4.5 to 1 of text (success criterion 1.4.3) and 3 to 1 of the borders of what is operated (1.4.11).
const (
	textContrast = 4.5
	ruleContrast = 3.0
)

// In 256 colours the nearest of them stands in, as the terminal library picks it.
func TestEveryRoleAndEveryRuleReadsOnEveryCommonGround(t *testing.T) {
	for _, profile := range []colorprofile.Profile{colorprofile.TrueColor, colorprofile.ANSI256} {
		drawn := func(c screen.Colour) screen.Colour {
			r, g, b := c.Channels()
			return screen.From(profile.Convert(color.RGBA{R: r, G: g, B: b, A: 255}))
		}
		for _, dark := range []bool{true, false} {
			l := New(dark)
			for _, ground := range grounds(dark) {
				for name, st := range roles(l) {
					if got := contrast(drawn(st.Fg), rgb(ground)); st.Fg != 0 && got < textContrast {
						t.Errorf("%s in %v on %06x contrasts %.2f to 1", name, profile, ground, got)
					}
				}
				if got := contrast(drawn(l.Rule.Fg), rgb(ground)); got < ruleContrast {
					t.Errorf("rules in %v on %06x contrast %.2f to 1", profile, ground, got)
				}
			}
		}
	}
}

// told are roles that may stand for each other in one place, with nothing but the colour and their sign to tell them apart.
func told(l Look) map[string][2]screen.Style {
	return map[string][2]screen.Style{
		"focus and rule": {l.Focus, l.Rule}, "accent and quiet": {l.Accent, l.Quiet}, "good and wrong": {l.Good, l.Wrong},
		"note and caution": {l.Note, l.Caution}, "note and stop": {l.Note, l.Stop}, "good and caution": {l.Good, l.Caution}, "note and good": {l.Note, l.Good},
	}
}

// apart is the least CIEDE2000 difference at which two roles are told apart at a glance: our own choice, over twice the difference
// of 2.3 that is called just noticeable (Mahy, Van Eycken and Oosterlinck 1994, from memory). Caution and stop may lie nearer: each has its
// sign, "!" and "■", and a stop is reversed. So do the stages, whose glyphs are shaded more and more.
const apart = 5.0

func TestRolesAreToldApartByEveryEye(t *testing.T) {
	for _, dark := range []bool{true, false} {
		for name, pair := range told(New(dark)) {
			a, b := linearRGB(pair[0].Fg), linearRGB(pair[1].Fg)
			for _, eye := range []colour.Sight{colour.EveryEye, colour.Protanopia, colour.Deuteranopia, colour.Tritanopia} {
				if got := a.SeenBy(eye).Difference(b.SeenBy(eye)); got < apart {
					t.Errorf("dark %v, %s: %s sees a difference of %.1f", dark, name, eye, got)
				}
			}
		}
	}
}

func linearRGB(c screen.Colour) colour.RGB {
	r, g, b := c.Channels()
	return colour.RGB{R: linear(r), G: linear(g), B: linear(b)}
}

// usual are sets of sixteen colours that terminals come with: those of the VGA text screen, and xterm's own; both from memory.
func usual() map[string][16]uint32 {
	return map[string][16]uint32{
		"VGA": {
			0x000000, 0xaa0000, 0x00aa00, 0xaa5500, 0x0000aa, 0xaa00aa, 0x00aaaa, 0xaaaaaa,
			0x555555, 0xff5555, 0x55ff55, 0xffff55, 0x5555ff, 0xff55ff, 0x55ffff, 0xffffff,
		},
		"xterm": {
			0x000000, 0xcd0000, 0x00cd00, 0xcdcd00, 0x0000ee, 0xcd00cd, 0x00cdcd, 0xe5e5e5,
			0x7f7f7f, 0xff0000, 0x00ff00, 0xffff00, 0x5c5cff, 0xff00ff, 0x00ffff, 0xffffff,
		},
	}
}

func TestTheSixteenColoursReadOnBlackAndWhiteAndShareNoRed(t *testing.T) {
	for set, colours := range usual() {
		for _, dark := range []bool{true, false} {
			ground := map[bool]uint32{true: 0x000000, false: 0xffffff}[dark]
			l := Sixteen(dark)
			for name, st := range roles(l) {
				if st.Fg == 0 {
					continue
				}
				_, _, place := st.Fg.Channels()
				least := textContrast
				if st.Fg == l.Quiet.Fg {
					least = ruleContrast + 0.9 // xterm's grey on white
				}
				if got := contrast(rgb(colours[place]), rgb(ground)); got < least {
					t.Errorf("%s, dark %v: %s contrasts %.2f to 1", set, dark, name, got)
				}
			}
		}
	}
	for _, dark := range []bool{true, false} {
		l := Sixteen(dark)
		distinct(t, "focus, caution, stop, quiet", l.Focus.Fg, l.Caution.Fg, l.Stop.Fg, l.Quiet.Fg)
		distinct(t, "the stages", l.Stages[0].Fg, l.Stages[1].Fg, l.Stages[2].Fg, l.Stages[3].Fg, l.Stages[4].Fg)
		distinct(t, "good, wrong, caution", l.Good.Fg, l.Wrong.Fg, l.Caution.Fg)
		if l.Accent.Fg == l.Stop.Fg {
			t.Error("keys share the colour of a stop")
		}
	}
}

func distinct(t *testing.T, what string, colours ...screen.Colour) {
	t.Helper()
	seen := map[screen.Colour]bool{}
	for _, c := range colours {
		if seen[c] {
			t.Errorf("%s: two share a colour", what)
		}
		seen[c] = true
	}
}

// Nothing pale may stand on white, nor anything dark on black.
func TestOnAGroundThatIsNotKnownEverythingHasTheTerminalsOwnColour(t *testing.T) {
	for name, st := range roles(Own()) {
		if st.Fg != 0 || st.Bg != 0 {
			t.Errorf("%s has a colour", name)
		}
	}
	if On(Unknown, false) != Own() || On(Unknown, true) != Own() || On(Dark, false) != New(true) || On(Light, true) != Sixteen(false) {
		t.Error("a ground has another look than its own")
	}
}

func TestTheGroundIsThatAskedForThenThatOfTheEnvironment(t *testing.T) {
	for _, c := range []struct {
		asked, env string
		want       Ground
	}{
		{"dark", "COLORFGBG=0;15", Dark},
		{"light", "COLORFGBG=15;0", Light},
		{"auto", "COLORFGBG=15;0", Dark},
		{"auto", "COLORFGBG=0;15", Light},
		{"", "COLORFGBG=0;default;15", Light},
		{"auto", "COLORFGBG=7;8", Dark},
		{"auto", "COLORFGBG=0;7", Light},
		{"auto", "COLORFGBG=15;default", Unknown},
		{"auto", "COLORFGBG=", Unknown},
		{"auto", "COLORFGBG=0;99", Unknown},
		{"auto", "COLORFGBG=0;-1", Unknown},
		{"auto", "TERM=xterm", Unknown},
	} {
		if got := Before(c.asked, []string{c.env}); got != c.want {
			t.Errorf("asked %q with %s the ground is %d, want %d", c.asked, c.env, got, c.want)
		}
	}
}
