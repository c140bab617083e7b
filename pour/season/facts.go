package season

import (
	"math"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// Facts is all that a board is worked out of.
type Facts struct {
	File     File
	Designs  map[string]Design // of the plans that the file names, by the path as it is written there
	Standing []Standing        // the pours of the logbook, the latest first
	Today    day.Day
}

// Design is what the season needs to know of a plan: see [DesignOf].
type Design struct {
	Name      string
	Mould     pour.Mould
	Bars      int // whole ones; where BarsKnown
	BarsKnown bool
	CutDays   int  // from the day of the pour to that of the cut
	Cure      Span // from the cut until the bars are dry and their plan's cure is over
	Embeds    []Embed
	Needs     []pour.MaterialNeed // of every material, for one pour
	Fault     error               // why its plan cannot be used; nil: it can
}

// Span is a number of days with its band of 80 %; all three the same where there is none.
type Span struct{ Early, Middle, Late int }

// Embed is a kind of embed with the days before the pour by which it has to be made, to be hard then.
type Embed struct {
	Name string
	Days int
}

// hoursOfDay are those of a day of 24.
const hoursOfDay = 24

// DesignOf takes from a sheet what the season needs. The hour of the pour is not known: a cut that is due within a day of it is on the next
// day, and so on by days that are begun.
func DesignOf(s pour.Sheet) Design {
	d := Design{Name: s.Plan.Name, Mould: s.Plan.Mould, Bars: len(s.Cut.Bars), BarsKnown: len(s.Cut.Bars) > 0}
	d.CutDays = begun(s.Plan.Bed.CutAfterH / hoursOfDay)
	d.Cure = cureOf(s)
	for _, e := range s.Embeds {
		if days := begun(max(e.MadeDays, e.HardDays)); days > 0 {
			d.Embeds = append(d.Embeds, Embed{e.Name, days})
		}
	}
	return d
}

// cureOf is how long it is from the cut until its bars are dry and its plan's own cure is over, in the days that batches are told in.
func cureOf(s pour.Sheet) Span {
	c := life.Course{CureDays: s.Plan.Bed.CureDays, Cut: life.Happened{Yes: true}} // cut on the day from which the others count
	if r := s.Cure.ReadyDay; r.Low.Known && r.Mid.Known && r.High.Known {
		c.Ready = life.Around(0, r.Low.V, r.Mid.V, r.High.V)
	}
	done := c.Done()
	return Span{int(done.Early), int(done.Day), int(done.Late)}
}

// mostDays is the longest a plan can ask for: ten years, as its fields have it.
const mostDays = 3650

// begun counts a day that is begun as a whole one.
func begun(days float64) int {
	if math.IsNaN(days) {
		return 0
	}
	return int(math.Ceil(min(max(days, 0), mostDays)))
}

// Standing is a pour of the logbook as the season sees it: see [StandingOf].
type Standing struct {
	ID, Name string
	State    life.State
	Poured   day.Day
	Cut      day.Day // when it was cut, or is to be
	Ready    Band    // when its bars are dry
	Lawless  bool    // its weighings follow no drying law, and Ready is by the plan
	Mould    pour.Mould
	Bars     life.Account
}

// onRack reports whether its bars dry.
func (s Standing) onRack() bool { return s.State == life.Cut || s.State == life.Curing }

// inMould reports whether its loaf is still in the mould.
func (s Standing) inMould() bool { return s.State == life.UnderWay || s.State == life.InMould }

// uncut reports whether its loaf is still whole.
func (s Standing) uncut() bool { return s.inMould() || s.State == life.Unmoulded }

// gone reports whether nothing of it is left to plan with.
func (s Standing) gone() bool {
	return s.State == life.SoldOut || s.State == life.Failed || s.State == life.Trial || s.Bars.Known && s.Bars.Left <= 0
}
