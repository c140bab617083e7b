package presets_test

import (
	"errors"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/strict"
	"pourbench/presets"
)

func overlay(t testing.TB, text string) (pour.Shelf, error) {
	t.Helper()
	return presets.Overlay(shelf(t), "my-shelf.toml", strings.NewReader(text))
}

func TestAKnownIDChangesOnlyWhatItNames(t *testing.T) {
	base := shelf(t)
	s, err := overlay(t, `
[[oil]]
id = "olive"
sap_koh_mg_g = 189.2
sap_source = { text = "certificate of lot 12", confidence = "read" }
`)
	if err != nil {
		t.Fatal(err)
	}
	want, _ := base.Oil("olive")
	want.Fat.Sap = 189.2
	want.SapSource = pour.Source{Text: "certificate of lot 12", Confidence: "read"}
	got, _ := s.Oil("olive")
	if diff := cmp.Diff(want, got, unexported()); diff != "" {
		t.Errorf("olive, want then got:\n%s", diff)
	}
	if len(s.Oils) != len(base.Oils) {
		t.Errorf("%d oils, want %d", len(s.Oils), len(base.Oils))
	}
	if before, _ := shelf(t).Oil("olive"); before.Fat.Sap != 191.5 {
		t.Errorf("the base shelf changed too: %g", before.Fat.Sap)
	}
}

// unexported lets shelves be compared with what they have worked out for colours.
func unexported() cmp.Option { return cmp.AllowUnexported(pour.Shelf{}, pour.Colourant{}, pour.Oil{}) }

func TestAnOverlayLeavesTheShelfItWasGivenAlone(t *testing.T) {
	base := shelf(t)
	if _, err := presets.Overlay(base, "s", strings.NewReader("[[colourant]]\nid = \"indigo\"\ncolour = \"#000000\"\n[[scent]]\nid = \"meadow-hay\"\nfamilies = [\"rose\"]\n")); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(shelf(t), base) {
		t.Error("the shelf the overlay was given is not what it was")
	}
}

func TestANewIDIsAddedAtTheEnd(t *testing.T) {
	s, err := overlay(t, `
format = 1

[[oil]]
id = "walnut"
name = "walnut oil"
sap_koh_mg_g = 191
density_g_ml = 0.92
fatty_acids_percent = { c16_0 = 7, c18_0 = 2.5, c18_1 = 18, c18_2 = 59, c18_3 = 12.5 }

[[scent]]
id = "barn"
name = "barn"
families = ["hay"]
limit_percent = 4.2
amendment = "51"
[[scent.allergen]]
name = "coumarin"
percent = 3
`)
	if err != nil {
		t.Fatal(err)
	}
	o := s.Oils[len(s.Oils)-1]
	own := pour.Source{Text: "your shelf file my-shelf.toml", Confidence: "own"}
	if o.ID != "walnut" || o.Fat.Kind != chem.Triglyceride || o.Fat.SapLow != 191 || o.Fat.SapHigh != 191 || o.SapSource != own {
		t.Errorf("walnut = %+v", o)
	}
	if o.Fat.Profile[chem.C18x2] <= 0.58 {
		t.Errorf("walnut has %g linoleic acid", o.Fat.Profile[chem.C18x2])
	}
	sc := s.Scents[len(s.Scents)-1]
	if sc.ID != "barn" || s.BehaviourOf(sc) != pour.BehaviourNone || len(sc.Allergens) != 1 || sc.Allergens[0].Percent != 3 || sc.Invented {
		t.Errorf("barn = %+v", sc)
	}
}

func TestAFigureChangedWithoutASourceIsTheMakersOwn(t *testing.T) {
	s, err := overlay(t, "[[oil]]\nid = \"coconut\"\ndensity_g_ml = 0.91\n")
	if err != nil {
		t.Fatal(err)
	}
	o, _ := s.Oil("coconut")
	if o.DensitySource.Confidence != "own" || o.SapSource.Confidence != "read" {
		t.Errorf("density %+v, saponification value %+v", o.DensitySource, o.SapSource)
	}
}

func TestASaponificationValueOutsideThePublishedRangeIsItsOwnRange(t *testing.T) {
	s, err := overlay(t, "[[oil]]\nid = \"coconut\"\nsap_koh_mg_g = 240\n")
	if err != nil {
		t.Fatal(err)
	}
	if o, _ := s.Oil("coconut"); o.Fat.SapLow != 240 || o.Fat.Sap != 240 || o.Fat.SapHigh != 240 {
		t.Errorf("coconut = %g, %g, %g", o.Fat.SapLow, o.Fat.Sap, o.Fat.SapHigh)
	}
}

func TestEveryTableCanBeLaidOver(t *testing.T) {
	s, err := overlay(t, `
[[colourant]]
id = "my-plum"
name = "plum"
class = "mica"
dose_low_percent = 0.2
dose_high_percent = 0.8
colour = "#6B2F5A"
[[extra]]
id = "my-whey"
name = "whey"
kind = "milk"
in = "lye"
water_percent = 93
[[family]]
id = "barnyard"
name = "barnyard"
[[mould]]
id = "my-loaf"
name = "my loaf"
length_mm = 300
width_mm = 90
height_mm = 84
[[technique]]
id = "my-drop"
name = "my drop"
kind = "drop"
from = "light"
to = "light"
passes = 6
[[topping]]
id = "my-stars"
name = "stars"
kind = "piece"
crystals = ["sucrose", "sodium chloride"]
size_mm = 3
density_g_ml = 1.5
`)
	if err != nil {
		t.Fatal(err)
	}
	if c, _ := s.Colourant("my-plum"); c.Colour != "#6b2f5a" || c.Alkali != pour.AlkaliUnknown || !c.Dust || c.CarrierParts != 2 {
		t.Errorf("plum = %+v", c)
	}
	if x, _ := s.Extra("my-whey"); x.WaterPercent != 93 || x.ClockFactor != 1 {
		t.Errorf("whey = %+v", x)
	}
	if f, _ := s.Family("barnyard"); f.Behaviour != pour.BehaviourUnknown {
		t.Errorf("barnyard = %+v", f)
	}
	if m := s.Moulds[len(s.Moulds)-1].Mould; m.Shape != "loaf" || m.FillMM != 70 || m.BarMM != 25 {
		t.Errorf("my loaf = %+v", m)
	}
	if te, _ := s.Technique("my-drop"); te.Passes != 6 || te.From != chem.Light || te.To != chem.Light {
		t.Errorf("my drop = %+v", te)
	}
	m, _ := s.Topping("my-stars")
	if rh := m.WeepsRH(25); math.Abs(rh.V-63.9625) > 0.005 || !rh.Known || m.When != pour.StrewSkin || m.Alkali.Bleeds != pour.ToppingMay || m.Use.StaysPercent != 100 {
		t.Errorf("my stars weep at %v: %+v", rh, m)
	}
}

func TestHostileTextIsCleaned(t *testing.T) {
	s, err := overlay(t, "[[colourant]]\nid = \"indigo\"\nname = \"\\u001b[2Jblue\\u202e\\n\\tjean\\u200b\\u009b\"\nalkali_note = \"\"\"one\ntwo\\u2028three\"\"\"\n")
	if err != nil {
		t.Fatal(err)
	}
	c, _ := s.Colourant("indigo")
	if c.Name != "blue     jean" || c.AlkaliNote != "one two three" {
		t.Errorf("name %q, note %q", c.Name, c.AlkaliNote)
	}
}

func TestErrorsTeach(t *testing.T) {
	for _, c := range []struct{ what, in, want string }{
		{"a misspelt key", "[[oil]]\nid = \"olive\"\ndensity_gml = 0.9\n", `my-shelf.toml:3:1: oil "olive", density_gml: is no key of a shelf file; did you mean density_g_ml?`},
		{"a misspelt table", "[[colourrant]]\nid = \"a\"\n", `my-shelf.toml:1:1: colourrant: is no key of a shelf file; did you mean colourant?`},
		{"a misspelt id, taken for a new one", "[[oil]]\nid = \"oliv\"\nsap_koh_mg_g = 190\n", `my-shelf.toml:1:1: oil "oliv": name is missing; a new entry needs it; if you meant to change an entry of the shelf, check the id`},
		{"a number in quotation marks", "[[extra]]\n\nid = \"sugar\"\nwater_percent = \"10\"\n", `my-shelf.toml:4:1: extra "sugar", water_percent = "10": a number is wanted, but this is text; write 10, without quotes or a unit`},
		{"a decimal comma", "[[extra]]\nid = \"sugar\"\nwater_percent = 1,5\n", "my-shelf.toml:3:18: expected a top-level item to end with a newline, comment, or EOF, but got ',' instead; write the number with a decimal point: 1.5"},
		{"a number out of range", "[[oil]]\nid = \"olive\"\ndensity_g_ml = 911\n", `density_g_ml = 911: is outside what can be; write a number from 0.7 to 1.2`},
		{"a value for NaOH", "[[oil]]\nid = \"olive\"\nsap_koh_mg_g = 135\n", `sap_koh_mg_g = 135: looks like mg NaOH per g; write 189.4 mg KOH per g: published of it is 184 to 196; of a wax write kind = "wax ester" too`}, // 135 × 1.4027
		{"not a number at all", "[[oil]]\nid = \"olive\"\nsap_koh_mg_g = nan\n", `sap_koh_mg_g = NaN: is not a number that can be weighed or measured`},
		{"a range the wrong way round", "[[colourant]]\nid = \"indigo\"\ndose_low_percent = 2\n", `dose_low_percent = 2: is above dose_high_percent = 0.5`},
		{"an unknown word", "[[scent]]\nid = \"meadow-hay\"\nbehaviour = \"fst\"\n", `behaviour = "fst": is not a word this key knows; did you mean "fast"?`},
		{"an unknown family", "[[scent]]\nid = \"meadow-hay\"\nfamilies = [\"citris\"]\n", `families = "citris": is no family on the shelf; did you mean "citrus"?`},
		{"no colour", "[[colourant]]\nid = \"indigo\"\ncolour = \"blue\"\n", `colour = "blue": is no colour; write six hex digits after a hash`},
		{"no id", "[[mould]]\nname = \"x\"\n", `my-shelf.toml:1:1: mould, entry 1: has no id; give it one in small letters`},
		{"an id that is none", "[[mould]]\nid = \"My Loaf\"\n", `id = "My Loaf": is no id; use small letters`},
		{"an id twice", "[[oil]]\nid = \"olive\"\n[[oil]]\nid = \"olive\"\n", `my-shelf.toml:4:1: oil "olive", id = "olive": stands in this file twice`},
		{"one pair of brackets", "[oil]\nid = \"olive\"\n", "my-shelf.toml:1:1: oil: a list of tables is wanted, but this is a table; start each item with a line [[oil]]"},
		{"acids that do not add up", "[[oil]]\nid = \"olive\"\nfatty_acids_percent = { c18_1 = 7 }\n", `fatty_acids_percent: the fatty acids sum to 7 %; make them sum to 100`},
		{"an unknown acid", "[[oil]]\nid = \"olive\"\n[oil.fatty_acids_percent]\nc18_9 = 100\n", `my-shelf.toml:4:1: oil "olive", fatty_acids_percent.c18_9: is no key of a shelf file; did you mean`},
		{"half a source", "[[oil]]\nid = \"olive\"\nsap_source = { text = \"a sheet\" }\n", "sap_source: needs text and confidence"},
		{"allergens over all", "[[scent]]\nid = \"meadow-hay\"\nallergen = [ { name = \"a\", percent = 70 }, { name = \"b\", percent = 40 } ]\n", "allergen: the allergens sum to 110 % of the scent"},
		{"a half pass", "[[technique]]\nid = \"drop\"\npasses = 2.5\n", "passes = 2.5: is not a whole number"},
		{"stages the wrong way round", "[[technique]]\nid = \"drop\"\nfrom = \"thick\"\n", "from = thick: comes after to = medium"},
		{"a crystal nobody knows", "[[topping]]\nid = \"nonpareils\"\ncrystals = [\"sucros\"]\n", `crystals = "sucros": is no crystal on the shelf; did you mean "sucrose"?`},
		{"a coverage the wrong way round", "[[topping]]\nid = \"nonpareils\"\ncover_low_percent = 40\n", "cover_low_percent = 40: is above cover_high_percent = 15"},
		{"a topping over the whole bar", "[[topping]]\nid = \"nonpareils\"\nsize_mm = 400\n", "size_mm = 400: is outside what can be"},
		{"a newer format", "format = 2\n", "my-shelf.toml:1:1: format = 2: is a format this program does not know"},
	} {
		_, err := overlay(t, c.in)
		if told := toldIn(t, err); !strings.Contains(told, c.want) {
			t.Errorf("%s: error\n%s\nwant\n%s", c.what, told, c.want)
		}
	}
}

// toldIn tells the faults of a file that must have been refused, a line each.
func toldIn(t *testing.T, err error) string {
	t.Helper()
	told := ""
	for _, f := range faultsOf(t, err) {
		told += f.Error() + "\n"
	}
	return told
}

// faultsOf gives the faults of a file that must have been refused.
func faultsOf(t *testing.T, err error) []strict.Fault {
	t.Helper()
	var e *strict.Error
	if !errors.As(err, &e) {
		t.Fatalf("was not refused: %v", err)
	}
	return e.Faults
}

func TestEveryFaultOfAFileIsTold(t *testing.T) {
	_, err := overlay(t, "[[oil]]\nid = \"olive\"\ndensty = 1\nsap_koh_mg_g = -1\n\n[[mould]]\nid = \"loaf-10\"\nbar_mm = 1\n")
	faults := faultsOf(t, err)
	if len(faults) != 3 {
		t.Fatalf("faults %v, want 3", err)
	}
	for i, line := range []int{3, 4, 8} {
		if faults[i].Line != line {
			t.Errorf("fault %d is on line %d, want %d: %v", i, faults[i].Line, line, faults[i])
		}
	}
}

func TestAFloodOfFaultsIsCutShort(t *testing.T) {
	_, err := overlay(t, "[[oil]]\nid = \"olive\"\nx0 = 1\nz0=1\nz1=1\nz2=1\nz3=1\nz4=1\nz5=1\nz6=1\nz7=1\nx1=1\nx2=1\nx3=1\nx4=1\nx5=1\nx6=1\nx7=1\nx8=1\nx9=1\ny0=1\ny1=1\ny2=1\ny3=1\n")
	if err == nil || !strings.HasSuffix(err.Error(), "and 2 more") {
		t.Errorf("error %v, want twenty faults and how many more", err)
	}
}

func TestAFileTooLargeIsRefused(t *testing.T) {
	_, err := overlay(t, strings.Repeat("# nothing\n", 200_000))
	if err == nil || !strings.Contains(err.Error(), "is longer than 1024 KiB") {
		t.Errorf("error %v, want a refusal for its size", err)
	}
}

func TestDeepNestingIsRefusedBeforeItTakesTime(t *testing.T) {
	for _, c := range []struct{ what, in, want string }{
		{"lists", "\n\nx = " + strings.Repeat("[", 100_000), "my-shelf.toml:3:69: goes deeper"},
		{"lists over lines", "x = " + strings.Repeat("[\n", 1000), "my-shelf.toml:65:1: goes deeper"},
		{"inner tables", "# \"\n'''\n''' = " + strings.Repeat("{a=", 100_000), "my-shelf.toml:3:199: goes deeper"},
		{"dotted keys", strings.Repeat("a . ", 100_000) + "a = 1", "my-shelf.toml:1:1: goes deeper"},
	} {
		if _, err := overlay(t, c.in); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %s", c.what, err, c.want)
		}
	}
	brackets := "[[colourant]]\nid = \"indigo\"\nname = \"" + strings.Repeat("[{", 20) + "\\\"" + strings.Repeat(".", 10) + "\"\n"
	if _, err := overlay(t, brackets); err != nil {
		t.Errorf("brackets and dots inside text: %v", err)
	}
}

func TestLinesAreFoundBehindLongText(t *testing.T) {
	_, err := overlay(t, "\ufeff# mine\r\n[[scent]]\r\nid = \"meadow-hay\"\r\nnotes = \"\"\"\r\n[[oil]]\r\nwrong = 1\r\n\"\"\"\r\nwrong = 2\r\n")
	if err == nil || !strings.Contains(err.Error(), "my-shelf.toml:8:1: ") {
		t.Errorf("error %v, want line 8", err)
	}
}

func FuzzAnyShelfFileIsReadOrRefused(f *testing.F) {
	f.Add("[[oil]]\nid = \"olive\"\nsap_koh_mg_g = 190\n")
	f.Add("[[scent]]\nid=\"x\"\nname=\"y\"\nallergen=[{name=\"z\",percent=1},2]\nfamilies=[1]\n")
	f.Add("oil = [1, {id=\"olive\"}]\n[[scent.allergen]]\n[a.b]\n'c'=\"\"\"")
	f.Add("[[technique]]\nid=\"t\"\nname=\"t\"\nkind=\"drop\"\nfrom=\"light\"\nto=1979-05-27\npasses=-inf\n")
	base := shelf(f)
	f.Fuzz(func(t *testing.T, text string) {
		s, err := presets.Overlay(base, "fuzz.toml", strings.NewReader(text))
		if err != nil {
			if strings.ContainsAny(err.Error(), "\x1b\x00\r\u009b") {
				t.Errorf("the error %q is not safe to print", err)
			}
			return
		}
		for _, o := range s.Oils {
			if !(o.Fat.Sap > 0 && o.Fat.SapLow <= o.Fat.Sap && o.Fat.Sap <= o.Fat.SapHigh && o.Fat.DensityGML > 0) {
				t.Errorf("%s slipped through: %+v", o.ID, o.Fat)
			}
		}
	})
}

// ownMoulds are the ones in the README: a loaf, a slab and a tube, by their inside measures.
const ownMoulds = `
[[mould]]
id = "birch-box"
name = "birch box"
length_mm = 280
width_mm = 75
height_mm = 80

[[mould]]
id = "attic-tray"
name = "tray from the attic"
shape = "slab"
length_mm = 300
width_mm = 240
height_mm = 60
bar_width_mm = 80

[[mould]]
id = "pipe"
name = "drain pipe"
shape = "tube"
length_mm = 75
width_mm = 75
height_mm = 300
`

// A maker's own moulds are taken first, in the order of her file, and a built-in one that her file changes among them.
func TestOwnMouldsAreTakenFirst(t *testing.T) {
	s, err := overlay(t, ownMoulds+"[[mould]]\nid = \"loaf-long\"\nheight_mm = 78\n")
	if err != nil {
		t.Fatal(err)
	}
	var own []string
	for i, m := range s.MouldsToTake() {
		if m.Own != (i < 4) {
			t.Errorf("%d, %s: own %v", i, m.ID, m.Own)
		}
		if m.Own {
			own = append(own, m.ID)
		}
	}
	if want := []string{"loaf-long", "birch-box", "attic-tray", "pipe"}; !slices.Equal(own, want) {
		t.Errorf("own are %v, want %v", own, want)
	}
	// counted by hand: 280/25; 300/25 along and 240/80 across; five sixths of 300 mm in rounds of 25
	for id, want := range map[string]int{"birch-box": 11, "attic-tray": 36, "pipe": 10} {
		i := slices.IndexFunc(s.Moulds, func(m pour.MouldEntry) bool { return m.ID == id })
		if got := s.Moulds[i].Mould.BarCount(); got != want {
			t.Errorf("%s gives %d bars, want %d", id, got, want)
		}
	}
	for _, m := range shelf(t).MouldsToTake() {
		if m.Own {
			t.Errorf("the built-in %s is said to be a maker's own", m.ID)
		}
	}
	if text, err := os.ReadFile("../README.md"); err != nil || !strings.Contains(string(text), "id = \"attic-tray\"") {
		t.Errorf("the README has other moulds: %v", err)
	}
	for want, text := range map[string]string{
		"length_mm is missing":    "[[mould]]\nid = \"x\"\nname = \"x\"\nwidth_mm = 80\nheight_mm = 70\n",
		"inside diameter as both": strings.Replace(ownMoulds, "width_mm = 75\nheight_mm = 300", "width_mm = 70\nheight_mm = 300", 1),
		`did you mean "slab"?`:    strings.Replace(ownMoulds, `"slab"`, `"slap"`, 1),
	} {
		if _, err := overlay(t, text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q, got %v", want, err)
		}
	}
}
