package live

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Enter logs a pour that was poured without the live run, at the moment its base's lye met the oils, as near as it is known: a pour that is over, of which
// nothing else was marked and which teaches the clock nothing. Now is the latest that can be. It returns the id of its file.
func Enter(b logbook.Book, sheet pour.Sheet, at, now time.Time, session string) (string, error) {
	name := sheet.Plan.Name
	switch {
	case at.After(now):
		return "", fmt.Errorf("log the pour of %s on %s: that is still to come, it is %s now; plan it with pourbench season add-pour PLAN --on %s, and pour it with pourbench run PLAN when it is time",
			name, at.Format("2006-01-02 15:04"), now.Format("2006-01-02 15:04"), at.Format(time.DateOnly))
	case at.Year() < firstYear:
		return "", fmt.Errorf("log the pour of %s on %s: write the year in full, from %d on", name, at.Format(time.DateOnly), firstYear)
	case !slices.ContainsFunc(Steps(sheet), func(s Step) bool { return s.Key == logbook.LyeIn(pour.Base) }):
		return "", errors.New("log the pour of " + name + ": its plan cannot be worked out; pourbench check PLAN says what it lacks")
	}
	var events []logbook.Event
	for _, e := range []logbook.Event{
		{Kind: logbook.Opened},
		{Kind: logbook.Done, Step: logbook.LyeIn(pour.Base)},
		{Kind: logbook.Noted, Text: "written in on " + now.Format(time.DateOnly) + ", after the pour: its steps and their times were not marked"},
		{Kind: logbook.Ended},
	} {
		e.Wall, e.ID = at, freeID(events, 0, session)
		events = append(events, e)
	}
	return b.Create(sheet.Plan, "", at, events)
}

// firstYear is the first year a pour can be of: a year of two digits is a slip.
const firstYear = 1900
