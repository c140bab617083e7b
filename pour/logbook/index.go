package logbook

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"pourbench/pour/plain"
)

// Entry is a pour in the list.
type Entry struct {
	ID         string
	Name       string
	Opened     time.Time
	TrialScent string
	Ended      bool
	LeftOut    bool     // it teaches nothing
	CutBegun   bool     // its loaf was cut, or a bar of it was weighed as cut
	Failed     bool     // the batch is logged as failed
	Troubles   []string // words of [Troubles], each once
	Result     string
	Fault      error // why its file cannot be used as it is; nil: it can

	Size     int64  // of the file, bytes
	Modified int64  // when the file was written last, ns since 1970
	words    string // everything a search looks through, in small letters
}

// Words is everything that a search looks through, in small letters.
func (e Entry) Words() string { return e.words }

// indexName is the file that saves reading every pour for a list. It can be thrown away at any time.
const (
	indexName = ".index"
	indexHead = "pourbench logbook index 4" // 1 held trouble that was taken back, 2 nothing of the cut, 3 nothing of the batch's life
)

// List lists every pour, the latest first. It reads only files that have changed since the last time.
func (b Book) List() ([]Entry, error) {
	names, err := os.ReadDir(b.dir)
	if err != nil {
		return nil, fmt.Errorf("list the logbook: %w", err)
	}
	known := b.readIndex(len(names))
	out := make([]Entry, 0, len(names))
	fresh, faulty := false, 0
	infos := stat(names)
	for i, name := range names {
		id, ok := strings.CutSuffix(name.Name(), Suffix)
		info := infos[i]
		if !ok || info == nil || strings.HasPrefix(id, ".") || !info.Mode().IsRegular() {
			continue // none of ours, gone since, or no file
		}
		e, ok := known[id]
		if !ok || e.Size != info.Size() || e.Modified != info.ModTime().UnixNano() {
			if e, ok = b.entry(id, info); !ok {
				continue
			}
			fresh = true
		}
		if e.Fault != nil {
			faulty++
		}
		out = append(out, e)
	}
	slices.SortFunc(out, func(a, b Entry) int {
		if c := b.Opened.Compare(a.Opened); c != 0 {
			return c
		}
		return strings.Compare(b.ID, a.ID)
	})
	if fresh || len(out)-faulty != len(known) {
		b.writeIndex(out)
	}
	return out, nil
}

// entry looks at the file of a pour. The second result is false when it is gone meanwhile. A file that cannot be read, as one that a
// backup has locked on some systems, or whose name no terminal can show is listed with the reason.
func (b Book) entry(id string, info fs.FileInfo) (Entry, bool) {
	e := Entry{ID: plain.Line(id), Opened: info.ModTime(), words: " " + strings.ToLower(plain.Line(id))}
	if e.Fault = checkID(id); e.Fault != nil {
		return e, true
	}
	src, err := read(b.Path(id))
	if err != nil {
		e.Fault = err
		return e, !errors.Is(err, fs.ErrNotExist)
	}
	e = scan(id, string(src))
	e.Size, e.Modified = info.Size(), info.ModTime().UnixNano()
	return e, true
}

// stat asks for size and time of every file, on every core: with thousands of pours it is most of the work. Nil: it is gone.
func stat(names []fs.DirEntry) []fs.FileInfo {
	out := make([]fs.FileInfo, len(names))
	var group sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		group.Go(func() {
			for i := w; i < len(names); i += workers {
				if info, err := names[i].Info(); err == nil {
					out[i] = info
				}
			}
		})
	}
	group.Wait()
	return out
}

// Search returns the entries that hold every word, in any place: name, jugs, oils, colourants, scents, notes, troubles, result, day.
func Search(list []Entry, text string) []Entry {
	words := strings.Fields(strings.ToLower(plain.Line(text)))
	var out []Entry
next:
	for _, e := range list {
		for _, w := range words {
			if !strings.Contains(e.words, w) {
				continue next
			}
		}
		out = append(out, e)
	}
	return out
}

// scan makes an entry from a file without reading it properly: line by line, keys it knows. A broken file is listed all the same.
func scan(id, src string) Entry {
	e := Entry{ID: id}
	words := wordList{seen: map[string]bool{}}
	words.add(id)
	var events []Event
	named := false
	for line := range strings.Lines(src) {
		line = strings.TrimSpace(line)
		if line == eventLine {
			events = append(events, Event{ID: fmt.Sprintf("line-%d", len(events))})
			continue
		}
		key, value, ok := strings.Cut(line, " = ")
		if !ok {
			continue
		}
		if key == "opened" {
			e.Opened, _ = time.Parse(time.RFC3339Nano, value)
			continue
		}
		if text, err := strconv.Unquote(value); err == nil {
			value = text
		}
		value = plain.Line(value)
		if n := len(events); n > 0 {
			events[n-1].scan(key, value)
			continue
		}
		switch key {
		case "name", "oil", "colourant", "scent", "technique", "trial_scent", "notes":
			words.add(value)
		}
		if key == "trial_scent" {
			e.TrialScent = value
		}
		if key == "name" && !named {
			e.Name, named = value, true
		}
	}
	for _, mark := range Standing(events) {
		e.take(mark)
		words.add(mark.What + " " + mark.Text + " " + mark.Lot + " " + mark.Life.Audience + " " + mark.Life.Scent)
	}
	e.words = words.out.String()
	return e
}

// scan takes in a line of an event's table, if the list wants to know it.
func (e *Event) scan(key, value string) {
	switch key {
	case "kind":
		e.Kind = EventKind(value)
	case "id":
		e.ID = value
	case "what":
		e.What = value
	case "step":
		e.Step = value
	case "text":
		e.Text = value
	case "lot":
		e.Lot = value
	case "audience":
		e.Life.Audience = value
	case "scent":
		e.Life.Scent = value
	case "corrects":
		e.Corrects = value
	case "wall":
		if e.Corrects != "" { // of several corrections the latest counts
			e.Wall, _ = time.Parse(time.RFC3339Nano, value)
		}
	}
}

// wordList gathers words, each once.
type wordList struct {
	seen map[string]bool
	out  strings.Builder
}

func (l *wordList) add(text string) {
	for _, w := range strings.Fields(strings.ToLower(text)) {
		if !l.seen[w] {
			l.seen[w] = true
			l.out.WriteString(" " + w)
		}
	}
}

// stepsOfCut is what the keys of the cut's own steps begin with.
const stepsOfCut = "cut "

// take notes what a mark says of the pour as a whole.
func (e *Entry) take(mark Event) {
	if mark.Kind == Cut || mark.Kind == Sliced || strings.HasPrefix(mark.Step, stepsOfCut) {
		e.CutBegun = true
	}
	switch mark.Kind {
	case Failed:
		e.Failed = true
	case Ended:
		e.Ended = true
	case LeftOut:
		e.LeftOut = true
	case TakenIn:
		e.LeftOut = false
	case Troubled:
		if !slices.Contains(e.Troubles, mark.What) {
			e.Troubles = append(e.Troubles, mark.What)
		}
	case Result:
		e.Result = mark.Text
	}
}

// indexFields is how many fields a line of the index has.
const indexFields = 10

// readIndex reads what was known of the pours; nothing when the index is missing or is another program's.
func (b Book) readIndex(size int) map[string]Entry {
	known := make(map[string]Entry, size)
	head, rest, _ := strings.Cut(string(b.Kept(indexName)), "\n")
	if head != indexHead {
		return known
	}
	for line := range strings.Lines(rest) {
		line, whole := strings.CutSuffix(line, "\n")
		f := strings.Split(line, "\t")
		if !whole || len(f) != indexFields {
			continue
		}
		size, err1 := strconv.ParseInt(f[1], 10, 64)
		modified, err2 := strconv.ParseInt(f[2], 10, 64)
		opened, err3 := strconv.ParseInt(f[3], 10, 64)
		if err1 != nil || err2 != nil || err3 != nil {
			continue
		}
		e := Entry{
			ID: f[0], Size: size, Modified: modified, Opened: time.UnixMilli(opened), Ended: strings.Contains(f[4], "e"),
			LeftOut: strings.Contains(f[4], "l"), CutBegun: strings.Contains(f[4], "c"), Failed: strings.Contains(f[4], "f"),
			TrialScent: f[5], Name: f[7], Result: f[8], words: f[9],
		}
		if f[6] != "" {
			e.Troubles = strings.Split(f[6], ",")
		}
		known[e.ID] = e
	}
	return known
}

// writeIndex keeps what is known. A folder that cannot be written only makes the next list slower.
func (b Book) writeIndex(list []Entry) {
	var out strings.Builder
	out.WriteString(indexHead + "\n")
	for _, e := range list {
		if e.Fault != nil {
			continue
		}
		flags := ""
		for _, f := range []struct {
			on   bool
			flag string
		}{{e.Ended, "e"}, {e.LeftOut, "l"}, {e.CutBegun, "c"}, {e.Failed, "f"}} {
			if f.on {
				flags += f.flag
			}
		}
		out.WriteString(strings.Join([]string{
			e.ID, strconv.FormatInt(e.Size, 10), strconv.FormatInt(e.Modified, 10), strconv.FormatInt(e.Opened.UnixMilli(), 10),
			flags, e.TrialScent, strings.Join(e.Troubles, ","), e.Name, e.Result, e.words,
		}, "\t") + "\n")
	}
	b.Keep(indexName, []byte(out.String()))
}
