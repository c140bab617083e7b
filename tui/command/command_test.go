package command_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/spf13/cobra"

	"pourbench/presets"
	"pourbench/tui/command"
)

func builtin() command.Builtin {
	return command.Builtin{Shelf: presets.Shelf, Overlay: presets.Overlay, Plans: presets.Plans, Plan: presets.Plan, Reference: presets.Reference}
}

// maker is one who types commands, with folders of her own.
type maker struct {
	t    *testing.T
	home string
	in   io.Reader
	errs io.Writer        // nil: kept
	now  func() time.Time // nil: the system's clock
}

func newMaker(t *testing.T) *maker {
	t.Helper()
	return &maker{t: t, home: t.TempDir(), in: strings.NewReader("")}
}

// path is a file in her folder.
func (m *maker) path(parts ...string) string {
	return filepath.Join(append([]string{m.home}, parts...)...)
}

// types runs one command line.
func (m *maker) types(args ...string) (code int, out, errs string) {
	m.t.Helper()
	var o, e bytes.Buffer
	p := command.Process{Args: args, In: m.in, Out: &o, Errs: &e, Environ: []string{
		"HOME=" + m.home, "XDG_CONFIG_HOME=" + m.path("config"), "XDG_STATE_HOME=" + m.path("state"), "XDG_DATA_HOME=" + m.path("data"),
	}}
	p.Now = m.now
	if m.errs != nil {
		p.Errs = m.errs
	}
	code = command.Main(p, builtin())
	return code, o.String(), e.String()
}

// writes puts a file into her folder.
func (m *maker) writes(text string, parts ...string) {
	m.t.Helper()
	path := m.path(parts...)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		m.t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		m.t.Fatal(err)
	}
}

// holds checks what is in a folder of hers.
func (m *maker) holds(dir string, want ...string) {
	m.t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		m.t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	if !slices.Equal(names, want) {
		m.t.Errorf("%s holds %q, want %q", dir, names, want)
	}
}

func TestAnArgumentCannotMoveTheCursor(t *testing.T) {
	m := newMaker(t)
	for _, args := range [][]string{
		{"check", "no\x1b[2Jsuch\u202eplan"}, {"logbook", "show", "no\x1b[2Jsuch\u202epour"}, {"picture", "-o", "no\x1b[2J\u202e/x"}, {"--no\x1b[2J\u202e"},
	} {
		code, out, errs := m.types(args...)
		if code != 2 || out != "" || !strings.Contains(errs, "no") {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
		if strings.ContainsAny(errs, "\x1b\u202e") {
			t.Errorf("%q comes out as %q", args, errs)
		}
	}
}

func TestARelativeFolderOfTheEnvironmentIsPassedOver(t *testing.T) {
	t.Chdir(t.TempDir())
	var out bytes.Buffer
	code := command.Main(command.Process{
		Args: []string{"logbook", "--help"}, In: strings.NewReader(""), Out: &out, Errs: &out, Environ: []string{"XDG_DATA_HOME=here"},
	}, builtin())
	_, named, _ := strings.Cut(out.String(), "plain file in ")
	if code != 0 || !filepath.IsAbs(named) {
		t.Errorf("exit %d, pours in %q", code, named)
	}
}

// Started by a double click on Windows, the command library would print a text of its own and end.
func TestADoubleClickOpensTheBench(t *testing.T) {
	newMaker(t).types("--version")
	if cobra.MousetrapHelpText != "" {
		t.Errorf("it says %q and ends", cobra.MousetrapHelpText)
	}
}
