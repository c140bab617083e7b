package backup

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"strings"
	"testing"
)

// part is one member of an archive made by hand.
type part struct {
	name, text string
	mode       fs.FileMode
}

// forged is an archive of a list and members as they are given.
func forged(t *testing.T, parts ...part) []byte {
	t.Helper()
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, p := range parts {
		h := &zip.FileHeader{Name: p.name, Method: zip.Deflate}
		h.SetMode(p.mode | 0o600)
		w, err := z.CreateHeader(h)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(p.text)); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// row is a file on a list made by hand, with the right size and sum.
func row(kind, name, text string) string {
	return fmt.Sprintf("[[file]]\nname = %q\nkind = %q\nbytes = %d\nsha256 = \"%x\"\n", name, kind, len(text), sha256.Sum256([]byte(text)))
}

const head = "format = 1\nmade = 2026-11-28T09:30:15Z\n"

func list(rows ...string) part { return part{name: listName, text: head + strings.Join(rows, "")} }

func TestAnArchiveMadeByHandIsRead(t *testing.T) {
	files, err := read(forged(t, part{name: "pours/a.pour.toml", text: "x"}, list(row("pour", "pours/a.pour.toml", "x"))))
	if err != nil || len(files) != 1 || string(files[0].Content) != "x" {
		t.Errorf("%v, %v", files, err)
	}
}

func TestAnArchiveWithAnythingWrongIsRefusedWhole(t *testing.T) {
	good := part{name: "pours/a.pour.toml", text: "x"}
	goodRow := row("pour", "pours/a.pour.toml", "x")
	for want, parts := range map[string][]part{
		"\"manifest.toml\" is missing":                    {good},
		"is no key of a backup's list":                    {good, {name: listName, text: head + "colour = 1\n" + goodRow}},
		"has format 2":                                    {good, {name: listName, text: strings.Replace(head, "1", "2", 1) + goodRow}},
		"\"pours/a.pour.toml\" is missing":                {list(goodRow)},
		"\"pours/b.pour.toml\", which is not on its list": {good, {name: "pours/b.pour.toml"}, list(goodRow)},
		"twice":                       {good, good, list(goodRow)},
		"is not what its list says":   {{name: good.name, text: "y"}, list(goodRow)},
		"file[0].kind = \"y\"":        {good, list(row("y", "pours/a.pour.toml", "x"))},
		"beside/other.toml":           {{name: "beside/other.toml", text: "x"}, list(row("beside", "beside/other.toml", "x"))},
		"is no plain file":            {{name: good.name, text: "x", mode: fs.ModeSymlink}, list(goodRow)},
		"has 2 bytes, and 1 is":       {{name: good.name, text: "xx"}, list(goodRow)},
		"larger than anything":        {good, list(strings.Replace(goodRow, "bytes = 1", "bytes = 70000000", 1))},
		"file[0].bytes: is missing":   {good, list(strings.Replace(goodRow, "bytes = 1\n", "", 1))},
		"of -1 bytes":                 {good, list(strings.Replace(goodRow, "bytes = 1", "bytes = -1", 1))},
		"\"pours/a.pour.toml\" is no": {good, list(strings.Replace(goodRow, `kind = "pour"`, `kind = "shelf"`, 1), "")},
	} {
		files, err := read(forged(t, parts...))
		if err == nil || files != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q: %v, %v", want, files, err)
		}
	}
}

func TestNoNameLeadsOutOfItsPlace(t *testing.T) {
	for kind, names := range map[string][]string{
		"pour": {
			"pours/../../x.pour.toml", "../x.pour.toml", "/etc/x.pour.toml", "pours//x.pour.toml", "pours/a/x.pour.toml", `pours/..\x.pour.toml`, "pours/.x.pour.toml",
			"pours/.pour.toml", "pours/C:x.pour.toml", "pours/x.toml", "x.pour.toml", "POURS/x.pour.toml", "plans/x.pour.toml", "pours/x\u202e.pour.toml", "",
			"pours/" + strings.Repeat("x", 300) + ".pour.toml", "pours/..", "pours/x.pour.toml ",
		},
		"journal": {"journals/x.lock", "journals/../x.journal"},
		"shelf":   {"shelf/../shelf.toml", "shelf/shelf.sh"},
		"plan":    {"plans/../x.toml", "plans/~/x.toml"},
	} {
		for _, name := range names {
			if files, err := read(forged(t, part{name: name, text: "x"}, list(row(kind, name, "x")))); err == nil {
				t.Errorf("a %s named %q is read: %+v", kind, name, files)
			}
		}
	}
}

// Any byte of an archive that is damaged is noticed: the files are packed with sums of their own besides those of the list.
func TestADamagedArchiveIsNeverTakenForAWholeOne(t *testing.T) {
	whole := forged(t, part{name: "pours/a.pour.toml", text: "a pour that is rather long, long, long"}, list(row("pour", "pours/a.pour.toml", "a pour that is rather long, long, long")))
	for cut := range len(whole) {
		if _, err := read(whole[:cut]); err == nil {
			t.Errorf("the first %d bytes of %d are taken for an archive", cut, len(whole))
		}
	}
	noticed := 0
	for i := range whole {
		bent := bytes.Clone(whole)
		bent[i] ^= 0x20
		files, err := read(bent)
		if err != nil {
			noticed++
			continue
		}
		if len(files) != 1 || string(files[0].Content) != "a pour that is rather long, long, long" {
			t.Errorf("with byte %d bent it holds %+v", i, files)
		}
	}
	if noticed < len(whole)/2 {
		t.Errorf("only %d of %d damages were noticed", noticed, len(whole))
	}
}

// A member that unpacks to far more than its header says is never read to its end.
func TestAMemberLargerThanItSaysIsNotUnpacked(t *testing.T) {
	huge := strings.Repeat("0", 64<<20)
	whole := forged(t, part{name: "pours/a.pour.toml", text: huge}, list(strings.Replace(row("pour", "pours/a.pour.toml", "x"), "bytes = 1", "bytes = 8388608", 1)))
	if _, err := read(whole); err == nil || !strings.Contains(err.Error(), "and 8388608 is the most") {
		t.Errorf("got %v", err)
	}
	at := bytes.LastIndex(whole, []byte("PK\x01\x02")) // the list is last
	first := bytes.Index(whole, []byte("PK\x01\x02"))
	if first == at {
		t.Fatal("the archive has one member")
	}
	copy(whole[first+24:first+28], []byte{0, 0, 0x80, 0}) // its size in the directory: 8 MB
	if _, err := read(whole); err == nil {
		t.Error("a member that says 8 MB and unpacks to 64 is read")
	}
}
