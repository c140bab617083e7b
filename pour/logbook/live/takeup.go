package live

import (
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Stale is how old an unfinished pour may be and still be taken up without being asked for by name: lye does not wait for longer.
const Stale = 48 * time.Hour

// Left is a pour that was left under way.
type Left struct {
	logbook.Pour
	Same bool // it pours this very plan; else one that only has its name
}

// UnderWay lists the pours that were left under way less than [Stale] ago and are of a plan, or of another of its name, the latest first.
// Trials are none of them. A pour whose file cannot be read is passed over: it cannot be taken up.
func UnderWay(b logbook.Book, plan pour.Plan, shelf pour.Shelf, now time.Time) ([]Left, error) {
	list, err := b.List()
	if err != nil {
		return nil, err
	}
	var out []Left
	for _, e := range list {
		if e.Fault != nil || e.Name != plan.Name || e.TrialScent != "" || e.Ended || now.Sub(e.Opened) >= Stale {
			continue
		}
		p, err := b.Read(e.ID, shelf)
		if err != nil {
			continue
		}
		out = append(out, Left{p, p.Pours(plan)})
	}
	return out, nil
}

// TakeUp is the pour among those left under way that needs no question: the only one of this very plan. Ask says that the maker has to
// choose, since there are several of it, or only others of its name. Neither: a new pour begins.
func TakeUp(left []Left) (id string, ask bool) {
	same := 0
	for _, l := range left {
		if l.Same {
			id = l.ID
			same++
		}
	}
	if same == 1 {
		return id, false
	}
	return "", len(left) > 0
}

// Stands says where a pour was left: the state it stands in, and when the base's lye met its oils by the wall clock; zero before that.
func (l Left) Stands(shelf pour.Shelf) (s State, met time.Time) {
	s = Replay(pour.Weigh(l.Plan, shelf), l.Events)
	for _, e := range s.Marks {
		if e.Kind == logbook.Done && e.Step == logbook.LyeIn(pour.Base) {
			met = e.Wall
		}
	}
	return s, met
}
