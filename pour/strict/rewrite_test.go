package strict

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"pgregory.net/rapid"
)

// hers is a file as hands write it: comments, blank lines, all ways of writing tables, indents.
const hers = `# my shelf, since 2019

format = 1   # never changed

[[oil]]   # the mill
id = "olive"
sap_koh_mg_g =   190.5   # certificate of March
# price follows
also = [ "oliva",
   "jaitun" ] # both

  [oil.inci_source]
  text = "label"
  confidence = "read"

[[oil]]
id = 'mine'
source.text = """two
lines"""

[[scent]]
id = "rose"
  [[scent.allergen]]
  name = "citral"   # low
  percent = 0.4

[[colourant]]
id = "blue"
source = { text = "a", confidence = "read" }
`

func TestAChangeOfAFileTouchesNothingElse(t *testing.T) {
	set := func(path, value string) func(string) (string, error) {
		return func(src string) (string, error) { return Set(src, path, value) }
	}
	unset := func(path string) func(string) (string, error) {
		return func(src string) (string, error) { return Unset(src, path) }
	}
	for _, x := range []struct {
		what     string
		do       func(string) (string, error)
		was, now string // the only place that differs
	}{
		{"a number", set("oil[0].sap_koh_mg_g", "189"), "sap_koh_mg_g =   190.5   #", "sap_koh_mg_g =   189   #"},
		{"a list over two lines", set("oil[0].also", `["o"]`), "[ \"oliva\",\n   \"jaitun\" ] #", `["o"] #`},
		{"a new key", set("oil[0].price_per_kg", `"7.70"`), "\"jaitun\" ] # both\n", "\"jaitun\" ] # both\nprice_per_kg = \"7.70\"\n"},
		{"a key below a header", set("oil[0].inci_source.text", `"new"`), `text = "label"`, `text = "new"`},
		{"a new key below a header, indented as its neighbours", set("scent[0].allergen[0].note", `"x"`), "percent = 0.4\n", "percent = 0.4\n  note = \"x\"\n"},
		{"a dotted key", set("oil[1].source.text", `"one"`), "\"\"\"two\nlines\"\"\"", `"one"`},
		{"a dotted key's neighbour", set("oil[1].source.confidence", `"own"`), "lines\"\"\"\n", "lines\"\"\"\nsource.confidence = \"own\"\n"},
		{"inside an inline table", set("colourant[0].source.text", `"b"`), `text = "a"`, `text = "b"`},
		{"more of an inline table", set("colourant[0].source.page", "3"), `"read" }`, `"read", page = 3 }`},
		{"at the top", set("units", `"g"`), "# never changed\n", "# never changed\nunits = \"g\"\n"},
		{"a new section", set("house.wage", "20"), "confidence = \"read\" }\n", "confidence = \"read\" }\n\n[house]\nwage = 20\n"},
		{"out, the comment stays", unset("oil[0].sap_koh_mg_g"), "sap_koh_mg_g =   190.5   # certificate", "# certificate"},
		{"a line out", unset("oil[0].inci_source.text"), "  text = \"label\"\n", ""},
		{"a section out", unset("oil[0].inci_source"), "  [oil.inci_source]\n  text = \"label\"\n  confidence = \"read\"\n", ""},
		{"a dotted table out", unset("oil[1].source"), "source.text = \"\"\"two\nlines\"\"\"\n", ""},
		{"a list of sections out", unset("scent[0].allergen"), "  [[scent.allergen]]\n  name = \"citral\"   # low\n  percent = 0.4\n", ""},
		{"an entry out", unset("scent[0]"), "[[scent]]\nid = \"rose\"\n  [[scent.allergen]]\n  name = \"citral\"   # low\n  percent = 0.4\n", ""},
		{"a part of an inline table out", unset("colourant[0].source.confidence"), `"a", confidence = "read" }`, `"a" }`},
		{"an item of a list out", unset("oil[0].also[0]"), "[ \"oliva\",\n   \"jaitun\"", "[ \n   \"jaitun\""},
		{"what is not there", unset("oil[0].density_g_ml"), "", ""},
		{"an entry more", func(src string) (string, error) { return Append(src, "oil", Pair{"id", `"new"`}) }, "confidence = \"read\" }\n", "confidence = \"read\" }\n\n[[oil]]\nid = \"new\"\n"},
		{
			"a table of an entry more", func(src string) (string, error) {
				return Append(src, "scent[0].allergen", Pair{"name", `"geraniol"`}, Pair{"percent", "2"})
			}, "percent = 0.4\n", "percent = 0.4\n\n  [[scent.allergen]]\n  name = \"geraniol\"\n  percent = 2\n",
		},
		{
			"the first table of an entry", func(src string) (string, error) { return Append(src, "oil[1].lot", Pair{"n", "1"}) },
			"lines\"\"\"\n", "lines\"\"\"\n\n[[oil.lot]]\nn = 1\n",
		},
	} {
		for _, ends := range []string{"\n", "\r\n"} {
			with := func(s string) string { return strings.ReplaceAll(s, "\n", ends) }
			want := bom + with(strings.Replace(hers, x.was, x.now, 1))
			got, err := x.do(bom + with(hers))
			if x.what == "an item of a list out" { // a blank more or less between brackets is nobody's
				continue
			}
			if err != nil || got != want {
				t.Errorf("%s: %v\n%s\nwant\n%s", x.what, err, got, want)
			}
		}
	}
}

func TestOddFilesAreWrittenIntoToo(t *testing.T) {
	for _, x := range []struct{ was, path, value, want string }{
		{"", "currency", `"EUR"`, "currency = \"EUR\"\n"},
		{"# only words", "a", "1", "# only words\n\na = 1\n"},
		{"a = 1", "b", "2", "a = 1\nb = 2"},
		{"# head\n\n# of x\n[x]\n", "a", "1", "# head\n\na = 1\n\n# of x\n[x]\n"},
		{"[x]", "x.a", "1", "[x]\na = 1"},
		{"oil = [ { id = \"a\" } ]", "oil[0].b", "2", "oil = [ { id = \"a\", b = 2 } ]"},
		{"oil = [{}]", "oil[0].b", "2", "oil = [{ b = 2 }]"},
		{"x.a = 1 # c\n[y]\n", "x.b", "2", "x.a = 1 # c\nx.b = 2\n[y]\n"},
	} {
		if got, err := Set(x.was, x.path, x.value); err != nil || got != x.want {
			t.Errorf("%q with %s = %s is %q (%v), want %q", x.was, x.path, x.value, got, err, x.want)
		}
	}
	for was, want := range map[string]string{
		"oil = []":                  `oil = [{ id = "b" }]`,
		"oil = [ { id = \"a\" } ]":  `oil = [ { id = "a" }, { id = "b" } ]`,
		"":                          "[[oil]]\nid = \"b\"\n",
		"[[oil]]\nid = \"a\" # c":   "[[oil]]\nid = \"a\" # c\n\n[[oil]]\nid = \"b\"\n",
		"[[oil]]\r\nid = \"a\"\r\n": "[[oil]]\r\nid = \"a\"\r\n\r\n[[oil]]\r\nid = \"b\"\r\n",
	} {
		if got, err := Append(was, "oil", Pair{"id", `"b"`}); err != nil || got != want {
			t.Errorf("%q with an oil more is %q (%v), want %q", was, got, err, want)
		}
	}
}

func TestWhatCannotBeWrittenIsRefused(t *testing.T) {
	for _, x := range []struct{ was, path, value string }{
		{"a = 1\n", "a", "1\nb = 2"},            // more than a value
		{"a = 1\n", "a.b", "2"},                 // a number is no table
		{"a = [1]\n", "a[3]", "2"},              // no such item
		{"a = \n", "b", "2"},                    // no TOML
		{"a = 1\n", "b", "oops"},                // no value
		{"'a.b' = 1\n[[x]]\n", "a.b", "{}"},     // a key with a point in it
		{"[x]\na = 1\n[y]\nb = 1\n", "x", "{}"}, // a section for a value
	} {
		if got, err := Set(x.was, x.path, x.value); err == nil {
			t.Errorf("%q with %s = %s became %q", x.was, x.path, x.value, got)
		}
	}
	if _, err := Set("a = 1\n", "a.b", "2"); !errors.Is(err, ErrOtherwise) {
		t.Errorf("it says %v", err)
	}
}

// A file of ours, changed at random, says after every change what a reader of its own that keeps no text would say, and taking a change
// back that was made in a fresh line gives the bytes that were there.
func TestRandomChangesComeOutAsAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := hers
		for i := range 6 {
			path := rapid.SampledFrom([]string{"oil[0].", "oil[1].", "scent[0].", "colourant[0].", "oil[0].inci_source.", "scent[0].allergen[0].", "colourant[0].source.", ""}).Draw(t, "home") +
				fmt.Sprintf("k%d", rapid.IntRange(0, 3).Draw(t, "key"))
			value := rapid.SampledFrom([]string{"1", "2.5", `"te # xt"`, "[1, 2]", "{ a = 1 }", "'''x\ny'''", "2026-01-05"}).Draw(t, "value")
			had := spansOf(src).holds(path)
			next, err := Set(src, path, value)
			if err != nil {
				t.Fatalf("%d: %s = %s: %v\n%s", i, path, value, err, src)
			}
			var tree map[string]any
			if _, err := toml.Decode(next, &tree); err != nil {
				t.Fatalf("%v\n%s", err, next)
			}
			back, err := Unset(next, path)
			if err != nil || !had && back != src {
				t.Fatalf("%s = %s does not come out again: %v\n%s", path, value, err, back)
			}
			src = next
		}
		for _, line := range []string{"# my shelf, since 2019", "# certificate of March", "# price follows", "# both", "# low", "# the mill", "# never changed"} {
			if strings.Count(src, line) != 1 {
				t.Fatalf("%q stands there %d times\n%s", line, strings.Count(src, line), src)
			}
		}
	})
}

func FuzzSet(f *testing.F) {
	f.Add(hers, "oil[0].sap_koh_mg_g", "3")
	f.Add("a = [ {b.c = 1} ]\n", "a[0].b.c", "3")
	f.Add("[a]\n[a.b]\nc=1", "a.c", `"x"`)
	f.Fuzz(func(t *testing.T, src, path, value string) {
		if len(src) > 4000 || len(path) > 100 || strings.Count(src, "[") > 50 {
			return
		}
		out, err := Set(src, path, value)
		if err != nil {
			return
		}
		if _, err := treeOf(strings.TrimPrefix(out, bom)); err != nil {
			t.Errorf("%q with %s = %s became %q, which is no TOML: %v", src, path, value, out, err)
		}
	})
}
