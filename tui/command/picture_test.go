package command_test

import (
	"bytes"
	"image/png"
	"os"
	"strings"
	"testing"
)

func TestAPictureGoesWhereALinkLeadsAndKeepsTheMode(t *testing.T) {
	m := newMaker(t)
	m.writes("\x89PNG\r\n\x1a\nold", "real", "bar.png")
	if err := os.Chmod(m.path("real", "bar.png"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(m.path("here"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(m.path("real", "bar.png"), m.path("here", "bar.png")); err != nil {
		t.Skip("no links here:", err)
	}
	if code, _, errs := m.types("picture", "-o", m.path("here", "bar.png"), "--width", "64"); code != 0 {
		t.Fatal(errs)
	}
	if info, err := os.Lstat(m.path("here", "bar.png")); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link became %v, %v", info, err)
	}
	info, err := os.Stat(m.path("real", "bar.png"))
	if err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info, err)
	}
	drawn, err := os.ReadFile(m.path("real", "bar.png"))
	if err != nil {
		t.Fatal(err)
	}
	if img, err := png.Decode(bytes.NewReader(drawn)); err != nil || img.Bounds().Dx() != 64 {
		t.Errorf("no picture of 64 pixels: %v", err)
	}
	m.holds(m.path("real"), "bar.png")
}

func TestAPictureThatCannotBeWrittenOrDrawnLeavesNothing(t *testing.T) {
	m := newMaker(t)
	m.writes("\x89PNG old", "out", "old.png")
	for want, args := range map[string][]string{
		"but a folder; add the name of a file": {"-o", m.path("out") + "/"},
		"no plain file but a folder\n":         {"-o", m.path("out")},
		"no such file or directory":            {"-o", m.path("nowhere", "bar.png")},
		"64 to 8000":                           {"-o", m.path("out", "old.png"), "--width", "8001"},
		"the widest that works is --width ":    {"-o", m.path("out", "old.png"), "--width", "8000"},
		"write one of":                         {"-o", m.path("out", "new.png"), "--view", "inside"},
		"say where to":                         {},
	} {
		code, out, errs := m.types(append([]string{"picture"}, args...)...)
		if code != 2 || out != "" || !strings.Contains(errs, want) {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
	}
	m.holds(m.path("out"), "old.png")
	if old, err := os.ReadFile(m.path("out", "old.png")); err != nil || string(old) != "\x89PNG old" {
		t.Errorf("the old picture is %q, %v", old, err)
	}
}

func TestAPictureOnStandardOutputIsTheSameBytes(t *testing.T) {
	m := newMaker(t)
	_, out, errs := m.types("picture", "-o", "-", "--width", "64")
	if code, _, _ := m.types("picture", "-o", m.path("bar.png"), "--width", "64"); code != 0 {
		t.Fatal(errs)
	}
	if file, err := os.ReadFile(m.path("bar.png")); err != nil || out != string(file) {
		t.Errorf("%d bytes on standard output, %d in the file, %v", len(out), len(file), err)
	}
}

// A picture or a ruler that is typed over a plan, or into a file of another kind, leaves that as it is.
func TestWhatIsNoPictureIsNotOverwritten(t *testing.T) {
	m := newMaker(t)
	for _, name := range []string{"lilac.toml", "notes.png", "notes.pdf", "notes.svg"} {
		m.writes("my words", "out", name)
	}
	for _, c := range [][3]string{
		{"picture", "lilac.toml", "ends in .png"},
		{"picture", "new.jpg", "ends in .png"},
		{"picture", "notes.png", "is no picture"},
		{"ruler", "lilac.toml", "ends in .pdf"},
		{"ruler", "notes.pdf", "is no ruler"},
		{"ruler", "notes.svg", "is no ruler"},
	} {
		code, _, errs := m.types(c[0], "-o", m.path("out", c[1]))
		if code != 2 || !strings.Contains(errs, c[2]) {
			t.Errorf("%v: exit %d, %q", c, code, errs)
		}
		if text, err := os.ReadFile(m.path("out", c[1])); err == nil && string(text) != "my words" {
			t.Errorf("%v is overwritten", c)
		}
	}
	m.holds(m.path("out"), "lilac.toml", "notes.pdf", "notes.png", "notes.svg")
	for _, args := range [][]string{{"picture", "--width", "64"}, {"ruler"}} { // what it wrote itself it writes again
		file := map[string]string{"picture": "bar.PNG", "ruler": "ruler.svg"}[args[0]]
		for range 2 {
			if code, _, errs := m.types(append(args, "-o", m.path("out", file))...); code != 0 {
				t.Errorf("%v: %s", args, errs)
			}
		}
	}
}
