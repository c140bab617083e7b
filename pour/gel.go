package pour

import (
	"fmt"

	"pourbench/chem/clock"
)

// From which chance a loaf is said to gel likely, and under which it is said not to: six and three in ten (assumed). Between them
// the model does not know.
const (
	gelLikelyPercent = 60
	gelSeldomPercent = 30
)

// bed follows the base's loaf to its warmest and says whether it gels. A clock the batch was refused by, nil, leaves it unknown.
func (t *timer) bed(c *clock.Clock) {
	if t.batch.Name != Base || t.sheet.Plan.Trial {
		return
	}
	if c != nil {
		loaf := t.loaf()
		if h, err := c.Heat(loaf); err == nil {
			t.sheet.Gel = t.gel(h)
			t.warnGel(loaf.AirC)
			t.warnMelts()
			return
		}
	}
	t.sheet.warn(warning("gel", "bed", "whether the loaf gels cannot be worked out where the clock gives no times",
		"go by the loaf: wrapped ones mostly gel, chilled ones seldom (common practice, no source)"))
}

// gel is what the clock found, on the sheet.
func (t *timer) gel(h clock.Heat) Gel {
	g := Gel{
		FromC: Know(h.GelC), MiddleC: Band{Low: Know(h.Low), Mid: Know(h.Mid), High: Know(h.High)}, EdgeC: Know(h.EdgeC),
		PeakAtMin: Know(h.PeakMin + t.batch.LyeInAtMin), MiddlePercent: Know(h.MiddleGels * 100), EdgePercent: Know(h.EdgeGels * 100),
	}
	switch {
	case g.EdgePercent.V >= gelLikelyPercent:
		g.Word = GelLikely
	case g.MiddlePercent.V < gelSeldomPercent:
		g.Word = GelUnlikely
	default:
		g.Word = GelInPart
	}
	return g
}

// loaf is the base in its mould and its bed, as the clock sees it: all jugs as one.
func (t *timer) loaf() clock.Bed {
	b, m := t.batch, t.sheet.Plan.Mould
	jug := clock.Jug{Fraction: b.kept()}
	at := map[string]int{}
	for i := range b.Jugs {
		own := t.jug(&b.Jugs[i])
		jug.ExtraWaterG += own.ExtraWaterG * b.kept()
		for _, x := range own.Scents {
			x.LoadPercent *= own.Fraction // of all oils
			x.Rices = false               // that is no heat
			if k, ok := at[x.ID]; ok {
				jug.Scents[k].LoadPercent += x.LoadPercent
				jug.Scents[k].AtMin = min(jug.Scents[k].AtMin, x.AtMin)
				continue
			}
			at[x.ID] = len(jug.Scents)
			jug.Scents = append(jug.Scents, x)
		}
	}
	surface, half := m.cooling(b.Size.HeightMM)
	bed := clock.Bed{
		Loaf: jug, FromMin: t.beddedAt(), AirC: t.sheet.Plan.Room.TemperatureC, Cooling: clock.CoolingBareLoaf,
		AreaM2: surface / 1e6, HalfMM: half,
	}
	switch t.sheet.Plan.Bed.Keep {
	case BedInsulate:
		bed.Cooling = clock.CoolingInsulated
	case BedChill:
		bed.Cooling, bed.AirC = clock.CoolingChilled, min(bed.AirC, clock.ChilledAirC)
	}
	return bed
}

// beddedAt is the minute after the base's lye-in at which the run puts the loaf to bed.
func (t *timer) beddedAt() float64 {
	at := t.plan.SplitAtMin
	for _, task := range t.sheet.Run {
		if task.Kind == TaskBed {
			at = max(at, task.StartMin-t.batch.LyeInAtMin)
		}
	}
	return at
}

// warnGel says whether the loaf gels, how warm it may get and what can be done about it.
func (t *timer) warnGel(airC float64) {
	g, keep, show := t.sheet.Gel, t.sheet.Plan.Bed.Keep, t.sheet.Plan.Show
	how := t.sheet.Plan.Bed.Lies()
	if keep == BedBare {
		how += ", in air of " + show.Temp(airC)
	}
	say := "the loaf may gel, perhaps only in its middle, with a darker ring in every bar"
	switch g.Word {
	case GelLikely:
		say = "the loaf will likely gel to its edge: stronger colours, firmer sooner"
	case GelUnlikely:
		say = "the loaf will likely not gel: paler colours, slower to firm"
	}
	t.sheet.warn(warning("gel", "bed", fmt.Sprintf("%s, %s (middle near %s, %s to %s; gel begins near %s; its chance is %s in the middle, %s at the edge)%s", how, say,
		show.Temp(g.MiddleC.Mid.V), show.Temp(g.MiddleC.Low.V), show.Temp(g.MiddleC.High.V), show.Temp(g.FromC.V),
		chances(g.MiddlePercent.V), chances(g.EdgePercent.V), t.ownHeat()), gelAdvice(g.Word, keep)))
}

// gelAdvice is what can be done about a loaf that gels or does not, beyond the bed it has already.
func gelAdvice(word, keep string) string {
	warmer, cooler := "wrap it warm", "chill it"
	if keep == BedInsulate {
		warmer = "start warmer or use weaker lye"
	}
	if keep == BedChill {
		cooler = "start cooler and chill it sooner, with air moving round it,"
	}
	switch word {
	case GelLikely:
		if keep == BedChill {
			return cooler + " if you want no gel"
		}
		return "look at it after an hour or two; unwrap and cool it if it domes or cracks"
	case GelUnlikely:
		return warmer + " if you want gel; without, cut it later"
	default:
		return warmer + " so that all of it gels, or " + cooler + " so that none does"
	}
}

// ownHeat names the extras whose own heat nobody can put a figure to.
func (t *timer) ownHeat() string {
	out := ""
	for _, a := range t.additives() {
		if a.Heat {
			out += "; " + a.Name + " heats it beyond that"
		}
	}
	return out
}
