package ownfile_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pourbench/pour/disk"
	"pourbench/pour/ownfile"
	"pourbench/pour/strict"
)

const head = "# hers\nformat = 1\n"

func form() strict.Form {
	return strict.Form{Noun: "own file", Bytes: 1000, Items: 10, Letters: 40, Again: "look at it"}
}

// file is an own file with a text in a fresh folder; it cannot hold the word "bad".
func file(t *testing.T, text string) ownfile.File {
	t.Helper()
	f := ownfile.New(filepath.Join(t.TempDir(), "data"), "own.toml", head, form(), func(name, text string) error {
		if strings.Contains(text, "bad") {
			return errors.New(name + " holds what is bad")
		}
		return nil
	})
	f.Wait = 10 * time.Millisecond
	if text != "" {
		put(t, f.Path(), text)
	}
	return f
}

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func holds(t *testing.T, f ownfile.File, want string) {
	t.Helper()
	if got, err := f.Text(); got != want || err != nil {
		t.Errorf("%q, %v, want %q", got, err, want)
	}
}

func more(line string) func(string) (string, error) {
	return func(text string) (string, error) { return text + line, nil }
}

func TestAFileBeginsWithItsHeadAndOnlyForSomething(t *testing.T) {
	f := file(t, "")
	if err := f.Change("do nothing", more("")); err != nil {
		t.Error(err)
	}
	if _, err := os.Stat(f.Path()); err == nil {
		t.Error("nothing made a file")
	}
	if err := f.Change("begin", more("a = 1\n")); err != nil {
		t.Error(err)
	}
	holds(t, f, head+"a = 1\n")
	if err := f.Change("go on", more("b = 2\n")); err != nil {
		t.Error(err)
	}
	holds(t, f, head+"a = 1\nb = 2\n")
}

func TestWhatCannotBeReadIsNotWritten(t *testing.T) {
	f := file(t, "a = 1\n")
	if err := f.Change("spoil", more("bad")); err == nil || !strings.Contains(err.Error(), "spoil in "+f.Path()) || !strings.Contains(err.Error(), "as it would be") {
		t.Error(err)
	}
	if err := f.Change("fail", func(string) (string, error) { return "x", errors.New("no such thing") }); err == nil || !strings.Contains(err.Error(), "no such thing") {
		t.Error(err)
	}
	holds(t, f, "a = 1\n")
	put(t, f.Path(), "bad = 1\n")
	if err := f.Change("mend", func(string) (string, error) { return "good = 1\n", nil }); err == nil || !strings.Contains(err.Error(), f.Path()+" holds") {
		t.Error(err)
	}
	holds(t, f, "bad = 1\n")
	if err := os.Remove(f.Path()); err != nil {
		t.Fatal(err)
	}
	put(t, f.Path(), strings.Repeat("a", 2000))
	if _, err := f.Text(); err == nil {
		t.Error("a file larger than any is read")
	}
}

// Neither another terminal nor an editor loses anything: who holds the file is waited for and then told of, what was saved meanwhile stays.
func TestNothingIsWrittenOverWhatAnotherWrites(t *testing.T) {
	f := file(t, "a = 1\n")
	held, err := f.Disk.HoldFor(filepath.Join(f.Dir, ".own.lock"), 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Change("go on", more("b = 2\n")); !errors.Is(err, disk.ErrLocked) || !strings.Contains(err.Error(), "try again") {
		t.Error(err)
	}
	if err := held.Release(); err != nil {
		t.Fatal(err)
	}
	err = f.Change("go on", func(text string) (string, error) {
		put(t, f.Path(), "c = 3\n") // an editor, which knows of no lock
		return text + "b = 2\n", nil
	})
	if err == nil || !strings.Contains(err.Error(), "try again") {
		t.Error(err)
	}
	holds(t, f, "c = 3\n")
}

func TestAFileSaysItsFormat(t *testing.T) {
	for text, want := range map[string]string{"format = 1\n": "", "a = 1\n": "as the first line, if it is hers", "format = 2\n": "is none this program reads", "format = \"1\"\n": "whole number", "format": "own.toml"} {
		f, err := ownfile.Open(form(), "own.toml", text, 1, "it is hers")
		if err == nil {
			err = f.Err()
		}
		if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%q: %v", text, err)
		}
	}
	if f, err := ownfile.Open(form(), "own.toml", " \n", 1, ""); f != nil || err != nil {
		t.Errorf("no text: %v, %v", f, err)
	}
	if err := ownfile.Strange("nam", []string{"name", "address"}); !strings.Contains(err.Error(), `did you mean "name"? It can be name, address`) {
		t.Error(err)
	}
}
