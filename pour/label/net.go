package label

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pourbench/chem"
)

// The weight systems.
const (
	ByMinimum = "minimum" // no bar is lighter than its label
	ByAverage = "average" // the batch is not, on average, and few bars by much
)

// Net is the weight a label may declare.
type Net struct {
	System  string
	G       float64 // that is declared, whole grams: the stated one, or the most that holds; 0: none is known
	Most    float64 // the most that holds, whole grams; 0: not known
	Ounces  string  // beside the grams where the market wants it: "3.4 oz"
	Text    string  // as it is printed
	From    string  // what it rests on: FromForecast or FromScale
	Bars    int     // how many were weighed
	Average float64 // g, and the lightest of them
	Least   float64
	Why     string   // why there is none, or why it fails; empty: it holds
	Notes   []string // what else is to be known
}

// What a weight rests on.
const (
	FromForecast = "forecast"
	FromScale    = "weighed"
)

// Weighing is what a weight is declared from.
type Weighing struct {
	System      string    // ByMinimum or ByAverage; empty: ByMinimum
	Bars        []float64 // as weighed when they were packed, g; none: the forecast counts
	Unweighed   int       // how many more bars there are, which were not weighed when those were
	AtLeast     []float64 // what each of these weighs at least by what it weighed before, g; where that is not known, nothing
	Forecast    float64   // of the usual bar when it is packed, g; 0: not known
	ForecastLow float64   // of the lightest bar that is to be expected, g; counts where no bar stands in Expected
	Expected    []float64 // of every bar when it is packed, g, at the low end of what is to be expected
	ScaleErrorG float64   // by which the scale may be wrong
	FurtherLoss float64   // of its mass that a bar still loses after packing, a fraction; counts where the market judges it then; NaN: not known
	StatedG     float64   // what the label says already; 0: nothing
	Market      Market
}

// Declare finds the largest whole grams a label may declare, and holds what is stated against it. By the minimum: floor of the lightest bar, less what the
// scale may be wrong by and what the bar still loses where that counts (derived: minimum filling always satisfies the average rules). By the average:
// the market's rules. Where those for single packs are not known here, every bar must hold. A forecast counts with the low end of what is to be expected
// of each bar, since what dries faster than it was taken to does so in all of them. By the minimum bars that were not weighed count with what they weigh at
// least: one that was cut light is in the batch whether it was weighed or not.
func Declare(o Weighing) Net {
	n := Net{System: o.System, From: FromForecast}
	if n.System == "" {
		n.System = ByMinimum
	}
	bars := o.held(o.bars())
	least := math.Floor(min(lightest(bars), lightestOr(o.held(o.AtLeast), math.Inf(1))))
	if len(o.Bars) > 0 {
		n.From, n.Bars, n.Average, n.Least = FromScale, len(o.Bars), mean(o.Bars), lightest(o.Bars)
	} else {
		n.Average, n.Least = o.Forecast, lightest(o.bars())
	}
	switch {
	case len(bars) == 0:
		n.Why, n.Average, n.Least = "it is not known what a bar weighs", 0, 0
	case n.System == ByAverage && o.Market.Average == "":
		n.Notes = append(n.Notes, "what single packs may be short by there was not found, so every bar has to hold")
		n.Most = o.Market.figures(least)
	case n.System == ByAverage:
		n.Most = o.Market.figures(o.Market.mostByAverage(bars))
	default:
		n.Most = o.Market.figures(least)
	}
	n.note(o)
	n.declare(o)
	return n
}

// bars are what is weighed, or else forecast.
func (o Weighing) bars() []float64 {
	switch {
	case len(o.Bars) > 0:
		return o.Bars
	case len(o.Expected) > 0:
		return o.Expected
	case o.ForecastLow > 0:
		return []float64{o.ForecastLow}
	}
	return nil
}

// held is what bars weigh at least by the scale that weighed them, and when they are judged; none where one of them is no mass.
func (o Weighing) held(bars []float64) []float64 {
	wrong, loss := 0.0, 0.0
	if o.ScaleErrorG > 0 {
		wrong = o.ScaleErrorG
	}
	if o.Market.AfterPacking && o.FurtherLoss > 0 {
		loss = min(o.FurtherLoss, 1)
	}
	out := make([]float64, len(bars))
	for i, g := range bars {
		if !(g > 0) || math.IsInf(g, 0) {
			return nil
		}
		out[i] = max(0, (g-wrong)*(1-loss)) + slack
	}
	return out
}

// slack keeps what is a whole gram from falling to the one below by the last bits of a binary fraction, g.
const slack = 1e-9

// figures is whole grams with no more figures than count, rounded down.
func (m Market) figures(g float64) float64 {
	if m.Figures <= 0 || g <= 0 {
		return g
	}
	step := math.Pow(10, math.Max(0, math.Floor(math.Log10(g))+1-float64(m.Figures)))
	return math.Floor(g/step) * step
}

// declare puts the weight into words and says why it fails.
func (n *Net) declare(o Weighing) {
	n.G = n.Most
	if o.StatedG > 0 {
		n.G = o.StatedG
		switch {
		case n.Why != "":
		case o.StatedG > n.Most:
			n.Why = fmt.Sprintf("the label says %s g, and by the %s %s g holds", short(o.StatedG), n.System, short(n.Most))
		case o.Market.Figures > 0 && significant(o.StatedG) > o.Market.Figures:
			n.Why = fmt.Sprintf("the label says %s g, and no more than %d figures count there", short(o.StatedG), o.Market.Figures)
		}
	}
	if n.G <= 0 {
		n.G = 0
		if n.Why == "" {
			n.Why = fmt.Sprintf("by the %s no whole gram holds", n.System)
		}
		return
	}
	n.Text = o.Market.weight(n.G)
	if o.Market.Pounds {
		n.Ounces = Ounces(n.G)
		n.Text = "Net Wt " + n.Ounces + " (" + n.Text + ")"
	}
}

// significant counts the figures of a number that count: zeros before the first other one and at the end do not.
func significant(v float64) int {
	text := strings.Trim(strings.ReplaceAll(short(v), ".", ""), "0")
	return len(text)
}

// weight is a mass as a label says it: in grams, and from where the market wants it so in kilograms, with as many figures as count there.
func (m Market) weight(g float64) string {
	if m.KiloFrom <= 0 || g < m.KiloFrom {
		return short(g) + " g"
	}
	text := short(g / 1000)
	if whole, part, _ := strings.Cut(text, "."); len(whole)+len(part) < m.Figures {
		text = strconv.FormatFloat(g/1000, 'f', m.Figures-len(whole), 64)
	}
	return text + " kg"
}

// note says what the weight rests on beside what was weighed.
func (n *Net) note(o Weighing) {
	if n.Most > 0 && n.From == FromForecast {
		n.Notes = append(n.Notes, "it is a forecast: weigh the cured bars before you print labels")
	}
	if len(o.Bars) > 0 && o.Unweighed > 0 {
		text := fmt.Sprintf("caution: %d of %d bars were not weighed", o.Unweighed, o.Unweighed+len(o.Bars))
		switch light := lightest(o.AtLeast); {
		case n.System == ByAverage && o.Market.Average != "":
			text += " and count as the others do"
		case light > 0 && light < n.Least:
			text += fmt.Sprintf(": by what they weighed as they were cut the lightest of them has %s g, and that counts", short(math.Floor(light*10)/10))
		case light > 0:
			text += ": by what they weighed as they were cut none of them is lighter"
		default:
			text += ", and nothing says what they weigh"
		}
		n.Notes = append(n.Notes, text+"; weigh every bar before you print labels")
	}
	if n.Most > 0 && o.Market.AfterPacking && math.IsNaN(o.FurtherLoss) {
		n.Notes = append(n.Notes, "what a bar still loses once it is packed is not known and not taken off, though its weight counts later there")
	}
	if n.Most > 0 && o.Market.AfterPacking && o.FurtherLoss > 0 {
		n.Notes = append(n.Notes, fmt.Sprintf("its weight counts after packing too there, so the %.2f %% that a bar still loses is taken off", 100*o.FurtherLoss))
	}
	if tne, ok := chem.TolerableShortfall(n.Most); ok && o.ScaleErrorG > tne*scalePart+slack {
		n.Notes = append(n.Notes, fmt.Sprintf("a scale that may be wrong by %s g is coarse for it: checkers' own are good to %s g there (WELMEC 6.9)", short(o.ScaleErrorG), short(tne*scalePart)))
	}
}

// scalePart is the part of the tolerable error by which the scale of a check may be wrong: WELMEC 6.9 (read).
const scalePart = 1.0 / 5

// Ounces is a mass in avoirdupois ounces of 28.349523125 g, rounded down to a tenth, under one ounce to a hundredth, so that neither figure overstates;
// from a pound on with pounds beside (16 CFR 500.9, memory).
func Ounces(g float64) string {
	const gPerOunce, perPound = 28.349523125, 16
	if g < gPerOunce-slack {
		return short(math.Floor(g/gPerOunce*100+slack)/100) + " oz"
	}
	oz := math.Floor(g/gPerOunce*10+slack) / 10
	if oz < perPound {
		return short(oz) + " oz"
	}
	pounds := math.Floor(oz / perPound)
	rest := math.Floor((oz-pounds*perPound)*10+slack*10) / 10
	return fmt.Sprintf("%s oz / %s lb %s oz", short(oz), short(pounds), short(rest))
}
