package logbook

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/plain"
	"pourbench/pour/planfile"
	"pourbench/pour/strict"
)

// Book is a folder with one file for every pour.
type Book struct {
	dir  string
	disk disk.Ops
}

// OpenBook opens the logbook in a folder, which is made where it is missing, for the maker's eyes only.
func OpenBook(dir string) (Book, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return Book{}, fmt.Errorf("open the logbook: %w", err)
	}
	return Book{dir, disk.OS()}, nil
}

// On is the book with other operations on the disk than the system's own, so that a test sees their order and can let them fail.
func (b Book) On(ops disk.Ops) Book {
	b.disk = ops
	return b
}

// Folder is where the pours are.
func (b Book) Folder() string { return b.dir }

// Path is the file of a pour.
func (b Book) Path(id string) string { return filepath.Join(b.dir, id+Suffix) }

// Create writes the file of a new pour and returns its id: the day and the plan's name, with a number where there are several.
// A trial names its scent.
func (b Book) Create(p pour.Plan, trialScent string, opened time.Time, first []Event) (string, error) {
	text, err := FileText(p, trialScent, opened, first)
	if err != nil {
		return "", fmt.Errorf("open a pour: %w", err)
	}
	stem := opened.Format("2006-01-02") + "-" + plain.Slug(p.Name, "pour")
	for k := 1; k < 1000; k++ {
		id := stem
		if k > 1 {
			id = fmt.Sprintf("%s-%d", stem, k)
		}
		err := b.disk.Save(b.Path(id), disk.Bytes([]byte(text)), disk.Want{Mode: disk.Private, New: true})
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", fmt.Errorf("open a pour: %w", err)
		}
		return id, nil
	}
	return "", fmt.Errorf("open a pour: a thousand pours of %q on one day are too many", p.Name)
}

// FileText is all that the file of a pour holds.
func FileText(p pour.Plan, trialScent string, opened time.Time, events []Event) (string, error) {
	var plan strings.Builder
	if err := planfile.Write(&plan, p); err != nil {
		return "", err
	}
	return headText(p.Name, plan.String(), trialScent, opened) + Lines(events), nil
}

// Size is how many bytes a pour's file has.
func (b Book) Size(id string) (int64, error) {
	if err := checkID(id); err != nil {
		return 0, err
	}
	info, err := os.Stat(b.Path(id))
	if err != nil {
		return 0, fmt.Errorf("follow the pour %s: %w", id, err)
	}
	return info.Size(), nil
}

// Read reads one pour. An error in its file is a [*strict.Error] with the line and how to mend it.
func (b Book) Read(id string, shelf pour.Shelf) (Pour, error) {
	if err := checkID(id); err != nil {
		return Pour{}, err
	}
	src, err := read(b.Path(id))
	if errors.Is(err, fs.ErrNotExist) {
		return Pour{}, missing{id, b.named(), err}
	}
	if err != nil {
		return Pour{}, fmt.Errorf("read the pour %s: %w", id, err)
	}
	return parse(id, b.Path(id), string(src), shelf)
}

// missing is a pour that is not in the logbook.
type missing struct {
	id    string
	there []string
	err   error
}

func (m missing) Error() string {
	return fmt.Sprintf("read the pour %s: there is no such batch; %s", m.id, strict.Meant(m.id, m.there, "pourbench batches lists them", "pourbench batches lists them"))
}

func (m missing) Unwrap() error { return m.err }

// named lists the ids of the pours whose files lie in the folder; where it cannot be read there are none.
func (b Book) named() []string {
	files, err := os.ReadDir(b.Folder())
	if err != nil {
		return nil
	}
	var out []string
	for _, f := range files {
		if id, ok := strings.CutSuffix(f.Name(), Suffix); ok && checkID(id) == nil {
			out = append(out, id)
		}
	}
	return out
}

// read reads a plain file, no further than it can be a pour's. A pipe would be waited for for ever.
func read(path string) ([]byte, error) {
	f, _, err := disk.Read(path)
	if err != nil {
		return nil, err
	}
	defer f.Close() //nolint:errcheck // nothing was written
	return io.ReadAll(io.LimitReader(f, int64(form().Bytes)+1))
}

// Forget removes a pour's file for good.
func (b Book) Forget(id string) error {
	if err := checkID(id); err != nil {
		return err
	}
	if err := b.disk.Drop(b.Path(id)); err != nil {
		return fmt.Errorf("forget the pour %s: %w", id, err)
	}
	return nil
}

// ForgetAt removes a pour's file for good if it has so many bytes, that is, if nobody has written to it since it was looked at. It
// reports whether the file is gone.
func (b Book) ForgetAt(id string, size int64) (bool, error) {
	if err := checkID(id); err != nil {
		return false, err
	}
	gone, err := b.disk.DropIf(b.Path(id), 0, func(content []byte) bool { return int64(len(content)) == size })
	if err != nil {
		return false, fmt.Errorf("forget the pour %s: %w", id, err)
	}
	return gone, nil
}

// Try reports why a pour could not be written into this folder, before there is one to lose.
func (b Book) Try() error {
	path := filepath.Join(b.dir, fmt.Sprintf(".try-%d", os.Getpid()))
	if err := b.disk.Save(path, disk.Bytes([]byte("\n")), disk.Want{Mode: disk.Private}); err != nil {
		return fmt.Errorf("write to the logbook in %s: %w", b.dir, err)
	}
	_ = b.disk.Drop(path) // it is empty, hidden and written over the next time
	return nil
}

// Keep keeps something beside the pours that is worked out of them and can be thrown away at any time. A folder that cannot be
// written only means that it is worked out again.
func (b Book) Keep(name string, content []byte) {
	_ = b.disk.Save(filepath.Join(b.dir, name), disk.Bytes(content), disk.Want{Mode: disk.Private})
}

// Kept is what was kept under a name; nothing when there is none.
func (b Book) Kept(name string) []byte {
	content, err := os.ReadFile(filepath.Join(b.dir, name))
	if err != nil {
		return nil
	}
	return content
}

// longestID is how long an id may be, in bytes: file systems take names of 255.
const longestID = 240

// checkID refuses an id that would lead out of the folder or that a terminal cannot show; one that passes is safe to print.
func checkID(id string) error {
	const shown = 60
	switch {
	case id == "" || strings.ContainsAny(id, `/\:`) || strings.HasPrefix(id, ".") || len(id) > longestID:
		if len(id) > shown {
			id = id[:shown] + "…"
		}
		return fmt.Errorf("find the pour %q: an id is the name of its file in the logbook without %s", plain.Line(id), Suffix)
	case plain.Line(id) != id:
		return fmt.Errorf("find the pour %q: its name holds what no terminal can show; name its file otherwise", plain.Line(id))
	}
	return nil
}
