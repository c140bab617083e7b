package keys

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/strict"
)

// faults are what a file of keys is refused for; none: it is taken.
func faults(t *testing.T, src string) (*Map, []strict.Fault) {
	t.Helper()
	m, err := Read("keys.toml", strings.NewReader(src))
	if err == nil {
		return m, nil
	}
	var e *strict.Error
	if !errors.As(err, &e) || m != nil {
		t.Fatalf("%v, %v", m, err)
	}
	return nil, e.Faults
}

func TestKeysOfHerOwnTakeThePlaceOfTheBuiltInOnes(t *testing.T) {
	m, wrong := faults(t, "[bench]\nundo = [\"ctrl+z\", \"f9\"]\nsuspend = []\nsave = [\"w\", \"ß\"]\nwarnings = [\"alt+w\"]\nquit = [\"Q\"]\n[pouring]\nstage-seen = [\"a\", \"l\", \"m\", \"t\", \"s\"]\n")
	if wrong != nil {
		t.Fatal(wrong)
	}
	for _, x := range []struct {
		mode Mode
		key  string
		want ID
	}{
		{Bench, "ctrl+z", Undo},
		{Bench, "f9", Undo},
		{Bench, "u", ""},
		{Bench, "w", Save},
		{Bench, "ß", Save},
		{Bench, "s", ""},
		{Bench, "alt+w", ReadAll},
		{Bench, "Q", Quit},
		{Bench, "q", ""},
		{Bench, Leaves, Quit},
		{Pouring, "a", SeeStage},
		{Pouring, "e", ""},
		{Pouring, "q", Quit},
		{Bench, "o", Open},
	} {
		if b, ok := m.Lookup(x.mode, 0, x.key); b.ID != x.want || ok != (x.want != "") {
			t.Errorf("%s %s does %q, want %q", x.key, x.mode, b.ID, x.want)
		}
	}
	if m.Name(Bench, Undo) != "F9" || m.Name(Bench, Suspend) != "suspend" {
		t.Errorf("undo is said to be %s, suspend %s", m.Name(Bench, Undo), m.Name(Bench, Suspend))
	}
	b, _ := m.Find(Bench, Suspend)
	if !strings.HasSuffix(b.Help, "it does not undo, F9 does") || b.Shown() != "no key" {
		t.Errorf("suspend is told as %s: %s", b.Shown(), b.Help)
	}
	for _, page := range []string{m.Markdown(), m.Man()} {
		if !strings.Contains(page, "F9") || strings.Contains(page, "u brings") {
			t.Error("the tables do not follow the keys")
		}
	}
	for _, b := range m.Footer(Bench, 0) {
		if b.ID == Save && b.InFooter() != "w" {
			t.Errorf("the footer saves by %s", b.InFooter())
		}
	}
}

// Every fault says the line, what stands there, what is wrong and how to mend it.
func TestWhatCannotBeBoundTeachesTheMend(t *testing.T) {
	for src, want := range map[string]string{
		"[bench]\nundoo = [\"u\"]":                                `keys.toml:2:1: bench.undoo: is no action at the bench; did you mean "undo"?`,
		"[bench]\n\"go to mould\" = [\"f2\"]":                     `did you mean "go-to-mould"?`,
		"[bench]\ntrouble = [\"x\"]":                              `is no action at the bench; move it: trouble belongs under [pouring]`,
		"[bench]\nfly = [\"x\"]":                                  `is no action at the bench; take it out; pourbench keys --file prints every action`,
		"[bensh]\nundo = [\"u\"]":                                 `keys.toml:1:1: bensh: is no place where keys act; did you mean "bench"? An action stands under its place`,
		"[kitchen]":                                               `the places are [bench], [typing]`,
		"undo = [\"u\"]":                                          `undo: is no place where keys act`,
		"bench = 1":                                               `bench = 1: a section is wanted, but this is a number; write a line [bench] and its keys under it`,
		"[bench]\nundo = \"u\"":                                   `bench.undo = "u": a list of texts is wanted, but this is text; write a list in brackets`,
		"[bench]\nundo = [1]":                                     `bench.undo[0] = 1: text is wanted`,
		"[bench]\nundo = [\"x\"]":                                 `keys.toml:2:9: bench.undo[0] = "x": does checklist already at the bench; take another key, as `,
		"[bench]\nundo = [\"ä\"]\nsave = [\"ä\"]":                 `does`,
		"[bench]\nundo = [\"f9\", \"f9\"]":                        `keys.toml:2:15: bench.undo[1] = "f9": stands there twice; take one out`,
		"[bench]\nundo = [\"ctrl+i\"]":                            `is no key that a terminal sends; did you mean "tab"?`,
		"[bench]\nundo = [\"ctrl+1\"]":                            `is no key that a terminal sends; terminals send "ctrl+" with a letter`,
		"[bench]\nundo = [\"shift+u\"]":                           `did you mean "U"?`,
		"[bench]\nundo = [\"shift+ctrl+left\"]":                   `did you mean "ctrl+shift+left"?`,
		"[bench]\nundo = [\"escape\"]":                            `did you mean "esc"?`,
		"[bench]\nundo = [\"PgDn\"]":                              `did you mean "pgdown"?`,
		"[bench]\nundo = [\"Control-U\"]":                         `did you mean "ctrl+u"?`,
		"[bench]\nundo = [\"super+u\"]":                           `is no key that a terminal sends; write it as in`,
		"[bench]\nundo = [\"ctrl+enter\"]":                        `terminals send "enter" the same with Ctrl or Shift`,
		"[bench]\nundo = [\"gg\"]":                                `is no key that a terminal sends; write a single letter or sign`,
		"[bench]\nundo = [\"f21\"]":                               `did you mean "f1"?`,
		"[bench]\nundo = [\"\"]":                                  `is no key; write one, as in "u"`,
		"[bench]\nundo = [\"\\u001b\"]":                           `is no key; write one, as in "u"`,
		"[bench]\nundo = [\"5\"]":                                 `types a number at the bench; take a letter`,
		"[bench]\nundo = [\",\"]":                                 `types a number at the bench`,
		"[bench]\ntype = [\"x\"]":                                 `cannot have other keys: it is what is typed; take this line out`,
		"[bench]\nundo = [\"ctrl+c\"]":                            `always leaves the program; take another key`,
		"[bench]\nquit = []":                                      `keys.toml:2:1: bench.quit: would be left without a key; give it one, or take this line out: then it is "q"`,
		"[bench]\nhelp = []":                                      `would be left without a key`,
		"[list]\nclose = []":                                      `would be left without a key`,
		"[page]\nclose = []":                                      `would be left without a key`,
		"[question]\nclose = []":                                  `would be left without a key`,
		"[line]\nclose = []":                                      `would be left without a key`,
		"[typing]\nrestore = []":                                  `would be left without a key`,
		"[pouring]\nhelp = []":                                    `would be left without a key`,
		"[line]\ncommit = [\"k\"]":                                `is typed as text in a line to type; take a key with Ctrl or Alt`,
		"[question]\nright = [\"y\"]":                             `is typed as text at a question`,
		"[list]\nup = [\"backspace\"]":                            `edits what is typed in a list; take another key`,
		"[pouring]\nstage-seen = [\"e\", \"l\"]":                  `has 2 keys; give it 5, one each for emulsion, light, medium, thick, stiff`,
		"[pouring]\npick-jug = [\"f1\"]":                          `has 1 keys; give it 9`,
		"[bench]\nundo = [\"u\"]\n[bench]\nredo = []":             `take one out`,
		"[bench]\nundo = [\"u\"]\nundo = [\"f9\"]":                `take one out`,
		"[bench\nundo = [\"u\"]":                                  `close the header`,
		"\x00\x01\x02\xff\xfe":                                    `save the file as plain text in UTF-8`,
		strings.Repeat("# much\n", 20000):                         `is longer than 64 KiB, which no file of keys is`,
		"[bench]\nundo = [" + strings.Repeat("[", 2000):           `goes deeper than any file of keys`,
		"[bench]\nundo = [\"" + strings.Repeat("u", 3000) + "\"]": `is 3000 letters long; keep it to 24 letters`,
	} {
		_, wrong := faults(t, src)
		text := ""
		for _, f := range wrong {
			text += f.Error() + "\n"
		}
		if !strings.Contains(text, want) || strings.ContainsAny(text, "\x1b\x00") {
			t.Errorf("%.80q is refused with\n%swant %s", src, text, want)
		}
	}
}

func TestAKeyMayDoTwoThingsWhereNoPlaceHasBoth(t *testing.T) {
	m, wrong := faults(t, "[bench]\nhold = [\"f9\"]\nswitch = [\"f9\"]\nnext-view = [\"f10\"]\nshow-the-face = [\"f10\"]\n")
	if wrong != nil {
		t.Fatal(wrong)
	}
	if b, _ := m.Lookup(Bench, Held, "f9"); b.ID != Hold {
		t.Errorf("f9 does %q to what is held", b.ID)
	}
	if b, _ := m.Lookup(Bench, Words, "f9"); b.ID != Flip {
		t.Errorf("f9 does %q to words", b.ID)
	}
}

// The file to begin with changes nothing, and neither does every line of it with its sign taken away.
func TestTheFileToBeginWithIsTheTable(t *testing.T) {
	sample := BuiltIn().Sample()
	var active []string
	for line := range strings.SplitSeq(sample, "\n") {
		if rest, ok := strings.CutPrefix(line, "# "); ok && strings.Contains(rest, " = [") {
			line = rest
		}
		active = append(active, line)
	}
	for _, src := range []string{sample, strings.Join(active, "\n"), ""} {
		m, wrong := faults(t, src)
		if wrong != nil {
			t.Fatal(wrong)
		}
		if !reflect.DeepEqual(m, BuiltIn()) {
			t.Error("the file changes keys")
		}
	}
	for _, b := range Table() {
		if !b.Fixed && !strings.Contains(sample, "\n# "+b.ID.Word()+" = [") {
			t.Errorf("the file lacks %s", b.ID)
		}
	}
}

func TestEveryActionHasOneNameInItsPlaceAndEveryBuiltInKeyIsSent(t *testing.T) {
	seen := map[string]bool{}
	for _, b := range Table() {
		if at := b.Mode.Word() + "." + b.ID.Word(); seen[at] {
			t.Errorf("%s stands there twice", at)
		} else {
			seen[at] = true
		}
		for _, k := range b.Keys {
			if !sent(k) {
				t.Errorf("%s: no terminal sends %q", b.ID, k)
			}
		}
		if b.Each != nil && len(b.Each) != len(b.Keys) {
			t.Errorf("%s has %d keys for %d things", b.ID, len(b.Keys), len(b.Each))
		}
	}
}

func TestLookingUpAKeyTakesNoMemory(t *testing.T) {
	m := BuiltIn()
	if n := testing.AllocsPerRun(100, func() {
		m.Lookup(Bench, Numbers, "u")
		m.Lookup(Pouring, 0, "space")
		m.Lookup(Bench, 0, "Z")
	}); n != 0 {
		t.Errorf("three keys take %v pieces of memory", n)
	}
	if n := testing.AllocsPerRun(100, func() { m.Footer(Bench, Numbers|Elsewhere) }); n > 1 {
		t.Errorf("a footer takes %v pieces of memory", n)
	}
}

// Whatever a file says, it is refused or it leaves every key with one meaning in a place and every way out open.
func TestWhateverAFileBindsTheProgramCanBeLeft(t *testing.T) {
	table := Table()
	rapid.Check(t, func(rt *rapid.T) {
		var src strings.Builder
		for mode := range Mode(modes) {
			src.WriteString("[" + mode.Word() + "]\n")
			for _, b := range table {
				if b.Mode == mode && rapid.IntRange(0, 20).Draw(rt, "take") == 0 {
					list := rapid.SliceOfN(rapid.SampledFrom([]string{`"u"`, `"f9"`, `"esc"`, `"enter"`, `"ctrl+c"`, `"ctrl+k"`, `"ö"`, `"alt+x"`, `"5"`}), 0, 3).Draw(rt, "keys")
					src.WriteString(b.ID.Word() + " = [" + strings.Join(list, ", ") + "]\n")
				}
			}
		}
		m, err := Read("keys.toml", strings.NewReader(src.String()))
		if err != nil {
			return
		}
		for _, b := range m.All() {
			if b.Must && len(b.Keys) == 0 {
				rt.Fatalf("%s has no key:\n%s", b.ID, &src)
			}
			for _, o := range m.Of(b.Mode) {
				for _, k := range b.Keys {
					if o.ID != b.ID && o.Nth(k) >= 0 && !isApart(o.Needs, b.Needs) {
						rt.Fatalf("%s is %s and %s:\n%s", k, b.ID, o.ID, &src)
					}
				}
			}
		}
		for _, mode := range []Mode{Bench, Pouring} {
			if b, ok := m.Lookup(mode, 0, Leaves); !ok || b.ID != Quit {
				rt.Fatalf("Ctrl+C is %s:\n%s", b.ID, &src)
			}
		}
	})
}
