package live

import (
	"slices"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Stale is how old an unfinished pour may be and still be taken up without being asked for by name: lye does not wait for longer.
const Stale = 48 * time.Hour

// Left is a pour that was left under way.
type Left struct {
	logbook.Pour
	Same  bool // it pours this very plan
	Named bool // it has this plan's name
}

// UnderWay lists the pours that were left under way less than [Stale] ago: first those of this very plan, then those of another plan of its name, then all
// others, each the latest first. Trials are none of them. A pour whose file cannot be read is passed over: it cannot be taken up.
func UnderWay(b logbook.Book, plan pour.Plan, shelf pour.Shelf, now time.Time) ([]Left, error) {
	list, err := b.List()
	if err != nil {
		return nil, err
	}
	var out []Left
	for _, e := range list {
		if e.Fault != nil || e.TrialScent != "" || e.Ended || now.Sub(e.Opened) >= Stale {
			continue
		}
		p, err := b.Read(e.ID, shelf)
		if err != nil {
			continue
		}
		out = append(out, Left{p, p.Pours(plan), e.Name == plan.Name})
	}
	slices.SortStableFunc(out, func(a, b Left) int { return a.far() - b.far() })
	return out, nil
}

// far is how far what a pour pours is from the plan.
func (l Left) far() int {
	switch {
	case l.Same:
		return 0
	case l.Named:
		return 1
	}
	return 2
}

// TakeUp is the pour among those left under way that needs no question: the only one of this very plan or, where the maker named no plan, the only one
// there is. Ask says that she has to choose. Neither: a new pour begins.
func TakeUp(left []Left, named bool) (id string, ask bool) {
	if !named {
		if len(left) == 1 {
			return left[0].ID, false
		}
		return "", len(left) > 0
	}
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
