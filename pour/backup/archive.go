package backup

import (
	"archive/zip"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
	"time"

	"pourbench/pour/plain"
)

// Write writes the files as an archive with its list.
func Write(w io.Writer, files []File, made time.Time) error {
	all := 0
	for _, f := range files {
		all += len(f.Content)
	}
	if all > mostAll || len(files) > mostFiles {
		return fmt.Errorf("write a backup of %d files and %d MB: at most %d files and %d MB can be put back", len(files), all>>20, mostFiles, mostAll>>20)
	}
	z := zip.NewWriter(w)
	put := func(name string, modified time.Time, content []byte) error {
		m, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: modified})
		if err != nil {
			return err
		}
		_, err = m.Write(content)
		return err
	}
	if err := put(listName, made, []byte(listOf(files, made))); err != nil {
		return err
	}
	for _, f := range files {
		if err := put(member(f.Kind, f.Name), f.Modified, f.Content); err != nil {
			return err
		}
	}
	return z.Close()
}

// Read reads an archive of size bytes and checks all of it; name is what errors call it. Nothing is returned of an archive of which
// anything is wrong.
func Read(name string, r io.ReaderAt, size int64) ([]File, error) {
	name = plain.Line(name)
	z, err := zip.NewReader(r, size)
	if err != nil {
		return nil, fmt.Errorf("read the backup %s: it is no whole zip archive (%w); take another copy of it", name, err)
	}
	a := archive{name: name, members: map[string]*zip.File{}}
	if err := a.sort(z); err != nil {
		return nil, err
	}
	src, err := a.content(listName, mostList)
	if err != nil {
		return nil, err
	}
	list, err := readList(name, string(src))
	if err != nil {
		return nil, err
	}
	return a.files(list)
}

// archive is an archive being read.
type archive struct {
	name    string
	members map[string]*zip.File // those that were not read yet
}

func (a *archive) wrong(format string, args ...any) error {
	return fmt.Errorf("read the backup %s: "+format+"; nothing was put back", append([]any{a.name}, args...)...)
}

// sort takes the members by name. Two of one name are refused: a reader and a tool might see different ones.
func (a *archive) sort(z *zip.Reader) error {
	if len(z.File) > mostFiles+1 {
		return a.wrong("it holds %d files, and %d is the most", len(z.File), mostFiles)
	}
	for _, m := range z.File {
		switch shown := plain.Line(m.Name); {
		case a.members[m.Name] != nil:
			return a.wrong("it holds %q twice", shown)
		case !m.Mode().IsRegular():
			return a.wrong("%q is no plain file", shown)
		}
		a.members[m.Name] = m
	}
	return nil
}

// content reads a member of at most most bytes, and no more of it whatever its header says.
func (a *archive) content(member string, most int64) ([]byte, error) {
	m := a.members[member]
	if m == nil {
		return nil, a.wrong("%q is missing in it", plain.Line(member))
	}
	delete(a.members, member)
	if m.UncompressedSize64 > uint64(most) {
		return nil, a.wrong("%q has %d bytes, and %d is the most", plain.Line(member), m.UncompressedSize64, most)
	}
	f, err := m.Open()
	if err != nil {
		return nil, a.wrong("%q cannot be read (%w)", plain.Line(member), err)
	}
	content, err := io.ReadAll(io.LimitReader(f, most+1))
	if err = errors.Join(err, f.Close()); err != nil {
		return nil, a.wrong("%q is damaged (%w)", plain.Line(member), err)
	}
	if int64(len(content)) > most {
		return nil, a.wrong("%q has more than %d bytes", plain.Line(member), most)
	}
	return content, nil
}

// files reads and checks every file of the list; nothing may be left over.
func (a *archive) files(list []entry) ([]File, error) {
	var out []File
	all := int64(0)
	for _, e := range list {
		f := File{Kind: Kind(e.kind), Name: path.Base(e.name), From: e.from, Modified: e.modified}
		if !proper(f.Kind, f.Name) || e.name != member(f.Kind, f.Name) {
			return nil, a.wrong("%q is no name of a %s", e.name, e.kind)
		}
		if all += e.bytes; e.bytes < 0 || e.bytes > mostFile || all > mostAll {
			return nil, a.wrong("with %q of %d bytes it is larger than anything it could hold", e.name, e.bytes)
		}
		var err error
		if f.Content, err = a.content(e.name, e.bytes); err != nil {
			return nil, err
		}
		if int64(len(f.Content)) != e.bytes || sum(f.Content) != strings.ToLower(e.sum) {
			return nil, a.wrong("%q is not what its list says", e.name)
		}
		out = append(out, f)
	}
	for left := range a.members {
		return nil, a.wrong("it holds %q, which is not on its list", plain.Line(left))
	}
	return out, nil
}
