package logbook

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
	"unicode"

	"pourbench/pour"
	"pourbench/pour/planfile"
)

// Book is a folder with one file for every pour.
type Book struct{ dir string }

// Dir is the folder.
func (b Book) Dir() string { return b.dir }

// OpenBook opens the logbook in a folder, which is made where it is missing, for the maker's eyes only.
func OpenBook(dir string) (Book, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return Book{}, fmt.Errorf("open the logbook: %w", err)
	}
	return Book{dir: dir}, nil
}

// Path is the file of a pour.
func (b Book) Path(id string) string { return filepath.Join(b.dir, id+Suffix) }

// Create writes the file of a new pour and returns its id: the day and the plan's name, with a number where there are several.
// A trial names its scent.
func (b Book) Create(p pour.Plan, trialScent string, opened time.Time, first []Event) (string, error) {
	var plan strings.Builder
	if err := planfile.Write(&plan, p); err != nil {
		return "", fmt.Errorf("open a pour: %w", err)
	}
	var text strings.Builder
	text.WriteString(headText(p.Name, plan.String(), trialScent, opened))
	for _, e := range first {
		text.WriteString(e.text())
	}
	stem := opened.Format("2006-01-02") + "-" + slug(p.Name)
	for k := 1; k < 1000; k++ {
		id := stem
		if k > 1 {
			id = fmt.Sprintf("%s-%d", stem, k)
		}
		err := b.write(id, text.String())
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

// write makes a file that was not there, whole: it is written under another name and linked to its own.
func (b Book) write(id, text string) error {
	f, err := os.CreateTemp(b.dir, ".new-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) //nolint:errcheck // gone or harmless
	_, err = f.WriteString(text)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		return err
	}
	if err := os.Link(f.Name(), b.Path(id)); err != nil {
		return b.writePlain(id, text, err)
	}
	b.sync()
	return nil
}

// writePlain is for file systems without links: the file is made first and filled then.
func (b Book) writePlain(id, text string, linkErr error) error {
	if errors.Is(linkErr, fs.ErrExist) {
		return linkErr
	}
	f, err := os.OpenFile(b.Path(id), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	return errors.Join(err, f.Sync(), f.Close())
}

// sync makes a new name last through a power cut, where the system can.
func (b Book) sync() {
	if folder, err := os.Open(b.dir); err == nil {
		_ = folder.Sync()
		_ = folder.Close()
	}
}

// Append journals events of a pour. They are on the disk when it returns, and the file has grown from before to after bytes: a
// caller sees whether somebody else had written in between.
func (b Book) Append(id string, events ...Event) (before, after int64, err error) {
	if err := checkID(id); err != nil {
		return 0, 0, err
	}
	return appendEvents(b.Path(id), events)
}

// Size is how many bytes a pour's file has.
func (b Book) Size(id string) (int64, error) {
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
	src, err := os.ReadFile(b.Path(id))
	if err != nil {
		return Pour{}, fmt.Errorf("read the pour %s: %w", id, err)
	}
	return parse(id, b.Path(id), string(src), shelf)
}

// Forget removes a pour's file for good.
func (b Book) Forget(id string) error {
	if err := checkID(id); err != nil {
		return err
	}
	if err := os.Remove(b.Path(id)); err != nil {
		return fmt.Errorf("forget the pour %s: %w", id, err)
	}
	b.sync()
	return nil
}

// checkID refuses an id that would lead out of the folder.
func checkID(id string) error {
	if id == "" || strings.ContainsAny(id, `/\:`) || strings.HasPrefix(id, ".") || strings.ContainsFunc(id, unicode.IsControl) {
		return fmt.Errorf("find the pour %q: an id is the name of its file without %s", id, Suffix)
	}
	return nil
}

// slug makes a file name of a plan's name: small letters, digits and dashes.
func slug(name string) string {
	const most = 40
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case b.Len() >= most:
		case r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if s := strings.Trim(b.String(), "-"); s != "" {
		return s
	}
	return "pour"
}
