package pour

import (
	"fmt"
	"math"

	"pourbench/chem"
)

// pipeWindow says when the icing can be piped, after the clock has timed both batches, and whether the run does so.
func (s *Sheet) pipeWindow() {
	p := &s.Piping
	if s.Icing == nil || !p.Stated() || p.Lacks != "" {
		return
	}
	bears := latest(&s.Base, chem.Thick)
	p.Window = PipeWindow{From: latest(s.Icing, chem.Thick), To: earliest(s.Icing, chem.Stiff), BaseSetAt: latest(&s.Base, chem.Stiff)}
	if p.Window.From.Known && bears.Known {
		p.Window.From.V = max(p.Window.From.V, bears.V)
	}
	from, to, ok := s.pipingTime()
	if !ok || !p.PipeMin.Known {
		return
	}
	show := s.Plan.Show
	if s.Plan.Piping.PeakMM == 0 && bears.Known && from < bears.V-noise {
		s.warn(warning("base-soft", string(Icing), fmt.Sprintf("it is piped from %s on, the base is likely not thick before %s (an estimate)", show.RunTime(from), show.Predicted(bears.V)),
			"pipe later: the base has to hold a peak of "+show.Len(p.PeakMM.V)))
	}
	if p.Window.BaseSetAt.Known && from > p.Window.BaseSetAt.V {
		s.warn(warning("icing-slides", string(Icing), fmt.Sprintf("the base is likely stiff from %s on, before the icing comes: it lies on top and may come off", show.Predicted(p.Window.BaseSetAt.V)),
			"pipe earlier, or roughen the set top with a fork so that it holds"))
	}
	if p.Window.To.Known && to > p.Window.To.V+noise {
		s.warn(warning("pipe-window", string(Icing), fmt.Sprintf("piping takes %s, to %s, and the icing is likely stiff from %s on", show.Span(p.PipeMin.V), show.RunTime(to), show.Predicted(p.Window.To.V)),
			"pipe fewer or quicker, mix the icing later or cooler, or fill the bags little by little"))
	}
}

// pipingTime is when piping begins and ends on the run clock; false where nothing is piped.
func (s *Sheet) pipingTime() (from, to float64, ok bool) {
	from, to = math.Inf(1), math.Inf(-1)
	for _, t := range s.Run {
		if t.Kind == TaskPipe {
			from, to, ok = min(from, t.StartMin), max(to, t.StartMin+t.LengthMin), true
		}
	}
	return from, to, ok
}

// latest is when the last jug of a batch comes to a stage, on the run clock by the middle estimate; unknown where that of any jug is.
func latest(b *BatchSheet, stage chem.Stage) Figure {
	return reach(b, stage, math.Max)
}

// earliest is when the first one does.
func earliest(b *BatchSheet, stage chem.Stage) Figure {
	return reach(b, stage, math.Min)
}

func reach(b *BatchSheet, stage chem.Stage, choose func(a, b float64) float64) Figure {
	out := Figure{}
	for _, j := range b.Jugs {
		if j.SharePercent == 0 {
			continue
		}
		at := j.Clock.Stages[stage].Mid
		if !at.Known {
			return Figure{}
		}
		if !out.Known {
			out = Know(at.V + b.LyeInAtMin)
		}
		out.V = choose(out.V, at.V+b.LyeInAtMin)
	}
	return out
}
