package paper

import (
	"strings"

	"pourbench/pour"
)

// sectionAlerts says again, at the head of a step, the warnings that stand on the whole batch or on a jug the step has no row for.
func (d *desk) sectionAlerts(b batch, at step, hasRow func(pour.JugSheet) bool) {
	for _, w := range d.alertsOf(b, at) {
		if j, ok := jugOf(b, w); !ok || !hasRow(j) {
			d.alert(string(w.Severity) + ": " + advice(w))
		}
	}
}

// placeAlerts says again, at the head of a section that is no step of a batch, the warnings that belong there.
func (d *desk) placeAlerts(at step) {
	for _, w := range d.sheet.Warnings {
		if placeOfWarning(w) == at {
			d.alert(string(w.Severity) + ": " + advice(w))
		}
	}
}

// jugAlerts says again, under a jug's row, the warnings that stand on that jug.
func (d *desk) jugAlerts(b batch, at step, jug string) {
	for _, w := range d.alertsOf(b, at) {
		if j, ok := jugOf(b, w); ok && j.Name == jug {
			d.alert(string(w.Severity) + ": " + advice(w))
		}
	}
}

func (d *desk) alertsOf(b batch, at step) []pour.Warning {
	var out []pour.Warning
	for _, w := range d.sheet.Warnings {
		if placeOfWarning(w) == at && batchOf(w) == b.Name {
			out = append(out, w)
		}
	}
	return out
}

// noRow is for steps whose rows are not one per jug.
func noRow(pour.JugSheet) bool { return false }

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

// jugOf is the jug of a batch that a warning stands on.
func jugOf(b batch, w pour.Warning) (pour.JugSheet, bool) {
	n, name, ok := w.Jug()
	for _, j := range b.Jugs {
		if ok && n == b.Name && j.Name == name {
			return j, true
		}
	}
	return pour.JugSheet{}, false
}

// advice is a warning's reason and what to do, in the place it stands on.
func advice(w pour.Warning) string { return strings.TrimSpace(sentence(w.Text) + " " + sentence(w.Do)) }

// told is a warning's reason and what to do, away from the place it stands on.
func told(w pour.Warning) string { return strings.TrimSpace(sentence(w.Told()) + " " + sentence(w.Do)) }
