package logbook

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"time"

	"pourbench/pour/plain"
)

// Append journals events of a pour, whole and under a lock. They are on the disk when it returns, and the file has grown from before
// to after bytes: a caller sees whether somebody else had written in between. What a crash left half written at the end is cut off
// first and kept as an event of its own.
//
// While another program has the file locked it tries again for as long as wait and then gives up with [disk.ErrLocked]; a wait of 0
// never holds up anybody. On any error the file is as it was.
func (b Book) Append(id string, wait time.Duration, events ...Event) (before, after int64, err error) {
	if err := checkID(id); err != nil {
		return 0, 0, err
	}
	if len(events) == 0 {
		return 0, 0, errors.New("journal: there is no event")
	}
	full := false
	before, after, err = b.disk.Append(b.Path(id), wait, func(old []byte) (int, []byte) {
		body, torn := cutTorn(string(old))
		add := addition(body, torn, events)
		if full = len(body)+len(add) > form().Bytes; full {
			return len(old), nil
		}
		return len(body), add
	})
	if full && err == nil {
		err = fmt.Errorf("its file would be longer than the %d KiB that can be read back; take long notes out of it", form().Bytes>>10)
	}
	if err != nil {
		return 0, 0, fmt.Errorf("journal %d events of %s: %w", len(events), id, err)
	}
	return before, after, nil
}

// addition is what is written after the whole part of a file: what was torn, as an event, and the events.
func addition(body, torn string, events []Event) []byte {
	var out bytes.Buffer
	if len(body) > 0 && body[len(body)-1] != '\n' {
		out.WriteByte('\n')
	}
	if torn != "" {
		lost := events[0]
		lost.ID, lost.Kind, lost.Batch, lost.Jug, lost.Step, lost.What, lost.Lot = lost.ID+"-torn", TornRecord, "", "", "", "", ""
		lost.Text = plain.Text(torn)
		out.WriteString(lost.text())
	}
	out.WriteString(Lines(events))
	return out.Bytes()
}

// Lines are events as they stand in a pour's file.
func Lines(events []Event) string {
	var out strings.Builder
	for _, e := range events {
		out.WriteString(e.text())
	}
	return out.String()
}
