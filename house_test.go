package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rank orders the folders of the house: a folder imports only folders of the same or a higher rank.
func rank(folder string) int {
	below := map[string]int{"main": 0, "tui": 1, "presets": 2, "pour": 4, "pour/swirl": 5, "pour/strict": 5, "pour/script": 6, "pour/plain": 6, "pour/disk": 6, "chem": 8}
	if r, ok := below[folder]; ok {
		return r
	}
	for i, prefix := range map[int]string{1: "tui/", 3: "pour/", 7: "chem/"} {
		if strings.HasPrefix(folder, prefix) {
			return i
		}
	}
	return -1
}

// siblings are folders of one rank in their order: each imports of them only those that stand after it.
func siblings() []string {
	return []string{"pour/paper", "pour/logbook/learn", "pour/logbook/live", "pour/logbook", "pour/planfile"}
}

// turned reports whether an import runs against the order of siblings.
func turned(from, to string) bool {
	at, other := slices.Index(siblings(), from), slices.Index(siblings(), to)
	return at >= 0 && other >= 0 && other < at
}

func TestImportsRunDownwardsOnly(t *testing.T) {
	seen := 0
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		seen++
		checkImports(t, path)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < 50 {
		t.Fatalf("only %d files were looked at", seen)
	}
}

func checkImports(t *testing.T, path string) {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	folder := filepath.ToSlash(filepath.Dir(path))
	if folder == "." {
		folder = "main"
	}
	for _, spec := range file.Imports {
		name, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		own, isOwn := strings.CutPrefix(name, "pourbench/")
		switch {
		case isOwn && rank(own) < rank(folder):
			t.Errorf("%s imports %s, which is above it", path, own)
		case isOwn && turned(folder, own):
			t.Errorf("%s imports %s, a sibling that stands before it", path, own)
		case isOwn && own == "presets" && folder != "main":
			t.Errorf("%s imports presets, which only main knows", path)
		case !isOwn && strings.HasPrefix(folder, "chem") && strings.Contains(name, "."):
			t.Errorf("%s imports %s; chem uses the standard library only", path, name)
		case folder == "pour" && strings.HasPrefix(name, "charm.land/"):
			t.Errorf("%s imports %s; pour knows no terminal", path, name)
		}
	}
}
