package clock

import (
	"math"

	"pourbench/chem"
)

// Emulsion comes mostly from stirring, and a blender is known no better than a rate: the maker's pace stands for her blender and
// her kitchen too. So the ends of its band, and its chances, are those of a batter in which stirring and reaction both go at the
// same e^y, with y spread by the same sd as every other stage's. Its median is the model's, where stirring goes at its own rate.

// finer is the schedule with everything that emulsifies going at factor times its rate.
func (s schedule) finer(l law, factor float64) schedule {
	out := schedule{startX: s.startX, startK: s.startK, legs: make([]leg, len(s.legs))}
	coarse := 1.0
	for i, g := range s.legs {
		g.tau /= factor
		g.coarse = coarse
		coarse = g.coarseAt(l, g.to)
		out.legs[i] = g
	}
	return out
}

// emulsion is when a jug is an emulsion with reaction and stirring both at e^y. It is there with light at the latest.
func (l law) emulsion(s schedule, pace, y float64) (minute float64, ok bool) {
	f := math.Exp(y)
	c := l.followToStage(s.finer(l, f), pace*f, HorizonMin, chem.Light)
	return c.at[chem.Emulsion], c.ok[chem.Emulsion]
}

// emulsionBand puts the ends of the band round the median it has; late is never after light's.
func (c *Clock) emulsionBand(f *Forecast) {
	at, light := &f.Stages[chem.Emulsion], f.Stages[chem.Light]
	at.Low, at.LowOK = c.law.emulsion(f.sched, c.pace, c.z*f.Sigma)
	at.High, at.HighOK = c.law.emulsion(f.sched, c.pace, -c.z*f.Sigma)
	if light.HighOK && !(at.HighOK && at.High <= light.High) {
		at.High, at.HighOK = light.High, true
	}
}

// emulsionX is the conversion whose soap makes an emulsion of a batter that is still that coarse: at most light's.
func (l law) emulsionX(coarse float64) float64 {
	if coarse <= coarseLeft {
		return 0
	}
	return math.Min(l.soapX*math.Log(coarse/coarseLeft), stageX(chem.Light))
}

// solveEmulsion is ln of the pace at which a jug is an emulsion at a minute, stirring and reaction both going faster than at start
// by the same factor; -Inf and +Inf as for solve.
func (l law) solveEmulsion(s schedule, minute, start, tolerance float64) float64 {
	if l.conversion(l.dose(s.startX)) >= stageX(chem.Light) {
		return math.Inf(-1)
	}
	if minute <= 0 {
		return math.Inf(1)
	}
	light := stageX(chem.Light)
	return root(func(ln float64) float64 {
		f := s.finer(l, math.Exp(ln-start))
		c := l.followTo(f, math.Exp(ln), minute, l.dose(light)+pastAim)
		x := l.conversion(c.dose)
		byFineness := x/l.soapX - math.Log(f.coarseAt(l, minute)/coarseLeft)
		return math.Max(byFineness, (x-light)/l.soapX)
	}, start, tolerance)
}
