package backup

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
	"time"

	"pourbench/pour/strict"
)

// listName is the list in an archive, its first member.
const listName = "manifest.toml"

// mostList bounds the list, bytes.
const mostList = 16 << 20

// entry is a file as the list tells it.
type entry struct {
	kind     string
	name     string // of the member
	from     string
	bytes    int64
	sum      string
	modified time.Time
}

func form() strict.Form {
	const longestPath = 4096
	return strict.Form{
		Noun: "backup's list", Bytes: mostList, Items: mostFiles, Letters: longestPath, Again: "take another copy of the backup",
	}
}

// listOf writes the list.
func listOf(files []File, made time.Time) string {
	var b strings.Builder
	b.WriteString("# A backup of pourbench: plans, your shelf, your pours and work that was never saved, as plain files.\n" +
		"# Put it back with: pourbench restore FILE.zip\n\nformat = 1\n")
	fmt.Fprintf(&b, "made = %s\n", made.Format(time.RFC3339))
	for _, f := range files {
		fmt.Fprintf(&b, "\n[[file]]\nname = %s\nkind = %s\nfrom = %s\nbytes = %d\nsha256 = %q\nmodified = %s\n",
			strict.Quote(member(f.Kind, f.Name)), strict.Quote(string(f.Kind)), strict.Quote(f.From), len(f.Content), sum(f.Content), f.Modified.Format(time.RFC3339Nano))
	}
	return b.String()
}

func sum(content []byte) string {
	s := sha256.Sum256(content)
	return hex.EncodeToString(s[:])
}

// readList reads the list strictly.
func readList(name, src string) ([]entry, error) {
	f, err := form().Open(name+", "+listName, src)
	if err != nil {
		return nil, err
	}
	var made time.Time
	format := int64(0)
	top := f.Top()
	top.Only("format", "made", "file")
	top.Whole("format", &format)
	top.Moment("made", &made)
	if format != 1 && top.Has("format") {
		return nil, fmt.Errorf("read the backup %s: its list has format %d and this program knows 1; use a newer one", name, format)
	}
	var out []entry
	for _, t := range top.List("file") {
		var e entry
		t.Only("name", "kind", "from", "bytes", "sha256", "modified")
		for _, key := range []string{"name", "kind", "bytes", "sha256"} {
			if !t.Has(key) {
				t.Missing(key)
			}
		}
		words := make([]string, 0, len(kinds()))
		for _, k := range kinds() {
			words = append(words, string(k.kind))
		}
		t.Read("name", &e.name)
		t.Word("kind", &e.kind, words...)
		t.Read("from", &e.from)
		t.Whole("bytes", &e.bytes)
		t.Read("sha256", &e.sum)
		t.Moment("modified", &e.modified)
		out = append(out, e)
	}
	return out, f.Err()
}
