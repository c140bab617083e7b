package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// house is every folder that holds Go, from the lowest up, with all that it may import of the program's own. A folder imports only
// folders above its own line in this list, so that no two can ever need each other; "std" says that it uses the standard library alone.
func house() []room {
	return []room{
		{"chem", "std"},
		{"chem/clock", "std chem"},
		{"chem/colour", "std"},
		{"chem/cure", "std chem"},
		{"pour/plain", "std"},
		{"pour/strict", "pour/plain"},
		{"pour/disk", ""},
		{"pour/day", "std"},
		{"pour/disk/disktest", "pour/disk"},
		{"pour/ownfile", "pour/strict pour/disk"},
		{"pour/money", ""},
		{"pour/cost", "pour/money"},
		{"pour/lot", "pour/money pour/day"},
		{"pour/label", "chem pour/day"},
		{"pour/vector", ""},
		{"pour/vector/vectortest", ""},
		{"pour/script", "std"},
		{"pour/shape", "std"},
		{"pour/relief", "std pour/script pour/shape"},
		{"pour/swirl", "std pour/script pour/relief"},
		{"pour/slice", "std pour/relief pour/swirl"},
		{"pour", "pour/label pour/day pour/cost pour/money pour/lot pour/strict pour/plain chem chem/clock chem/colour chem/cure pour/script pour/swirl pour/shape pour/relief"},
		{"pour/pourtest", "pour"},
		{"pour/naming", "pour/strict"},
		{"pour/recipe", "pour/naming pour/lot pour pour/strict pour/plain"},
		{"pour/whatif", "pour pour/label pour/script pour/strict chem/colour"},
		{"pour/fresh", "pour/strict pour/whatif pour chem chem/colour"},
		{"pour/house", "pour/cost pour/money pour/lot pour/ownfile pour/strict"},
		{"pour/labelfile", "pour/label pour/ownfile pour/strict pour/day"},
		{"pour/planfile", "pour pour/strict pour/disk pour/plain"},
		{"pour/logbook", "pour/planfile pour pour/strict pour/disk pour/plain chem"},
		{"pour/logbook/live", "pour/logbook pour pour/plain chem chem/clock"},
		{"pour/logbook/life", "pour/logbook/live pour/logbook pour pour/strict pour/day pour/plain chem/cure"},
		{"pour/shelffile", "pour pour/strict pour/disk"},
		{"pour/stock", "pour/lot pour/money pour/strict pour/disk pour/day pour/plain"},
		{"pour/stock/invoice", "pour pour/naming pour/lot pour/money pour/stock pour/strict pour/day pour/plain"},
		{"pour/stock/trace", "pour/stock pour/lot pour/logbook/life pour/logbook pour pour/day pour/strict pour/plain"},
		{"pour/stock/closing", "pour/stock pour/lot pour/money pour/logbook/life pour/logbook pour/day"},
		{"pour/stock/stocktest", "pour/stock pour/lot pour/money pour/day pour/logbook/life pour/logbook pour"},
		{"pour/stock/taking", "pour/stock pour/money pour/lot pour/cost pour/logbook/life pour/logbook pour pour/day pour/strict"},
		{"pour/stock/desk", "pour/stock/invoice pour/stock pour/lot pour/money pour/strict pour/day pour/plain"},
		{"pour/stock/tables", "pour/stock/desk pour/stock/invoice pour/stock pour/lot pour/money pour/day pour/plain pour/strict pour pour/logbook pour/logbook/life"},
		{"pour/logbook/learn", "pour/logbook/life pour/logbook/live pour/logbook pour chem chem/clock chem/cure"},
		{"pour/logbook/scents", "pour/logbook/life pour/logbook/learn pour/logbook pour pour/day chem"},
		{"pour/again", "pour/logbook/learn pour/logbook/life pour/logbook/live pour/logbook pour/whatif pour pour/day chem chem/cure"},
		{"pour/ruler", "pour pour/shape pour/vector"},
		{"pour/sticker", "pour pour/label pour/day pour/shape pour/vector"},
		{"pour/season", "pour/money pour/planfile pour/logbook/life pour/logbook pour pour/strict pour/disk pour/day pour/plain"},
		{"pour/stock/shopping", "pour/season pour/stock pour pour/lot pour/money pour/day pour/plain"},
		{"pour/drying", "pour pour/day pour/logbook/life chem/cure"},
		{"pour/paper", "pour/vector pour/label pour/cost pour/plain pour/money pour/stock/closing pour/stock/desk pour/stock/invoice pour/stock/trace pour/again pour/season pour/stock pour/lot pour/day pour/drying pour/logbook/scents pour/logbook/life pour/logbook/learn pour/logbook/live pour/logbook pour pour/slice pour/relief pour/swirl chem chem/clock chem/cure pour/stock/shopping"},
		{"pour/calendar", "pour/season pour pour/logbook/life pour/day pour/strict pour/disk pour/plain"},
		{"pour/backup", "pour/house pour/labelfile pour/stock pour/season pour/calendar pour/planfile pour/logbook pour/strict pour/disk pour/plain"},
		{"presets", "pour/label pour/day pour/money pour pour/strict pour/plain chem/colour chem"},
		{"tui/screen", ""},
		{"tui/layout", ""},
		{"tui/keys", "pour/strict"},
		{"tui/entry", "tui/screen"},
		{"tui/look", "tui/screen pour chem chem/colour"},
		{"tui/chart", "tui/look tui/screen pour/drying"},
		{"tui/board", "tui/look tui/screen pour/season pour/day"},
		{"tui/grid", "tui/entry tui/look tui/screen pour"},
		{"tui/picture", "tui/look tui/screen pour/slice pour/swirl pour/relief chem/colour"},
		{"tui/pixels", "tui/screen"},
		{"tui/session", "pour/whatif pour chem/colour"},
		{"tui/dialog", "pour/strict pour/plain tui/entry tui/keys tui/look tui/screen"},
		{"tui/lines", "tui/dialog tui/grid tui/keys tui/look tui/screen pour/plain"},
		{"tui/panel", "pour/label pour/lot pour/cost pour/money tui/dialog tui/grid tui/keys tui/layout tui/look tui/screen pour/whatif pour pour/strict pour/swirl pour/plain chem chem/colour"},
		{"tui/terminal", "tui/look tui/screen"},
		{"tui/live", "tui/lines tui/terminal tui/dialog tui/keys tui/look tui/screen pour/logbook/learn pour/logbook/live pour/logbook pour pour/strict pour/disk pour/plain chem"},
		{"tui/listing", "tui/entry tui/keys tui/look tui/screen"},
		{"tui/batches", "tui/listing tui/board tui/chart pour/season tui/lines tui/terminal tui/dialog tui/pixels tui/keys tui/entry tui/look tui/screen pour/drying pour/logbook/life pour/logbook pour/disk pour/day pour pour/plain chem/cure"},
		{"tui/stockroom", "tui/listing tui/lines tui/terminal tui/dialog tui/keys tui/entry tui/look tui/screen pour/stock/desk pour/stock/invoice pour/stock pour/lot pour/money pour/day pour/disk pour/plain pour"},
		{"tui", "pour/strict tui/lines tui/panel tui/terminal tui/dialog tui/session tui/picture tui/pixels tui/grid tui/keys tui/layout tui/entry tui/look tui/screen " +
			"pour/stock/shopping pour/again pour/ruler pour/paper pour/fresh pour/planfile pour/recipe pour/whatif pour/disk pour pour/swirl pour/relief pour/plain chem/colour"},
		{"tui/command", "pour/sticker pour/label pour/shelffile tui/stockroom pour/house pour/labelfile pour/stock/tables pour/stock/taking pour/money pour/stock/closing pour/stock/desk pour/stock/invoice pour/lot pour/stock/trace pour/stock tui tui/lines tui/batches tui/live tui/pixels tui/screen tui/terminal tui/keys pour/season pour/calendar pour/ruler pour/drying pour/paper pour/again pour/day pour/logbook/scents pour/logbook/life pour/logbook/learn pour/logbook/live pour/logbook pour/backup pour/fresh pour/planfile pour/whatif pour/disk pour/strict pour pour/plain pour/stock/shopping"},
		{".", "tui/command presets"},
	}
}

// room is one folder of the house and the folders it may import, separated by spaces.
type room struct{ folder, imports string }

func TestTheListOfTheHouseRunsDownwards(t *testing.T) {
	below := []string{"std"}
	for _, r := range house() {
		for _, to := range strings.Fields(r.imports) {
			if !slices.Contains(below, to) {
				t.Errorf("%s may import %s, which does not stand above its line", r.folder, to)
			}
			switch {
			case to == "presets" && r.folder != ".":
				t.Errorf("%s may import presets, which only main knows", r.folder)
			case strings.HasPrefix(r.folder, "chem") && strings.HasPrefix(to, "pour"), strings.HasPrefix(r.folder, "pour") && strings.HasPrefix(to, "tui"):
				t.Errorf("%s may import %s", r.folder, to)
			}
		}
		below = append(below, r.folder)
	}
}

func TestEveryFolderImportsOnlyWhatTheHouseAllows(t *testing.T) {
	rooms := house()
	seen, used := 0, map[string]bool{}
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		seen++
		folder := filepath.ToSlash(filepath.Dir(path))
		at := slices.IndexFunc(rooms, func(r room) bool { return r.folder == folder })
		if at < 0 {
			t.Errorf("%s is in no room of the house: give %s its line in house_test.go and in DEVELOPERS.md", path, folder)
			return nil
		}
		checkImports(t, path, rooms[at], used)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < 50 {
		t.Fatalf("only %d files were looked at", seen)
	}
	for _, r := range rooms {
		for _, to := range strings.Fields(r.imports) {
			if to != "std" && there(r.folder) && there(to) && !used[r.folder+" "+to] {
				t.Errorf("the house lets %s import %s, which it does not: take that out of the list", r.folder, to)
			}
		}
	}
}

// A picture or a capture that was looked at and left behind weighs more than all code of its folder; what tests need stands in testdata.
func TestNothingLiesAboutTheHouse(t *testing.T) {
	for _, storey := range []string{"chem", "pour", "presets", "tui"} {
		err := filepath.WalkDir(storey, func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && d.Name() == "testdata":
				return filepath.SkipDir
			case !d.IsDir() && !slices.Contains([]string{".go", ".toml", ".md"}, filepath.Ext(path)):
				t.Errorf("%s is neither code nor table nor text: take it away, or keep it in testdata where a test needs it", path)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

func there(folder string) bool {
	_, err := os.Stat(folder)
	return err == nil
}

func checkImports(t *testing.T, path string, r room, used map[string]bool) {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	allowed := strings.Fields(r.imports)
	for _, spec := range file.Imports {
		name, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		own, isOwn := strings.CutPrefix(name, "pourbench/")
		used[r.folder+" "+own] = isOwn
		switch {
		case isOwn && !slices.Contains(allowed, own):
			t.Errorf("%s imports %s; the house lets %s import %s", path, own, r.folder, r.imports)
		case !isOwn && strings.Contains(name, ".") && slices.Contains(allowed, "std"):
			t.Errorf("%s imports %s; %s uses the standard library only", path, name, r.folder)
		case strings.HasPrefix(name, "charm.land/") && !strings.HasPrefix(r.folder, "tui"):
			t.Errorf("%s imports %s; only the screens know a terminal", path, name)
		}
	}
}

func TestNoOtherGoFileStandsAtTheTop(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if f != "main.go" && !strings.HasSuffix(f, "_test.go") {
			t.Errorf("%s stands beside main.go; the top is main.go and tests", f)
		}
	}
}

// changing is what package os offers to change the disk. A folder may be made and a time set anywhere: that loses nothing.
func changing() []string {
	return []string{"Chmod", "Chown", "CopyFS", "Create", "CreateTemp", "Lchown", "Link", "MkdirTemp", "OpenFile", "OpenRoot", "Remove", "RemoveAll", "Rename", "Symlink", "Truncate", "WriteFile"}
}

func TestOnlyTheDiskPackageChangesFiles(t *testing.T) {
	found := 0
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		own := strings.HasPrefix(filepath.ToSlash(path), "pour/disk/")
		for _, call := range changes(t, path) {
			found++
			if !own {
				t.Errorf("%s uses os.%s; files are changed through pour/disk, so that a kill or a full disk never leaves half of one", path, call)
			}
		}
		return nil
	})
	if err != nil || found == 0 {
		t.Errorf("%d uses were found, %v", found, err)
	}
}

// changes is every use of a function of package os that changes the disk.
func changes(t *testing.T, path string) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	ast.Inspect(file, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if of, ok := s.X.(*ast.Ident); ok && of.Name == "os" && slices.Contains(changing(), s.Sel.Name) {
				out = append(out, s.Sel.Name)
			}
		}
		return true
	})
	return out
}

// A file that the guide sends a reader to is there.
func TestTheGuideNamesOnlyFilesThatAreThere(t *testing.T) {
	text, err := os.ReadFile("DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]bool{}
	err = filepath.WalkDir(".", func(path string, _ fs.DirEntry, err error) error {
		if err == nil {
			files[filepath.Base(path)] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range regexp.MustCompile("`[a-z/]*?([a-z_]+\\.(?:go|toml|csv))`").FindAllStringSubmatch(string(text), -1) {
		if !files[name[1]] {
			t.Errorf("the guide names %s, which is not there", name[0])
		}
	}
}

// In the largest folder nobody has to guess where something is: the guide has a word on every file.
func TestTheGuideSaysWhereThingsAreInTheSwirl(t *testing.T) {
	text, err := os.ReadFile("DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, told, _ := strings.Cut(string(text), "**Where to find things in `pour/swirl/`**")
	told, _, _ = strings.Cut(told, "\n\n")
	files, err := filepath.Glob("pour/swirl/*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files in pour/swirl, %v", len(files), err)
	}
	for _, path := range files {
		if name := filepath.Base(path); !strings.HasSuffix(name, "_test.go") && !strings.Contains(told, "`"+name+"`") {
			t.Errorf("the guide does not say what is in %s", name)
		}
	}
}

// The guide's list of the house names every folder that is there, each with a line, and no other.
func TestTheGuideListsEveryFolder(t *testing.T) {
	text, err := os.ReadFile("DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, list, _ := strings.Cut(string(text), "```\nmain.go")
	list, _, _ = strings.Cut(list, "```")
	listed, above := map[string]bool{}, []string{}
	for _, line := range strings.Split(list, "\n")[1:] {
		name, means, _ := strings.Cut(strings.TrimLeft(line, " "), " ")
		depth := (len(line) - len(strings.TrimLeft(line, " "))) / 2
		if name == "" || depth > len(above) {
			continue
		}
		above = append(above[:depth], strings.TrimSuffix(name, "/"))
		if listed[strings.Join(above, "/")] = true; strings.TrimSpace(means) == "" {
			t.Errorf("%s has no line of its own", line)
		}
	}
	held := map[string]bool{"testdata": true}
	err = filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if folder := filepath.ToSlash(filepath.Dir(path)); err == nil && !d.IsDir() && strings.HasSuffix(path, ".go") && folder != "." {
			held[folder] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for folder := range held {
		if !listed[folder] {
			t.Errorf("the guide does not list %s", folder)
		}
	}
	for folder := range listed {
		if !held[folder] {
			t.Errorf("the guide lists %s, which holds no Go", folder)
		}
	}
}
