package paper

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
)

// dressed says whether the plan has anything that goes into or onto the poured loaf, or a cut of its own, so that older plans print as before.
func (d *desk) dressed() bool {
	s := d.sheet
	return d.topped() || slices.ContainsFunc(s.Plan.Tables(), func(t pour.Table) bool { return t.Key == "cut" && !t.Spare() })
}

// topped says whether anything is laid out for the top before lye meets oil.
func (d *desk) topped() bool {
	return len(d.sheet.Embeds)+len(d.sheet.Toppings) > 0 || d.piped()
}

// piped says whether the icing has a shape that is worked out.
func (d *desk) piped() bool {
	return d.sheet.Icing != nil && d.sheet.Piping.Units > 0 && d.sheet.Piping.Bags > 0
}

// ahead is what is made days before the pour.
func (d *desk) ahead() {
	d.begin("", stepAhead)
	d.alerts(stepAhead, anywhere)
	for i := range d.sheet.Embeds {
		k := &d.sheet.Embeds[i]
		d.tick(row{text: d.pieces(k) + d.madeWhen(k), figure: d.show.Figure(k.AllG, d.show.Weight), write: true})
		d.more(row{text: "one of them", figure: d.show.Figure(k.PieceG, d.show.Dose), write: true})
	}
	d.info("What stands in the wire's way has to be softer than the base or as soft when it is cut; what is damp or warm when it is set bleeds and loosens (common practice, no source).")
}

// pieces is how many pieces there are of what.
func (d *desk) pieces(k *pour.EmbedSheet) string {
	return fmt.Sprintf("%d %s, %s", len(k.Pieces), k.Name, embedMaterial(k.Material))
}

// madeWhen is when a piece is made.
func (d *desk) madeWhen(k *pour.EmbedSheet) string {
	if k.MadeDays <= 0 {
		return ""
	}
	text := ", made " + figureOf(k.MadeDays) + " d before the pour"
	if at := d.sheet.Plan.PourAt; !at.IsZero() {
		text += ", by " + at.AddDate(0, 0, -int(math.Ceil(k.MadeDays))).Format("2006-01-02")
	}
	if k.HardDays > 0 {
		text += "; it hardens for " + figureOf(k.HardDays) + " d"
	}
	return text
}

func embedMaterial(m string) string {
	switch m {
	case pour.EmbedSoap:
		return "cold-process soap"
	case pour.EmbedMelt:
		return "melt-and-pour soap"
	case pour.EmbedDried:
		return "dried"
	}
	return "of another kind"
}

// ready is what is weighed, marked and laid out for the top before lye meets oil, because no hand is free for it later.
func (d *desk) ready() {
	d.begin("", stepReady)
	d.alerts(stepReady, anywhere)
	d.bags()
	for i := range d.sheet.Embeds {
		k := &d.sheet.Embeds[i]
		d.tick(row{text: k.Name + ", dry and not warm, within reach of the mould", figure: fmt.Sprint(len(k.Pieces)), write: true})
	}
	onLoaf := false
	for _, t := range d.sheet.Toppings {
		d.tick(row{text: t.Name + ", " + strewn(t.When), figure: d.show.Figure(t.AllG, d.show.Dose), write: true})
		if len(t.Parts) > 1 {
			for _, p := range t.Parts {
				d.more(row{text: "of it " + p.Name, figure: d.show.Figure(p.G, d.show.Dose), write: true})
			}
		}
		onLoaf = onLoaf || t.OnLoaf()
	}
	if c := d.sheet.Cut; onLoaf && len(c.CutsMM) > 0 {
		d.tick(row{
			text:   fmt.Sprintf("Strips of paper to lay over every cut while it is strewn, so that no grain lies under the wire, each wide (section %d has the cuts)", d.number("", placeCut)),
			figure: d.show.LenNear(c.LaneMM), write: true,
		})
	}
	d.middles()
}

// bags is what the icing is piped with.
func (d *desk) bags() {
	if !d.piped() {
		return
	}
	p := d.sheet.Piping
	text := fmt.Sprintf("Piping bags, each with its tip, filled %s in all, a tall jug to fill them in, a tie for each", pour.Times(p.Fills))
	d.tick(row{text: text, figure: fmt.Sprint(p.Bags), write: true})
	d.smallMould()
	d.info("Filled at most two thirds, tied, the tip up until it is used; gloves and goggles stay on: a seam that gives throws raw soap.")
}

// smallMould takes what is made beyond the icing's shape because the vessel blends no less.
func (d *desk) smallMould() {
	if rest := d.sheet.Piping.RestG; rest.V > 0 {
		d.tick(row{text: "a small mould, for the icing that is over", figure: d.show.Weight(rest.V), write: true})
	}
}

// strewn says when a topping goes on.
func strewn(when string) string {
	switch when {
	case pour.StrewSkin:
		return "once the top has a skin"
	case pour.StrewCut:
		return "after the cut"
	case pour.StrewCure:
		return "after the cure"
	}
	return "on the fresh top"
}

// middles are the marks on the rim by which embeds are set.
func (d *desk) middles() {
	for i := range d.sheet.Embeds {
		k := &d.sheet.Embeds[i]
		marks := d.marksOf(k)
		if len(marks) > 0 {
			d.tick(row{text: "Rim marked where the middles of " + k.Name + " come, " + d.show.LenUnit() + " from end A, or the ruler laid on it", write: true})
			d.info(d.distances(marks))
		}
		if across := d.sheet.AcrossMarks(k); len(across) > 0 {
			d.tick(row{text: "End marked where the middles of " + k.Name + " come across it, " + d.show.LenUnit() + " from its left wall seen from end A", write: true})
			d.info(d.distances(across))
		}
	}
}

// marked is where the loaf is cut, and what is taken off it.
func (d *desk) marked() {
	c := d.sheet.Cut
	kerf := "; nothing is reckoned for what a cut takes"
	if c.KerfMM > 0 {
		kerf = "; a cut takes " + d.show.LenNear(c.KerfMM)
	}
	if len(c.MarksMM) > 0 {
		d.tick(row{text: "Cuts marked, " + d.show.LenUnit() + " from end A, each rounded once, or the ruler laid on" + kerf, write: true})
		d.info(d.distances(c.MarksMM))
	}
	if len(c.AcrossMarkMM) > 0 {
		d.tick(row{text: "Cuts along it marked, " + d.show.LenUnit() + " from its left side seen from end A", write: true})
		d.info(d.distances(c.AcrossMarkMM))
	}
	if how := lies(d.sheet.Plan.Cut.Lay); how != "" && len(c.MarksMM) > 0 {
		d.info(how)
	}
}

// lies is how the loaf lies under the cutter and what that does to its top: geometry and common practice.
func lies(lay string) string {
	switch lay {
	case pour.LaySide:
		return "It lies on its side: what drags runs along the edge of the top and stays off the faces."
	case pour.LayUpsideDown:
		return "It lies upside down: the board presses on its top, which icing does not stand."
	case pour.LayPulledUp:
		return "The wire is pulled up from below: the top comes last with nothing behind it, and chips."
	case pour.LayUpright:
		return "It stands upright: the wire meets the top first and drags grains down the face; on its side it is cleaner."
	}
	return ""
}

// distances are marks in a row, in the unit that stands before them.
func (d *desk) distances(marks []float64) string {
	out := make([]string, len(marks))
	for i, mm := range marks {
		out[i] = d.show.MarkApart(mm).Number
	}
	return strings.Join(out, "  ")
}

// pieced is every piece that comes off the cutter, with room for what it really weighs.
func (d *desk) pieced() {
	c := d.sheet.Cut
	if d.stopped || len(c.Bars) == 0 {
		return
	}
	columns := []column{{head: "piece"}, {head: "from", figure: true}, {head: "to", figure: true}}
	both, counted := len(c.AcrossMM) > 0, ""
	if both {
		columns = append(columns, column{head: "left", figure: true}, column{head: "right", figure: true})
		n := len(c.Bars) / len(c.Columns())
		counted = fmt.Sprintf("Bars are counted from the left wall on, %d side by side, then the next %d towards end B; left and right are from that wall.", n, n)
	}
	columns = append(columns, column{head: "as cut", figure: true}, column{head: "actual", write: true})
	var rows [][]string
	add := func(name, from, to string, g pour.Figure, sides ...string) {
		row := append([]string{box + name, from, to}, sides...)
		for both && len(row) < len(columns)-2 {
			row = append(row, "")
		}
		rows = append(rows, append(row, d.show.Figure(g, d.show.Weight), d.blank))
	}
	for i, b := range c.Bars {
		from, to := d.show.LenNear(b.StartMM), d.show.LenNear(b.EndMM)
		if !d.sheet.Plan.Mould.IsCut() {
			from, to = "", ""
		}
		var sides []string
		if both {
			sides = []string{d.show.LenNear(b.LeftMM), d.show.LenNear(b.RightMM)}
		}
		add(fmt.Sprintf("bar %d", i+1), from, to, b.CutG, sides...)
	}
	if c.SliceMM > 0 {
		add("sample slice", d.show.LenNear(c.SliceAt), d.show.LenNear(c.SliceAt+c.SliceMM), c.SliceG)
	}
	if c.TrimAMM > 0 || c.TrimBMM > 0 || c.SideMM > 0 {
		add("trims together", "", "", c.TrimsG)
	}
	if c.KerfMM > 0 {
		add("crumbs and what clings to the wire", "", "", c.KerfG)
	}
	if counted != "" {
		d.info(counted)
	}
	d.listed("What it comes to, all together what was poured; mark each piece as you weigh it:", columns, rows)
}

// strewnAfter is what goes on after the cut, or on the cured bar, in the words of the cut's own acts.
func (d *desk) strewnAfter(cured bool) {
	for _, st := range d.sheet.CutStints() {
		isTopping := slices.ContainsFunc(d.sheet.Toppings, func(t pour.ToppingLine) bool { return t.Name == st.Item })
		if isTopping && d.sheet.Cured(st) == cured {
			d.tick(row{text: sentence(d.sheet.Tell(st)), write: true})
		}
	}
}
