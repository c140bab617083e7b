package logbook

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"time"

	"pourbench/chem"
	"pourbench/pour"
	"pourbench/pour/plain"
	"pourbench/pour/planfile"
	"pourbench/pour/strict"
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

// Pours reports whether a plan is the one that was poured, the same to the last figure and word, as files hold them.
func (p Pour) Pours(plan pour.Plan) bool {
	var own, other strings.Builder
	return p.PlanErr == nil && planfile.Write(&own, p.Plan) == nil && planfile.Write(&other, plan) == nil && own.String() == other.String()
}

// Digest names the plan as poured: the first twelve letters of the SHA-256 sum of it as files hold it, so that two records of one plan can be told
// from those of one that was changed. A plan that cannot be used has none.
func (p Pour) Digest() string {
	var text strings.Builder
	if p.PlanErr != nil || planfile.Write(&text, p.Plan) != nil {
		return "unknown"
	}
	const letters = 12
	return fmt.Sprintf("%x", sha256.Sum256([]byte(text.String())))[:letters]
}

// MostLetters is the longest text of an event that a pour's file holds.
const MostLetters = 10_000

// form is the kind of file a pour is: a long day of marks stays far under its limits.
func form() strict.Form {
	return strict.Form{Noun: "pour", Bytes: 4 << 20, Items: 100_000, Letters: MostLetters, Again: "take a look at what was changed last"}
}

// parse reads a pour's file. Any error is a [*strict.Error].
func parse(id, file, src string, shelf pour.Shelf) (Pour, error) {
	src, err := form().Slurp(file, strings.NewReader(src))
	if err != nil {
		return Pour{}, err
	}
	src = strings.TrimPrefix(strings.ReplaceAll(src, "\r\n", "\n"), "\ufeff")
	body, torn := cutTorn(src)
	doc, err := form().Open(file, body)
	if err != nil {
		return Pour{}, err
	}
	p, plan := Pour{ID: id, Torn: plain.Line(torn)}, ""
	if top := doc.Top(); format(top) {
		top.Only("format", "name", "opened", "trial_scent", "plan", "event")
		top.Read("name", &p.Name)
		top.Moment("opened", &p.Opened)
		top.Read("trial_scent", &p.TrialScent)
		top.Prose("plan", &plan)
		p.Events = events(top.List("event"))
	}
	if err := doc.Err(); err != nil {
		return Pour{}, err
	}
	p.Plan, p.PlanErr = planfile.Read("the plan in "+file, strings.NewReader(plan), shelf)
	return p, nil
}

// format reports whether the rest can be read by this program.
func format(top *strict.Table) bool {
	n := int64(0)
	top.Whole("format", &n)
	if n != FileFormat {
		top.Say("format", fmt.Sprint(n), "is none this program reads", fmt.Sprintf("write format = %d, if this is a pour", FileFormat))
	}
	return n == FileFormat
}

func events(tables []*strict.Table) []Event {
	out := make([]Event, 0, len(tables))
	for i, t := range tables {
		e := readEvent(t)
		if i > 0 && e.Kind.OfLife() {
			e.Run = out[i-1].Run // the run's clock stands still
		}
		if e.ID == "" { // written by hand: it needs a name to be taken back by
			e.ID = fmt.Sprintf("line-%d", i)
		}
		out = append(out, e)
	}
	return slices.Clip(out)
}

// readEvent reads one event; which of its keys must be there depends on its kind.
func readEvent(t *strict.Table) Event {
	const mostS, mostClockS = 400 * 24 * 3600, 1e10
	t.Only(eventKeys()...)
	var e Event
	var kind, batch string
	var runS, clockS float64
	t.Missing("kind")
	t.Word("kind", &kind, kindWords()...)
	t.Word("batch", &batch, string(pour.Base), string(pour.Icing))
	e.Kind, e.Batch = EventKind(kind), pour.BatchName(batch)
	t.Read("jug", &e.Jug)
	t.Read("step", &e.Step)
	if e.Kind == Seen || e.Kind == NotYet {
		t.Missing("stage")
		readStage(t, &e.Stage)
	}
	t.Read("what", &e.What)
	if e.Kind.measures() {
		t.Missing("value")
	}
	t.Number("value", &e.Value)
	t.Read("lot", &e.Lot)
	t.Prose("text", &e.Text)
	t.Read("pack", &e.Pack)
	t.Read("entry", &e.Entry)
	readLife(t, &e.Life)
	t.Read("corrects", &e.Corrects)
	t.Read("id", &e.ID)
	if !e.Kind.OfLife() {
		t.Missing("run_s")
	}
	t.Within("run_s", &runS, -mostS, mostS)
	t.Read("clock", &e.Of)
	t.Within("clock_s", &clockS, -mostClockS, mostClockS)
	e.Run, e.Steady = duration(runS), duration(clockS)
	t.Flag("clock_sleeps", &e.Sleeps)
	t.Missing("wall")
	t.Moment("wall", &e.Wall)
	return e
}

func readStage(t *strict.Table, stage *chem.Stage) {
	words := make([]string, chem.Stages)
	for s := range words {
		words[s] = chem.Stage(s).String()
	}
	var word string
	if t.Word("stage", &word, words...) {
		*stage = chem.Stage(slices.Index(words, word))
	}
}

func kindWords() []string {
	words := make([]string, 0, len(eventKinds()))
	for _, k := range eventKinds() {
		words = append(words, string(k))
	}
	return words
}

// cutTorn parts a file from an event at its end that was being written when the machine stopped.
func cutTorn(src string) (body, torn string) { return strict.CutTorn(src, eventLine, "wall") }
