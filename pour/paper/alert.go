package paper

import (
	"strings"

	"pourbench/pour"
)

// alerts says the warnings that belong to a step of a batch, or to a place that both share, each once on a paper; several of a kind that
// want the same done are one. Those of a jug that the step has a row for wait for that row.
func (d *desk) alerts(at step, is func(pour.Warning) bool) {
	var waiting []pour.Warning
	tell := func() {
		if len(waiting) == 0 {
			return
		}
		d.alert(d.told(waiting))
		waiting = nil
	}
	for _, w := range d.sheet.Warnings {
		if d.placeOf(w) != at || !is(w) || d.said[once(w)] {
			continue
		}
		d.said[once(w)] = true
		if len(waiting) > 0 && (waiting[0].Code != w.Code || waiting[0].Do != w.Do || waiting[0].Where != w.Where) {
			tell()
		}
		waiting = append(waiting, w)
	}
	tell()
}

// told is several warnings of one kind and place in one text.
func (d *desk) told(list []pour.Warning) string {
	text := string(list[0].Severity) + ": "
	if where := d.where(list[0]); where != "" {
		text = string(list[0].Severity) + ", " + where + ": "
	}
	for _, w := range list {
		text += sentence(w.Text) + " "
	}
	return strings.TrimSpace(text + sentence(list[0].Do))
}

// where is what a warning is said of, unless that is a whole batch or place, which its section names.
func (d *desk) where(w pour.Warning) string {
	_, name, found := strings.Cut(w.Where, " ")
	if !found || strings.HasPrefix(strings.ToLower(w.Text), strings.ToLower(strings.TrimPrefix(name, "jug "))) {
		return ""
	}
	return name
}

// ofBatch picks the warnings of a batch, of whatever in it.
func ofBatch(n pour.BatchName) func(pour.Warning) bool {
	return func(w pour.Warning) bool { return batchOf(w.Where) == n }
}

// ofJug picks the warnings of one jug.
func ofJug(b batch, jug string) func(pour.Warning) bool {
	return func(w pour.Warning) bool { return w.Where == string(b.Name)+" jug "+jug }
}

// besideJugs picks the warnings of a batch that are not those of a jug it names.
func besideJugs(b batch, is func(pour.JugSheet) bool) func(pour.Warning) bool {
	return func(w pour.Warning) bool {
		if batchOf(w.Where) != b.Name {
			return false
		}
		for _, j := range b.Jugs {
			if is(j) && ofJug(b, j.Name)(w) {
				return false
			}
		}
		return true
	}
}

// once is what a warning says, and of whom unless that is a whole batch: what is so of two batches is said with the first.
func once(w pour.Warning) string {
	if w.Where == string(pour.Base) || w.Where == string(pour.Icing) {
		return advice(w)
	}
	return w.Where + ": " + advice(w)
}

// anywhere picks every warning.
func anywhere(pour.Warning) bool { return true }

// everyJug is for steps with a row for every jug.
func everyJug(pour.JugSheet) bool { return true }

func coloured(j pour.JugSheet) bool { return len(j.Colourants) > 0 }

func scented(j pour.JugSheet) bool { return len(j.Scents) > 0 }

// batchOf is the batch a warning belongs to; what belongs to none is said with the base.
func batchOf(where string) pour.BatchName {
	if where == string(pour.Icing) || strings.HasPrefix(where, string(pour.Icing)+" ") {
		return pour.Icing
	}
	return pour.Base
}

// advice is a warning's reason and what to do.
func advice(w pour.Warning) string {
	return strings.TrimSpace(sentence(w.Text) + " " + sentence(w.Do))
}
