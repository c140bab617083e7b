package stockroom

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"pourbench/tui/keys"
	"pourbench/tui/lines"
)

// voice is the page in plain mode, which hears lines one after the other.
type voice struct {
	*room
	talk *talk
	said bytes.Buffer
}

func voiced(t testing.TB) *voice {
	t.Helper()
	v := &voice{room: stocked(t)}
	v.m.opt.Keys = keys.BuiltIn().Spoken()
	v.m.dialogs.Frame.Keys = v.m.opt.Keys
	v.talk = newTalk(v.m, lines.NewPaper(&v.said))
	return v
}

// hears checks that the answer to a line has some words in it, however its lines are broken, and nothing that is no ASCII.
func (v *voice) hears(line string, words ...string) {
	v.Helper()
	v.said.Reset()
	v.talk.Hear(lines.Clean(line))
	v.talk.Ask()
	answer := strings.Join(strings.Fields(v.said.String()), " ")
	for _, w := range words {
		if !strings.Contains(answer, w) {
			v.Errorf("%q is answered without %q:\n%s", line, w, v.said.String())
		}
	}
	if i := strings.IndexFunc(v.said.String(), func(r rune) bool { return r != '\n' && (r < ' ' || r > '~') }); i >= 0 {
		v.Errorf("%q is answered with a control or a sign that is no ASCII: %q", line, v.said.String())
	}
}

func TestTheStockIsKeptInLines(t *testing.T) {
	v := voiced(t)
	v.hears("list", "3 materials, 4 packs", "2 coconut-1, 5000 g left, soon expires 2026-12-10", "past its date 2026-10-01", "opened 2026-11-28")
	v.hears("search mill", "olive-1")
	v.hears("list")
	v.hears("99", "No: there is no line 99")
	v.hears("5", "olive oil, olive-1.", "left: 4500 g of 5000 g", "entry 3, 2026-11-28: counted, 4500 g there")
	v.hears("lose 100", "how much, g: 100", "2 why: nothing yet, it is needed")
	v.hears("rancid")
	v.hears("", "100 g lost, 4400 left")
	v.hears("entry 4 correct", "Correct ")
	v.hears("quantity: 50", "quantity: 50")
	v.hears("", "lost olive-1 50")
	v.hears("entry 4 take back", "taken back")
	v.hears("undo", "back again")
	v.hears("receive olive 1 kg 9.00 lot Z1", "olive oil", "1000 g")
	v.hears("", "olive-3")
	v.hears("1")
	v.hears("trace", "No: trace: go to a pack first")
	v.hears("search z1", "olive-3")
	v.hears("2 trace", "trace of olive-3")
	v.hears("to get", "SHOPPING LIST")
	v.hears("dance", "is nothing to do")
	v.hears("cancel", "nothing waits for an answer")
	v.hears("q")
	if !v.talk.Left {
		t.Error("q does not leave")
	}
}

func TestEveryActionOfThePageCanBeSaid(t *testing.T) {
	v := voiced(t)
	for _, b := range keys.BuiltIn().Of(keys.Stocking) {
		if b.ID == keys.Quit {
			continue
		}
		for _, w := range lines.Words(b) {
			v.said.Reset()
			v.talk.Hear(w)
			for v.m.dialogs.Top() != nil {
				v.talk.Hear("cancel")
			}
			if v.said.Len() == 0 {
				t.Errorf("%s (%s) is answered with nothing", w, b.ID)
			}
		}
	}
	v.hears("?", "A number chooses a line")
	v.hears("? all", "rule of costs")
}

func TestTheConversationEndsWithItsInput(t *testing.T) {
	r := stocked(t)
	var out bytes.Buffer
	in := lines.Open(strings.NewReader("5\n" + strings.Repeat("x", 9000) + "\n"))
	defer in.Close()
	must(t, Converse(r.m.opt, lines.Talk{In: in, Out: lines.NewPaper(&out)}))
	for _, w := range []string{"The stock, in plain mode", "olive-1", "longer than 4096"} {
		if !strings.Contains(out.String(), w) {
			t.Errorf("it says nothing of %q:\n%s", w, out.String())
		}
	}
	rd, w := io.Pipe()
	must(t, rd.Close())
	in = lines.Open(strings.NewReader("list\n"))
	defer in.Close()
	if err := Converse(r.m.opt, lines.Talk{In: in, Out: lines.NewPaper(w)}); err == nil {
		t.Error("that nothing could be told is no error")
	}
}
