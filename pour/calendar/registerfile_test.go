package calendar_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour/calendar"
)

// registerText is a register as it was written, and as a maker may mend it.
const registerText = `format = 1

[[entry]]
batch = "261205A"
kind = "cut"
what = "Cut window"
words = """
Cut one by one.
Keep a "thin" slice."""
from = 2026-12-06T04:00:00
to = 2026-12-06T10:00:00
remind_min = -60
revised = 2026-11-28T09:00:00Z
sequence = 0

[[entry]]
batch = "261205A"
kind = "ready"
what = "Ready"
day = 2027-01-03
days = 2
revised = 2026-12-14T18:30:00Z
sequence = 1
cancelled = true
`

func TestTheRegisterStandsInItsFileAsItCanBeMended(t *testing.T) {
	r, err := calendar.Parse("calendar.toml", registerText)
	if err != nil {
		t.Fatal(err)
	}
	if got := r.Text(); !strings.HasSuffix(got, registerText) || strings.Count(got, "\n# ")+1 != 2 {
		t.Error(cmp.Diff(registerText, got))
	}
}

func TestEveryRegisterIsReadBackAsItWasWritten(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		due, _ := drawEntries(r, "261205A")
		_, reg := calendar.Register{}.Revise(due, all, at)
		if rapid.Bool().Draw(r, "cancelled") {
			_, reg = reg.Revise(due[1:], all, at.AddDate(-3, 0, 0))
		}
		back, err := calendar.Parse("calendar.toml", reg.Text())
		if err != nil {
			r.Fatal(err)
		}
		if d := cmp.Diff(reg, back, cmp.AllowUnexported(calendar.Register{})); d != "" {
			r.Error(d)
		}
	})
}

func TestARegisterMendedWronglyIsRefusedWithItsLine(t *testing.T) {
	for _, c := range []struct{ from, to, says string }{
		{"format = 1", "format = 2", `calendar.toml:1:1: format = 2: is none this program reads`},
		{"format = 1\n", "", "format: is missing"},
		{`kind = "cut"`, `knid = "cut"`, "did you mean kind?"},
		{`kind = "ready"`, `kind = "cut"`, `calendar.toml:18:1: entry[1].kind = "cut": is there twice for this batch`},
		{`kind = "ready"`, `kind = "a/b"`, "slash"},
		{"to = 2026-12-06T10:00:00", "to = 2026-12-06T03:00:00", "must end after it starts"},
		{"to = 2026-12-06T10:00:00\n", "", "entry[0].to: is missing"},
		{"day = 2027-01-03", "day = 2027-01-03T10:00:00", "write the day alone"},
		{"day = 2027-01-03\n", "", "entry[1].from: is missing"},
		{"sequence = 1", "sequence = -1", "sequence must be"},
		{"sequence = 1\n", "", "entry[1].sequence: is missing"},
		{"days = 2", "days = 0", "outside what can be"},
		{"remind_min = -60", `remind_min = "one hour"`, "a number is wanted"},
		{"revised = 2026-11-28T09:00:00Z", "revised = 2026-11-28", "a date with a time and its zone is wanted"},
		{`what = "Ready"`, `what = ""`, "says nothing"},
		{"[[entry]]", "[[entry", "close the header"},
	} {
		_, err := calendar.Parse("calendar.toml", strings.Replace(registerText, c.from, c.to, 1))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s → %s: %v", c.from, c.to, err)
		}
	}
}
