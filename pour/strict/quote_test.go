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

func TestLinesAreAsLongAsTheyMayBe(t *testing.T) {
	for w, want := range map[int]string{8: "one two|three", 9: "one two|three", 7: "one two|three", 6: "one|two|three", 13: "one two three", 12: "one two|three", 1: "one|two|three"} {
		if got := strings.Join(wrapped("one  two three", w), "|"); got != want {
			t.Errorf("in %d letters: %s, want %s", w, got, want)
		}
	}
	long := strings.Repeat("word, ", 15) + "l"
	if got := Reference("[a]", "", []Told{{Key: "k", Takes: long}}); !strings.Contains(got, "\n"+strings.Repeat(" ", 29)+long+"\n") {
		t.Errorf("what takes 91 letters is parted:\n%s", got)
	}
	if got := Reference("[a]", "", []Told{{Key: "k", Takes: long + "l"}}); !strings.Contains(got, "word,\n"+strings.Repeat(" ", 29)+"ll\n") {
		t.Errorf("what takes 92 letters is not parted:\n%s", got)
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
