package command_test

import (
	"os"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
	"pourbench/tui/keys"
)

// Each reference is what its table says, and the man page holds them all.
func TestTheReferencesAreTheTables(t *testing.T) {
	m := newMaker(t)
	_, man, _ := m.types("man")
	for name, want := range map[string]string{"planfile": planfile.Reference(), "shelf": presets.Reference(), "keys": keys.BuiltIn().Markdown()} {
		code, out, errs := m.types(name)
		if code != 0 || errs != "" || out != want {
			t.Errorf("%s: exit %d, %q, and what it prints is not its table", name, code, errs)
		}
		if name != "keys" && !strings.Contains(strings.ReplaceAll(man, `\e`, `\`), strings.TrimRight(want, "\n")) {
			t.Errorf("the man page lacks the reference of the %s", name)
		}
	}
	for _, b := range keys.BuiltIn().All() {
		if !strings.Contains(man, b.Help) {
			t.Errorf("the man page lacks the key that does this: %s", b.Help)
		}
	}
	_, codes, _ := m.types("codes")
	for _, c := range pour.Codes() {
		for text, in := range map[string]string{man: "the man page", codes: "codes"} {
			if !strings.Contains(text, c.Code) || !strings.Contains(text, c.Meaning) {
				t.Errorf("%s lacks %s", in, c.Code)
			}
		}
	}
}

// A line that begins with a dot or an apostrophe is a request to the man page's typesetter.
func TestNoLineOfAReferenceIsTakenForARequest(t *testing.T) {
	_, man, _ := newMaker(t).types("man")
	for _, line := range strings.Split(man, "\n") {
		request, _, _ := strings.Cut(line, " ")
		switch {
		case strings.HasPrefix(line, "'"):
			t.Errorf("%q", line)
		case strings.HasPrefix(line, ".") && !strings.Contains(" .TH .SH .SS .TP .B .nf .fi ", " "+request+" "):
			t.Errorf("%q", line)
		}
	}
}

func TestTheReadmeShowsEveryCommand(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, help, _ := newMaker(t).types("--help")
	_, list, _ := strings.Cut(help, "Available Commands:\n")
	list, _, _ = strings.Cut(list, "\n\n")
	names := 0
	for line := range strings.SplitSeq(list, "\n") {
		name := strings.Fields(line)[0]
		if names++; name != "help" && !strings.Contains(string(readme), "\npourbench "+name+" ") {
			t.Errorf("the README does not show pourbench %s", name)
		}
	}
	if names < 14 {
		t.Errorf("%d commands are offered", names)
	}
}

// The file of keys that the README shows is one that can be used.
func TestTheKeysOfTheReadmeCanBeBound(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, after, found := strings.Cut(string(readme), "```toml\n")
	file, _, _ := strings.Cut(after, "```")
	m, err := keys.Read("the README", strings.NewReader(file))
	if err != nil || !found {
		t.Fatalf("%v", err)
	}
	if b, ok := m.Lookup(keys.Bench, 0, "f9"); !ok || b.ID != keys.Undo {
		t.Errorf("F9 does %q", b.ID)
	}
}
