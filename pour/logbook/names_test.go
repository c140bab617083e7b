package logbook

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// unsafe are signs that would move a terminal's cursor or turn its writing round.
const unsafe = "\x1b\u009b\u202e\a\n"

func TestNamesThatNoTerminalCanShowAreListedMadeSafe(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("such names are none there")
	}
	book, id, _ := aPour(t)
	src := fileOf(t, book, id)
	for _, name := range []string{"red \x1b[31mpour", "back\u202ewards", "bell\a", "two\nlines"} {
		must(t, os.WriteFile(filepath.Join(book.dir, name+Suffix), []byte(src), 0o600))
	}
	for range 2 { // from the files, then beside the index
		list, err := book.List()
		must(t, err)
		faults := 0
		for _, e := range list {
			if strings.ContainsAny(e.ID, unsafe) {
				t.Errorf("%q is listed as it is", e.ID)
			}
			if e.Fault != nil {
				faults++
				if strings.ContainsAny(e.Fault.Error(), unsafe) || !strings.Contains(e.Fault.Error(), "name its file otherwise") {
					t.Errorf("said of it: %q", e.Fault)
				}
			}
		}
		if len(list) != 5 || faults != 4 || len(Search(list, "backwards")) != 1 {
			t.Errorf("%d pours, %d with a fault", len(list), faults)
		}
	}
}

func TestIDsAreRefusedSafelyAndShort(t *testing.T) {
	book, _, shelf := aPour(t)
	for _, id := range []string{"", "../x", "a/b", `a\b`, "c:x", ".index", "a\x1b[2Jb", "a\u202eb", "a\x00b", strings.Repeat("x", 300), strings.Repeat("\x1b/", 300), " a"} {
		_, read := book.Read(id, shelf)
		_, _, appended := book.Append(id, 0, medium())
		for what, err := range map[string]error{"read": read, "append": appended, "forget": book.Forget(id)} {
			if err == nil || errors.Is(err, os.ErrNotExist) {
				t.Errorf("%s %q: %v", what, id, err)
			} else if text := err.Error(); strings.ContainsAny(text, unsafe) || len(text) > 250 {
				t.Errorf("%s %q says %q", what, id, text)
			}
		}
	}
	if _, err := book.Read("not-there", shelf); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a pour that is not there: %v", err)
	}
}

// A file that cannot be read, as one that a backup has locked on some systems, takes no other pour out of the list.
func TestAPourThatCannotBeReadIsListedWithTheReason(t *testing.T) {
	book, shelf := filled(t, 3)
	list, err := book.List()
	must(t, err)
	path := book.Path(list[1].ID)
	must(t, os.Chmod(path, 0))
	if _, err := os.ReadFile(path); err == nil {
		t.Skip("this user reads everything")
	}
	must(t, os.Chtimes(path, opened(), opened())) // else the index knows it
	again, err := book.List()
	must(t, err)
	faults := 0
	for _, e := range again {
		if errors.Is(e.Fault, os.ErrPermission) {
			faults++
		}
	}
	if len(again) != 3 || faults != 1 {
		t.Errorf("%d pours, %d that cannot be read", len(again), faults)
	}
	if _, err := book.Read(list[1].ID, shelf); !errors.Is(err, os.ErrPermission) {
		t.Errorf("reading it: %v", err)
	}
}

// A key can hold anything a TOML file can, and be as long as it: what is said of it is safe and short.
func TestKeysInAFileAreSaidSafelyAndShort(t *testing.T) {
	book, id, shelf := aPour(t)
	src := fileOf(t, book, id)
	for _, key := range []string{strings.Repeat("k", 100_000), `"a\u202e\u001b[2Jb"`, `"` + strings.Repeat(`\u0007`, 1000) + `"`, strings.Repeat("ä", 100_000)} {
		for _, text := range []string{src + key + " = 1\n", key + " = 1\n" + src} {
			must(t, os.WriteFile(book.Path(id), []byte(text), 0o600))
			_, err := book.Read(id, shelf)
			if err == nil {
				t.Errorf("the key %.20q is taken", key)
			} else if text := err.Error(); strings.ContainsAny(text, "\x1b\u009b\u202e\a") || len(text) > 1000 {
				t.Errorf("of %.20q it is said %d bytes: %.300q", key, len(text), text)
			}
		}
	}
}
