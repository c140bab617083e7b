package labelfile_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/pour/labelfile"
)

const written = `# labels
format = 1
logo = "mark.png" # drawn in spring

[[maker]]
name = "Mill Soaps" # everywhere
address = "12 Mill Lane, Oldtown"

[[maker]]
market = "gb"
name = "Mill Soaps (GB)"
contact = "01234 567890"

[[report]]
id = "R-12" # first family
about = "olive bars"
on = 2026-03-14

  [[report.range]]
  of = "oil olive"
  least = 25
  most = 40

  [[report.range]]
  of = "white"
  most = 0.8

[[report]]
id = "R-13"
on = 2026-04-01

[[report.range]]
of = "superfat"
least = 3
most = 8
`

func march(t *testing.T, text string) day.Day {
	t.Helper()
	d, err := day.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestLabelsAreReadAsTheyAreWritten(t *testing.T) {
	got, err := labelfile.Read("label.toml", written)
	if err != nil {
		t.Fatal(err)
	}
	want := label.House{
		Logo:   "mark.png",
		Makers: []label.Maker{{Name: "Mill Soaps", Address: "12 Mill Lane, Oldtown"}, {Market: "gb", Name: "Mill Soaps (GB)", Contact: "01234 567890"}},
		Reports: []label.Report{
			{ID: "R-12", Of: "olive bars", On: march(t, "2026-03-14"), Ranges: []label.Range{{Kind: label.RangeOil, ID: "olive", Least: 25, Most: 40}, {Kind: label.RangeWhite, Most: 0.8}}},
			{ID: "R-13", On: march(t, "2026-04-01"), Ranges: []label.Range{{Kind: label.RangeSuperfat, Least: 3, Most: 8}}},
		},
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	for market, name := range map[string]string{"gb": "Mill Soaps (GB)", "eu": "Mill Soaps"} {
		if m, ok := got.MakerIn(market); !ok || m.Name != name {
			t.Errorf("%s: %+v", market, m)
		}
	}
	if none, err := labelfile.Read("label.toml", "\n"); err != nil || cmp.Diff(label.House{}, none) != "" {
		t.Errorf("no text states %+v, %v", none, err)
	}
}

func TestWhatCannotBeIsRefusedWithItsLineAndAMend(t *testing.T) {
	report := "format = 1\n[[report]]\nid = \"a\"\non = 2026-03-14\n"
	for text, want := range map[string]string{
		"logo = \"a.png\"\n":                                                                      "write format = 1",
		"format = 2\n":                                                                            "none this program reads",
		"format = 1\nlogo = \"a.svg\"\n":                                                          ".png, .jpg or .jpeg",
		"format = 1\nlogos = \"a.png\"\n":                                                         "did you mean logo",
		"format = 1\n[[maker]]\naddress = \"x\"\n":                                                "name: is missing",
		"format = 1\n[[maker]]\nname = \" \"\n":                                                   "is empty",
		"format = 1\n[[maker]]\nname = 3\n":                                                       "in double quotes",
		"format = 1\n[[maker]]\nname = \"a\"\n[[maker]]\nname=\"b\"":                              "without a market",
		"format = 1\n[[maker]]\nname = \"" + strings.Repeat("a", 121) + "\"\n":                    "121 letters",
		"format = 1\n[[report]]\nid = \"a\"\n":                                                    "on: is missing",
		"format = 1\n[[report]]\nid = \"a\"\non = \"2026-03-14\"\n":                               "without quotes",
		"format = 1\n[[report]]\non = 2026-03-14\n":                                               "id: is missing",
		report + "[[report]]\nid = \"a\"\non = 2026-03-14\n":                                      "twice",
		report + "[[report.range]]\nof = \"oil\"\nmost = 3\n":                                     "does not say which oil",
		report + "[[report.range]]\nof = \"fat olive\"\nmost = 3\n":                               "nothing a report has a range for",
		report + "[[report.range]]\nof = \"white titanium\"\nmost = 3\n":                          "all together",
		report + "[[report.range]]\nof = \"\"\nmost = 3\n":                                        "nothing a report has a range for",
		report + "[[report.range]]\nof = \"oil olive\"\n":                                         "most: is missing",
		report + "[[report.range]]\nmost = 3\n":                                                   "of: is missing",
		report + "[[report.range]]\nof = \"oil olive\"\nmost = 101\n":                             "100",
		report + "[[report.range]]\nof = \"oil olive\"\nmost = nan\n":                             "most",
		report + "[[report.range]]\nof = \"oil olive\"\nleast = -1\nmost = 3\n":                   "least",
		report + "[[report.range]]\nof = \"oil olive\"\nleast = 4\nmost = 3\n":                    "smaller of the two",
		report + "[[report.range]]\nof=\"white\"\nmost=3\n[[report.range]]\nof=\"white\"\nmost=3": "two ranges",
	} {
		h, err := labelfile.Read("label.toml", text)
		if err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "label.toml") || h.Makers != nil || h.Reports != nil {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

func store(t *testing.T, text string) labelfile.Store {
	t.Helper()
	s := labelfile.NewStore(filepath.Join(t.TempDir(), "data"))
	if text == "" {
		return s
	}
	if err := os.MkdirAll(s.Dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(s.Path(), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return s
}

func holds(t *testing.T, name string, s labelfile.Store, want string) {
	t.Helper()
	got, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, string(got)); d != "" {
		t.Errorf("%s: %s", name, d)
	}
}

func TestOneLineIsChangedAndTheRestStays(t *testing.T) {
	olive := label.Range{Kind: label.RangeOil, ID: "olive", Least: 20, Most: 44.5}
	for name, c := range map[string]struct {
		do       func(labelfile.Store) error
		old, new string
	}{
		"logo":                {func(s labelfile.Store) error { return s.SetLogo("b.jpg") }, `"mark.png" #`, `"b.jpg" #`},
		"the maker elsewhere": {func(s labelfile.Store) error { return s.SetMaker("", "name", "Old Mill") }, `"Mill Soaps" #`, `"Old Mill" #`},
		"a maker's contact":   {func(s labelfile.Store) error { return s.SetMaker("gb", "contact", "") }, "contact = \"01234 567890\"\n", ""},
		"another maker":       {func(s labelfile.Store) error { return s.SetMaker("eu", "name", "Mühle") }, "most = 8\n", "most = 8\n\n[[maker]]\nmarket = \"eu\"\nname = \"Mühle\"\n"},
		"no maker in GB":      {func(s labelfile.Store) error { return s.DropMaker("gb") }, "[[maker]]\nmarket = \"gb\"\nname = \"Mill Soaps (GB)\"\ncontact = \"01234 567890\"\n", ""},
		"a range":             {func(s labelfile.Store) error { return s.SetRange("R-12", olive) }, "least = 25\n  most = 40", "least = 20\n  most = 44.5"},
		"a range's least": {func(s labelfile.Store) error {
			return s.SetRange("R-13", label.Range{Kind: label.RangeSuperfat, Most: 8})
		}, "least = 3\n", ""},
		"a range more": {
			func(s labelfile.Store) error {
				return s.SetRange("R-12", label.Range{Kind: label.RangeScent, ID: "lavender", Most: 2})
			},
			"most = 0.8\n", "most = 0.8\n\n  [[report.range]]\n  of = \"scent lavender\"\n  most = 2\n",
		},
		"a range less": {func(s labelfile.Store) error { return s.DropRange("R-12", label.Range{Kind: label.RangeWhite}) }, "  [[report.range]]\n  of = \"white\"\n  most = 0.8\n", ""},
		"a report":     {func(s labelfile.Store) error { return s.SetReport("R-12", "all bars", march(t, "2026-03-15")) }, "about = \"olive bars\"\non = 2026-03-14", "about = \"all bars\"\non = 2026-03-15"},
		"a new report": {
			func(s labelfile.Store) error {
				return s.AddReport(label.Report{ID: "R-14", On: march(t, "2026-05-02"), Ranges: []label.Range{olive, {Kind: label.RangeWhite, Most: 1}}})
			},
			"most = 8\n", "most = 8\n\n[[report]]\nid = \"R-14\"\non = 2026-05-02\n\n[[report.range]]\nof = \"oil olive\"\nleast = 20\nmost = 44.5\n\n[[report.range]]\nof = \"white\"\nmost = 1\n",
		},
		"nothing": {func(s labelfile.Store) error { return s.SetMaker("ca", "contact", "") }, "labels", "labels"},
	} {
		s := store(t, written)
		if err := c.do(s); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		holds(t, name, s, strings.Replace(written, c.old, c.new, 1))
	}
	s := store(t, written)
	if err := s.DropReport("R-12"); err != nil {
		t.Error(err)
	}
	if h, err := labelfile.Load(s.Dir); err != nil || len(h.Reports) != 1 || h.Reports[0].ID != "R-13" || len(h.Makers) != 2 || h.Logo != filepath.Join(s.Dir, "mark.png") {
		t.Errorf("%+v, %v", h, err)
	}
}

func TestTheFileBeginsWithTheFirstThingStated(t *testing.T) {
	s := store(t, "")
	if h, err := labelfile.Load(s.Dir); err != nil || cmp.Diff(label.House{}, h) != "" {
		t.Errorf("without a file: %+v, %v", h, err)
	}
	if err := s.SetLogo(""); err != nil {
		t.Error(err)
	}
	if _, err := os.Stat(s.Path()); err == nil {
		t.Error("stating nothing made a file")
	}
	r := label.Report{ID: "R-1", Of: "all", On: march(t, "2026-05-02"), Ranges: []label.Range{{Kind: label.RangeWhite, Least: 0.001, Most: 1}}}
	for what, err := range map[string]error{"report": s.AddReport(r), "maker": s.SetMaker("", "name", "Mill"), "logo": s.SetLogo("/pictures/mill.jpg")} {
		if err != nil {
			t.Errorf("%s: %v", what, err)
		}
	}
	h, err := labelfile.Load(s.Dir)
	want := label.House{Logo: "/pictures/mill.jpg", Makers: []label.Maker{{Name: "Mill"}}, Reports: []label.Report{r}}
	if d := cmp.Diff(want, h); d != "" || err != nil {
		t.Errorf("%v%s", err, d)
	}
	text, err := os.ReadFile(s.Path())
	if err != nil || !strings.HasPrefix(string(text), "# What your labels say.") {
		t.Errorf("%s, %v", text, err)
	}
}

func TestWhatCannotBeIsNotWritten(t *testing.T) {
	s := store(t, written)
	for want, err := range map[string]error{
		"did you mean \"address\"": s.SetMaker("", "addr", "x"),
		"name: is missing":         s.SetMaker("ca", "contact", "x"),
		"letters":                  s.SetMaker("", "name", strings.Repeat("x", 200)),
		"no maker is stated":       s.DropMaker("us"),
		".jpeg":                    s.SetLogo("mark.gif"),
		"already":                  s.AddReport(label.Report{ID: "R-12"}),
		"did you mean \"R-12\"":    s.SetRange("R-122", label.Range{Kind: label.RangeWhite, Most: 1}),
		"add it first":             s.DropReport("of last year"),
		"smaller of the two":       s.SetRange("R-12", label.Range{Kind: label.RangeWhite, Least: 2, Most: 1}),
		"0 to 100":                 s.SetRange("R-12", label.Range{Kind: label.RangeOil, ID: "palm", Most: 101}),
		"no range for oil palm":    s.DropRange("R-12", label.Range{Kind: label.RangeOil, ID: "palm"}),
		"does not say which oil":   s.SetRange("R-12", label.Range{Kind: label.RangeOil, Most: 1}),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
	holds(t, "after all that", s, written)
}

func TestTheReferenceNamesEveryKey(t *testing.T) {
	ref := labelfile.Reference()
	for _, line := range strings.Split(written, "\n") {
		if key, _, ok := strings.Cut(strings.TrimSpace(line), " = "); ok && !strings.Contains(ref, key) {
			t.Errorf("the reference does not name %s", key)
		}
	}
}
