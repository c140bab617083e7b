package pour

import (
	"fmt"
	"slices"

	"pourbench/pour/script"
)

// What the hands need for what is done to the loaf where the plan does not say, min (common practice, no source).
const (
	usualPeakMin  = 0.5
	usualSkinMin  = 45 // an estimate: it is the room's air and the batter that say when a top has skinned
	usualMarkMin  = 3
	usualCutMin   = 0.5
	usualWeighMin = 0.25
	firmMin       = 0.5
	asideMin      = 0.5
	wipeMin       = 1
)

// What the keys of tasks begin with that belong to no batch.
const (
	keyTop = "top"
	keyCut = "cut"
)

// orUsual is a number of the plan or, where it is 0, the usual one.
func orUsual(plan, usual float64) float64 {
	if plan > 0 {
		return plan
	}
	return usual
}

// shaped is what the icing's script has to know of how it is piped.
func (s *Sheet) shaped() script.Shaped {
	p := &s.Piping
	if !p.Stated() || p.Lacks != "" {
		return script.Shaped{}
	}
	out := script.Shaped{Peak: true}
	parts := s.Plan.Icing.parts()
	if len(p.Jugs) != len(parts) {
		parts = []float64{1} // a common bag
	}
	var units []float64
	if p.Units > 1 {
		units = Apportion(scaled(parts, float64(p.Units)), 1)
	}
	for i, j := range p.Jugs {
		bag := script.Bag{Fills: j.Fills}
		if units != nil {
			bag.Units = int(units[i])
		}
		out.Bags = append(out.Bags, bag)
	}
	return out
}

// scaled are numbers in their proportions that sum to a whole.
func scaled(parts []float64, whole float64) []float64 {
	sum := 0.0
	for _, v := range parts {
		sum += v
	}
	out := make([]float64, len(parts))
	for i, v := range parts {
		if sum > 0 {
			out[i] = v / sum * whole
		}
	}
	return out
}

// dress works out what is done to the loaf before it is put to bed, and on the day of its cut.
func (s *Sheet) dress() {
	if s.Plan.Trial {
		return
	}
	var d script.Dressing
	k := script.Knife{Cuts: len(s.Cut.CutsMM) + len(s.Cut.AcrossMM), Gang: s.Plan.Cut.By == CutGang, Pieces: len(s.Pieces())}
	k.Aside = k.Pieces > len(s.Cut.Bars)
	for i, e := range s.Embeds {
		switch {
		case len(e.Pieces) == 0:
		case s.Icing == nil || e.OutMM < e.HeightMM: // it reaches into the base
			d.Into = append(d.Into, i)
		default:
			d.Onto = append(d.Onto, i)
		}
	}
	turns := make([]int, len(s.Toppings))
	for i := range turns {
		turns[i] = i
	}
	slices.SortStableFunc(turns, func(a, b int) int { return s.Toppings[a].Turn - s.Toppings[b].Turn })
	for _, i := range turns {
		switch t := s.Toppings[i]; {
		case t.When == StrewSkin:
			d.Skin = append(d.Skin, i)
		case t.When == StrewCut:
			k.Strewn = append(k.Strewn, i)
		case t.When == StrewCure:
			k.Cured = append(k.Cured, i)
		case t.Kind == ToppingDrizzle || t.Kind == ToppingSpray:
			d.Wet = append(d.Wet, i)
		default:
			d.Grain = append(d.Grain, i)
		}
	}
	s.TopScript, s.CutScript = script.Top(d), script.Cutting(k)
}

// Piece is one piece of the cut loaf that is weighed.
type Piece struct {
	Name     string // "bar 3", "trims", "sample slice"
	Bar      int    // from 1; 0: it is no bar
	PlannedG Figure // as it is cut
}

// The pieces of a cut loaf that are no bars.
const (
	NameTrims = "trims"
	nameSlice = "sample slice"
)

// Pieces lists what is weighed at the cut: the bars from end A on, then the trims together, then the sample slice.
func (s *Sheet) Pieces() []Piece {
	out := make([]Piece, 0, len(s.Cut.Bars)+2)
	for i, b := range s.Cut.Bars {
		out = append(out, Piece{Name: fmt.Sprintf("bar %d", i+1), Bar: i + 1, PlannedG: b.CutG})
	}
	if s.Cut.TrimAMM > 0 || s.Cut.TrimBMM > 0 || s.Cut.SideMM > 0 {
		out = append(out, Piece{Name: NameTrims, PlannedG: s.Cut.TrimsG})
	}
	if s.Cut.SliceMM > 0 {
		out = append(out, Piece{Name: nameSlice, PlannedG: s.Cut.SliceG})
	}
	return out
}

// CutPiece is the place among the pieces of what a task of the cut weighs; -1: it weighs nothing.
func (s *Sheet) CutPiece(t Task) int {
	if a, ok := s.act(t); ok && t.OfCut() && a.Kind == script.Weigh {
		return a.Item
	}
	return -1
}

// Cured reports whether a stint of the cut waits for the cured bar.
func (s *Sheet) Cured(st Stint) bool {
	a, ok := s.act(st.Tasks[0])
	return ok && a.Wait && st.Tasks[0].OfCut()
}

// loafTasks lists the acts of a script that belongs to no batch; the place begins their keys.
func (s *Sheet) loafTasks(place string, of script.Script) []Task {
	var pieces []Piece
	seen := make(map[string]int, len(of.Acts))
	out := make([]Task, 0, len(of.Acts))
	for i, a := range of.Acts {
		t := Task{Kind: TaskKind(a.Kind), Act: i, LengthMin: s.loafMin(a)}
		switch a.Kind {
		case script.Embed:
			t.Item = s.Embeds[a.Item].Name
		case script.Strew:
			t.Item = s.Toppings[a.Item].Name
		case script.Weigh:
			if pieces == nil {
				pieces = s.Pieces()
			}
			t.Item = pieces[a.Item].Name
		case script.Cut:
			if a.Rounds > 1 {
				t.Item = fmt.Sprint(a.Item + 1)
			}
		}
		if a.Round > 0 {
			t.Round = Know(float64(a.Round))
		}
		t.Key = taskKey(BatchName(place), t.Kind, t.Item)
		if seen[t.Key]++; seen[t.Key] > 1 { // two of one name
			t.Key = taskKey(BatchName(place), t.Kind, fmt.Sprintf("%s@%d", t.Item, seen[t.Key]))
		}
		out = append(out, t)
	}
	return out
}

// loafMin is how long the hands need for an act done to the loaf, min.
func (s *Sheet) loafMin(a script.Act) float64 {
	r := s.Plan.Run
	switch a.Kind {
	case script.Embed:
		return s.Embeds[a.Item].SetMin
	case script.Strew:
		return s.Toppings[a.Item].HandsMin
	case script.Firm:
		return firmMin
	case script.Mark:
		return orUsual(r.MarkMin, usualMarkMin)
	case script.Cut:
		return orUsual(r.CutMin, usualCutMin)
	case script.Aside:
		return asideMin
	case script.Weigh:
		return orUsual(r.WeighMin, usualWeighMin)
	case script.Wipe:
		return wipeMin
	}
	return 0
}

// piped is how long the hands need to try the base, to fill the bags of a jug or to pipe it, min; false where no shape says.
func (s *Sheet) piped(a script.Act) (float64, bool) {
	switch a.Kind {
	case script.Peak:
		return orUsual(s.Plan.Run.PeakMin, usualPeakMin), true
	case script.Fill:
		return float64(a.Times) * s.Plan.Piping.FillMin, true
	case script.Pipe:
		minutes, ok := s.Piping.pipeMin(a.Jug)
		bag := a.Jug
		if bag == script.Whole || s.Plan.Icing.Bags == BagOne {
			bag = 0
		}
		if ok && bag < len(s.Piping.Jugs) {
			minutes -= float64(s.Piping.Jugs[bag].Fills) * s.Plan.Piping.FillMin // filled in acts of their own
		}
		return minutes, ok
	}
	return 0, false
}

// cutOn lays the cut on its own clock: 0 is when it begins.
func (s *Sheet) cutOn() {
	s.CutRun = s.loafTasks(keyCut, s.CutScript)
	at := 0.0
	for i := range s.CutRun {
		t := &s.CutRun[i]
		if s.CutScript.Acts[t.Act].Wait {
			at = max(at, s.Plan.Bed.CureDays*24*60)
		}
		t.StartMin = at
		at += t.LengthMin
	}
}
