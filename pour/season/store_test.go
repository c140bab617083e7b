package season_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/season"
)

// stored is a store whose file holds a text.
func stored(t *testing.T, src string) season.Store {
	t.Helper()
	s := season.NewStore(t.TempDir())
	if src != "" {
		if err := os.WriteFile(s.Path(), []byte(src), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

func textOf(t interface{ Fatal(...any) }, s season.Store) string {
	b, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func TestAFirstDateBeginsTheFile(t *testing.T) {
	s := stored(t, "")
	must(t, s.AddDate(season.Date{Name: "spring market", Day: on(t, "2027-03-28"), Wants: []season.Want{{"Rose", 4}}}))
	want := "# The season of pourbench: comments and what is written by hand stay when the program changes an entry.\nformat = 1\n\n" +
		"[[date]]\nname = \"spring market\"\nday = 2027-03-28\nkind = \"market\"\nwants = [\n  { design = \"Rose\", bars = 4 },\n]\n"
	if got := textOf(t, s); got != want {
		t.Errorf("%s", cmp.Diff(want, got))
	}
	if info, err := os.Stat(s.Path()); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info.Mode(), err)
	}
	if left, _ := filepath.Glob(filepath.Join(s.Dir, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// Every line but those of the changed entry stays to the byte, comments on the changed line among them.
func TestAChangeLeavesAllElseAsItWasWritten(t *testing.T) {
	replaced := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(whole) }
	nov, was := on(t, "2026-11-21"), on(t, "2026-11-14")
	for name, c := range map[string]struct {
		do   func(season.Store) error
		want string
	}{
		"day of a date": {
			func(s season.Store) error {
				return s.ChangeDate("Winter Market", func(d season.Date) season.Date { d.Day += 7; return d })
			}, replaced("day = 2026-12-19", "day = 2026-12-26"),
		},
		"wants, with the comment beside them": {
			func(s season.Store) error {
				return s.ChangeDate("winter market", func(d season.Date) season.Date { d.Wants = []season.Want{{"Rose", 7}}; return d })
			}, replaced("wants = [\n  { design = \"Alpine Meadow\", bars = 12 },  # they ask for it\n  { design = \"Rose\", bars = 6 },\n]", "wants = [\n  { design = \"Rose\", bars = 7 },\n]  # they ask for it"),
		},
		"a key that was not there and one that goes": {
			func(s season.Store) error {
				return s.ChangeDate("inn", func(d season.Date) season.Date { d.LabelDays, d.Audience = 3, "guests"; return d })
			}, replaced("kind = \"order\"\n", "kind = \"order\"\naudience = \"guests\"\nlabel_days = 3\n"),
		},
		"another name, which its pours follow": {
			func(s season.Store) error {
				return s.ChangeDate("winter market", func(d season.Date) season.Date { d.Name = "market of \"lights\""; return d })
			}, replaced(`name = "winter market"`, `name = "market of \"lights\""`, `for = "winter market"`, `for = "market of \"lights\""`),
		},
		"a date goes, its pours stay": {
			func(s season.Store) error { return s.RemoveDate("inn") },
			replaced("[[date]]\nname = \"inn\"\nday = 2027-01-10\nkind = \"order\"\n", "", "\nfor = \"inn\"", ""),
		},
		"a pour moves": {
			func(s season.Store) error {
				return s.ChangePour(1, season.Planned{Plan: "meadow.toml", For: "winter market", Day: &was}, season.Planned{Plan: "meadow.toml", For: "winter market", Day: &nov})
			}, replaced("day = 2026-11-14", "day = 2026-11-21"),
		},
		"a pour goes": {
			func(s season.Store) error {
				return s.RemovePour(1, season.Planned{Plan: "meadow.toml", For: "winter market", Day: &was})
			}, replaced("[[pour]]\nplan = \"meadow.toml\"\nfor = \"winter market\"\nday = 2026-11-14\n", ""),
		},
		"a pour comes": {
			func(s season.Store) error { return s.AddPour(season.Planned{Plan: "/plans/rose.toml"}) }, whole + "\n[[pour]]\nplan = \"/plans/rose.toml\"\n",
		},
		"the rack": {
			func(s season.Store) error {
				return s.SetHouse(func(h season.House) season.House { h.RackBars, h.MostPours = 80, 0; return h })
			}, replaced("rack_bars = 120            # two trolleys", "rack_bars = 80  # two trolleys", "most_pours_a_day = 2\n", ""),
		},
		"a mould comes": {
			func(s season.Store) error {
				return s.AddMould(season.Mould{Name: "tube", Shape: "tube", LengthMM: 75, WidthMM: 75, HeightMM: 300})
			}, whole + "\n[[mould]]\nname = \"tube\"\nshape = \"tube\"\nlength_mm = 75\nwidth_mm = 75\nheight_mm = 300\n",
		},
		"a mould goes": {func(s season.Store) error { return s.RemoveMould("hearts") }, replaced("[[mould]]\nname = \"hearts\"\nshape = \"cavity\"\nlength_mm = 60\nwidth_mm = 50\nheight_mm = 30\ncavities = 6\n\n", "")},
	} {
		for end, way := range map[string]func(string) string{
			"LF": func(s string) string { return s }, "CRLF": func(s string) string { return "\ufeff" + strings.ReplaceAll(s, "\n", "\r\n") },
		} {
			s := stored(t, way(whole))
			if err := c.do(s); err != nil {
				t.Errorf("%s, %s: %v", name, end, err)
				continue
			}
			if diff := cmp.Diff(way(c.want), textOf(t, s)); diff != "" {
				t.Errorf("%s, %s:\n%s", name, end, diff)
			}
		}
	}
}

// What cannot be changed without touching other entries, or would not be read back, is refused and nothing is written.
func TestAnEditThatCannotBeMadeIsRefused(t *testing.T) {
	listed := "format = 1\ndate = [{ name = \"inn\", day = 2027-01-10 }]\npour = [{ plan = \"a.toml\", for = \"inn\" }]\n"
	later := func(d season.Date) season.Date { d.Day++; return d }
	for name, c := range map[string]struct {
		src  string
		do   func(season.Store) error
		want string
	}{
		"a list on one line":    {listed, func(s season.Store) error { return s.ChangeDate("inn", later) }, "change it by hand, or start each with a line [[date]]"},
		"a pour to such a list": {listed, func(s season.Store) error { return s.AddPour(season.Planned{Plan: "b.toml"}) }, "nothing was written"},
		"wants under a header": {"format = 1\n[[date]]\nname = \"inn\"\nday = 2027-01-10\n[[date.wants]]\ndesign = \"x\"\nbars = 2\n", func(s season.Store) error {
			return s.ChangeDate("inn", func(d season.Date) season.Date { d.Wants = nil; return d })
		}, "cannot be changed here without touching other entries"},
		"a house written in dots": {"format = 1\nhouse.rack_bars = 4\n", func(s season.Store) error {
			return s.SetHouse(func(h season.House) season.House { h.RackBars = 5; return h })
		}, "by hand"},
		"a name there is":      {whole, func(s season.Store) error { return s.AddDate(season.Date{Name: "INN"}) }, "is the name of another date"},
		"no name":              {whole, func(s season.Store) error { return s.AddDate(season.Date{Name: " "}) }, "date[2].name: is missing"},
		"too long a name":      {whole, func(s season.Store) error { return s.AddDate(season.Date{Name: strings.Repeat("x", 201)}) }, "keep it to 200 letters"},
		"a pour for no date":   {whole, func(s season.Store) error { return s.AddPour(season.Planned{Plan: "a", For: "winter markt"}) }, `did you mean "winter market"?`},
		"a pour of nothing":    {whole, func(s season.Store) error { return s.AddPour(season.Planned{}) }, "says not what is poured"},
		"a date there is not":  {whole, func(s season.Store) error { return s.RemoveDate("in") }, `did you mean "inn"?`},
		"a mould there is not": {whole, func(s season.Store) error { return s.RemoveMould("heart") }, `did you mean "hearts"?`},
		"a mould twice": {whole, func(s season.Store) error {
			return s.AddMould(season.Mould{Name: "l", Shape: "loaf", LengthMM: 250, WidthMM: 80.4, HeightMM: 70})
		}, "has the measures of \"long loaf\"\n    to mend: raise the count"},
		"a pour that has changed":  {whole, func(s season.Store) error { return s.RemovePour(1, season.Planned{Plan: "meadow.toml"}) }, season.ErrGone.Error()},
		"a file that is broken":    {whole + "[[date]]\n", func(s season.Store) error { return s.RemoveDate("inn") }, "date[2].name: is missing"},
		"a file of another format": {"format = 7\n", func(s season.Store) error { return s.AddPour(season.Planned{Plan: "a"}) }, "is none this program reads"},
	} {
		s := stored(t, c.src)
		err := c.do(s)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v\nwant %s", name, err, c.want)
		}
		if got := textOf(t, s); got != c.src {
			t.Errorf("%s: the file is\n%s", name, got)
		}
	}
}

// A pour that has moved in the file is found where it is now; of two that are alike none is taken by guess.
func TestAPourIsFoundWhereItIsNow(t *testing.T) {
	s := stored(t, "format = 1\n")
	for _, plan := range []string{"a", "b", "c", "b"} {
		must(t, s.AddPour(season.Planned{Plan: plan}))
	}
	must(t, s.RemovePour(1, season.Planned{Plan: "a"}))
	must(t, s.RemovePour(3, season.Planned{Plan: "c"})) // it is the second now
	if err := s.RemovePour(4, season.Planned{Plan: "b"}); !errors.Is(err, season.ErrGone) {
		t.Errorf("one of two alike: %v", err)
	}
	must(t, s.RemovePour(2, season.Planned{Plan: "b"}))
	if f, err := season.Load(s.Dir); err != nil || len(f.Pours) != 1 || f.Pours[0].Plan != "b" {
		t.Errorf("%v, %v", f.Pours, err)
	}
}

// Two terminals that change the file at the same time lose nothing of each other.
func TestTwoTerminalsLoseNothing(t *testing.T) {
	dir := t.TempDir()
	const each = 8
	var group sync.WaitGroup
	for who := range 2 {
		group.Go(func() {
			s := season.NewStore(dir)
			s.Wait = time.Minute
			for i := range each {
				if err := s.AddDate(season.Date{Name: fmt.Sprintf("%d of %d", i, who), Day: day.Day(20000 + i)}); err != nil {
					t.Error(err)
				}
			}
		})
	}
	group.Wait()
	if f, err := season.Load(dir); err != nil || len(f.Dates) != 2*each {
		t.Errorf("%d dates, %v", len(f.Dates), err)
	}
}

func TestWhileAnotherHoldsTheFileItIsSaid(t *testing.T) {
	s := stored(t, whole)
	s.Wait = 0
	held, err := s.Disk.HoldFor(filepath.Join(s.Dir, ".season.lock"), 0)
	must(t, err)
	if err := s.RemoveDate("inn"); !errors.Is(err, disk.ErrLocked) || !strings.Contains(err.Error(), "try again") {
		t.Errorf("%v", err)
	}
	must(t, held.Release())
	must(t, s.RemoveDate("inn"))
}

// An editor knows nothing of the lock: what it saved while the change was being written is not written over.
func TestAnEditorsSaveIsNotWrittenOver(t *testing.T) {
	s := stored(t, whole)
	sys := s.Disk
	s.Disk.Sync = func(f *os.File) error {
		if err := os.WriteFile(s.Path(), []byte(whole+"# by hand\n"), 0o600); err != nil {
			t.Error(err)
		}
		return sys.Sync(f)
	}
	if err := s.RemoveDate("inn"); err == nil || !strings.Contains(err.Error(), "changed by something else just now") {
		t.Errorf("%v", err)
	}
	if got := textOf(t, s); got != whole+"# by hand\n" {
		t.Errorf("the file is\n%s", got)
	}
}

// Whatever is added comes back as it was typed, and whatever is taken out again leaves the file as it was.
func TestWhatIsAddedComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dir, err := os.MkdirTemp("", "season")
		if err != nil {
			t.Fatal(err)
		}
		defer os.RemoveAll(dir) //nolint:errcheck // a test's own folder
		s := season.NewStore(dir)
		if err := os.WriteFile(s.Path(), []byte(whole), 0o600); err != nil {
			t.Fatal(err)
		}
		word := rapid.StringMatching(`[a-zé"\\#\[\]= ]{0,12}[a-z]`)
		d := season.Date{Name: "x" + word.Draw(t, "name"), Day: day.Day(rapid.IntRange(0, 40000).Draw(t, "day")), Kind: season.Order, LabelDays: rapid.IntRange(0, 365).Draw(t, "label")}
		for i := range rapid.IntRange(0, 3).Draw(t, "wants") {
			d.Wants = append(d.Wants, season.Want{fmt.Sprint(i) + word.Draw(t, "design"), rapid.IntRange(1, 99).Draw(t, "bars")})
		}
		if err := s.AddDate(d); err != nil {
			t.Fatal(err)
		}
		f, err := season.Load(dir)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(d, f.Dates[len(f.Dates)-1]); diff != "" {
			t.Fatal(diff)
		}
		if err := s.RemoveDate(d.Name); err != nil {
			t.Fatal(err)
		}
		if got := textOf(t, s); got != whole {
			t.Fatalf("%s", cmp.Diff(whole, got))
		}
	})
}
