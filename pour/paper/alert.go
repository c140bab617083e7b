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

// told is several warnings of one kind and place in one text, in the place they stand on. What to do is said once on a paper.
func (d *desk) told(list []pour.Warning) string {
	text := string(list[0].Severity) + ": "
	for _, w := range list {
		text += sentence(w.Text) + " "
		if d.ofBoth(w) {
			text += "So it is of base and icing. "
		}
	}
	if do := sentence(list[0].Do); !d.said[do] {
		d.said[do] = true
		text += do
	}
	return strings.TrimSpace(text)
}

// ofBatch picks the warnings of a batch, of whatever in it.
func ofBatch(n pour.BatchName) func(pour.Warning) bool {
	return func(w pour.Warning) bool { return batchOf(w) == n }
}

// ofJug picks the warnings of one jug.
func ofJug(b batch, jug string) func(pour.Warning) bool {
	return func(w pour.Warning) bool {
		n, name, ok := w.Jug()
		return ok && n == b.Name && name == jug
	}
}

// besideJugs picks the warnings of a batch that are not those of a jug it names.
func besideJugs(b batch, is func(pour.JugSheet) bool) func(pour.Warning) bool {
	return func(w pour.Warning) bool {
		if batchOf(w) != b.Name {
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

// ofBoth says whether a warning stands on either batch in the same words: said once, it is said of both.
func (d *desk) ofBoth(w pour.Warning) bool {
	for _, other := range d.sheet.Warnings {
		if other.Where != w.Where && once(other) == once(w) {
			return true
		}
	}
	return false
}

// anywhere picks every warning.
func anywhere(pour.Warning) bool { return true }

// everyJug is for steps with a row for every jug.
func everyJug(pour.JugSheet) bool { return true }

func coloured(j pour.JugSheet) bool { return len(j.Colourants) > 0 }

func scented(j pour.JugSheet) bool { return len(j.Scents) > 0 }

// batchOf is the batch a warning belongs to; what belongs to none is said with the base.
func batchOf(w pour.Warning) pour.BatchName {
	if n, ok := w.Batch(); ok {
		return n
	}
	return pour.Base
}

// advice is a warning's reason and what to do, in the place it stands on.
func advice(w pour.Warning) string { return strings.TrimSpace(sentence(w.Text) + " " + sentence(w.Do)) }

// told is a warning's reason and what to do, away from the place it stands on.
func told(w pour.Warning) string { return strings.TrimSpace(sentence(w.Told()) + " " + sentence(w.Do)) }
