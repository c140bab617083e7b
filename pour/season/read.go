package season

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// form is the kind of file a season is.
func form() strict.Form {
	return strict.Form{
		Noun: "season", Bytes: 2 << 20, Items: 5000, Letters: 200,
		Again: "take a look at what was changed last", Home: home,
	}
}

// home says where a key belongs that stands in the wrong place.
func home(key string) []string {
	var out []string
	for _, t := range []struct {
		header string
		keys   []string
	}{
		{"under [house]", houseKeys()}, {"in a [[mould]]", mouldKeys()}, {"in a [[date]]", dateKeys()}, {"in a [[pour]]", pourKeys()},
	} {
		if slices.Contains(t.keys, key) {
			out = append(out, t.header)
		}
	}
	return out
}

func houseKeys() []string { return []string{"rack_bars", "bench_days", "most_pours_a_day"} }
func mouldKeys() []string {
	return []string{"name", "count", "shape", "length_mm", "width_mm", "height_mm", "cavities"}
}

func dateKeys() []string { return []string{"name", "day", "kind", "audience", "label_days", "wants"} }
func pourKeys() []string { return []string{"plan", "pour", "for", "day"} }

// The most a file may say, so that no figure worked out of it can overflow: nobody has more.
const (
	mostBars      = 100_000
	mostCount     = 1000
	mostLabelDays = 365
	mostMM        = 5000
)

// Load reads the season's file in the maker's folder of data. One that is not there is an empty season.
func Load(dir string) (File, error) {
	src, err := current(filepath.Join(dir, FileName))
	if err != nil {
		return File{}, err
	}
	return Read(filepath.Join(dir, FileName), src)
}

// current is the text of a file; none where there is no file.
func current(path string) (string, error) {
	f, _, err := disk.Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", strict.Refuse(path, disk.Reason(err), "give yourself leave to read it, or move it away")
	}
	defer f.Close() //nolint:errcheck // nothing was written
	return form().Slurp(path, io.Reader(f))
}

// Read reads the text of a season's file. No text at all is an empty season. Any failure is a [*strict.Error].
func Read(name, src string) (File, error) {
	if strings.TrimSpace(src) == "" {
		return File{}, nil
	}
	doc, err := form().Open(name, strings.TrimPrefix(src, "\ufeff"))
	if err != nil {
		return File{}, err
	}
	var f File
	if top := doc.Top(); format(top) {
		top.Only("format", "house", "mould", "date", "pour")
		if t, ok := top.Section("house"); ok {
			readHouse(t, &f.House)
		}
		for _, t := range top.List("mould") {
			f.House.Moulds = append(f.House.Moulds, readMould(t, f.House.Moulds))
		}
		for _, t := range top.List("date") {
			f.Dates = append(f.Dates, readDate(t, f))
		}
		for _, t := range top.List("pour") {
			f.Pours = append(f.Pours, readPour(t, f))
		}
	}
	if err := doc.Err(); err != nil {
		return File{}, err
	}
	return f, nil
}

// format reports whether the rest can be read by this program.
func format(top *strict.Table) bool {
	if !top.Has("format") {
		top.Say("format", "", "is missing", fmt.Sprintf("write format = %d as the first line, if this is a season", FileFormat))
		return false
	}
	n := int64(0)
	top.Whole("format", &n)
	if n != FileFormat {
		top.Say("format", fmt.Sprint(n), "is none this program reads", fmt.Sprintf("write format = %d, if this is a season; one of a newer pourbench is read by that", FileFormat))
	}
	return n == FileFormat
}

// whole reads a whole number from low to high.
func whole(t *strict.Table, key string, at *int, low, high int) {
	n := int64(0)
	if !t.Whole(key, &n) {
		return
	}
	if n < int64(low) || n > int64(high) {
		t.Say(key, fmt.Sprint(n), "is outside what can be", fmt.Sprintf("write a whole number from %d to %d", low, high))
		return
	}
	*at = int(n)
}

func readHouse(t *strict.Table, h *House) {
	t.Only(houseKeys()...)
	whole(t, "rack_bars", &h.RackBars, 0, mostBars)
	whole(t, "most_pours_a_day", &h.MostPours, 0, mostCount)
	var words []string
	t.Lines("bench_days", &words)
	for i, w := range words {
		n := slices.Index(weekdays(), strings.ToLower(w))
		switch {
		case n < 0:
			t.Add("bench_days", strict.NoWord("", w, weekdays()))
		case slices.Contains(h.BenchDays, time.Weekday(n)):
			t.Say(fmt.Sprintf("bench_days[%d]", i), strict.Quote(w), "stands there twice", "take one out")
		default:
			h.BenchDays = append(h.BenchDays, time.Weekday(n))
		}
	}
}

func readMould(t *strict.Table, before []Mould) Mould {
	t.Only(mouldKeys()...)
	m := Mould{Count: 1}
	t.Missing("name")
	t.Read("name", &m.Name)
	whole(t, "count", &m.Count, 1, mostCount)
	t.Missing("shape")
	t.Word("shape", &m.Shape, pour.ShapeLoaf, pour.ShapeSlab, pour.ShapeTube, pour.ShapeCavity)
	for _, side := range []struct {
		key string
		at  *float64
	}{{"length_mm", &m.LengthMM}, {"width_mm", &m.WidthMM}, {"height_mm", &m.HeightMM}} {
		t.Missing(side.key)
		t.Within(side.key, side.at, 1, mostMM)
	}
	whole(t, "cavities", &m.Cavities, 1, mostCount)
	for _, other := range before {
		switch {
		case same(other.Name, m.Name):
			t.Say("name", strict.Quote(m.Name), "is the name of another mould", "give each kind its own; of one kind there can be several: count")
		case other.fits(m.LengthMM, m.WidthMM, m.HeightMM) && other.Shape == m.Shape && other.cavities() == m.cavities():
			t.Say("", "", fmt.Sprintf("has the measures of %s", strict.Quote(other.Name)), "raise the count of that one instead")
		}
	}
	return m
}

func readDate(t *strict.Table, f File) Date {
	t.Only(dateKeys()...)
	d := Date{Kind: Market}
	t.Missing("name")
	if t.Read("name", &d.Name); t.Has("name") && strings.TrimSpace(d.Name) == "" {
		t.Say("name", strict.Quote(d.Name), "is no name", `write what you call it, as in "winter market"`)
	}
	if _, twice := f.Date(d.Name); twice && d.Name != "" {
		t.Say("name", strict.Quote(d.Name), "is the name of another date", "add the month or a number: pours say by the name what they are for")
	}
	t.Missing("day")
	readDay(t, "day", &d.Day)
	kind := string(d.Kind)
	t.Word("kind", &kind, string(Market), string(Order))
	d.Kind = Kind(kind)
	t.Read("audience", &d.Audience)
	whole(t, "label_days", &d.LabelDays, 0, mostLabelDays)
	for _, w := range t.List("wants") {
		w.Only("design", "bars")
		var want Want
		w.Missing("design")
		w.Read("design", &want.Design)
		w.Missing("bars")
		whole(w, "bars", &want.Bars, 1, mostBars)
		if slices.ContainsFunc(d.Wants, func(o Want) bool { return sameDesign(o.Design, want.Design) }) {
			w.Say("design", strict.Quote(want.Design), "stands there twice", "add the bars up in one")
		}
		d.Wants = append(d.Wants, want)
	}
	return d
}

// readDay reads a day alone.
func readDay(t *strict.Table, key string, at *day.Day) bool {
	var d time.Time
	if !t.Day(key, &d) {
		return false
	}
	const first, last = 1970, 9000 // what is further off was not meant
	if d.Year() < first || d.Year() > last {
		t.Say(key, d.Format(time.DateOnly), "is in no year to plan for", fmt.Sprintf("write a year from %d", first))
		return false
	}
	*at = day.Of(d)
	return true
}

func readPour(t *strict.Table, f File) Planned {
	t.Only(pourKeys()...)
	var p Planned
	t.Read("plan", &p.Plan)
	t.Read("pour", &p.Pour)
	switch {
	case p.Plan == "" && p.Pour == "":
		t.Say("", "", "says not what is poured", `write plan = "the path of its plan file", or pour = "the id of one in the logbook"`)
	case p.Plan != "" && p.Pour != "":
		t.Say("pour", strict.Quote(p.Pour), "stands beside a plan", "keep one: the plan of what is to be poured, or the id of what was")
	}
	if t.Read("for", &p.For); p.For != "" {
		if _, ok := f.Date(p.For); !ok {
			names := make([]string, len(f.Dates))
			for i, d := range f.Dates {
				names[i] = d.Name
			}
			t.Say("for", strict.Quote(p.For), "is the name of no date here", strict.Meant(p.For, names, "write the name of a [[date]], or leave it out", ""))
		}
	}
	var d day.Day
	if readDay(t, "day", &d) {
		p.Day = &d
	}
	return p
}
