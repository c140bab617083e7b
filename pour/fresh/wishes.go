package fresh

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"pourbench/chem"
	"pourbench/pour"
)

// Wishes is what a new plan is made of. The zero value is a soap all the same.
type Wishes struct {
	Name      string
	Mould     string   // id on the shelf; empty: the everyday loaf
	Bars      int      // bars wanted, 1 to [MostBars]: a loaf of so many; 0: as the mould gives
	Technique string   // id on the shelf; empty: the everyday one
	Colours   []string // ids of colourants: a jug each, beside the pot, which stays as it is
	Scents    []string // ids on the shelf
	Icing     bool
	Show      pour.Show // the units of the plan before; the zero value: metric
}

// MostBars is the most bars a loaf of one's own is made for: some two metres.
const MostBars = 80

// The everyday choices: what a first multi-colour loaf is usually made of (common practice, no source).
const (
	everydayMould     = "loaf-10"
	everydayTechnique = "hanger"
	everydayName      = "New soap"
)

// everydayOils is a balanced blend, percent: hard and lathering fats about half, the rest liquid (common practice, no source).
func everydayOils() []pour.OilPart {
	return []pour.OilPart{{Oil: "olive", Percent: 45}, {Oil: "coconut", Percent: 25}, {Oil: "shea", Percent: 15}, {Oil: "sunflower-ho", Percent: 10}, {Oil: "castor", Percent: 5}}
}

// icingOils is a blend that stands: two thirds of it hard (common practice, no source).
func icingOils() []pour.OilPart {
	return []pour.OilPart{{Oil: "coconut", Percent: 32}, {Oil: "shea", Percent: 20}, {Oil: "cocoa-butter", Percent: 13}, {Oil: "sunflower-ho", Percent: 30}, {Oil: "castor", Percent: 5}}
}

// icingBursts brings an icing to a peak: whipped at once, and again when it has loosened (common practice, no source).
func icingBursts() []pour.Burst { return []pour.Burst{{S: 45}, {AtMin: 4, S: 30}} }

// everydayColours is what is suggested where no colour was wished for yet.
func everydayColours() []string { return []string{"titanium-white-oil", "ultramarine-blue"} }

// The everyday figures of a batch (common practice, no source): those of the first example, with a lye that leaves time for a swirl.
const (
	superfatPercent  = 5
	lyePercent       = 32
	icingLyePercent  = 35 // stiff sooner
	oilsC            = 34
	lyeC             = 32
	burstS           = 20
	burstLightS      = 10 // for what is poured thin
	icingSplitAtMin  = 8  // after its own lye-in: it has stood a little by then
	splitAtMin       = 2
	finalMoisture    = 10
	roomC            = 21
	cutAfterH        = 24
	cureDays         = 42
	scentPercent     = 3
	pigmentCarrierBy = pour.CarrierExtra
)

// plan is the plan before anything is tried.
func (w Wishes) plan(s pour.Shelf) (pour.Plan, error) {
	mould, err := w.mould(s)
	if err != nil {
		return pour.Plan{}, err
	}
	if w.Icing && mould.Shape == pour.ShapeTube {
		return pour.Plan{}, errors.New("make a new plan with an icing in a tube: its top is the end of one round alone; leave the icing out, or take a loaf, a slab or cavities")
	}
	technique, err := pick(s.Techniques, w.Technique, everydayTechnique, "technique", func(t pour.Technique) (string, string) { return t.ID, t.Name })
	if err != nil {
		return pour.Plan{}, err
	}
	base, err := w.base(s)
	if err != nil {
		return pour.Plan{}, err
	}
	if technique.To <= chem.Medium {
		base.Blend[0].S = burstLightS
	}
	blank := pour.Blank()
	p := pour.Plan{
		Name:  w.name(),
		Show:  w.show(),
		Mould: mould, Room: pour.Room{TemperatureC: roomC}, Swirl: pour.Swirl{Technique: technique.ID, Seed: 1},
		Bed:  pour.Bed{Keep: pour.BedBare, CutAfterH: cutAfterH, CureDays: cureDays},
		Run:  blank.Run,
		Base: base, Piping: blank.Piping, Cut: blank.Cut,
	}
	return p, nil
}

// show is how the plan shows its figures.
func (w Wishes) show() pour.Show {
	if w.Show == (pour.Show{}) {
		return pour.Metric()
	}
	return w.Show.Anew()
}

func (w Wishes) name() string {
	if name := strings.TrimSpace(w.Name); name != "" {
		return name
	}
	return everydayName
}

// base is the base batter with its pot alone.
func (w Wishes) base(s pour.Shelf) (pour.Batch, error) {
	oils := onShelf(everydayOils(), s)
	if len(oils) == 0 {
		return pour.Batch{}, errors.New("make a new plan: there is no oil on the shelf")
	}
	return pour.Batch{
		Size: pour.SizeMould, SuperfatPercent: superfatPercent, LyeConcentrationPercent: lyePercent, NaOHPurityPercent: 100, KOHPurityPercent: 90,
		OilsC: oilsC, LyeC: lyeC, Blend: []pour.Burst{{S: burstS}}, SplitAtMin: splitAtMin, FinalMoisturePercent: finalMoisture, Carrier: pigmentCarrierBy,
		Oils: oils, Jugs: []pour.Jug{{Name: "pot", SharePercent: 100}},
	}, nil
}

// onShelf is a blend without what the shelf does not hold, the rest in proportion; the shelf's first oil where it holds none of it.
func onShelf(blend []pour.OilPart, s pour.Shelf) []pour.OilPart {
	blend = slices.DeleteFunc(blend, func(o pour.OilPart) bool { _, ok := s.Oil(o.Oil); return !ok })
	if len(blend) == 0 && len(s.Oils) > 0 {
		blend = []pour.OilPart{{Oil: s.Oils[0].ID, Percent: 100}}
	}
	sum := 0.0
	for _, o := range blend {
		sum += o.Percent
	}
	if sum == 100 {
		return blend
	}
	for i := range blend {
		blend[i].Percent *= 100 / sum
	}
	return blend
}

// mould is the mould wished for, or a loaf for the bars wished for: the smallest loaf of the shelf that holds them, blocked off behind the
// last one; one longer than any where none does.
func (w Wishes) mould(s pour.Shelf) (pour.Mould, error) {
	if w.Bars == 0 {
		m, err := pick(s.Moulds, w.Mould, everydayMould, "mould", func(m pour.MouldEntry) (string, string) { return m.ID, m.Name })
		return m.Mould, err
	}
	if w.Bars < 1 || w.Bars > MostBars {
		return pour.Mould{}, fmt.Errorf("make a loaf of %d bars: 1 to %d work", w.Bars, MostBars)
	}
	var best pour.Mould
	for _, m := range s.Moulds {
		enough, had := bars(m.Mould) >= w.Bars, bars(best) >= w.Bars
		switch {
		case m.Mould.Shape != pour.ShapeLoaf:
		case best.BarMM == 0, enough && !had, enough && volume(m.Mould) < volume(best), !had && bars(m.Mould) > bars(best):
			best = m.Mould
		}
	}
	if best.BarMM == 0 {
		return best, fmt.Errorf("make a loaf of %d bars: there is no loaf on the shelf", w.Bars)
	}
	best.LengthMM = float64(w.Bars) * best.BarMM
	return best, nil
}

func bars(m pour.Mould) int {
	if m.BarMM <= 0 {
		return 0
	}
	return int(m.LengthMM/m.BarMM + 1e-9)
}

func volume(m pour.Mould) float64 { return m.LengthMM * m.WidthMM * m.FillMM }
