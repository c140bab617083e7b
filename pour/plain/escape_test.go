package plain_test

import (
	"testing"

	"pourbench/pour/plain"
)

// Examples of ECMA-48 (5th edition, 1991): SGR 8.3.117, CUP 8.3.21, OSC 8.3.89, DCS 8.3.27, ST 8.3.143. What an escape drags along goes with it; a
// sequence without an end takes nothing with it.
func TestAnEscapeGoesWithWhatItDragsAlong(t *testing.T) {
	for in, want := range map[string]string{
		"\x1b[31mRed\x1b[0m meadow": "Red meadow",
		"\u009b31mRed":              "Red",
		"p\u009bot":                 "pot",
		"\x1b[2;5HHere":             "Here",
		"\x1b[?25lhidden":           "hidden",
		"\x1b[1 qcursor":            "cursor",
		"a\x1b]0;title\ab":          "ab",
		"a\x1b]8;;http://x\x1b\\b\x1b]8;;\x1b\\c": "abc",
		"a\x1bPq#0\u009cb":                        "ab",
		"\x1b]0;never ended":                      "0;never ended",
		"\x1b[31":                                 "31",
		"\x1b[31é":                                "31é",
		"\x1b\x1b[1mx":                            "x",
		"[31m stays where no escape came before":  "[31m stays where no escape came before",
		"\x1bA":                                   "A",
	} {
		if got := plain.Line(in); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
		if got := plain.Line(plain.Line(in)); got != want {
			t.Errorf("%q cleaned twice becomes %q, want %q", in, got, want)
		}
	}
	if got, want := plain.Text("a\x1b]0;x\nb\ac"), "a0;x\nbc"; got != want {
		t.Errorf("a command string ran on over its line: %q, want %q", got, want)
	}
}
