package strict

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/iotest"
)

func TestWhatWouldTakeTheMachineDownIsRefusedWithItsPlace(t *testing.T) {
	for name, x := range map[string]struct{ text, at string }{
		"brackets":           {"\n\na = " + strings.Repeat("[", 100_000), "r.toml:3:69: "},
		"brackets on lines":  {"a = " + strings.Repeat("[\n", 100_000), "r.toml:65:1: "},
		"tables":             {"# \"\n'''\n''' = " + strings.Repeat("{a = ", 50_000), "r.toml:3:326: "},
		"a key of many dots": {strings.Repeat("a . ", 100_000) + "a = 1", "r.toml:1:1: "},
		"a deep header":      {"\n[" + strings.Repeat("a.", 100_000) + "a]", "r.toml:2:2: "},
		"a mix of both":      {"é = [" + strings.Repeat("{a.b = [", 50_000), "r.toml:1:"},
	} {
		_, err := recipe().Open("r.toml", x.text)
		var e *Error
		if !errors.As(err, &e) || len(e.Faults) != 1 || !strings.HasPrefix(err.Error(), x.at) || e.Faults[0].Problem != "goes deeper than any recipe" || e.Faults[0].Mend == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestDepthIsCountedWhereItIsDepth(t *testing.T) {
	for name, text := range map[string]string{
		"as deep as may be":      "a = " + strings.Repeat("[", 64) + strings.Repeat("]", 64),
		"a key as long":          strings.Repeat("a.", 63) + "a = 1",
		"many beside each other": "a = [" + strings.Repeat("[], ", 200) + "]",
		"brackets in texts":      "a = \"" + strings.Repeat("[{", 100) + "\\\"" + strings.Repeat(".", 100) + "\"\nb = '" + strings.Repeat("[", 100) + "\\'\nc = '''\n" + strings.Repeat("[\n", 100) + "'''''\nd = \"\"\"" + strings.Repeat("[", 100) + "\\\"\"\"\"\"\"",
		"brackets in a comment":  "# " + strings.Repeat("[", 100) + "\na = 1 # " + strings.Repeat("[", 100),
	} {
		if _, err := recipe().Open("r.toml", text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := recipe().Open("r.toml", "a = "+strings.Repeat("[", 65)+strings.Repeat("]", 65)); err == nil {
		t.Error("one bracket deeper is read")
	}
}

func TestAHugeFileIsRefusedBeforeItIsRead(t *testing.T) {
	just := strings.Repeat("#", 4096)
	if src, err := recipe().Slurp("r.toml", strings.NewReader(just)); err != nil || src != just {
		t.Errorf("%d bytes, %v", len(src), err)
	}
	_, err := recipe().Slurp("r\x1b.toml", strings.NewReader(just+"#"))
	if want := "is longer than 4 KiB, which no recipe is\n    to mend: name a recipe"; err == nil || !strings.HasSuffix(err.Error(), want) || strings.Contains(err.Error(), "\x1b") {
		t.Errorf("%v, want %s", err, want)
	}
	_, err = recipe().Slurp("r.toml", iotest.ErrReader(fs.ErrPermission))
	var e *Error
	if !errors.As(err, &e) || !errors.Is(err, fs.ErrPermission) || e.Faults[0].Mend == "" {
		t.Errorf("%v", err)
	}
}

func TestTextThatIsNoTOMLIsRefusedWithItsPlaceAndHowToMendIt(t *testing.T) {
	for text, want := range map[string]string{
		"a = 40,5":                 "r.toml:1:7: |write the number with a decimal point: 40.5",
		"a = 62 mm":                "r.toml:1:|write the number alone, 62: the key says its unit",
		"a = -6.5 °C":              "r.toml:1:|write the number alone, -6.5: the key says its unit",
		"a = -6.5%":                "r.toml:1:|write the number alone, -6.5: the key says its unit",
		"a = é":                    "r.toml:1:5: |write every line as key = value, [section] or [[list.item]]; a comment starts with #",
		"\ufeff# \n  a = olive":    `r.toml:2:7: |put words in double quotes: "olive"`,
		"a = olive # my own":       `r.toml:1:5: |put words in double quotes: "olive"`,
		"a = “b”":                  `r.toml:1:5: |use straight quotes: "…"`,
		"a = 1\r\na = 2\r\n":       "r.toml:2:|each key and each [section] can stand once: take one out; a list has a line [[…]] for every item",
		"a = \"\x01\"":             "r.toml:1:|save the file as plain text in UTF-8",
		"a = \"\xff\"":             "r.toml:1:|save the file as plain text in UTF-8",
		"a = 2026-13-05T10:00:00":  "r.toml:1:|write a date with a time as in 2026-12-05T10:00:00",
		"a = 99999999999999999999": "r.toml:1:|write a smaller number",
		"a = .5":                   "r.toml:1:|write numbers as 0.5, 12 or 12.5",
		"a = 05":                   "r.toml:1:|write numbers as 0.5, 12 or 12.5",
		`a = "b\c"`:                `r.toml:1:|write a backslash in quotes twice: \\`,
		"a = \"b\nc = 1":           `r.toml:1:|close the text with a double quote on the same line, or use """ for many lines`,
		`a = """b`:                 `r.toml:1:|close the text with a double quote on the same line, or use """ for many lines`,
		"[a":                       "r.toml:1:|close the header: [section], or [[list.item]]",
		"[]":                       "r.toml:1:|close the header: [section], or [[list.item]]",
		"a = [1, 2":                "r.toml:1:|close the list with ] and put commas between its items",
		"a = [1 2]":                "r.toml:1:|close the list with ] and put commas between its items",
		"a = {b = 1 c = 2}":        "r.toml:1:|close it with } and put commas between its keys: { at_min = 0, s = 20 }",
		"a":                        "r.toml:1:|write every line as key = value, [section] or [[list.item]]; a comment starts with #",
	} {
		_, err := recipe().Open("r.toml", text)
		at, mend, _ := strings.Cut(want, "|")
		if err == nil || !strings.HasPrefix(err.Error(), at) || !strings.HasSuffix(err.Error(), "to mend: "+mend) {
			t.Errorf("%q\n got %v\nwant %s … %s", text, err, at, mend)
		}
	}
}

func TestFaultsComeInTheOrderOfTheFileHoweverTheyWereFound(t *testing.T) {
	faults := faultsIn(t, "a = 1\nb = 2\nc = 3\n[d]\ne = {x = 1, y = 2}", func(t *Table) {
		d, _ := t.Section("d")
		e, _ := d.Section("e")
		e.Say("y", "", "six", "")
		e.Say("x", "", "five", "")
		d.Say("", "", "four", "")
		for _, key := range []string{"c", "a", "b"} {
			t.Say(key, "", key, "")
		}
		t.Say("nowhere", "", "none", "")
	})
	var got []string
	for _, f := range faults {
		got = append(got, fmt.Sprintf("%d:%d %s", f.Line, f.Column, f.Problem))
	}
	if want := "0:0 none, 1:1 a, 2:1 b, 3:1 c, 4:1 four, 5:6 five, 5:13 six"; strings.Join(got, ", ") != want {
		t.Errorf("got %v\nwant %s", got, want)
	}
}

func TestNoMoreThanTwentyFaultsAreNamedAndTheRestCounted(t *testing.T) {
	f := open(t, "")
	for range 20 {
		f.Top().Say("a", "", "is wrong", "")
	}
	var e *Error
	if err := f.Err(); !errors.As(err, &e) || len(e.Faults) != 20 || e.More != 0 || strings.Contains(err.Error(), "more") {
		t.Errorf("%v", err)
	}
	for range 700 {
		f.Top().Say("a", "", "is wrong", "")
	}
	if err := f.Err(); !errors.As(err, &e) || len(e.Faults) != 20 || e.More != 480 || !strings.HasSuffix(err.Error(), "\nr.toml: and 480 more") {
		t.Errorf("%v: more than 500 are not even kept", err)
	}
}

func TestAFileWithoutFaultsHasNoError(t *testing.T) {
	if err := open(t, "a = 1").Err(); err != nil {
		t.Error(err)
	}
}

func TestAFaultIsSafeToPrintWhateverItIsMadeOf(t *testing.T) {
	f, err := recipe().Open("r\x1b[31m.toml", "a = 1")
	if err != nil {
		t.Fatal(err)
	}
	f.Add(Fault{Path: "a\x1bb", Value: "\u009b1", Problem: "one\ntwo", Mend: "\u202ethree"})
	if text := f.Err().Error(); strings.ContainsAny(text, "\x1b\u009b\u202e") || strings.Count(text, "\n") != 1 {
		t.Errorf("%q", text)
	}
}

func TestWhatWasToldIsListedAndASlipCountsForTheKeyItWasTakenFor(t *testing.T) {
	f := open(t, "naem = 1\nb = 2\n")
	top := f.Top()
	top.Only("name", "b")
	top.Missing("name")
	top.Missing("other")
	if got := strings.Join(f.Told(), " "); got != "naem name other" {
		t.Errorf("told: %s", got)
	}
	f.Told()[0] = "changed"
	if f.Told()[0] != "naem" {
		t.Error("the list is the file's own")
	}
}

func TestAKeyThatIsThereIsNoSlipForAnother(t *testing.T) {
	faults := faultsIn(t, "name = 1\nnamee = 2", func(t *Table) { t.Only("name", "other") })
	if len(faults) != 1 || strings.Contains(faults[0].Mend, "did you mean") {
		t.Errorf("%v", faults)
	}
}

func TestATableIsToldByTheNameItWasGiven(t *testing.T) {
	faults := faultsIn(t, "[[oil]]\nid = \"x\"\nsource = {a = 1}\n", func(t *Table) {
		oil := t.List("oil")[0].Called(`oil "x"`)
		oil.Say("id", "", "one", "")
		oil.Say("", "", "zero", "")
		in, _ := oil.Section("source")
		in.Say("a", "", "two", "")
	})
	var got []string
	for _, f := range faults {
		got = append(got, fmt.Sprintf("%d:%d %s", f.Line, f.Column, f.Path))
	}
	if want := `1:1 oil "x" | 2:1 oil "x", id | 3:11 oil "x", source.a`; strings.Join(got, " | ") != want {
		t.Errorf("got %s\nwant %s", strings.Join(got, " | "), want)
	}
}

func TestWhereAMissingKeyBelongsIsSaid(t *testing.T) {
	faults := faultsIn(t, "[hob]\n[[egg]]\n[[egg.side]]\n", func(t *Table) {
		t.Missing("name")
		hob, _ := t.Section("hob")
		hob.Missing("heat")
		t.List("egg")[0].List("side")[0].Missing("salt")
	})
	var got []string
	for _, f := range faults {
		got = append(got, f.Error())
	}
	want := []string{
		"r.toml: name: is missing; write name = … above the first [section]",
		"r.toml:1:1: hob.heat: is missing; write heat = … under [hob]",
		"r.toml:3:1: egg[0].side[0].salt: is missing; write salt = … in this [[egg.side]]",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestATrustedFileIsReadWithoutALookAtItsDepth(t *testing.T) {
	deep := "a = " + strings.Repeat("[", 70) + strings.Repeat("]", 70)
	f, err := recipe().Trust("r.toml", deep+"\nb = 1")
	if err != nil {
		t.Fatal(err)
	}
	if line, column := f.Place("b"); line != 0 || column != 0 {
		t.Errorf("behind what is too deep, b is found at %d:%d", line, column)
	}
	if _, err := recipe().Trust("r.toml", "a = "); err == nil {
		t.Error("text that is no TOML was trusted")
	}
}
