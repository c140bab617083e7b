package planfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestAJournalBringsBackThePlanAndThePathOfItsFile(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "state", "pourbench")
	first := mustRead(t, planText(t, "everykey.toml"))
	path := "/home/me/odd \"name\"\n.toml"
	if err := WriteJournal(dir, "first", first, "before"); err != nil {
		t.Fatal(err)
	}
	if err := WriteJournal(dir, "first", first, path); err != nil {
		t.Fatal(err)
	}
	if err := WriteJournal(dir, "second", mustRead(t, planText(t, "smallest.toml")), ""); err != nil {
		t.Fatal(err)
	}
	old := time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)
	if err := os.Chtimes(filepath.Join(dir, "first.journal"), old, old); err != nil {
		t.Fatal(err)
	}
	found, err := ReadJournals(dir)
	if err != nil || len(found) != 2 || found[0].Key != "second" || found[1].Key != "first" {
		t.Fatalf("found %+v, %v; want the latest first", found, err)
	}
	if found[0].Path != "" || found[1].Path != path || !found[1].At.Equal(old) || found[1].Err != nil {
		t.Errorf("found %+v", found[1])
	}
	if d := difference(first, found[1].Plan); d != "" {
		t.Error(d)
	}
}

func TestADroppedJournalIsGoneAndDroppingTwiceIsNoError(t *testing.T) {
	dir := t.TempDir()
	if err := WriteJournal(dir, "k", mustRead(t, planText(t, "smallest.toml")), ""); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if err := DropJournal(dir, "k"); err != nil {
			t.Error(err)
		}
	}
	if found, err := ReadJournals(dir); err != nil || len(found) != 0 {
		t.Errorf("found %+v, %v", found, err)
	}
	if found, err := ReadJournals(filepath.Join(dir, "missing")); err != nil || found != nil {
		t.Errorf("a folder that is not there: %+v, %v", found, err)
	}
}

func TestABrokenJournalIsShownWithItsReason(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "half.journal"), journalHead+"\"/a/plan.toml\"\nformat = 1\nname = \"cut o")
	put(t, filepath.Join(dir, "notes.txt"), "not ours")
	found, err := ReadJournals(dir)
	if err != nil || len(found) != 1 || found[0].Err == nil || found[0].Path != "/a/plan.toml" {
		t.Errorf("found %+v, %v", found, err)
	}
}

func TestAJournalKeyCannotLeadOutOfTheFolder(t *testing.T) {
	for _, key := range []string{"", "../x", "a/b", `a\b`, ".", "é"} {
		if err := WriteJournal(t.TempDir(), key, mustRead(t, planText(t, "smallest.toml")), ""); err == nil {
			t.Errorf("%q was taken as a key", key)
		}
		if err := DropJournal(t.TempDir(), key); err == nil {
			t.Errorf("%q was dropped", key)
		}
	}
}

func TestTheKeyOfADocumentIsTheSameForEveryWayToWriteItsPath(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "plan.toml")
	key := JournalKey(path)
	if JournalKey(filepath.Join(dir, "x", "..", "plan.toml")) != key || JournalKey(filepath.Join(dir, "other.toml")) == key {
		t.Error("keys do not follow the file")
	}
	if strings.Trim(key, "0123456789abcdef") != "" {
		t.Errorf("%q is no key", key)
	}
	link := filepath.Join(dir, "link.toml")
	if err := os.Symlink("plan.toml", link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	if JournalKey(link) != key {
		t.Error("a link to the file has a key of its own")
	}
}
