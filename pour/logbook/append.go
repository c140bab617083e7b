package logbook

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
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
	var full error
	before, after, err = b.disk.Append(b.Path(id), wait, func(old []byte) (stay int, add []byte) {
		stay, add, full = grown(old, events)
		return stay, add
	})
	if err == nil {
		err = full
	}
	if err != nil {
		return 0, 0, fmt.Errorf("journal %d events of %s: %w", len(events), id, err)
	}
	return before, after, nil
}

// addition is what is written after the whole part of a file: what was torn, as an event, and the events.
func addition(body, torn string, events []Event) []byte {
	var out bytes.Buffer
	out.WriteString(strict.Ended(body))
	if torn != "" {
		next := events[0]
		lost := Event{
			ID: next.ID + "-torn", Kind: TornRecord, Text: plain.Text(torn),
			Run: next.Run, Wall: next.Wall, Steady: next.Steady, Of: next.Of, Sleeps: next.Sleeps,
		}
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

// Decide journals one event that is made out of what the file holds, under the lock: nobody writes between the look and the mark, so that two
// terminals cannot both sell the last bar. An error of decide is returned as it is, and nothing is written. The id and what else times a mark
// are the caller's; see [Book.Append] for wait.
func (b Book) Decide(id string, shelf pour.Shelf, wait time.Duration, decide func(Pour) (Event, error)) (Event, error) {
	events, err := b.DecideAll(id, shelf, wait, func(p Pour) ([]Event, error) {
		e, err := decide(p)
		return []Event{e}, err
	})
	if err != nil {
		return Event{}, err
	}
	return events[0], nil
}

// DecideAll journals events as [Book.Decide] does one, all of them or none. None to write is no error.
func (b Book) DecideAll(id string, shelf pour.Shelf, wait time.Duration, decide func(Pour) ([]Event, error)) ([]Event, error) {
	if err := checkID(id); err != nil {
		return nil, err
	}
	var events []Event
	var refused error
	_, _, err := b.disk.Append(b.Path(id), wait, func(old []byte) (int, []byte) {
		var p Pour
		if p, refused = parse(id, b.Path(id), string(old), shelf); refused == nil {
			events, refused = decide(p)
		}
		if refused != nil || len(events) == 0 {
			return len(old), nil
		}
		stay, add, full := grown(old, events)
		refused = full
		return stay, add
	})
	if refused != nil {
		return nil, refused
	}
	if err != nil {
		what := "events"
		if len(events) > 0 {
			what = string(events[0].Kind)
		}
		return nil, fmt.Errorf("journal %s of %s: %w", what, id, err)
	}
	return events, nil
}

// grown is how many bytes of a file stay and what comes after them, or that it would be too long.
func grown(old []byte, events []Event) (stay int, add []byte, full error) {
	body, torn := cutTorn(string(old))
	add = addition(body, torn, events)
	if err := form().Fits(len(body) + len(add)); err != nil {
		return len(old), nil, err
	}
	return len(body), add, nil
}
