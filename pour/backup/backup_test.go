package backup

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour/disk"
	"pourbench/pour/planfile"
)

// at is a moment with a fraction of a second, as files have.
func at() time.Time { return time.Date(2026, 11, 28, 9, 30, 15, 250e6, time.UTC) }

// house is a maker's folders.
func home(t *testing.T) Places {
	t.Helper()
	home := t.TempDir()
	p := Places{
		Home: home, Shelf: filepath.Join(home, ".config", "shelf.toml"), Book: filepath.Join(home, ".data", "pours"), Data: filepath.Join(home, ".data"),
		State: filepath.Join(home, ".state"), Plans: filepath.Join(home, "plans put back"),
	}
	return p
}

// put writes a file.
func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, at(), at()); err != nil {
		t.Fatal(err)
	}
}

// lived fills a house with one or two of everything.
func lived(t *testing.T) (p Places, away string) {
	t.Helper()
	p, away = home(t), filepath.Join(t.TempDir(), "meadow.toml")
	for path, text := range map[string]string{
		filepath.Join(p.Home, "soap", "meadow.toml"): "a plan", away: "a plan on a stick", filepath.Join(p.Home, "gone.toml"): "",
		p.Shelf: "a shelf", filepath.Join(p.Book, "2026-11-28-a.pour.toml"): "a pour", filepath.Join(p.Book, "notes.txt"): "no pour",
		filepath.Join(p.Data, "calendar.toml"): "what the calendar was told", filepath.Join(p.Data, "season.toml"): "a season", filepath.Join(p.Data, "ledger.toml"): "a ledger", filepath.Join(p.Data, "costs.toml"): "what the house costs", filepath.Join(p.Data, "label.toml"): "what labels say", filepath.Join(p.Data, ".ledger"): "kept", filepath.Join(p.Data, "other.toml"): "another program's",
		filepath.Join(p.State, "bench-1.journal"): "unsaved", filepath.Join(p.State, "bench-1.lock"): "",
	} {
		put(t, path, text)
	}
	for _, plan := range []string{filepath.Join(p.Home, "soap", "meadow.toml"), away, filepath.Join(p.Home, "gone.toml")} {
		if err := planfile.Remember(p.State, plan); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Remove(filepath.Join(p.Home, "gone.toml")); err != nil {
		t.Fatal(err)
	}
	return p, away
}

func archived(t *testing.T, files []File) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, files, at()); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func read(archive []byte) ([]File, error) {
	return Read("b.zip", bytes.NewReader(archive), int64(len(archive)))
}

func TestWhatIsGatheredComesBackByteForByte(t *testing.T) {
	p, away := lived(t)
	files, left := Gather(p)
	if len(left) > 0 {
		t.Fatal(left)
	}
	want := []File{
		{Plan, "meadow.toml", "~/soap/meadow.toml", at(), []byte("a plan")},
		{Plan, "meadow-2.toml", filepath.ToSlash(away), at(), []byte("a plan on a stick")},
		{Shelf, "shelf.toml", "~/.config/shelf.toml", at(), []byte("a shelf")},
		{Pour, "2026-11-28-a.pour.toml", "~/.data/pours/2026-11-28-a.pour.toml", at(), []byte("a pour")},
		{Beside, "calendar.toml", "~/.data/calendar.toml", at(), []byte("what the calendar was told")},
		{Beside, "season.toml", "~/.data/season.toml", at(), []byte("a season")},
		{Beside, "ledger.toml", "~/.data/ledger.toml", at(), []byte("a ledger")},
		{Beside, "costs.toml", "~/.data/costs.toml", at(), []byte("what the house costs")},
		{Beside, "label.toml", "~/.data/label.toml", at(), []byte("what labels say")},
		{Journal, "bench-1.journal", "~/.state/bench-1.journal", at(), []byte("unsaved")},
	}
	same := cmp.Comparer(func(a, b time.Time) bool { return a.Equal(b) })
	if d := cmp.Diff(want, files, same); d != "" {
		t.Error(d)
	}
	back, err := read(archived(t, files))
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, back, same); d != "" {
		t.Error(d)
	}
}

// The archive is one any zip tool opens, and the list one that a person reads.
func TestTheArchiveIsPlainAndItsListTellsEveryFile(t *testing.T) {
	p, _ := lived(t)
	files, _ := Gather(p)
	archive := archived(t, files)
	z, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		t.Fatal(err)
	}
	list, err := z.Open("manifest.toml")
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(list)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"name = \"pours/2026-11-28-a.pour.toml\"\nkind = \"pour\"\nfrom = \"~/.data/pours/2026-11-28-a.pour.toml\"\nbytes = 6\n" +
			fmt.Sprintf("sha256 = \"%x\"\nmodified = 2026-11-28T09:30:15.25", sha256.Sum256([]byte("a pour"))),
		"made = 2026-11-28T09:30:15Z", "name = \"shelf/shelf.toml\"", "from = \"~/soap/meadow.toml\"",
	} {
		if !strings.Contains(string(text), want) {
			t.Errorf("the list lacks\n%s\nit is\n%s", want, text)
		}
	}
}

// put back puts all back and returns the states there were.
func putBack(t *testing.T, p Places, files []File) map[string]State {
	t.Helper()
	steps, err := p.Steps(files)
	if err != nil {
		t.Fatal(err)
	}
	states := map[string]State{}
	for _, s := range steps {
		states[s.Path] = s.State
		if s.State != Same {
			if err := s.Put(); err != nil {
				t.Fatal(err)
			}
		}
	}
	return states
}

func holds(t *testing.T, path, want string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || string(got) != want {
		t.Errorf("%s holds %q, %v", path, got, err)
	}
}

func TestAFreshHomeGetsEverythingInItsPlace(t *testing.T) {
	p, _ := lived(t)
	files, _ := Gather(p)
	q := home(t)
	want := map[string]State{
		filepath.Join(q.Home, "soap", "meadow.toml"): New, filepath.Join(q.Plans, "meadow-2.toml"): New, q.Shelf: New,
		filepath.Join(q.Data, "calendar.toml"):          New,
		filepath.Join(q.Data, "season.toml"):            New,
		filepath.Join(q.Data, "ledger.toml"):            New,
		filepath.Join(q.Data, "costs.toml"):             New,
		filepath.Join(q.Data, "label.toml"):             New,
		filepath.Join(q.Book, "2026-11-28-a.pour.toml"): New, filepath.Join(q.State, "bench-1.journal"): New,
	}
	if d := cmp.Diff(want, putBack(t, q, files)); d != "" {
		t.Error(d)
	}
	holds(t, filepath.Join(q.Plans, "meadow-2.toml"), "a plan on a stick")
	holds(t, q.Shelf, "a shelf")
	if info, err := os.Stat(filepath.Join(q.State, "bench-1.journal")); err != nil || !info.ModTime().Equal(at()) || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info, err)
	}
	for path, state := range putBack(t, q, files) {
		if state != Same {
			t.Errorf("the second time %s is %d", path, state)
		}
	}
}

func TestWhatDiffersIsToldAndWhatTurnsUpIsNotWrittenOver(t *testing.T) {
	p, _ := lived(t)
	files, _ := Gather(p)
	q := home(t)
	put(t, q.Shelf, "another shelf")
	steps, err := q.Steps(files)
	if err != nil {
		t.Fatal(err)
	}
	pour := filepath.Join(q.Book, "2026-11-28-a.pour.toml")
	for _, s := range steps {
		switch s.Path {
		case q.Shelf:
			if s.State != Other {
				t.Errorf("another shelf is %d", s.State)
			}
		case pour:
			put(t, pour, "turned up meanwhile")
			if err := s.Put(); !errors.Is(err, fs.ErrExist) {
				t.Errorf("over a file that turned up: %v", err)
			}
		}
	}
	holds(t, pour, "turned up meanwhile")
	holds(t, q.Shelf, "another shelf")
}

func TestUnsavedWorkOfAnOpenBenchIsLeftAlone(t *testing.T) {
	p, _ := lived(t)
	files, _ := Gather(p)
	held, err := disk.OS().Hold(filepath.Join(p.Home, ".state", "bench-2.lock"))
	if err != nil {
		t.Skip("no locks here:", err)
	}
	defer held.Release() //nolint:errcheck // the folder goes
	put(t, filepath.Join(p.State, "bench-2.journal"), "being written")
	files = append(files, File{Kind: Journal, Name: "bench-2.journal", Content: []byte("older")})
	steps, err := p.Steps(files)
	if err != nil {
		t.Fatal(err)
	}
	if last := steps[len(steps)-1]; last.State != Living {
		t.Errorf("the journal of an open bench is %d", last.State)
	}
}

// A plan never lands where other programs keep their settings, nor outside the home.
func TestAPlanGoesNowhereElse(t *testing.T) {
	p := home(t)
	for from, want := range map[string]string{
		"~/soap/a.toml":        filepath.Join(p.Home, "soap", "a.toml"),
		"~/.config/x/a.toml":   filepath.Join(p.Plans, "n.toml"),
		"~/soap/.x/a.toml":     filepath.Join(p.Plans, "n.toml"),
		"~/../other/a.toml":    filepath.Join(p.Plans, "n.toml"),
		"~/soap/../../a.toml":  filepath.Join(p.Plans, "n.toml"),
		"~//etc/a.toml":        filepath.Join(p.Plans, "n.toml"),
		"~/soap/a.sh":          filepath.Join(p.Plans, "n.toml"),
		"/etc/a.toml":          filepath.Join(p.Plans, "n.toml"),
		"":                     filepath.Join(p.Plans, "n.toml"),
		`~/soap\..\..\a.toml`:  filepath.Join(p.Plans, "n.toml"),
		"~someone/soap/a.toml": filepath.Join(p.Plans, "n.toml"),
	} {
		if got := p.target(File{Kind: Plan, Name: "n.toml", From: from}); got != want {
			t.Errorf("from %q it goes to %s, want %s", from, got, want)
		}
	}
}

func TestTwoFilesForOnePlaceAreRefused(t *testing.T) {
	p := home(t)
	two := []File{{Kind: Plan, Name: "a.toml", From: "~/soap/a.toml"}, {Kind: Plan, Name: "b.toml", From: "~/soap/A.toml"}}
	if _, err := p.Steps(two); err == nil || !strings.Contains(err.Error(), "two files") {
		t.Errorf("got %v", err)
	}
}

func TestWhatCannotBeKeptIsToldAndTheRestIsKept(t *testing.T) {
	p, _ := lived(t)
	put(t, filepath.Join(p.Book, "big.pour.toml"), strings.Repeat("x", mostFile+1))
	put(t, filepath.Join(p.Book, "odd\u202ename.pour.toml"), "x")
	if err := os.Mkdir(filepath.Join(p.Book, "folder.pour.toml"), 0o755); err != nil {
		t.Fatal(err)
	}
	files, left := Gather(p)
	if len(files) != 10 || len(left) != 3 {
		t.Fatalf("%d files, %v", len(files), left)
	}
	for i, want := range []string{"larger than 64 MB", "no plain file", "its name cannot stand"} {
		if !strings.Contains(left[i].Error(), want) {
			t.Errorf("%v, want %q", left[i], want)
		}
	}
}
