package calendar_test

import (
	"testing"
	"time"

	"github.com/emersion/go-ical"

	"pourbench/pour/calendar"
)

// readBack is the entries of a calendar as another library reads them, of a batch and kinds whose names it must have, in their order.
func readBack(t testing.TB, cal *ical.Calendar, batch string, kinds ...string) []calendar.Entry {
	t.Helper()
	events := cal.Events()
	if len(events) != len(kinds) {
		t.Fatalf("%d events were read, want %d", len(events), len(kinds))
	}
	out := make([]calendar.Entry, 0, len(kinds))
	for i, v := range events {
		if uid := text(t, v.Props, ical.PropUID); uid != calendar.UID(batch, kinds[i]) {
			t.Errorf("event %d has the name %s", i, uid)
		}
		e := calendar.Entry{Batch: batch, Kind: kinds[i]}
		e.What, e.Words = text(t, v.Props, ical.PropSummary), text(t, v.Props, ical.PropDescription)
		e.AllDay = v.Props.Get(ical.PropDateTimeStart).ValueType() == ical.ValueDate
		e.Cancelled = text(t, v.Props, ical.PropStatus) == "CANCELLED"
		var err1, err2, err3, err4 error
		e.Start, err1 = v.DateTimeStart(time.UTC)
		e.End, err2 = v.DateTimeEnd(time.UTC)
		e.Revised, err3 = v.Props.DateTime(ical.PropDateTimeStamp, nil)
		e.Sequence, err4 = v.Props.Get(ical.PropSequence).Int()
		for _, err := range []error{err1, err2, err3, err4} {
			if err != nil {
				t.Fatal(err)
			}
		}
		readAlarm(t, v, &e)
		out = append(out, e)
	}
	return out
}

func readAlarm(t testing.TB, v ical.Event, e *calendar.Entry) {
	t.Helper()
	for _, a := range v.Children {
		if action := text(t, a.Props, ical.PropAction); action != "DISPLAY" || text(t, a.Props, ical.PropDescription) != e.What {
			t.Errorf("an alarm does %s and says otherwise than its event", action)
		}
		d, err := a.Props.Get(ical.PropTrigger).Duration()
		if err != nil {
			t.Fatal(err)
		}
		e.Reminded, e.Remind = true, d
	}
}

func text(t testing.TB, props ical.Props, name string) string {
	t.Helper()
	s, err := props.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
