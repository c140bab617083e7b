package terminal

import (
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
)

func TestEverySystemHasItsOpener(t *testing.T) {
	for system, want := range map[string][]string{
		"linux": {"xdg-open", "/a b"}, "freebsd": {"xdg-open", "/a b"}, "darwin": {"open", "/a b"}, "windows": {"rundll32", "url.dll,FileProtocolHandler", "/a b"},
	} {
		if got := opener(system, "/a b"); !slices.Equal(got, want) {
			t.Errorf("on %s it is %q, want %q", system, got, want)
		}
	}
}

func TestAFileIsOpenedOrSaidWhyNot(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("it stands in for xdg-open")
	}
	dir := t.TempDir()
	t.Setenv("PATH", dir)
	if err := OpenFile("linux", "/cut.png"); err == nil || !strings.Contains(err.Error(), "there is no xdg-open on this machine; open it by hand") {
		t.Errorf("without an opener it says %v", err)
	}
	stand := func(text string) {
		must(t, os.WriteFile(filepath.Join(dir, "xdg-open"), []byte("#!/bin/sh\n"+text+"\n"), 0o700)) //nolint:gosec // it is run
	}
	out := filepath.Join(dir, "opened")
	stand(`echo "$1" > ` + out)
	must(t, OpenFile("linux", "/cut.png"))
	text, err := os.ReadFile(out)
	must(t, err)
	if string(text) != "/cut.png\n" {
		t.Errorf("opened is %q", text)
	}
	stand("exit 3")
	if err := OpenFile("linux", "/cut.png"); err == nil || !strings.Contains(err.Error(), "xdg-open could not") {
		t.Errorf("an opener that fails says %v", err)
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
