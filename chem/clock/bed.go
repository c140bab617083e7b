package clock

import (
	"math"

	"pourbench/chem"
)

// CoolingChilled is how fast a chilled loaf loses heat, W/K at 1 kg of oil: a bare loaf's, in air of [ChilledAirC].
const CoolingChilled = CoolingBareLoaf

// ChilledAirC is the air of a refrigerator, °C: 5 or under is the usual advice of food authorities (memory).
const ChilledAirC = 5

// Where neat soap begins (trace model 2.1: common practice, about 65 to 90 °C): at 71 °C for lye of 33 %, higher by 16 K for
// every 0.07 of concentration, from 55 to 100 °C.
const (
	gelAtReferenceC = 71
	gelPerFraction  = 16 / 0.07
	gelLeastC       = 55
	gelMostC        = 100
)

// GelC is T_gel, °C: where a batter of that lye concentration (fraction, pure alkali against alkali and all watery liquid)
// begins to gel. Little water makes it higher.
func GelC(concentration float64) float64 {
	return math.Min(gelMostC, math.Max(gelLeastC, gelAtReferenceC+(concentration-referenceConcentration)*gelPerFraction))
}

const (
	setFloor = 0.15 // η∞: speed left in a batter that has set, without gel
	setX     = 0.05 // conversion over which a stiff batter sets
	gelWidth = 1.0  // K
)

// setting is D: how a batter slows as it sets beyond stiff, and goes on freely as it gels.
func (w *walk) setting(x, kelvin float64) float64 {
	over := x - stageX(chem.Stiff)
	if w.gelK == 0 || over <= 0 {
		return 1
	}
	d := setFloor + (1-setFloor)*math.Exp(-over/setX)
	return d + (1-d)/(1+math.Exp((w.gelK-kelvin)/gelWidth))
}

// Bed is a loaf put to bed.
type Bed struct {
	Loaf    Jug     // what is in the mould as one: its part of the batch, its scents at their load of all of it
	FromMin float64 // from the lye-in until the loaf is in its bed, ≥ 0; before, it cools as an open jug
	AirC    float64 // round the loaf, °C
	Cooling float64 // W/K for a loaf of 1 kg of oil: one of the Cooling… figures; 0: [CoolingBareLoaf]
	AreaM2  float64 // whole outside of the loaf, m²; 0: that of a loaf of its mass
	HalfMM  float64 // from the middle to the nearer sides, mm: how far heat has to go through the soap; ≥ 0
}

// Heat is how warm a loaf gets in its bed, and whether that makes it gel. The model knows one temperature, taken as the middle's; the
// edge stands under it as in a slab that makes heat evenly and gives it off to air: by 1/(1 + Bi/2) over the air (Carslaw and Jaeger,
// Conduction of Heat in Solids). It is the weakest part of the model: near GelC the outcome turns with 2 K.
type Heat struct {
	GelC           float64 // where it would begin to gel, °C
	Low, Mid, High float64 // warmest in the middle, °C: the 80 % band, from a slow batter to a quick one, and its median
	EdgeC          float64 // warmest at the edge, °C, at the median
	PeakMin        float64 // when the loaf is warmest, min after lye-in, at the median
	MiddleGels     float64 // chance that the middle gels, 0.05 to 0.95 in tenths
	EdgeGels       float64 // chance that the edge gels too
}

const (
	soapW     = 0.3  // W/(m K) that soap conducts: assumed, between oil at 0.17 and water at 0.6 (CRC Handbook, memory)
	loafM2    = 0.09 // outside of a loaf of 1 kg of oil, m²: 1.5 L in 250 × 80 × 75 mm
	bedMin    = 1440 // how long a loaf is followed in its bed, min
	bedDraws  = 9    // speeds it is followed at: the tenths of what they may be
	bedMedian = bedDraws / 2
	bedLoose  = 300 // steps may err by a hundredth of a kelvin
)

// Heat follows a loaf to its warmest, at nine speeds that divide what its speed may be into tenths (trace model 4.4). Its
// error is the reason why the clock refuses the loaf.
func (c *Clock) Heat(b Bed) (Heat, error) {
	if err := c.checkBed(b); err != nil {
		return Heat{}, err
	}
	cooling := b.Cooling
	if cooling == 0 {
		cooling = CoolingBareLoaf
	}
	conc := c.batter.jugConcentration(b.Loaf)
	s := c.bedSchedule(b, cooling, conc)
	sigma := c.sigma(Jug{Fraction: b.Loaf.Fraction, ExtraWaterG: b.Loaf.ExtraWaterG})
	h := Heat{GelC: GelC(conc)}
	half := cooling / loafM2 * b.HalfMM / 1000 / soapW / 2 // half the Biot number U·L/k
	var middles [bedDraws]float64
	middleGels, edgeGels := 0, 0
	for i := range bedDraws {
		z := c.hand.quantile(float64(i+1) / (bedDraws + 1))
		middle, at := c.law.peak(s, c.pace*math.Exp(z*sigma), h.GelC, b.FromMin)
		edge := b.AirC + (middle-b.AirC)/(1+half)
		middles[i] = middle
		if middle >= h.GelC {
			middleGels++
		}
		if edge >= h.GelC {
			edgeGels++
		}
		if i == bedMedian {
			h.EdgeC, h.PeakMin = edge, at
		}
	}
	h.Low, h.Mid, h.High = middles[0], middles[bedMedian], middles[bedDraws-1]
	h.MiddleGels, h.EdgeGels = shareOfDraws(middleGels), shareOfDraws(edgeGels)
	return h, nil
}

// shareOfDraws is the chance that so many of the draws stand for: half-way between the tenths that do and do not.
func shareOfDraws(n int) float64 { return (float64(n) + 0.5) / (bedDraws + 1) }

func (c *Clock) checkBed(b Bed) error {
	if err := c.checkJug(b.Loaf); err != nil {
		return err
	}
	return first([]rule{
		{"the minute the loaf is put to bed", b.FromMin, 0, bedMin, " min", 1, "it must lie from lye-in to a day after it"},
		{"the air round the loaf", b.AirC, -30, 60, " °C", 1, "the clock knows air from -30 to 60 °C"},
		{"the bed's cooling", b.Cooling, 0, 1000, " W/K", 1, "it must be 0 or more"},
		{"the outside of the loaf", b.AreaM2, 0, 1e4, " m²", 1, "it must be 0 or more"},
		{"half the loaf's thickness", b.HalfMM, 0, 10_000, " mm", 1, "it must be 0 or more"},
	})
}

// bedSchedule is the batch to its split, the open jugs as one until the bed, and the bed.
func (c *Clock) bedSchedule(b Bed, cooling, concentration float64) schedule {
	s := schedule{startX: c.common.startX, startK: c.common.startK, legs: append([]leg(nil), c.common.legs...)}
	from := math.Max(b.FromMin, c.batter.SplitMin)
	open := c.law.portion(c.batter, b.Loaf.Fraction, concentration, c.batter.cooling())
	s.extend(c.law, open, window{c.batter.SplitMin, from + bedMin}, blending(b.Loaf.Bursts), c.additions(b.Loaf))
	if b.AreaM2 > 0 {
		cooling *= b.AreaM2 / (loafM2 * math.Pow(c.batter.OilG/1000*b.Loaf.Fraction, 2.0/3))
	}
	bed := c.law.portion(c.batter, b.Loaf.Fraction, concentration, cooling)
	legs := s.legs
	s.legs = nil
	for _, g := range legs {
		if g.from < from && g.to > from {
			early := g
			early.to = from
			s.legs = append(s.legs, early)
			g.from, g.coarse, g.jump = from, g.coarseAt(c.law, from), 0
		}
		if g.from >= from {
			g.lossPerMin, g.airK = bed.lossPerMin, b.AirC+zeroC
		}
		s.legs = append(s.legs, g)
	}
	return s
}

// peak is how warm a batch gets at a speed Λ from a minute on, °C, and when; it slows as it sets, unless it gels.
func (l law) peak(s schedule, pace, gelC, from float64) (c, minute float64) {
	w := walk{law: l, pace: pace, stop: math.Inf(1), gelK: gelC + zeroC, loose: bedLoose, peakFrom: from, peaking: true}
	w.follow(s, s.legs[len(s.legs)-1].to)
	return math.Min(w.peakK, boilK) - zeroC, w.peakAt
}

// peaks notes the warmest place of a stride. A batter that boils gets no hotter: there the run ends.
func (w *walk) peaks(s stride) {
	const looks = 4
	for i := range looks + 1 {
		u := float64(i) / looks
		t, p := s.t+u*s.h, s.at(u)
		if t < w.peakFrom {
			continue
		}
		if k := w.temperature(w.conversion(p.dose), p.q); k > w.peakK {
			w.peakK, w.peakAt = k, t
		}
		if w.peakK >= boilK {
			w.stop = w.dose
			return
		}
	}
}
