package command_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"pourbench/tui/command"
)

// olive is a shelf file that calls the olive oil otherwise.
func olive(name string) string { return "[[oil]]\nid = \"olive\"\nname = \"" + name + "\"\n" }

func TestTheMakersShelfIsFoundAndTheFlagGoesBeforeIt(t *testing.T) {
	m := newMaker(t)
	m.writes(plain("Quiet", "8"), "quiet.toml")
	calls := func(want string, args ...string) {
		t.Helper()
		code, out, errs := m.types(append([]string{"checklist", m.path("quiet.toml")}, args...)...)
		if code != 0 || errs != "" || !strings.Contains(out, want) {
			t.Errorf("%q: exit %d, %s; no %q in:\n%s", args, code, errs, want, out)
		}
	}
	calls("olive oil")
	m.writes(olive("grove oil"), "config", "pourbench", "shelf.toml")
	calls("grove oil")
	m.writes(olive("market oil"), "other.toml")
	calls("market oil", "--shelf", m.path("other.toml"))
	if _, out, _ := m.types("checklist", m.path("quiet.toml"), "--shelf", m.path("other.toml")); strings.Contains(out, "grove oil") {
		t.Error("the shelf of the settings was laid under the one that was named")
	}
}

func TestAShelfThatCannotBeUsedStopsEveryCommandThatNeedsOne(t *testing.T) {
	m := newMaker(t)
	m.writes("[[oil]]\nid = \"olive\"\nnam = \"x\"\n", "config", "pourbench", "shelf.toml")
	for _, args := range [][]string{nil, {"check"}, {"checklist"}, {"figures"}, {"explain"}, {"run"}, {"picture", "-o", m.path("x.png")}, {"logbook", "list"}} {
		code, out, errs := m.types(args...)
		if code != 2 || out != "" || !strings.Contains(errs, "shelf.toml:3:1") || !strings.Contains(errs, "did you mean name?") {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
	}
	for _, args := range [][]string{{"keys"}, {"codes"}, {"planfile"}, {"shelf"}, {"--version"}, {"--help"}} {
		if code, _, errs := m.types(args...); code != 0 || errs != "" {
			t.Errorf("%q needs no shelf: exit %d, %s", args, code, errs)
		}
	}
	for want, file := range map[string]string{
		"nowhere.toml: no such file or directory; name another with --shelf": m.path("nowhere.toml"),
		"no plain file but a folder":                                         m.home,
	} {
		if code, out, errs := m.types("check", "--shelf", file); code != 2 || out != "" || !strings.Contains(errs, "open your shelf file "+file) || !strings.Contains(errs, want) {
			t.Errorf("--shelf %s: exit %d, %q, %q", file, code, out, errs)
		}
	}
	m.holds(m.home, "config")
}

// Each home is the folder its own variable names, the last one where the environment has it twice.
func TestEachHomeIsTheFolderItsVariableNames(t *testing.T) {
	m := newMaker(t)
	m.writes(olive("grove oil"), "settings", "pourbench", "shelf.toml")
	m.writes("broken", "pours", "pourbench", "pours", "odd.pour.toml")
	run := func(args ...string) string {
		var out bytes.Buffer
		command.Main(command.Process{Args: args, In: strings.NewReader(""), Out: &out, Errs: &out, Environ: []string{
			"HOME=" + m.home, "XDG_CONFIG_HOME=" + m.path("wrong"), "XDG_CONFIG_HOME=" + m.path("settings"),
			"XDG_DATA_HOME=" + m.path("wrong"), "XDG_DATA_HOME=" + m.path("pours"), "XDG_STATE_HOME=" + m.path("state"),
		}}, builtin())
		return out.String()
	}
	if out := run("checklist"); !strings.Contains(out, "grove oil") || !strings.Contains(out, "pour odd teaches nothing") {
		t.Errorf("shelf or pours are not those of the variables:\n%s", out)
	}
	if out := run("logbook", "--help"); !strings.Contains(out, "Every pour is one plain file in "+m.path("pours", "pourbench", "pours")+".") {
		t.Errorf("it says:\n%s", out)
	}
	if _, err := os.Stat(m.path("wrong")); !os.IsNotExist(err) {
		t.Errorf("the first of two variables was used: %v", err)
	}
}
