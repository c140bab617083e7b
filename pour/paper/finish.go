package paper

import (
	"math"
	"strconv"
	"strings"
	"time"
)

// bed is covering the loaf and keeping it warm or cool.
func (d *desk) bed() {
	d.begin("", placeBed)
	d.alerts(placeBed, anywhere)
	d.tick(row{text: "Tap the mould, wipe its rim", write: true})
	d.tick(row{text: strings.TrimSuffix(sentence(d.sheet.Plan.Bed.Do()), "."), write: true})
	d.tick(row{text: "Mark it CAUSTIC, RAW SOAP, NOT FOOD, with name and day; out of reach of children and pets", write: true})
	d.tick(row{text: "Look at it after an hour or two: if it swells, cracks or grows very hot, unwrap it and let it cool", write: true})
}

// clean is clearing up while everything is still caustic.
func (d *desk) clean() {
	d.heading("clean up", "", "actual")
	d.tick(row{text: "Scrape pots and jugs into a spare mould or wipe them with paper; no batter and no oil into the drain", write: true})
	d.tick(row{text: "Lye jug and spoons rinsed with plenty of water; lye closed and locked away", write: true})
	d.tick(row{text: "Bench and floor wiped wet, so that no powder dries on them; everything washed, hands last", write: true})
}

// thick is how thick the bars are and, of a slab that is cut along its length too, how wide.
func (d *desk) thick() string {
	c := &d.sheet.Cut
	if len(c.Bars) == 0 {
		return d.show.Len(d.sheet.Bars.ThicknessMM)
	}
	thick := c.Thick(d.show)
	if len(c.AcrossMM) > 0 {
		thick += " by " + d.show.Len(c.Bars[0].WideMM())
	}
	return thick
}

// cut is what comes after: when to cut, what a bar weighs, how long it cures.
func (d *desk) cut() {
	bed, bars := d.sheet.Plan.Bed, d.sheet.Bars
	d.begin("", placeCut)
	d.alerts(placeCut, anywhere)
	d.tick(row{text: "Cut from " + d.cutFrom() + ", if it is firm and its middle is cool; gloves on", figure: figureOf(bed.CutAfterH) + " h", write: true})
	if d.dressed() {
		d.marked()
	}
	d.tick(row{text: "Bars, each " + d.thick(), figure: strconv.Itoa(bars.Count), write: true})
	cut, cured := d.show.Weight(bars.CutG), d.show.Weight(bars.CuredG)
	if d.stopped {
		cut, cured = "", ""
	}
	one := "One bar as cut"
	if d.sheet.Icing != nil {
		one += ", with its icing"
	}
	d.tick(row{text: one, figure: cut, write: true})
	if d.dressed() {
		d.pieced()
		d.strewnAfter(false)
	}
	d.tick(row{text: "Cure until " + d.cureUntil() + ", on a rack, turned now and then", figure: figureOf(bed.CureDays) + " d", write: true})
	d.drying()
	d.strewnAfter(true)
	d.tick(row{text: "One bar cured, at " + d.show.Percent(bars.FinalMoisturePercent, 1) + " moisture (an estimate)", figure: cured, write: true})
	d.tick(row{text: "pH of a 1 % solution by strip or meter, never by tongue; a screen, not a proof: titration is", write: true})
}

// cutFrom is the day of the cut: a date and hour when the plan says when it is poured, else counted from the pour day.
func (d *desk) cutFrom() string {
	if at := d.sheet.Plan.PourAt; !at.IsZero() {
		return stamp(d.cutAt())
	}
	return "pour day + " + figureOf(math.Ceil(d.sheet.Plan.Bed.CutAfterH/24))
}

// cureUntil is the day the cure ends, counted from the cut.
func (d *desk) cureUntil() string {
	bed := d.sheet.Plan.Bed
	if at := d.sheet.Plan.PourAt; !at.IsZero() {
		return stamp(d.cutAt().Add(time.Duration(bed.CureDays * 24 * float64(time.Hour))))
	}
	return "pour day + " + figureOf(math.Ceil(bed.CutAfterH/24)+math.Ceil(bed.CureDays))
}

func (d *desk) cutAt() time.Time {
	return d.sheet.Plan.PourAt.Add(time.Duration(d.sheet.Plan.Bed.CutAfterH * float64(time.Hour)))
}

func stamp(t time.Time) string { return t.Format("Mon 2006-01-02 15:04") }

// figureOf draws hours and days as the plan has them.
func figureOf(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
