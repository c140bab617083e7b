package main

import (
	"bytes"
	"context"
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	_ "github.com/charmbracelet/x/exp/golden" // its -update
	"github.com/rogpeppe/go-internal/testscript"

	"pourbench/pour"
	"pourbench/pour/paper"
)

func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// A screen in the README stands under the name of the golden frame it is. With -update it is put in anew.
func TestScreensOfTheReadmeAreGoldenFrames(t *testing.T) {
	text := readme(t)
	screens := regexp.MustCompile("(?s)<!-- (\\S+\\.golden) -->\n```\n(.*?)\n```\n").FindAllStringSubmatch(text, -1)
	if len(screens) != 2 {
		t.Errorf("the README has %d screens, want the jugs and the live run", len(screens))
	}
	if strings.Count(text, "```\n ") != len(screens) {
		t.Error("a screen stands in the README without the name of its golden frame")
	}
	for _, s := range screens {
		frame, err := os.ReadFile(filepath.FromSlash(s[1]))
		if err != nil {
			t.Fatal(err)
		}
		want := strings.TrimRight(ansi.Strip(string(frame)), "\n")
		if s[2] == want {
			continue
		}
		if f := flag.Lookup("update"); f != nil && f.Value.String() == "true" {
			text = strings.Replace(text, s[2], want, 1)
			continue
		}
		t.Errorf("the screen in the README is not %s; put it in with: go test . -update", s[1])
	}
	if text != readme(t) {
		if err := os.WriteFile("README.md", []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// commandLines are the command lines the README shows.
func commandLines(text string) []string {
	var lines []string
	for _, block := range regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllStringSubmatch(text, -1) {
		for line := range strings.SplitSeq(strings.TrimSpace(block[1]), "\n") {
			line, _, _ = strings.Cut(line, "#")
			lines = append(lines, strings.TrimSpace(line))
		}
	}
	return lines
}

func TestTheCommandsOfTheReadmeWork(t *testing.T) {
	lines := commandLines(readme(t))
	if len(lines) < 10 {
		t.Fatalf("the README shows %d commands", len(lines))
	}
	var run strings.Builder
	for _, line := range lines {
		switch {
		case strings.HasPrefix(line, "pourbench check "): // it ends with the caution it finds
			run.WriteString("! " + line + "\nstdout 'caution'\n")
		case strings.HasPrefix(line, "pourbench run "):
			run.WriteString("! " + line + "\nstderr 'there is no terminal'\n")
		case strings.HasPrefix(line, "pourbench again "), strings.HasPrefix(line, "pourbench cure "): // that pour is hers to make
			run.WriteString("! " + line + "\nstderr 'read the pour 2026-12-05-alpine-meadow'\n")
		case strings.HasPrefix(line, "pourbench backup "):
			run.WriteString("mkdir state/pourbench\ncp plans state/pourbench/plans\n" + line + "\nstdout .\n")
		case strings.Contains(line, " -o bar.png"):
			run.WriteString(line + "\nexists bar.png\n")
		default:
			run.WriteString(line + "\nstdout .\n! stderr .\n")
		}
	}
	plan, err := os.ReadFile("presets/plans/alpine-meadow.toml")
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "readme.txtar")
	if err := os.WriteFile(file, []byte(run.String()+"-- plans --\n-- meadow.toml --\n"+string(plan)), 0o600); err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{Files: []string{file}, Setup: func(env *testscript.Env) error {
		if err := home(env); err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(env.WorkDir, "plans"), []byte(filepath.Join(env.WorkDir, "meadow.toml")+"\n"), 0o600)
	}})
}

// The picture in the README is the one its caption names, but for what another machine's arithmetic may round otherwise.
func TestThePictureOfTheReadmeIsDrawnByTheProgram(t *testing.T) {
	plan, shelf := meadow(t, "drop")
	var out bytes.Buffer
	if err := paper.Picture(context.Background(), &out, pour.Work(plan, shelf, pour.Hand{}), paper.PictureOptions{View: paper.ViewBar, Width: 200}); err != nil {
		t.Fatal(err)
	}
	const name = "testdata/readme/alpine-meadow.png"
	if !strings.Contains(readme(t), "]("+name+")") {
		t.Errorf("the README does not show %s", name)
	}
	there, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if len(there) > 70_000 {
		t.Errorf("%s has %d bytes", name, len(there))
	}
	drawn, shown := decoded(t, out.Bytes()), decoded(t, there)
	if drawn.Bounds() != shown.Bounds() {
		t.Fatalf("it is %v, the README shows %v", drawn.Bounds(), shown.Bounds())
	}
	other := 0
	for x := range drawn.Bounds().Dx() {
		for y := range drawn.Bounds().Dy() {
			if drawn.At(x, y) != shown.At(x, y) {
				other++
			}
		}
	}
	if all := drawn.Bounds().Dx() * drawn.Bounds().Dy(); other > all/200 {
		t.Errorf("%d of %d pixels are others; draw it anew with: go run . picture -o %s --width 200", other, all, name)
	}
}

func decoded(t *testing.T, file []byte) image.Image {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return img
}
