package command_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"pourbench/tui/command"
)

// plain is a plan above which no warning stands higher than a note, with a superfat to be changed.
func plain(name, superfat string) string {
	return `format = 1
name = "` + name + `"
[mould]
shape = "loaf"
length_mm = 200
width_mm = 70
height_mm = 75
fill_mm = 60
bar_mm = 25
[swirl]
technique = "drop"
[base]
size = "mould"
superfat_percent = ` + superfat + `
naoh_purity_percent = 98
lye_concentration_percent = 28
blend = [{ at_min = 0, s = 30 }]
[[base.oil]]
oil = "olive"
percent = 100
[[base.jug]]
name = "pot"
share_percent = 100
`
}

// The codes are a contract with scripts: 0 a note at most, 1 a caution, 3 a stop, 2 a plan that cannot be read.
func TestCheckTellsByItsExitCode(t *testing.T) {
	m := newMaker(t)
	m.writes(plain("Quiet", "8"), "quiet.toml")
	m.writes(plain("Heavy", "-1"), "stop.toml")
	m.writes(strings.Replace(plain("Broken", "8"), "fill_mm", "fil_mm", 1), "broken.toml")
	for _, c := range []struct {
		plan      []string
		code      int
		out, errs string
	}{
		{[]string{m.path("quiet.toml")}, 0, "Quiet: ", ""},
		{nil, 1, "CAUTION\n", ""}, // the example
		{[]string{m.path("stop.toml")}, 3, "STOP\n  lye-heavy, base", ""},
		{[]string{m.path("broken.toml")}, 2, "", "broken.toml:8:1: mould.fil_mm: is no key"},
		{[]string{m.path("nowhere.toml")}, 2, "", "nowhere.toml: no such file or directory"},
	} {
		code, out, errs := m.types(append([]string{"check"}, c.plan...)...)
		if code != c.code || !strings.Contains(out, c.out) || !strings.Contains(errs, c.errs) || (c.out == "") != (out == "") || (c.errs == "") != (errs == "") {
			t.Errorf("check %q: exit %d, %q, %q", c.plan, code, out, errs)
		}
	}
}

// A command that was typed wrongly prints nothing, says what was wrong on standard error and ends with 2.
func TestAWrongUseIsRefusedOnStandardError(t *testing.T) {
	m := newMaker(t)
	for want, args := range map[string][]string{
		"unknown flag: --nope":                      {"--nope"},
		"accepts at most 1 arg(s), received 2":      {"check", "a.toml", "b.toml"},
		"accepts at most 2 arg(s), received 3":      {"explain", "a", "b.toml", "c.toml"},
		"nonsense: no such file or directory":       {"nonsense"},
		"its example":                               {"nonsense"},
		"unknown command \"extra\"":                 {"keys", "extra"},
		"\"extra\" is a word too many":              {"logbook", "learned", "extra"},
		"logbook show: ID is missing":               {"logbook", "show"},
		"logbook note: WORDS is missing":            {"logbook", "note", "one"},
		"invalid argument \"wide\" for \"--width\"": {"picture", "-o", "x.png", "--width", "wide"},
		"flag needs an argument: --shelf":           {"check", "--shelf"},
		"flag needs an argument: 'o'":               {"picture", "-o"},
	} {
		code, out, errs := m.types(args...)
		if code != 2 || out != "" || !strings.HasPrefix(errs, "pourbench: ") || !strings.Contains(errs, want) {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
	}
	m.holds(m.home)
}

// A word that is no colour or background is not passed over as if nothing had been typed.
func TestAWordThatIsNoColourIsRefusedWithThoseThereAre(t *testing.T) {
	m := newMaker(t)
	for want, args := range map[string][]string{
		`--color "purple": write one of auto, always, never, 16, 256, truecolor`: {"--color", "purple"},
		`--color "": write one of auto`:                                          {"check", "--color="},
		`--background "blue": write one of auto, dark, light`:                    {"checklist", "--background", "blue"},
		`--pixels "on": write one of auto, off, tmux`:                            {"--pixels", "on"},
		`--cells "3": write one of 2, 4, 6`:                                      {"--cells", "3"},
		`--background "DARK": write one of`:                                      {"logbook", "list", "--background", "DARK"},
	} {
		if code, out, errs := m.types(args...); code != 2 || out != "" || !strings.Contains(errs, want) {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
	}
	for _, colour := range []string{"auto", "always", "never", "16", "256", "truecolor"} {
		for _, ground := range []string{"auto", "dark", "light"} {
			if code, _, errs := m.types("keys", "--color", colour, "--background", ground); code != 0 || errs != "" {
				t.Errorf("--color %s --background %s: exit %d, %s", colour, ground, code, errs)
			}
		}
	}
}

// What is printed goes into files and other programs: whatever colour is asked for, there is none in it.
func TestNoColourIsPrintedIntoAPipe(t *testing.T) {
	m := newMaker(t)
	for _, args := range [][]string{{"checklist"}, {"check"}, {"keys"}, {"codes"}, {"explain", "bars.cut_g"}, {"--help"}} {
		_, before, _ := m.types(args...)
		if _, out, errs := m.types(append(args, "--color", "always")...); out != before || errs != "" || out == "" || strings.Contains(out, "\x1b") {
			t.Errorf("%q in colour differs, or is none: %q", args, out)
		}
	}
}

func TestWithoutATerminalTheBenchPrintsTheChecklistAndARunIsRefused(t *testing.T) {
	m := newMaker(t)
	m.writes(plain("Quiet", "8"), "quiet.toml")
	for _, plan := range [][]string{nil, {m.path("quiet.toml")}} {
		_, want, _ := m.types(append([]string{"checklist"}, plan...)...)
		if code, out, errs := m.types(plan...); code != 0 || errs != "" || out != want || !strings.Contains(out, "[ ]") {
			t.Errorf("%q: exit %d, %q, %s", plan, code, errs, out)
		}
	}
	if _, out, _ := m.types(m.path("quiet.toml")); !strings.Contains(out, "Quiet") || strings.Contains(out, "Alpine") {
		t.Errorf("not the plan that was named:\n%s", out)
	}
	code, out, errs := m.types("run", m.path("quiet.toml"))
	if code != 2 || out != "" || !strings.Contains(errs, "there is no terminal to draw on; talk in lines with --plain, or print the checklist instead: pourbench checklist") {
		t.Errorf("run: exit %d, %q, %q", code, out, errs)
	}
	if _, err := os.Stat(m.path("data")); !os.IsNotExist(err) {
		t.Errorf("a run that was refused left a logbook: %v", err)
	}
}

func TestAPlanIsReadFromStandardInput(t *testing.T) {
	m := newMaker(t)
	m.in = strings.NewReader(plain("Typed", "8"))
	if code, out, errs := m.types("checklist", "-"); code != 0 || errs != "" || !strings.Contains(out, "Typed") {
		t.Errorf("exit %d, %s%s", code, out, errs)
	}
	m.in = strings.NewReader(plain("Typed", "lots"))
	if code, out, errs := m.types("check", "-"); code != 2 || out != "" || !strings.Contains(errs, "standard input:14:20: ") {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
}

func TestTheFiguresAreThoseOfThePlanNamed(t *testing.T) {
	m := newMaker(t)
	m.writes(plain("Quiet", "8"), "quiet.toml")
	code, out, errs := m.types("figures", m.path("quiet.toml"))
	var got struct {
		Plan  string
		Icing any
		Base  struct{ Jugs []any }
	}
	if err := json.Unmarshal([]byte(out), &got); code != 0 || errs != "" || err != nil {
		t.Fatalf("exit %d, %s, %v", code, errs, err)
	}
	if got.Plan != "Quiet" || got.Icing != nil || len(got.Base.Jugs) != 1 {
		t.Errorf("figures of another plan: %+v", got)
	}
}

func TestAFigureIsExplainedOfThePlanNamed(t *testing.T) {
	m := newMaker(t)
	m.writes(plain("Quiet", "8"), "quiet.toml")
	code, out, errs := m.types("explain", "mould.length_mm", m.path("quiet.toml"))
	if code != 0 || errs != "" || !strings.Contains(out, "200 mm") {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
	_, list, _ := m.types("explain", m.path("quiet.toml"))
	if !strings.Contains("\n"+list, "\nbars.cut_g\n") || strings.Contains(list, "icing.") || !strings.HasSuffix(list, "\n") {
		t.Errorf("a plan without icing lists:\n%s", list)
	}
	m.in = strings.NewReader(plain("Typed", "8"))
	if _, typed, _ := m.types("explain", "-"); typed != list {
		t.Error("the list of a plan on standard input is another")
	}
	_, example, _ := m.types("explain")
	if !strings.Contains(example, "\nicing.") {
		t.Error("the example's list has no icing")
	}
	if code, out, errs := m.types("explain", "base.superfat_percnt"); code != 2 || out != "" || !strings.Contains(errs, "did you mean base.superfat_percent?") {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
}

// full is a disk with no room, or a reader that went away.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestWhatCannotBePrintedIsNotPassedOver(t *testing.T) {
	home := t.TempDir()
	for _, args := range [][]string{{"checklist"}, {"figures"}, {"check"}, {"explain"}, {"keys"}, {"man"}, {"logbook", "list"}, {"logbook", "export"}, {"logbook", "export", "--json"}, {"picture", "-o", "-", "--width", "64"}} {
		var errs bytes.Buffer
		p := command.Process{Args: args, In: strings.NewReader(""), Out: full{}, Errs: &errs, Environ: []string{"HOME=" + home, "XDG_DATA_HOME=" + home, "XDG_CONFIG_HOME=" + home, "XDG_STATE_HOME=" + home}}
		if code := command.Main(p, builtin()); code != 2 || !strings.Contains(errs.String(), "no space left on device") {
			t.Errorf("%q: exit %d, %q", args, code, errs.String())
		}
	}
}

func TestTheProgramNamesItsVersionAndCompletesItsCommands(t *testing.T) {
	m := newMaker(t)
	if code, out, errs := m.types("--version"); code != 0 || errs != "" || !strings.HasPrefix(out, "pourbench version 0.1") {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		if code, out, _ := m.types("completion", shell); code != 0 || !strings.Contains(out, "pourbench") {
			t.Errorf("%s: exit %d, %d bytes", shell, code, len(out))
		}
	}
	_, out, _ := m.types("__complete", "logbook", "")
	for _, name := range []string{"list", "show", "learned", "export", "leave-out", "take-in", "result", "note", "cut", "cured", "forget"} {
		if !strings.Contains("\n"+out, "\n"+name+"\t") {
			t.Errorf("logbook %s is not offered: %s", name, out)
		}
	}
}

func TestTheManPageTellsWhatTheHelpTells(t *testing.T) {
	m := newMaker(t)
	_, man, _ := m.types("man")
	_, help, _ := m.types("--help")
	if !strings.HasPrefix(man, ".TH POURBENCH 1 \"\" \"pourbench 0.1") {
		t.Errorf("it begins with %q", man[:60])
	}
	at := 0
	for _, section := range []string{"NAME", "SYNOPSIS", "DESCRIPTION", "COMMANDS", "OPTIONS", "WARNINGS", "PLAN FILE", "SHELF FILE"} {
		i := strings.Index(man, "\n.SH "+section+"\n")
		if i < at {
			t.Errorf("section %s stands at %d, after one at %d", section, i, at)
		}
		at = max(i, at)
	}
	_, commands, _ := strings.Cut(man, ".SH COMMANDS\n")
	commands, options, _ := strings.Cut(commands, ".SH OPTIONS\n")
	for _, name := range []string{"checklist [-o FILE.pdf|FILE.txt] [PLAN]", "picture -o FILE.png [PLAN]", "run [PLAN]", "backup FILE.zip"} {
		if !strings.Contains(commands, ".TP\n.B "+name+"\n") {
			t.Errorf("the command %s is not in:\n%s", name, commands)
		}
	}
	for _, flag := range []string{"--shelf", "--color", "--background", "--no-mouse", "--pixels", "--cells"} {
		if !strings.Contains(options, flag+" ") || !strings.Contains(help, flag+" ") {
			t.Errorf("%s is not in the man page's options, or not in the help", flag)
		}
	}
	if !strings.Contains(man, "\n.TP\n.B lye-heavy\nstop: ") {
		t.Error("a warning does not stand with its severity")
	}
}
