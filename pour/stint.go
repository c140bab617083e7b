package pour

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/script"
)

// Stint is what is told as one step: a task or, where jugs are poured in rounds, all acts of one round; all passes in which the pot is
// poured out; and all the small pours down one line.
type Stint struct {
	Key       string // stable name: the task's or, of several, one of its own
	Kind      TaskKind
	Batch     BatchName
	Jug       string // empty: several, or the whole batch
	Item      string // which embed, topping, cut or piece; empty: none
	Round     int    // of how many rounds; 0: none
	Rounds    int
	StartMin  float64
	LengthMin float64
	Tasks     []Task
}

// Stints tells the run in as few steps as it can be poured from, in the order it is done.
func (s *Sheet) Stints() []Stint {
	return s.stints(s.Run)
}

// CutStints tells the cut in its steps, in the order they are done.
func (s *Sheet) CutStints() []Stint { return s.stints(s.CutRun) }

func (s *Sheet) stints(run []Task) []Stint {
	var out []Stint
	for _, t := range run {
		if n := len(out); n > 0 && s.joins(out[n-1], t) {
			last := &out[n-1]
			last.Key, last.Jug = "round of "+last.Tasks[0].Key, ""
			last.Tasks = append(last.Tasks, t)
			last.LengthMin = t.StartMin + t.LengthMin - last.StartMin
			continue
		}
		st := Stint{Key: t.Key, Kind: t.Kind, Batch: t.Batch, Jug: t.Jug, Item: t.Item, StartMin: t.StartMin, LengthMin: t.LengthMin, Tasks: []Task{t}}
		if a, ok := s.act(t); ok {
			st.Round, st.Rounds = a.Round, a.Rounds
		}
		out = append(out, st)
	}
	return out
}

// Name is a stint in a few words.
func (st Stint) Name() string {
	n := len(st.Tasks)
	switch {
	case st.Jug != "":
		return string(st.Kind) + " " + st.Jug
	case st.Item != "":
		return string(st.Kind) + " " + st.Item
	case n > 1 && st.Kind == TaskKind(script.PourOut):
		return fmt.Sprintf("%s in %d passes", st.Kind, n)
	case st.Rounds > 0 && st.Kind == TaskKind(script.Comb):
		return fmt.Sprintf("%s, stroke %d of %d", st.Kind, st.Round, st.Rounds)
	case st.Rounds > 0 && st.inRounds() > 1:
		return fmt.Sprintf("%s in %d rounds", st.Kind, st.inRounds())
	case st.Rounds > 0:
		return fmt.Sprintf("%s, round %d of %d", st.Kind, st.Round, st.Rounds)
	}
	return string(st.Kind)
}

// act is the act of a task.
func (s *Sheet) act(t Task) (script.Act, bool) {
	acts := s.TopScript.Acts
	switch b := s.Batch(t.Batch); {
	case b != nil:
		acts = b.Script.Acts
	case t.OfCut():
		acts = s.CutScript.Acts
	}
	if t.Act < 0 || t.Act >= len(acts) {
		return script.Act{}, false
	}
	return acts[t.Act], true
}

// SkinMin is how long after the top was touched last a stint waits until that has skinned, min; 0: it does not wait for it.
func (s *Sheet) SkinMin(st Stint) float64 {
	if a, ok := s.act(st.Tasks[0]); !ok || !a.Wait || st.Tasks[0].OfCut() {
		return 0
	}
	return orUsual(s.Plan.Run.SkinMin, usualSkinMin)
}

// joins says whether a task is told with the ones before it.
func (s *Sheet) joins(st Stint, t Task) bool {
	a, ok := s.act(t)
	before, was := s.act(st.Tasks[len(st.Tasks)-1])
	if !ok || !was || t.Batch != st.Batch || t.Batch == "" {
		return false
	}
	if a.Kind == script.PourOut {
		return before.Kind == script.PourOut
	}
	if s.downOneLine(t) {
		return s.downOneLine(st.Tasks[0])
	}
	return a.Round > 0 && a.Round == before.Round && (TaskKind(a.Kind) == st.Kind || a.Kind == script.Level)
}

// downOneLine says whether a task is one of the many small pours down one line, which the hands do without a pause.
func (s *Sheet) downOneLine(t Task) bool {
	a, ok := s.act(t)
	return ok && t.Batch == Base && a.Kind == script.Pour && a.Round > 0 && s.technique() == script.Column
}

// inRounds is how many rounds a stint goes through.
func (st Stint) inRounds() int {
	return int(st.Tasks[len(st.Tasks)-1].Round.V-st.Tasks[0].Round.V) + 1
}

// Moves lists the jugs a stint moves, with the others in the pot or under a tool if need be.
func (s *Sheet) Moves(st Stint) []string {
	b := s.Batch(st.Batch)
	if b == nil {
		return nil
	}
	var out []string
	for i, j := range b.Jugs {
		if slices.ContainsFunc(st.Tasks, func(t Task) bool {
			a, ok := s.act(t)
			return ok && b.Script.Uses(a, i)
		}) {
			out = append(out, j.Name)
		}
	}
	return out
}

// Tell says an act stint in the words of its acts: which jugs, how many grams, where and how. It is "" for a task that is no act.
func (s *Sheet) Tell(st Stint) string {
	a, ok := s.act(st.Tasks[0])
	if !ok {
		return ""
	}
	if st.Batch == "" {
		return s.tellLoaf(a)
	}
	how := s.Batch(st.Batch).Script.How(a, s.Plan.Show.Len)
	switch a.Kind {
	case script.Peak, script.Fill:
		return s.tellBag(st.Batch, a)
	case script.Turn, script.Level, script.Wire, script.Comb, script.Watch:
		return map[script.Kind]string{script.Wire: "draw the wire through, ", script.Comb: "draw the comb ", script.Watch: "all jugs: "}[a.Kind] + how
	case script.PourOut:
		return s.tellOut(st, how)
	}
	if st.Rounds > 0 && st.inRounds() > 1 {
		return s.tellRounds(st, how)
	}
	return s.tellJugs(st, a, how)
}

// tellRounds says what of each jug is used again and again: as much as the first time, give or take a step of the scale.
func (s *Sheet) tellRounds(st Stint, how string) string {
	var jugs, told []string
	for _, t := range st.Tasks {
		if a, _ := s.act(t); !slices.Contains(told, t.Jug) {
			told = append(told, t.Jug)
			jugs = append(jugs, s.tellJug(s.Batch(st.Batch), t, a))
		}
	}
	return fmt.Sprintf("pour in %d rounds, each time about: %s; %s", st.inRounds(), strings.Join(jugs, ", "), how)
}

// TellAct says one act of a batch in words, by its place in the script; "" where there is none. A jug comes first, so that a clipped
// line still says whose act it is.
func (s *Sheet) TellAct(n BatchName, act int) string {
	i := slices.IndexFunc(s.Run, func(t Task) bool { return t.Batch == n && t.Act == act })
	if i < 0 {
		return ""
	}
	t := s.Run[i]
	a, _ := s.act(t)
	if a.Jug == script.Whole {
		return s.Tell(Stint{Kind: t.Kind, Batch: t.Batch, Tasks: []Task{t}})
	}
	b := s.Batch(t.Batch)
	text := s.tellJug(b, t, a)
	if a.Round > 0 {
		text += fmt.Sprintf(", round %d of %d", a.Round, a.Rounds)
	}
	return text + ": " + string(t.Kind) + " " + b.Script.How(a, s.Plan.Show.Len)
}

// tellOut says how the pot is poured out.
func (s *Sheet) tellOut(st Stint, how string) string {
	if n := len(st.Tasks); n > 1 {
		return fmt.Sprintf("pour the pot out %s, in %d passes of about %s", how, n, s.Plan.Show.Figure(st.Tasks[0].G, s.Plan.Show.Weight))
	}
	return fmt.Sprintf("pour the pot out %s, %s", how, s.Plan.Show.Figure(st.Tasks[0].G, s.Plan.Show.Weight))
}

// tellJugs says which jugs are used in what measure.
func (s *Sheet) tellJugs(st Stint, first script.Act, how string) string {
	b := s.Batch(st.Batch)
	var jugs []string
	tail := ""
	for _, t := range st.Tasks {
		a, _ := s.act(t)
		if a.Kind == script.Level {
			tail = "; then " + b.Script.How(a, s.Plan.Show.Len)
			continue
		}
		jugs = append(jugs, s.tellJug(b, t, a))
	}
	verb := map[script.Kind]string{script.Pour: "pour", script.IntoPot: "into the pot", script.Spoon: "spoon", script.Pipe: "pipe"}[first.Kind]
	if st.Round > 0 {
		verb = fmt.Sprintf("round %d of %d, %s", st.Round, st.Rounds, verb)
	}
	if how != "" {
		how = "; " + how
	}
	if first.Kind == script.Pipe {
		how += s.tellUnits(first)
	}
	return verb + ": " + strings.Join(jugs, ", ") + how + tail
}

func (s *Sheet) tellJug(b *BatchSheet, t Task, a script.Act) string {
	name := t.Jug
	if a.Jug == script.Whole {
		var all []string
		for _, j := range b.Script.Brief.Order {
			if b.Script.Brief.Shares[j] > 0 {
				all = append(all, b.Jugs[j].Name+" "+s.Plan.Show.Weight(b.Jugs[j].TotalG))
			}
		}
		return strings.Join(all, " and ")
	}
	text := name + " " + s.Plan.Show.Figure(t.G, s.Plan.Show.Weight)
	if where := b.Script.Where(a); where != "" {
		text += " " + where
	}
	return text
}

// Suits is the window in which a stint suits every jug it moves: from the last that is thick enough to the first that gets too thick. An end
// is unknown where any jug's is; it may end before it begins, where no moment suits all.
func (s *Sheet) Suits(st Stint) Window {
	b := s.Batch(st.Batch)
	var out Window
	first := true
	for _, name := range s.Moves(st) {
		for _, j := range b.Jugs {
			if j.Name != name {
				continue
			}
			w := j.Clock.Window
			if !first {
				w.From = Figure{max(w.From.V, out.From.V), w.From.Known && out.From.Known}
				w.To = Figure{min(w.To.V, out.To.V), w.To.Known && out.To.Known}
			}
			out, first = w, false
		}
	}
	return out
}
