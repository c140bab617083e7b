package paper

import (
	"strings"

	"pourbench/pour"
)

// weighTable is everything that is weighed into a batch before it is split. No sheet parts what makes the lye.
func (d *desk) weighTable(b batch) {
	d.heading(d.of(b.Name, "weigh"), "planned", "actual")
	if b.ReadyBlend == "" {
		for _, o := range b.Oils {
			d.tick(row{text: o.Name, figure: d.show.Weight(o.WeighG), write: true})
		}
	}
	all := row{text: "all oils, then warmed to " + d.show.Temp(b.plan.OilsC), figure: d.show.Weight(b.Size.OilsWeighG), write: true}
	if b.ReadyBlend != "" {
		all.text = "ready-mixed " + b.ReadyBlend + ", then warmed to " + d.show.Temp(b.plan.OilsC)
	}
	d.tick(all)
	for _, at := range [2]pour.Joining{pour.JoinsOils, pour.JoinsEmulsion} {
		for _, x := range b.ExtrasJoining(at) {
			d.tick(row{text: x.Name + joins(x), figure: d.show.Dose(x.G), write: true})
		}
	}
	d.keep(func() { d.lyeTable(b) })
}

// lyeTable is the lye's part of the table: what is weighed, how it is made, how hot it gets, when.
func (d *desk) lyeTable(b batch) {
	d.tick(row{text: "lye: cold water", figure: d.show.Figure(b.Lye.WaterToAddG, d.show.Weight), write: true})
	for _, a := range d.alkalis(b) {
		a.text = "lye: " + strings.ToLower(a.text[:1]) + a.text[1:]
		d.tick(a)
	}
	for _, x := range b.Extras {
		if x.InTheLye() {
			d.tick(row{text: "lye: " + x.Name, figure: d.show.Dose(x.G), write: true})
		}
	}
	how := strings.Join(b.MakeLye(d.show), "; ") + "."
	if b.Lye.OnIce {
		how += " Frozen in small pieces; fat in it can turn to flecks: strain it."
	} else {
		how += " It can reach " + d.show.Figure(b.Heat.LyePeakC, d.show.Temp) + "."
	}
	made := row{text: "make it: " + how, write: true}
	for _, t := range d.sheet.Run {
		if t.Kind == pour.TaskCoolLye && t.Batch == b.Name {
			made.figure = d.moment(t.StartMin)
		}
	}
	d.tick(made)
	d.tick(row{text: "lye, lid on, cooled to", figure: d.show.Temp(b.plan.LyeC), write: true})
}

// jugTable is what each jug gets, and when.
func (d *desk) jugTable() {
	columns := []column{{head: "jug"}, {head: "batter", figure: true}, {head: "into it"}, {head: "weigh", figure: true}, {head: "wetted in", figure: true}, {head: "stir in", figure: true}}
	var rows [][]string
	for _, n := range d.batches() {
		b := d.batch(n)
		carrier := carrier(b)
		about := ""
		if carrier != "" {
			about = "colours wetted in " + carrier + " where no other is named"
		}
		if text := d.of(n, about); text != "" {
			rows = append(rows, []string{text, "", "", "", "", ""})
		}
		for i := range b.Jugs {
			rows = append(rows, d.jugRows(b, i, carrier)...)
		}
	}
	d.table("jugs", columns, rows)
}

// jugRows is one jug, a row for each colour and scent.
func (d *desk) jugRows(b batch, i int, carrier string) [][]string {
	j := b.Jugs[i]
	var rows [][]string
	first := []string{box + pour.Letter(i) + " " + j.Name, d.show.Weight(j.BatterWeighG)}
	full := []string{"    all in it", d.show.Weight(j.TotalG)} // as it is poured from
	add := func(text, weigh, carrier, at string) {
		rows = append(rows, append(first, text, weigh, carrier, at))
		first, full = full, []string{"", ""}
	}
	at := d.stirred(b, pour.TaskColour, j.Name)
	for _, dose := range j.Colourants {
		text, wet := box+dose.Name, ""
		if dose.CarrierG > 0 {
			wet = d.show.Dose(dose.CarrierG)
			if dose.CarrierName != carrier {
				text += " in " + dose.CarrierName
			}
		}
		add(text, d.show.Dose(dose.PigmentG), wet, at)
		at = ""
	}
	at = d.stirred(b, pour.TaskScent, j.Name)
	for _, x := range j.Scents {
		add(box+"scent "+x.Name, d.show.Dose(x.G), "", at)
		at = ""
	}
	for len(rows) < 2 {
		add("", "", "", "")
	}
	return rows
}

// carrier is what wets most colours of a batch; "" where none is wetted.
func carrier(b batch) string {
	most, times := "", map[string]int{}
	for _, j := range b.Jugs {
		for _, dose := range j.Colourants {
			if dose.CarrierG <= 0 {
				continue
			}
			times[dose.CarrierName]++
			if times[dose.CarrierName] > times[most] {
				most = dose.CarrierName
			}
		}
	}
	return most
}

// stirred is when colour or scent is stirred into a jug.
func (d *desk) stirred(b batch, kind pour.TaskKind, jug string) string {
	for _, t := range d.sheet.Run {
		if t.Kind == kind && t.Batch == b.Name && t.Jug == jug {
			return d.clock(t.StartMin)
		}
	}
	return ""
}

// clock draws a moment of the run as the bench paper does, without a sign after lye-in.
func (d *desk) clock(min float64) string { return strings.TrimPrefix(d.show.RunTime(min), "+") }
