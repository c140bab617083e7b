package label

import (
	"math"
	"slices"
	"strconv"

	"pourbench/chem"
)

// Held is how the bars of a batch stand against a nominal weight by the average system: Directive 76/211/EEC, annex I 1 (read).
type Held struct {
	Nominal float64
	TNE     float64 // tolerable negative error, g: annex I 2.4
	T1, T2  float64 // nominal less one and two of it
	Mean    float64
	MeanOK  bool // not under nominal
	Under1  int  // bars under T1
	Under2  int  // bars under T2
	Allowed int  // of those under T1
	Holds   bool
}

// shortPart is the part of a batch that may be short by more than the tolerable error: guidance, 2.5 % (read).
const shortPart = 0.025

// AllowedShort is how many bars of so many may be short by more than the tolerable error: the whole part of 2.5 % of them (derived; the official reference
// test has its own sampling plan).
func AllowedShort(bars int) int { return int(math.Floor(shortPart*float64(bars) + slack)) }

// Average holds bars, g, against a nominal weight. It does not hold outside 5 g to 25 kg, where no error is laid down.
func Average(bars []float64, nominal float64) Held {
	h := Held{Nominal: nominal, Mean: mean(bars), Allowed: AllowedShort(len(bars))}
	tne, ok := chem.TolerableShortfall(nominal)
	h.TNE, h.T1, h.T2 = tne, nominal-tne, nominal-2*tne
	h.MeanOK = len(bars) > 0 && h.Mean >= nominal-slack
	for _, g := range bars {
		if g < h.T1-slack {
			h.Under1++
		}
		if g < h.T2-slack {
			h.Under2++
		}
	}
	h.Holds = ok && h.MeanOK && h.Under1 <= h.Allowed && h.Under2 == 0
	return h
}

// mostByAverage is the largest whole grams that hold by the market's average rules; 0: none do.
func (m Market) mostByAverage(bars []float64) float64 {
	if m.Average != AverageTNE {
		const five = 0.95 // NMI guide (read)
		return math.Floor(min(mean(bars), lightest(bars)/five))
	}
	const most = 25000 // beyond that no error is laid down
	for n := math.Floor(min(mean(bars), most)); n > 0; n-- {
		if Average(bars, n).Holds {
			return n
		}
	}
	return 0
}

func mean(list []float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += v
	}
	if len(list) == 0 {
		return 0
	}
	return sum / float64(len(list))
}

func lightest(list []float64) float64 {
	if len(list) == 0 {
		return 0
	}
	return slices.Min(list)
}

// lightestOr is [lightest], or another mass where there is none.
func lightestOr(list []float64, none float64) float64 {
	if len(list) == 0 {
		return none
	}
	return slices.Min(list)
}

// short writes a number without what is not needed of it.
func short(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
