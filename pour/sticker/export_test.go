package sticker

import "pourbench/pour"

// DatedForTest is lot and dates of a plan alone.
func DatedForTest(p pour.Plan, d Details) Label {
	var l Label
	l.dated(p, d)
	return l
}
