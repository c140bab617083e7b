package planfile

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
)

func remembered(t *testing.T, dir string) []string {
	t.Helper()
	known, err := Known(dir)
	if err != nil {
		t.Fatal(err)
	}
	return known
}

func TestAPlanIsRememberedOnceByWhateverName(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "state")
	home := t.TempDir()
	path := filepath.Join(home, "meadow.toml")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(home, "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no links here:", err)
	}
	if known := remembered(t, dir); len(known) != 0 {
		t.Errorf("before anything was remembered: %q", known)
	}
	for _, name := range []string{path, link, filepath.Join(home, ".", "x", "..", "meadow.toml"), filepath.Join(home, "new.toml"), filepath.Join(home, "two\nlines.toml")} {
		if err := Remember(dir, name); err != nil {
			t.Fatal(err)
		}
	}
	if want, known := []string{path, filepath.Join(home, "new.toml")}, remembered(t, dir); !slices.Equal(known, want) {
		t.Errorf("%q, want %q", known, want)
	}
	if info, err := os.Stat(filepath.Join(dir, knownName)); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info, err)
	}
}

// Two benches at once: the list holds what both have seen.
func TestManyBenchesRememberTogether(t *testing.T) {
	dir := t.TempDir()
	var benches sync.WaitGroup
	const plans = 12
	for i := range plans {
		benches.Go(func() {
			if err := Remember(dir, filepath.Join(dir, fmt.Sprintf("%02d.toml", i))); err != nil {
				t.Error(err)
			}
		})
	}
	benches.Wait()
	known := remembered(t, dir)
	slices.Sort(known)
	if len(known) != plans || known[0] != filepath.Join(dir, "00.toml") {
		t.Errorf("%d plans are remembered: %q", len(known), known)
	}
}

func TestAListThatWasEditedIsReadForWhatItSays(t *testing.T) {
	dir := t.TempDir()
	text := "/home/a.toml\n\nnot absolute.toml\n/home/\x1b[2Jb.toml\r\n/home/a.toml\n/home/c.toml"
	if err := os.WriteFile(filepath.Join(dir, knownName), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Remember(dir, "/home/d.toml"); err != nil {
		t.Fatal(err)
	}
	if want, known := []string{"/home/a.toml", "/home/b.toml", "/home/c.toml", "/home/d.toml"}, remembered(t, dir); !slices.Equal(known, want) {
		t.Errorf("%q, want %q", known, want)
	}
}
