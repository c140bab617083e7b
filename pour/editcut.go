package pour

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pourbench/pour/shape"
)

// cutSnapMM is what a cut that is moved by hand is rounded to, mm.
const cutSnapMM = 0.1

// CutAt makes the cuts of a sheet the maker's own, at places along the loaf, in whichever order: ends that were trimmed stay trimmed, ends that were
// kept stay whole, and the sample slice stays the piece it was. Cuts that would meet, or leave the loaf, are refused.
func CutAt(c CutSheet, cuts []float64) Edit {
	cuts = slices.Sorted(slices.Values(cuts))
	return func(p Plan) (Plan, error) {
		own := &p.Cut
		s := shape.Stretch{Length: p.Mould.AlongMM(), Kerf: own.KerfMM, CutA: c.TrimAMM > 0, CutB: c.TrimBMM > 0, Slice: c.SliceMM, SliceAtB: own.SliceAt == LeftEndB}
		cut, out := s.At(cuts)
		if len(out) > 0 {
			return p, fmt.Errorf("cut at %s: it would not cut inside the loaf, or would meet another cut", p.Show.Marks(out[0]))
		}
		own.By, own.MarksMM = CutMarks, cuts
		own.TrimAMM, own.TrimBMM, own.SliceMM = cut.TrimA.Length(), cut.TrimB.Length(), cut.Slice.Length()
		return p, nil
	}
}

// NudgeCut moves one cut of a sheet by so many mm, towards end B where it is above 0, and makes the cuts the maker's own; wires that cut all at once
// move together.
func NudgeCut(c CutSheet, cut int, mm float64) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(c.CutsMM, cut, "cut"); err != nil {
			return p, err
		}
		return MoveCut(c, cut, c.CutsMM[cut]+mm)(p)
	}
}

// MoveCut moves one cut of a sheet to a place along the loaf, as [NudgeCut] does.
func MoveCut(c CutSheet, cut int, toMM float64) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(c.CutsMM, cut, "cut"); err != nil {
			return p, err
		}
		to := shape.Mark(toMM, cutSnapMM)
		if p.Cut.By == CutGang && c.Gang.Placed {
			at := shape.Mark(c.Gang.AtMM.V+to-c.CutsMM[cut], cutSnapMM)
			if !(at > 0) {
				return p, fmt.Errorf("move the wires to %s: the first would not meet the loaf", p.Show.Marks(at))
			}
			p.Cut.GangAtMM = at
			return p, nil
		}
		cuts := slices.Clone(c.CutsMM)
		cuts[cut] = to
		if cut > 0 && to <= cuts[cut-1] || cut+1 < len(cuts) && to >= cuts[cut+1] {
			return p, fmt.Errorf("move a cut to %s: it would pass the one beside it", p.Show.Marks(to))
		}
		return CutAt(c, cuts)(p)
	}
}

// AddCut makes one more cut of the maker's own, at a place along the loaf.
func AddCut(c CutSheet, atMM float64) Edit {
	return CutAt(c, append(slices.Clone(c.CutsMM), shape.Mark(atMM, cutSnapMM)))
}

// RemoveCut leaves one cut out, so that the pieces beside it are one.
func RemoveCut(c CutSheet, cut int) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(c.CutsMM, cut, "cut"); err != nil {
			return p, err
		}
		return CutAt(c, slices.Delete(slices.Clone(c.CutsMM), cut, cut+1))(p)
	}
}

// BestCuts looks for the best cut plan: most bars, every placed embed clear, bars alike, embeds in their middles, least left over.
func BestCuts() Edit {
	return func(p Plan) (Plan, error) { p.Cut.By = CutBest; return p, nil }
}

// EqualBars cuts a number of bars that are all alike, with nothing left over; 0: as many as bars of the mould's thickness.
func EqualBars(count int) Edit {
	return func(p Plan) (Plan, error) {
		p.Cut.By, p.Cut.Count, p.Cut.Left = CutCount, count, ""
		return p, nil
	}
}

// MyWires cuts with wires that stand as the maker measured them, all at once; the first counts as 0.
func MyWires(wires []float64) Edit {
	return func(p Plan) (Plan, error) {
		if len(wires) < 2 {
			return p, errors.New("cut with your wires: it takes two of them to leave a bar; measure where each stands from the first")
		}
		sorted := slices.Sorted(slices.Values(wires))
		first := sorted[0]
		for i, w := range sorted {
			sorted[i] = math.Round((w-first)*1e6) / 1e6 // so that 12.7 less 0.2 is 12.5
			if i > 0 && sorted[i] <= sorted[i-1] {
				return p, fmt.Errorf("cut with your wires: two of them stand at %s", p.Show.Marks(w))
			}
		}
		p.Cut.By, p.Cut.WiresMM, p.Cut.GangAtMM = CutGang, sorted, 0
		return p, nil
	}
}
