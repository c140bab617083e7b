package tui

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
	"pourbench/tui/dialog"
	"pourbench/tui/keys"
	"pourbench/tui/lines"
)

// spoken is a bench in plain mode that hears lines one after the other.
type spoken struct {
	*talk
	t    testing.TB
	said bytes.Buffer
}

func speaking(t testing.TB, o Options) *spoken {
	t.Helper()
	o.Plain, o.Background, o.Keys = true, "dark", keys.BuiltIn().Spoken()
	s := &spoken{t: t}
	m := newModel(o)
	s.talk = &talk{m: m, out: lines.NewPaper(&s.said)}
	s.start()
	return s
}

// spokenTo is a bench in plain mode on the plan of these tests.
func spokenTo(t testing.TB) *spoken {
	t.Helper()
	shelf, plan := built(t)
	return speaking(t, Options{Document: planfile.Document{Plan: plan}, Shelf: shelf})
}

// say says lines and returns what was answered to the last.
func (s *spoken) say(said ...string) string {
	for _, line := range said {
		s.said.Reset()
		s.hear(lines.Clean(line))
		s.ask()
	}
	return s.said.String()
}

// hears checks that the answer to a line has some words in it, however its lines are broken.
func (s *spoken) hears(line string, words ...string) {
	s.t.Helper()
	answer := s.say(line)
	for _, w := range words {
		if !strings.Contains(flat(answer), w) {
			s.t.Errorf("%q is answered without %q:\n%s", line, w, answer)
		}
	}
}

// flat is a text with every break of its lines as a blank.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// isPlain checks that a text is ASCII without control characters, in lines of at most 80 signs where it has blanks to break at.
func isPlain(t testing.TB, text string) {
	t.Helper()
	if i := strings.IndexFunc(text, func(r rune) bool { return r != '\n' && (r < ' ' || r > '~') }); i >= 0 {
		t.Errorf("there is %q in it: %q", text[i:min(i+3, len(text))], text[max(i-40, 0):min(i+40, len(text))])
	}
	for l := range strings.SplitSeq(text, "\n") {
		if len(l) > 80 && !strings.Contains(l, "> ") {
			t.Errorf("a line of %d signs: %s", len(l), l)
		}
	}
}

// examples are the plans that come with the program, and the one of these tests.
func examples(t *testing.T, shelf pour.Shelf) []pour.Plan {
	t.Helper()
	_, plan := built(t)
	out := []pour.Plan{plan}
	for _, name := range presets.Plans() {
		text, err := presets.Plan(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planfile.Read(name, bytes.NewReader(text), shelf)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return out
}

// Every panel of every station is told, in ASCII, and with every figure as the screen has it.
func TestEveryFigureOfTheScreenIsToldToTheDigit(t *testing.T) {
	shelf, _ := built(t)
	told := 0
	for _, plan := range examples(t, shelf) {
		s := speaking(t, Options{Document: planfile.Document{Plan: plan}, Shelf: shelf})
		for i := range s.m.stations {
			for _, p := range s.m.stations[i].Panels(plan.Icing != nil) {
				isPlain(t, s.say(s.m.stations[i].Name, "go "+string(p.ID)))
				if s.m.at().ID != p.ID {
					t.Fatalf("%s: go %s leads to %s", plan.Name, p.ID, s.m.at().ID)
				}
				isPlain(t, s.say("list"))
				answer := flat(s.said.String())
				if len(answer) < 40 {
					t.Errorf("%s, %s: told is only %q", plan.Name, p.ID, answer)
				}
				for _, row := range s.m.grids[p.ID].Rows {
					for _, c := range row.Cells {
						if c.Figure == "" || !strings.ContainsAny(c.Text, "0123456789") {
							continue
						}
						told++
						if want := flat(lines.ASCII(c.Text)); !strings.Contains(answer, want) {
							t.Errorf("%s, %s: %s is %q on the screen, and that is not told:\n%s", plan.Name, p.ID, c.Figure, want, s.said.String())
						}
					}
				}
			}
		}
	}
	if told < 500 {
		t.Errorf("only %d figures were compared", told)
	}
}

// What a line does is what keys do on the screen.
func TestALineDoesWhatTheKeysDo(t *testing.T) {
	for _, c := range []struct{ lines, keys string }{
		{"3 20", "f4 down down 2 0 enter"},
		{"poppy 20,5", "f4 down down 2 0 , 5 enter"},
		{"poppy dose 0.5", "f4 down down right right right 0 . 5 enter"},
		{"2 held yes", "f4 down left space"},
		{"hold gentian", "f4 down space"},
		{"more 2", "f4 down +"},
		{"much more 2 dose", "f4 down right right right *"},
		{"d poppy", "f4 down down d"},
		{"earlier 3", "f4 down down K"},
		{"3 20|u", "f4"},
		{"3 20|u|redo", "f4 down down 2 0 enter"},
		{"I", "I"},
		{"t", "t"},
		{"batch|olive 35", "f3 3 5 enter"},
		{"lye|superfat 7", "f3 tab tab tab tab 7 enter"},
		{"scent|1 B yes", "f6 right right right right right space"},
		{"another face", "R"},
	} {
		line, screen := spokenTo(t), opened(t, 80, 24)
		line.say(strings.Split(c.lines, "|")...)
		if strings.HasPrefix(c.lines, "lye") {
			visit(screen, 1)
			for range len(screen.panels) {
				if screen.at().ID != "lye" {
					drive(screen, "tab")
				}
			}
			for cell, _, _ := screen.cell(); cell.Figure != "base.superfat_percent"; cell, _, _ = screen.cell() {
				drive(screen, "down")
			}
			drive(screen, "7 enter")
		} else {
			drive(screen, c.keys)
		}
		if d := cmp.Diff(screen.session.Plan(), line.m.session.Plan()); d != "" {
			t.Errorf("%q and the keys %q differ: %s", c.lines, c.keys, d)
		}
		if !strings.Contains(c.lines, "|u") && c.lines != "t" && !line.m.session.Dirty() { // other units are no change worth asking about
			t.Errorf("%q changes nothing: %s", c.lines, line.said.String())
		}
	}
}

// What is picked, added, named and removed by words.
func TestAPlanIsMadeByWords(t *testing.T) {
	s := spokenTo(t)
	s.hears("a", "share % of B jug, now")
	s.hears("sea", "No: read", "new value")
	s.hears("cancel", "as it was")
	s.hears("rename jug sea", "jug of B sea: sea")
	s.hears("c sea ultramarine blue 0,3", "dose % of B sea: 0.30")
	s.hears("a sand 12", "C sand: ", "share % 12.0")
	s.say("batch")
	s.hears("a avocado", "% of avocado oil, now", "new value, or Enter to leave")
	s.hears("abc", "No: read")
	s.hears("7,5", "% of avocado oil: 7.50")
	s.hears("a grapes 1", "% of grapeseed oil: 1.00")
	s.hears("a castor", "in the blend already")
	s.hears("a apricot kernel oil 4", "% of apricot kernel oil: 4.00")
	s.say("extras")
	s.hears("a", "entries in all. Type a part of a name")
	s.hears("*", "1 ", "? and a number tells more")
	s.hears("? 1", "")
	s.hears("no such thing", "No: nothing matches no such thing")
	s.hears("cancel", "Batch, Extras")
	s.say("mould")
	s.hears("1 slab", "")
	s.say("cancel")
	s.hears("about", "name: Alpine Meadow")
	s.hears("name Own soap", "name: Own soap")
	s.hears("poured 2026-12-05 10:00", "poured at: 2026-12-05 10:00")
	s.hears(`notes ""`, "notes: none")
	s.say("bed")
	s.hears("put chill", "put to bed: chill")
	plan := s.m.session.Plan()
	if plan.Bed.Keep != pour.BedChill {
		t.Errorf("it is put to bed %q", plan.Bed.Keep)
	}
	if plan.Name != "Own soap" || plan.Notes != "" || plan.PourAt.IsZero() || len(plan.Base.Jugs) != 7 {
		t.Errorf("the plan is %q, %q, %v, %d jugs", plan.Name, plan.Notes, plan.PourAt, len(plan.Base.Jugs))
	}
	if !slices.ContainsFunc(plan.Base.Oils, func(o pour.OilPart) bool { return o.Oil == "avocado" && o.Percent == 7.5 }) {
		t.Errorf("the oils are %+v", plan.Base.Oils)
	}
}

// Every action of the table of keys can be said, or the maker is told why not.
func TestEveryActionOfTheBenchCanBeSaid(t *testing.T) {
	s := spokenTo(t)
	all := func(keys.Binding) bool { return true }
	for _, b := range s.table() {
		if why := unheard(b.ID); why != "" {
			s.hears(string(b.ID), flat(lines.ASCII(why))[:20])
			continue
		}
		if !slices.ContainsFunc(lines.Words(b), func(w string) bool {
			only := func(x keys.Binding) bool { return x.ID == b.ID && all(x) }
			got, ok := lines.Match(s.table(), only, w)
			return ok && got.Binding.ID == b.ID && !s.goes(w)
		}) {
			t.Errorf("%q cannot be said: its words %q mean something else", b.ID, lines.Words(b))
		}
		if !strings.Contains(flat(s.say("? all")), flat(lines.ASCII(b.Help))) {
			t.Errorf("? all does not tell %q", b.ID)
		}
	}
	silent := slices.DeleteFunc(s.table(), func(b keys.Binding) bool { return unheard(b.ID) == "" })
	for _, b := range silent { // each needs a reason that holds where nothing is drawn and nothing points
		if !slices.Contains([]keys.ID{
			keys.Up, keys.Down, keys.Left, keys.Right, keys.RowStart, keys.RowEnd, keys.PageUp, keys.PageDown, keys.Copy, keys.CopyPanel,
			keys.Mouse, keys.ShowFace, keys.Letters, keys.Cells, keys.Bare, keys.OtherFace, keys.Suspend,
		}, b.ID) {
			t.Errorf("%q cannot be said", b.ID)
		}
	}
	if n := len(s.table()); n < 50 || len(silent) != 17 {
		t.Errorf("%d actions were tried, %d cannot be said", n, len(silent))
	}
}

// A recipe is typed line by line, each answered with what is made of it, and taken by an empty line.
func TestARecipeIsToldLineByLine(t *testing.T) {
	s := spokenTo(t)
	s.say("batch")
	s.hears("V", "A recipe for the base", "olive oil 35 %", "first line")
	s.hears("olive oil 60 %", "olive oil 60 %", "1 oil: 60.0 % so far, 40.0 % to go", "next line, or Enter")
	s.hears("cocnut oil 25", "coconut oil", "yes takes it as")
	s.hears("yes", "coconut oil 25 %", "15.0 % to go")
	s.hears("nothing 3", "No: ")
	s.hears("-", "15.0 % to go")
	s.hears("shea butter 15", "100 %")
	s.hears("", "3 oils taken", "1 olive oil: held yes, % 60.00")
	if oils := s.m.session.Plan().Base.Oils; len(oils) != 3 || oils[1].Oil != "coconut" || oils[1].Percent != 25 {
		t.Errorf("the oils are %+v", oils)
	}
	s.say("V")
	s.hears("", "No: ")
	s.hears("cancel", "Batch, Oils>")
}

// A new plan is asked for question by question; leaving one goes back to the one before.
func TestANewPlanIsAskedForInLines(t *testing.T) {
	s := spokenTo(t)
	s.hears("n", "Which mould?", "1 loaf of 10 bars")
	s.hears("1", "How do the colours meet?")
	s.hears("cancel", "Which mould?")
	s.say("1")
	s.hears("drop", "Which colours?", "1 ", "entries in all")
	s.hears("ultramarine blue", "1 that is all")
	for range 8 {
		if s.m.dialogs.Top() == nil {
			break
		}
		if _, line := s.m.dialogs.Top().(*dialog.Prompt); line {
			s.say("Own soap")
		} else {
			s.say("1")
		}
	}
	answer := flat(s.said.String())
	if plan := s.m.session.Plan(); plan.Name != "Own soap" || len(plan.Base.Jugs) != 2 || !strings.Contains(answer, "Own soap: oils ") || strings.Contains(answer, "Gone:") {
		t.Errorf("the plan is %q with %+v: %s", plan.Name, plan.Base.Jugs, s.said.String())
	}
}

func TestWhatAnEditChangesIsTold(t *testing.T) {
	s := spokenTo(t)
	s.hears("poppy 20", "share % of C poppy: 20.0", "1 A pot: share % 36.2, batter g ", "oils ", "Gone: ")
	s.hears("superfat 9", "is no row here")
	s.say("lye")
	s.hears("superfat -2", "New stop")
	s.hears("u", "undone", "Gone: stop")
	s.hears("2 nonsense", "No: ")
	s.hears("superfat 5", "superfat is 5 already")
	s.hears("3 5", "worked out from the plan")
	s.hears("sized nowhere", "is one of mould")
	s.hears("sized mould", "already")
	s.hears("oils", "Batch, Oils")
	s.hears("o", "")
}

// Pictures are told in words: who is in it, where the bars are, what is done in which order.
func TestTheSwirlIsToldInWords(t *testing.T) {
	s := spokenTo(t)
	s.hears("swirl", "bar 1 of", "B gentian, ", "blue (#")
	s.hears(">", "bar 2 of")
	s.hears("watch the pour", "step 1 of", s.m.session.Sheet().TellAct(pour.Base, 0))
	s.hears("(", "step ")
	s.hears("compare", "kept: mud", "now: mud")
	s.hears("measures", "38 % A pot")
	s.hears("pairs", "touch", "pot beside gentian")
	s.hears("orders", "yours")
	s.hears("change 2", "order")
}

func TestPagesAreToldAndSearched(t *testing.T) {
	s := spokenTo(t)
	s.hears("e 2", "Where it comes from", "share")
	s.hears("w", "do: ", "1 mend: ", "number of what to do, or Enter")
	s.hears("1", "do")
	s.hears("u", "undone")
	s.hears("w dust", "fine powder")
	if strings.Contains(s.said.String(), "near boiling") {
		t.Errorf("searched for dust, the warnings are %s", s.said.String())
	}
	s.hears("w", "1 mend: ")
	s.hears("jugs", "1 A pot") // a page that is read holds nobody up
	s.hears("cancel", "nothing waits")
	s.hears("!", "What was said")
	s.hears("?", "? all tells all actions")
	s.hears("? undo", "undo the last change")
	if strings.Contains(s.said.String(), "remove") {
		t.Errorf("searched for undo, help tells %s", s.said.String())
	}
	s.hears("go", "Batch: oils, extras")
	s.hears("go nowhere", "No: there is no station")
	s.hears("", "Jugs")
	s.hears("99", "No: there is no row 99")
	s.hears("\x1b[31m", "No:")
}

// conversation runs a whole bench in plain mode on a text.
func conversation(t *testing.T, o Options, text string) (string, error) {
	t.Helper()
	var out bytes.Buffer
	in := lines.Open(strings.NewReader(text))
	defer in.Close()
	err := Converse(o, lines.Talk{In: in, Out: lines.NewPaper(&out)})
	isPlain(t, out.String())
	return out.String(), err
}

func TestTheEndOfTheInputKeepsWhatIsNotSavedAndTheNextBenchOffersIt(t *testing.T) {
	shelf, plan := built(t)
	var notes bytes.Buffer
	o := Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, StateDir: t.TempDir(), Notes: &notes}
	said, err := conversation(t, o, "poppy 20\n"+strings.Repeat("x", 1<<20)+"\nname")
	if err != nil || !strings.Contains(said, "The input has ended") || !strings.Contains(said, "longer than 4096") || !strings.Contains(notes.String(), "unsaved work is kept") {
		t.Errorf("%v, said %s, noted %s", err, said, notes.String())
	}
	s := speaking(t, o)
	s.m.Update(changingMsg{func() tea.Cmd { _ = s.m.edit("name", pour.SetName("other")); return nil }})
	if !s.m.journal.written || s.m.journal.due {
		t.Error("an edit waits to be journalled")
	}
	s.m.dropJournal()()
	notes.Reset()
	said, err = conversation(t, o, "1\npoppy\nq\n2\n")
	if err != nil || !strings.Contains(flat(said), "Work that was never saved") || !strings.Contains(said, "share % 20.0") || notes.Len() > 0 {
		t.Errorf("%v, said %s, noted %s", err, said, notes.String())
	}
}

func TestAPlanIsSavedOpenedAndLeftByWords(t *testing.T) {
	shelf, plan := built(t)
	dir := t.TempDir()
	path := filepath.Join(dir, "own.toml")
	o := Options{Document: planfile.Document{Plan: plan}, Shelf: shelf, Notes: io.Discard}
	said, err := conversation(t, o, "poppy 20\nq\n3\nS Own soap\n"+path+"\nx full\n"+filepath.Join(dir, "list.txt")+"\nq\n")
	if err != nil || strings.Contains(said, "has ended") {
		t.Errorf("%v, said %s", err, said)
	}
	doc, err := planfile.Load(path, shelf)
	if err != nil || doc.Plan.Base.Jugs[2].SharePercent != 20 {
		t.Errorf("saved is %+v, %v; said %s", doc.Plan.Base.Jugs, err, said)
	}
	if text, err := os.ReadFile(filepath.Join(dir, "list.txt")); err != nil || len(text) < 500 {
		t.Errorf("%v: %s", err, text)
	}
	said, err = conversation(t, o, "o "+path+"\npoppy\nq\n")
	if err != nil || !strings.Contains(said, "share % 20.0") {
		t.Errorf("%v, said %s", err, said)
	}
}

// The live run takes the conversation and gives it back.
func TestPouringHandsTheConversationOn(t *testing.T) {
	s := spokenTo(t)
	s.hears("pour", "no live run")
	var poured pour.Plan
	s.m.opt.Pour = func(p pour.Plan) error { poured = p; return nil }
	s.say("poppy 20")
	s.hears("P", "back from the run")
	if poured.Base.Jugs[2].SharePercent != 20 {
		t.Errorf("poured is %+v", poured.Base.Jugs)
	}
}

// Whatever is typed, the bench answers in ASCII and no plan breaks.
func TestAnyLinesAreAnswered(t *testing.T) {
	shelf, plan := built(t)
	s := speaking(t, Options{Document: planfile.Document{Plan: plan}, Shelf: shelf})
	words := []string{"1", "2", "3", "9", "poppy", "share", "dose", "yes", "no", "a", "d", "c", "u", "U", "hold", "olive", "lye", "jugs", "oils", "scent", "swirl", "icing", "I", "e", "w", "?", "r", "x", "*", `""`, "-1", "1e9", "nan", "é", "more", "earlier", "cancel", "list", "n", "v", "V", ":", "t", "", "orders", "tasks", "name"}
	rolls := uint64(7)
	roll := func(n int) int {
		rolls = rolls*6364136223846793005 + 1442695040888963407
		return int(rolls>>33) % n
	}
	for range 400 {
		line := words[roll(len(words))]
		for range roll(4) {
			line += " " + words[roll(len(words))]
		}
		if strings.HasPrefix(line, "x") { // would write into this folder
			continue
		}
		isPlain(t, s.say(line))
		if s.left {
			t.Fatalf("%q leaves the bench", line)
		}
		if s.said.Len() < 3 {
			t.Errorf("%q is answered %q", line, s.said.String())
		}
	}
	if faults := s.m.session.Plan().Check(shelf); len(faults) > 0 {
		t.Error(faults)
	}
}
