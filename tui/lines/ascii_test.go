package lines

import (
	"go/parser"
	"go/scanner"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestSignsBecomeWordsAndLetters(t *testing.T) {
	for text, want := range map[string]string{
		"oils 36 °C ± 2 °F":       "oils 36 C +- 2 F",
		"‹ fill ›":                "fill",
		"pot 12 g · gentian 4 g":  "pot 12 g; gentian 4 g",
		"– ":                      "-",
		"200 × 80, ≥ 3 … → do":    "200 x 80, >= 3 ... -> do",
		"Café Ärger\x1b[31m\r\n!": "Cafe Aerger[31m !",
		"石鹸":                      "??",
		"e\u0301":                 "e",
		"as it is, 100 %":         "as it is, 100 %",
	} {
		if got := ASCII(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

func TestWhateverIsSaidIsPrintableASCII(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		for _, r := range ASCII(text) {
			if r < ' ' || r > '~' {
				t.Fatalf("%q becomes %q", text, ASCII(text))
			}
		}
	})
}

// Every sign that the program itself writes has its likeness: a question mark is for the letters of other scripts in a maker's own words.
func TestEverySignOfTheProgramHasALikeness(t *testing.T) {
	seen := 0
	check := func(path, text string) {
		for _, r := range text {
			if r > '~' {
				seen++
				if strings.Contains(ASCII(string(r)), "?") {
					t.Errorf("%s: %q (%U) has none", path, r, r)
				}
			}
		}
	}
	for _, root := range []string{"../../tui", "../../pour", "../../chem", "../../presets"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "testdata") {
				return err
			}
			text, err := os.ReadFile(path)
			switch {
			case err != nil:
				return err
			case strings.HasSuffix(path, ".toml"):
				check(path, string(text))
			case strings.HasSuffix(path, ".go") && !foreign(path):
				for _, s := range literals(t, path, text) {
					check(path, s)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if seen < 100 {
		t.Errorf("only %d signs were looked at", seen)
	}
}

// foreign says whether a file writes signs that are drawn, or bytes of a file, and never told.
func foreign(path string) bool {
	for _, drawn := range []string{"lines/ascii.go", "/picture/", "/pixels/", "/live/glyph.go", "/vector/photo.go"} {
		if strings.Contains(filepath.ToSlash(path), drawn) {
			return true
		}
	}
	return false
}

// literals are the strings of a Go file.
func literals(t *testing.T, path string, text []byte) []string {
	t.Helper()
	set := token.NewFileSet()
	if _, err := parser.ParseFile(set, path, text, parser.PackageClauseOnly); err != nil {
		t.Fatal(err)
	}
	var s scanner.Scanner
	s.Init(set.AddFile(path, -1, len(text)), text, nil, 0)
	var out []string
	for {
		_, tok, lit := s.Scan()
		switch tok {
		case token.EOF:
			return out
		case token.STRING:
			if v, err := strconv.Unquote(lit); err == nil {
				out = append(out, v)
			}
		}
	}
}
