package planfile

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

func FuzzRead(f *testing.F) {
	s := shelf(f)
	for _, name := range append(goodPlans(), "broken-comma.toml", "broken-four.toml", "broken-newer.toml") {
		f.Add(planText(f, name))
	}
	for _, text := range []string{"", "a = [[[", "[[a]]\n[a.b]\n", "x = '''\n''''''", "\ufeffformat = 1", "format = 1\r\n[\"\"]\n\"\".'' = {}", "[base.\"x.y\"]"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := Read("plan.toml", strings.NewReader(text), s)
		if err != nil {
			report := err.Error()
			if !utf8.ValidString(report) || strings.ContainsFunc(report, func(r rune) bool { return unicode.IsControl(r) && r != '\n' }) {
				t.Fatalf("the report is not safe to print: %q", report)
			}
			return
		}
		written, err := encode(p)
		if err != nil {
			t.Fatalf("what was read cannot be written: %v", err)
		}
		back, err := Read("plan.toml", strings.NewReader(written), s)
		if err != nil {
			t.Fatalf("what was written cannot be read: %v\n%s", err, written)
		}
		if d := difference(p, back); d != "" {
			t.Fatalf("%s\n%s", d, written)
		}
	})
}
