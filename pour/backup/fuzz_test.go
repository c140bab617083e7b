package backup

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
)

// Whatever an archive holds, it is refused or every file of it has a place inside the maker's folders.
func FuzzRead(f *testing.F) {
	var whole bytes.Buffer
	files := []File{{Kind: Plan, Name: "a.toml", From: "~/soap/a.toml", Content: []byte("x")}, {Kind: Pour, Name: "b.pour.toml", Content: []byte("y")}}
	if err := Write(&whole, files, at()); err != nil {
		f.Fatal(err)
	}
	f.Add(whole.Bytes(), "")
	f.Add([]byte{}, "[[file]]\nname = \"plans/../a.toml\"\nkind = \"plan\"\nbytes = 0\nsha256 = \"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855\"\nfrom = \"~/../a.toml\"\n")
	home := f.TempDir()
	p := Places{Home: home, Shelf: filepath.Join(home, "s.toml"), Book: filepath.Join(home, "b"), Data: filepath.Join(home, "d"), State: filepath.Join(home, "t"), Plans: filepath.Join(home, "p")}
	f.Fuzz(func(t *testing.T, archive []byte, rows string) {
		if len(archive) == 0 { // a list alone, with a member for every name it could mean
			archive = forged(t, part{name: "plans/a.toml"}, part{name: listName, text: head + rows})
		}
		files, err := read(archive)
		if err != nil {
			return
		}
		for _, file := range files {
			if to := p.target(file); !strings.HasPrefix(to, home+string(filepath.Separator)) || strings.Contains(to, "..") || member(file.Kind, file.Name) == "" {
				t.Errorf("%+v goes to %s", file, to)
			}
		}
	})
}
