package presets_test

import (
	"math"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"pourbench/pour"
	"pourbench/presets"
)

// planned is what these tests read of an example plan; package planfile reads the whole of it.
type planned struct {
	Format int
	Name   string
	Swirl  struct{ Technique string }
	Base   batch
	Icing  *batch
}

type batch struct {
	CarrierOil string `toml:"carrier_oil"`
	Oil        []struct {
		Oil     string
		Percent float64
	}
	Extra []struct {
		Extra   string
		Percent float64 `toml:"percent_of_oils"`
	}
	Jug []struct {
		Name      string
		Share     float64 `toml:"share_percent"`
		Colourant []struct {
			Colourant string
			Dose      float64 `toml:"dose_percent"`
		}
	}
	Scent []struct {
		Scent string
		Into  []string
	}
}

func plan(t *testing.T, name string) planned {
	t.Helper()
	text, err := presets.Plan(name)
	if err != nil {
		t.Fatal(err)
	}
	var p planned
	if err := toml.Unmarshal(text, &p); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return p
}

func TestTheDemoIsTheFirstExample(t *testing.T) {
	names := presets.Plans()
	if len(names) < 3 || names[0] != "alpine-meadow" {
		t.Fatalf("examples %v, want alpine-meadow and two more", names)
	}
	if p := plan(t, names[0]); p.Icing == nil || len(p.Base.Jug) != 5 || len(p.Icing.Jug) != 2 {
		t.Errorf("the demo has %d jugs and icing %v, want five and an icing of two", len(p.Base.Jug), p.Icing)
	}
}

func TestAnUnknownExampleIsRefusedWithTheOnesThereAre(t *testing.T) {
	for _, name := range []string{"nothing", "../oils", "", "alpine-meadow.toml"} {
		if _, err := presets.Plan(name); err == nil || !strings.Contains(err.Error(), "alpine-meadow") {
			t.Errorf("Plan(%q): error %v", name, err)
		}
	}
}

func TestExamplesNameWhatIsOnTheShelf(t *testing.T) {
	s := shelf(t)
	for _, name := range presets.Plans() {
		p := plan(t, name)
		if p.Format != pour.FormatVersion || p.Name == "" {
			t.Errorf("%s: format %d, name %q", name, p.Format, p.Name)
		}
		if _, ok := s.Technique(p.Swirl.Technique); !ok {
			t.Errorf("%s: no technique %q", name, p.Swirl.Technique)
		}
		checkBatch(t, name+" base", p.Base, s)
		if p.Icing != nil {
			checkBatch(t, name+" icing", *p.Icing, s)
		}
	}
}

func checkBatch(t *testing.T, at string, b batch, s pour.Shelf) {
	t.Helper()
	known := func(kind, id string, ok bool) {
		if !ok {
			t.Errorf("%s: no %s %q on the shelf", at, kind, id)
		}
	}
	oils, shares, jugs := 0.0, 0.0, map[string]bool{}
	for _, o := range b.Oil {
		_, ok := s.Oil(o.Oil)
		known("oil", o.Oil, ok)
		oils += o.Percent
	}
	_, ok := s.Oil(b.CarrierOil)
	known("carrier oil", b.CarrierOil, ok)
	for _, x := range b.Extra {
		_, ok := s.Extra(x.Extra)
		known("extra", x.Extra, ok)
	}
	for _, j := range b.Jug {
		shares += j.Share
		jugs[j.Name] = true
		for _, d := range j.Colourant {
			c, ok := s.Colourant(d.Colourant)
			known("colourant", d.Colourant, ok)
			if d.Dose < c.DoseLowPercent || d.Dose > c.DoseHighPercent {
				t.Errorf("%s, %s: %g %% of %s is an unusual dose for an example", at, j.Name, d.Dose, c.ID)
			}
		}
	}
	if math.Abs(oils-100) > 1e-9 || math.Abs(shares-100) > 1e-9 {
		t.Errorf("%s: oils sum to %g %%, shares to %g %%", at, oils, shares)
	}
	for _, sc := range b.Scent {
		_, ok := s.Scent(sc.Scent)
		known("scent", sc.Scent, ok)
		for _, jug := range sc.Into {
			if !jugs[jug] {
				t.Errorf("%s: %s goes into %q, which is no jug", at, sc.Scent, jug)
			}
		}
	}
}
