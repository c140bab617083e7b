package command

import (
	"strings"
	"sync"
	"testing"
	"time"
)

// heard gathers what is written and says when there was something.
type heard struct {
	sync.Mutex
	text  strings.Builder
	first chan struct{}
}

func (h *heard) Write(p []byte) (int, error) {
	h.Lock()
	defer h.Unlock()
	if h.text.Len() == 0 {
		close(h.first)
	}
	return h.text.Write(p)
}

func TestProgressIsOneLineOnATerminalAndGoesAgain(t *testing.T) {
	h := &heard{first: make(chan struct{})}
	p := &progress{out: h, what: "drawing", changes: true, stop: make(chan struct{}), ended: make(chan struct{})}
	go p.show()
	p.set(41.7)
	select {
	case <-h.first:
	case <-time.After(time.Minute):
		t.Fatal("nothing was said for a minute")
	}
	p.end()
	said := h.text.String()
	if !strings.HasPrefix(said, "\rdrawing: 42 %\x1b[K") || strings.Contains(said, "\n") || !strings.HasSuffix(said, "\r\x1b[K") {
		t.Errorf("it said %q", said)
	}
}

func TestWhatIsQuickSaysNothing(t *testing.T) {
	h := &heard{first: make(chan struct{})}
	p := (&program{Process: Process{Errs: h}}).progress("drawing")
	p.end()
	if h.text.Len() > 0 {
		t.Errorf("it said %q", h.text.String())
	}
}
