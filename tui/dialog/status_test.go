package dialog

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// drawn is what a function draws on one line.
func drawn(w int, draw func(a screen.Area)) string {
	scr := screen.New(w, 1)
	draw(scr.Area())
	return ansi.Strip(scr.String())
}

func TestTheStatusSaysByASignWhatIsNotWell(t *testing.T) {
	l := look.New(true)
	var s Status
	line := func() string { return drawn(60, func(a screen.Area) { s.Draw(a, "!", l) }) }
	if !s.Silent() || s.Text() != "" || line() != "" {
		t.Errorf("before anything was said stands %q", line())
	}
	s.Say("saved")
	if line() != " saved" {
		t.Errorf("stands %q", line())
	}
	s.Refuse("no number")
	if line() != " × no number" {
		t.Errorf("stands %q", line())
	}
	s.Warn("fern is near its end")
	if line() != " ! fern is near its end" {
		t.Errorf("stands %q", line())
	}
	s.Clear()
	if s.Text() != "" || line() != "" || s.Silent() {
		t.Errorf("a cleared line shows %q", line())
	}
}

func TestWhatDoesNotFitIsReadWholeOnItsPage(t *testing.T) {
	l := look.New(true)
	var s Status
	long := "save /home/maker/plans/meadow.toml: " + strings.Repeat("the disk is nearly full ", 6) + "at the end"
	s.Say("undone: share of pot")
	s.Refuse(long)
	line := drawn(60, func(a screen.Area) { s.Draw(a, "!", l) })
	if !strings.HasSuffix(line, "! reads all") || screen.Width(line) > 60 || !strings.Contains(line, "…") {
		t.Errorf("the line is %q", line)
	}
	if b, ok := keys.BuiltIn().Lookup(keys.Bench, 0, "!"); !ok || b.ID != keys.Said {
		t.Errorf("! is %q on the bench", b.ID)
	}
	stage := onStage(t, 70, 24, s.Page(l))
	stage.shows("the end", "× save /home", "undone: share of pot")
	_, first := stage.at("× save")
	if _, second := stage.at("undone"); second < first {
		t.Error("the older message stands first")
	}
	if tiny := drawn(10, func(a screen.Area) { s.Draw(a, "!", l) }); screen.Width(tiny) > 10 || !strings.Contains(tiny, "×") {
		t.Errorf("on ten cells the line is %q", tiny)
	}
}

func TestTheSameSaidTwiceIsRememberedOnceAndNotForEver(t *testing.T) {
	var s Status
	s.Say("saved")
	s.Clear()
	s.Say("saved")
	if s.Text() != "saved" {
		t.Errorf("said again, the line is %q", s.Text())
	}
	if n := len(s.Page(look.New(true)).Lines); n != 1 {
		t.Errorf("%d messages are remembered", n)
	}
	for i := range 3 * remembered {
		s.Say(fmt.Sprint(i))
	}
	lines := s.Page(look.New(true)).Lines
	if len(lines) != remembered || lines[0].Text != fmt.Sprint(3*remembered-1) {
		t.Errorf("%d messages are remembered, the newest %q", len(lines), lines[0].Text)
	}
}

func TestAFooterFillsItsRoomAndAlwaysNamesTheListOfKeys(t *testing.T) {
	l := look.New(true)
	rows := keys.BuiltIn().Footer(keys.Pouring, 0)
	for w := 1; w < 160; w++ {
		line := drawn(w, func(a screen.Area) { Footer(a, rows, l) })
		if screen.Width(line) > w {
			t.Fatalf("the footer is %d wide on %d", screen.Width(line), w)
		}
		if w >= 10 && !strings.HasSuffix(line, "? keys") {
			t.Fatalf("on %d cells the footer is %q", w, line)
		}
		if w >= 30 && !strings.Contains(line, "Space done") {
			t.Fatalf("on %d cells the footer is %q", w, line)
		}
	}
	wide := drawn(200, func(a screen.Area) { Footer(a, rows, l) })
	last := -1
	for _, b := range rows {
		at := strings.Index(wide, b.InFooter()+" "+b.Label)
		if at < 0 || b.ID != keys.Help && at < last {
			t.Errorf("%q stands at %d, after %d: %s", b.Label, at, last, wide)
		}
		if b.ID != keys.Help {
			last = at
		}
	}
}
