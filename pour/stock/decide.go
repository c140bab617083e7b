package stock

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/strict"
)

// Decide adds entries that are made out of what the ledger holds, under its lock: nobody writes between the look and the entries, so that two
// terminals cannot both take the last of a pack. An error of decide is returned as it is, and nothing is written. Wall and session stamp the
// entries that have no ID: when it is, and a few letters that tell this terminal from others. An entry without a day is of the day of wall, a
// correction of that of what it corrects.
//
// What cannot be is refused, with how to put it right; what can hardly be is written and is in [State.Odd] from then on. [State.Check] tells both
// beforehand.
func (l Ledger) Decide(wall time.Time, session string, decide func(State) ([]Entry, error)) ([]Entry, error) {
	if err := l.make(); err != nil {
		return nil, err
	}
	var out []Entry
	var refused error
	_, _, err := l.Disk.Append(l.Path(), l.Wait, func(old []byte) (int, []byte) {
		var stay int
		var add []byte
		if stay, add, out, refused = l.grown(string(old), wall, session, decide); refused != nil {
			return len(old), nil
		}
		return stay, add
	})
	if refused != nil {
		return nil, refused
	}
	if err != nil {
		return nil, fmt.Errorf("write the ledger: %w", disk.Reason(err))
	}
	return out, nil
}

// grown is how many bytes of the file stay, what comes after them, and the entries in it.
func (l Ledger) grown(old string, wall time.Time, session string, decide func(State) ([]Entry, error)) (stay int, add []byte, out []Entry, err error) {
	entries, body, torn, err := l.entries(old)
	if err != nil {
		return 0, nil, nil, err
	}
	state := Of(entries, day.Of(wall))
	if out, err = decide(state); err != nil {
		return 0, nil, nil, err
	}
	if len(out) == 0 && torn == "" {
		return len(old), nil, nil, nil
	}
	text := ""
	if strings.TrimSpace(evened(body)) == "" { // somebody emptied it
		text = head()
	}
	ids := numbers{taken: map[string]bool{}, next: len(entries) + 1, session: session}
	for _, e := range entries {
		ids.taken[e.ID] = true
	}
	if torn != "" {
		text += Entry{Kind: Torn, ID: ids.name(), Text: torn, Day: day.Of(wall), Wall: wall}.text()
	}
	for i := range out {
		if out[i].ID == "" {
			out[i].ID = ids.name()
		}
		if out[i].Day == 0 && out[i].Corrects == "" {
			out[i].Day = day.Of(wall)
		}
		out[i].Wall = wall
	}
	if out, _, err = state.admit(entries, out); err != nil {
		return 0, nil, nil, err
	}
	text += written(out)
	text = strict.Ended(body) + text
	return len(body), []byte(text), out, form().Fits(len(body) + len(text))
}

// written is entries as they stand in the file.
func written(entries []Entry) string {
	var b strings.Builder
	for _, e := range entries {
		b.WriteString(e.text())
	}
	return b.String()
}

// numbers gives out ids that no entry has.
type numbers struct {
	taken   map[string]bool
	next    int
	session string
}

func (n *numbers) name() string {
	for {
		id := fmt.Sprintf("s%d-%s", n.next, n.session)
		n.next++
		if !n.taken[id] {
			n.taken[id] = true
			return id
		}
	}
}

// Check tells what entries that are to be added would bring about that can hardly be, or the error with which [Ledger.Decide] would refuse them.
func (s *State) Check(entries ...Entry) ([]Doubt, error) {
	ids := numbers{taken: map[string]bool{}, next: len(s.all) + 1, session: "new"}
	add := append([]Entry(nil), entries...)
	for i := range add {
		if e := &add[i]; e.ID == "" {
			e.ID = ids.name()
		}
		if e := &add[i]; e.Day == 0 && e.Corrects == "" {
			e.Day = s.Today
		}
	}
	_, doubts, err := s.admit(s.all, add)
	return doubts, err
}

// admit gives the entries as they would be read back and what can hardly be of them, or why they cannot be added to those that are there.
func (s *State) admit(there, add []Entry) (back []Entry, doubts []Doubt, err error) {
	if back, err = parseWhole("", head()+written(add), 0); err != nil {
		return nil, nil, plainly(add, err)
	}
	after, err := s.with(there, back)
	if err != nil {
		return nil, nil, err
	}
	doubts = s.fresh(after)
	for _, d := range doubts {
		if d.Never {
			return nil, nil, d.refusal(after.all)
		}
	}
	return back, doubts, nil
}

// with is the state after entries are added, or why none can be.
func (s *State) with(there, add []Entry) (*State, error) {
	ids := map[string]bool{}
	for _, e := range there {
		ids[e.ID] = true
	}
	for _, e := range add {
		if ids[e.ID] {
			return nil, fmt.Errorf("write the entry %q: another has that id; leave the id empty", e.ID)
		}
		ids[e.ID] = true
	}
	after := Of(append(append(make([]Entry, 0, len(there)+len(add)), there...), add...), s.Today)
	return &after, nil
}

// fresh lists the doubts of another state that this one does not have.
func (s *State) fresh(after *State) []Doubt {
	known := map[Doubt]bool{}
	for _, d := range s.Odd {
		known[d] = true
	}
	var out []Doubt
	for _, d := range after.Odd {
		if !known[d] {
			out = append(out, d)
		}
	}
	return out
}

// refusal words a doubt as the reason why nothing is written.
func (d Doubt) refusal(entries []Entry) error {
	what := d.Entry
	for _, e := range entries {
		if e.ID == d.Entry {
			what = e.called()
		}
	}
	return fmt.Errorf("%s: it %s; %s", what, d.Text, d.Mend)
}

// called names an entry in a message.
func (e Entry) called() string {
	s := fmt.Sprintf("the entry %q", e.Kind)
	if e.Pack != "" {
		s += " of " + e.Pack
	}
	if e.Day != 0 {
		s += " on " + e.Day.String()
	}
	return s
}

// plainly tells what is wrong with entries that stand in no file yet.
func plainly(add []Entry, err error) error {
	var faults *strict.Error
	if !errors.As(err, &faults) {
		return err
	}
	what := "the ledger's entry"
	if len(add) == 1 {
		what = add[0].called()
	}
	var all []error
	for _, f := range faults.Faults {
		f.File, f.Line, f.Path = "", 0, f.Path[strings.IndexByte(f.Path, '.')+1:]
		all = append(all, fmt.Errorf("%s: %w", what, f))
	}
	return errors.Join(all...)
}

// make makes the file where it is missing.
func (l Ledger) make() error {
	if _, err := os.Stat(l.Path()); err == nil {
		return nil
	}
	if err := os.MkdirAll(l.Dir, 0o700); err != nil {
		return fmt.Errorf("open the ledger: %w", disk.Reason(err))
	}
	err := l.Disk.Save(l.Path(), disk.Bytes([]byte(head())), disk.Want{Mode: disk.Private, New: true})
	if err != nil && !errors.Is(err, os.ErrExist) {
		return fmt.Errorf("open the ledger: %w", disk.Reason(err))
	}
	return nil
}
