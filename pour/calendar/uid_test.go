package calendar_test

import (
	"testing"

	"pourbench/pour/calendar"
)

func TestNamesAreTheUUIDsOfAnotherProgram(t *testing.T) {
	// Derived: uuid.uuid5 of Python 3.11, the namespace being uuid5(NAMESPACE_DNS, "pourbench.example").
	for _, c := range []struct{ batch, kind, want string }{
		{"261205A", "cut", "d109ce27-5238-59b1-9e9c-f725c2009389"},
		{"261205A", "weigh-1", "9bbf1498-8dd7-5e35-861f-48a43b3e53d5"},
		{"261205A", "ready", "eca4454f-aa9b-5ee0-86d9-5365bdc69e32"},
		{"Café–Blau", "pour-by", "f31ec2bd-3800-5d84-bc21-0c61e8139485"},
	} {
		if got := calendar.UID(c.batch, c.kind); got != c.want {
			t.Errorf("%s/%s is named %s, want %s", c.batch, c.kind, got, c.want)
		}
	}
}
