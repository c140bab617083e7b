package pixels

import (
	"image"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi/kitty"
)

// The answers of a terminal.
func ok() tea.Msg {
	return uv.KittyGraphicsEvent{Options: kitty.Options{ID: 31}, Payload: []byte("OK")}
}

func bad() tea.Msg {
	return uv.KittyGraphicsEvent{Options: kitty.Options{ID: 31}, Payload: []byte("ENOTSUPPORTED:")}
}
func called(name string) tea.Msg { return tea.TerminalVersionMsg{Name: name} }
func cell(w, h int) tea.Msg      { return uv.CellSizeEvent{Width: w, Height: h} }
func end() tea.Msg               { return uv.PrimaryDeviceAttributesEvent{62, 22} }

func TestPicturesAreDrawnOnlyWhereTheTerminalHasSaidSo(t *testing.T) {
	for name, c := range map[string]struct {
		way   string
		heard []tea.Msg
		want  bool
	}{
		"all of it":                        {Auto, []tea.Msg{ok(), called("kitty(0.35.2)"), cell(9, 18), end()}, true},
		"another order":                    {Auto, []tea.Msg{cell(9, 18), called("kitty(0.28.0)"), ok(), end()}, true},
		"the first version that can":       {Auto, []tea.Msg{ok(), called("kitty(0.28.0)"), cell(9, 18), end()}, true},
		"a later one":                      {Auto, []tea.Msg{ok(), called("kitty(1.0.0)"), cell(9, 18), end()}, true},
		"the other that can":               {Auto, []tea.Msg{ok(), called("ghostty 1.0.1"), cell(9, 18), end()}, true},
		"too old":                          {Auto, []tea.Msg{ok(), called("kitty(0.27.9)"), cell(9, 18), end()}, false},
		"no version":                       {Auto, []tea.Msg{ok(), called("kitty"), cell(9, 18), end()}, false},
		"a version that is none":           {Auto, []tea.Msg{ok(), called("kitty(new)"), cell(9, 18), end()}, false},
		"pictures without placeholders":    {Auto, []tea.Msg{ok(), called("WezTerm 20240203"), cell(9, 18), end()}, false},
		"a name that only begins so":       {Auto, []tea.Msg{ok(), called("kittylike(9.9.9)"), cell(9, 18), end()}, false},
		"no name":                          {Auto, []tea.Msg{ok(), cell(9, 18), end()}, false},
		"no pictures":                      {Auto, []tea.Msg{called("kitty(0.35.2)"), cell(9, 18), end()}, false},
		"pictures refused":                 {Auto, []tea.Msg{bad(), called("kitty(0.35.2)"), cell(9, 18), end()}, false},
		"an answer after the end":          {Auto, []tea.Msg{called("kitty(0.35.2)"), cell(9, 18), end(), ok()}, false},
		"an answer about something else":   {Auto, []tea.Msg{uv.KittyGraphicsEvent{Options: kitty.Options{ID: 7}, Payload: []byte("OK")}, called("kitty(0.35.2)"), cell(9, 18), end()}, false},
		"the end not yet":                  {Auto, []tea.Msg{ok(), called("kitty(0.35.2)"), cell(9, 18)}, false},
		"no size":                          {Auto, []tea.Msg{ok(), called("kitty(0.35.2)"), end()}, false},
		"a size of nothing":                {Auto, []tea.Msg{ok(), called("kitty(0.35.2)"), cell(0, 0), end()}, false},
		"a size that cannot be true":       {Auto, []tea.Msg{ok(), called("kitty(0.35.2)"), cell(9, 100000), end()}, false},
		"turned off":                       {Off, []tea.Msg{ok(), called("kitty(0.35.2)"), cell(9, 18), end()}, false},
		"not asked for":                    {"", []tea.Msg{ok(), called("kitty(0.35.2)"), cell(9, 18), end()}, false},
		"through tmux, which says no more": {Tmux, []tea.Msg{cell(9, 18)}, true},
		"through tmux without a size":      {Tmux, []tea.Msg{called("tmux 3.4"), end()}, false},
	} {
		t.Run(name, func(t *testing.T) {
			term := Terminal{Way: c.way}
			term.Ask()
			for _, msg := range c.heard {
				term.Hear(msg)
			}
			size, got := term.Cell()
			if got != c.want {
				t.Errorf("pictures: %v, want %v", got, c.want)
			}
			if got && size != image.Pt(9, 18) {
				t.Errorf("a cell is %v", size)
			}
		})
	}
	term := Terminal{Way: Auto}
	for _, msg := range []tea.Msg{ok(), called("kitty(0.35.2)"), cell(9, 18), end()} {
		term.Hear(msg)
	}
	if _, got := term.Cell(); got {
		t.Error("answers count although nothing was asked: a terminal without true colour is not")
	}
}

// The question is that of the protocol's own page: a query of one pixel, then the device attributes, which every terminal answers.
func TestTheQuestionEndsWithWhatEveryTerminalAnswers(t *testing.T) {
	term := Terminal{Way: Auto}
	asked := term.Ask()
	if !strings.HasPrefix(asked, "\x1b_G") || !strings.HasSuffix(asked, "\x1b[c") {
		t.Errorf("asked is %q", asked)
	}
	query, rest, _ := strings.Cut(strings.TrimPrefix(asked, "\x1b_G"), "\x1b\\")
	options, payload, _ := strings.Cut(query, ";")
	for _, want := range []string{"a=q", "i=31", "s=1", "v=1", "f=24"} {
		if !strings.Contains(","+options+",", ","+want+",") {
			t.Errorf("the query %q lacks %s", options, want)
		}
	}
	if payload != "AAAA" { // one black pixel of three bytes in base64
		t.Errorf("its pixel is %q", payload)
	}
	if !strings.Contains(rest, "\x1b[>q") || !strings.Contains(rest, "\x1b[16t") {
		t.Errorf("name or size is not asked for: %q", rest)
	}
	if again := term.Ask(); again != "" {
		t.Errorf("asked again: %q", again)
	}
	if sized := term.Resized(); sized != "\x1b[16t" {
		t.Errorf("with another size it asks %q", sized)
	}
	for _, way := range []string{Off, ""} {
		silent := Terminal{Way: way}
		if silent.Ask() != "" || silent.Resized() != "" {
			t.Errorf("%q asks", way)
		}
	}
	through := Terminal{Way: Tmux}
	if asked := through.Ask(); asked != "\x1b[16t" {
		t.Errorf("tmux is asked %q", asked)
	}
}
