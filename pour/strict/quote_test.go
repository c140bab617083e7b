package strict

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"pgregory.net/rapid"
)

func TestWhatIsQuotedIsReadBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.OneOf(
			rapid.StringOfN(rapid.SampledFrom([]rune("a\"\\\n\t\r\x00\x1b\x7f\u009f'#é [=")), 0, 12, -1), rapid.String(),
		).Draw(rt, "text")
		for _, quoted := range []string{Quote(text), QuoteLines(text)} {
			var back struct{ A string }
			if _, err := toml.Decode("a = "+quoted, &back); err != nil || back.A != text {
				rt.Fatalf("%q is written %s and read as %q (%v)", text, quoted, back.A, err)
			}
		}
		if strings.ContainsAny(Quote(text), "\n\x00\x1b\x7f\u009f\r") {
			rt.Fatalf("%q is not safe to print", Quote(text))
		}
	})
}

func TestQuotesLookWrittenByHand(t *testing.T) {
	for text, want := range map[string]string{
		`a "b" \c`: `"a \"b\" \\c"`, "a\tb": `"a\tb"`, "a\nb": `"a\nb"`, "\x01\x1f\u0080\u009f": `"\u0001\u001F\u0080\u009F"`, "\xff": "\"\ufffd\"", "é~ ": `"é~ "`,
	} {
		if got := Quote(text); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	for text, want := range map[string]string{
		"one": `"one"`, "a \"b\"\nc": "\"\"\"\na \"b\"\nc\"\"\"", "a\n\"\"\"": "\"\"\"\na\n\"\\\"\\\"\"\"\"", "a\n\"": "\"\"\"\na\n\\\"\"\"\"", "a\n\\": "\"\"\"\na\n\\\\\"\"\"",
	} {
		if got := QuoteLines(text); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

func TestAReferenceStandsInColumns(t *testing.T) {
	got := Reference("[hob]", "what is under the pot", []Told{
		{"heat", "0 to 9", "3", "how hot"},
		{"plate", "takes twenty letters", "", "which"},
		{"a_key_that_fills_it_whole", "one, two, three, four", "", "which of the plates " + strings.Repeat("and so on ", 6)},
	})
	want := `[hob]  what is under the pot
  heat                       0 to 9                3         how hot
  plate                      takes twenty letters            which
  a_key_that_fills_it_whole                                  which of the plates and so on and so on and so on and so on
                                                             and so on and so on
                             one, two, three, four
`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
