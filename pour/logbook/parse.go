package logbook

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"pourbench/pour"
	"pourbench/pour/plain"
	"pourbench/pour/planfile"
)

// Pour is one pour of the book, as its file has it.
type Pour struct {
	ID         string
	Name       string // of the plan
	Opened     time.Time
	TrialScent string    // id of the scent a trial is about; empty: no trial
	Plan       pour.Plan // as poured; the zero plan where PlanErr is set
	PlanErr    error     // why the plan cannot be used with today's shelf: something it names is gone
	Events     []Event
	Torn       string // what is left of an event that was being written when the machine stopped; it does not count
}

// mostBytes bounds a pour's file: a long day of marks stays far under it.
const mostBytes = 4 << 20

// parse reads a pour's file. Any error is a [*planfile.Error].
func parse(id, file, src string, shelf pour.Shelf) (Pour, error) {
	if len(src) > mostBytes {
		return Pour{}, refused(file, 0, fmt.Sprintf("is longer than %d MiB, which no pour is", mostBytes>>20), "name a file of the logbook")
	}
	src = strings.TrimPrefix(strings.ReplaceAll(src, "\r\n", "\n"), "\ufeff")
	body, torn := cutTorn(src)
	form, err := decode(file, body)
	if err != nil {
		return Pour{}, err
	}
	p := Pour{
		ID: id, Name: plain.Line(form.Name), Opened: form.Opened, TrialScent: plain.Line(form.TrialScent), Torn: plain.Line(torn),
	}
	if p.Events, err = events(file, body, form.Event); err != nil {
		return Pour{}, err
	}
	p.Plan, p.PlanErr = planfile.Read("the plan in "+file, strings.NewReader(form.Plan), shelf)
	return p, nil
}

func refused(file string, line int, what, mend string) error {
	return &planfile.Error{Problems: []planfile.Problem{{File: plain.Line(file), Line: line, Column: min(1, line), What: plain.Line(what), Mend: mend}}}
}

// decode reads the TOML. A library that panics on what it did not foresee does not take the run down with it.
func decode(file, src string) (form fileForm, err error) {
	defer func() {
		if recover() != nil {
			err = refused(file, 0, "is not TOML that can be read", "take a look at what was changed last")
		}
	}()
	meta, err := toml.Decode(src, &form)
	var broken toml.ParseError
	switch {
	case errors.As(err, &broken):
		return form, refused(file, broken.Position.Line, broken.Message, "write every line as key = value; texts stand in double quotes")
	case err != nil:
		return form, refused(file, 0, err.Error(), "texts stand in double quotes, numbers and times do not")
	}
	if form.Format != FileFormat {
		return form, refused(file, 0, fmt.Sprintf("format = %d is none this program reads", form.Format), fmt.Sprintf("write format = %d, if this is a pour", FileFormat))
	}
	for _, key := range meta.Undecoded() {
		return form, strayKey(file, src, key)
	}
	return form, nil
}

func strayKey(file, src string, key toml.Key) error {
	name := key[len(key)-1]
	line := 0
	for i, l := range strings.Split(src, "\n") {
		if k, _, ok := strings.Cut(l, "="); ok && strings.TrimSpace(k) == name {
			line = i + 1
			break
		}
	}
	mend := "take it out; the keys here are format, name, opened, trial_scent, plan and [[event]]"
	if len(key) > 1 && key[0] == "event" {
		mend = "take it out; the keys of an event are " + strings.Join(eventKeys(), ", ")
	}
	return refused(file, line, fmt.Sprintf("%s is no key of a pour", plain.Line(key.String())), mend)
}

func events(file, src string, forms []eventForm) ([]Event, error) {
	out := make([]Event, 0, len(forms))
	var problems []planfile.Problem
	for i, f := range forms {
		e, c := f.event()
		if c != nil {
			problems = append(problems, problem(file, src, i, *c))
			continue
		}
		if e.ID == "" { // written by hand: it needs a name to be taken back by
			e.ID = fmt.Sprintf("line-%d", i)
		}
		out = append(out, e)
	}
	if len(problems) > 0 {
		const most = 20
		shown := problems[:min(most, len(problems))]
		return nil, &planfile.Error{Problems: shown, More: len(problems) - len(shown)}
	}
	return slices.Clip(out), nil
}

// cutTorn parts a file from an event at its end that was being written when the machine stopped: one that does not end with a whole
// line for its last key.
func cutTorn(src string) (body, torn string) {
	at := strings.LastIndex(src, "\n[")
	if at < 0 || !strings.HasPrefix(eventLine, src[at+1:min(len(src), at+1+len(eventLine))]) {
		return src, ""
	}
	last := src[at+1:]
	for _, l := range strings.SplitAfter(last, "\n") {
		key, v, _ := strings.Cut(strings.TrimRight(l, "\n"), "=")
		if strings.TrimSpace(key) != "wall" {
			continue
		}
		if _, err := time.Parse(time.RFC3339Nano, strings.TrimSpace(v)); err == nil || strings.HasSuffix(l, "\n") {
			return src, "" // whole; or mended by hand, and then the strict reader has its say
		}
	}
	return src[:at+1], last
}
