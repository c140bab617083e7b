package command

import (
	"fmt"
	"io"
	"math"
	"os"
	"sync/atomic"
	"time"

	"github.com/mattn/go-isatty"
)

// quietFor is how long a command may take before it says how far it is.
const quietFor = time.Second

// progress says on standard error how far a command is that takes longer than a moment: on a terminal in one line that changes, else in
// lines of their own, more rarely.
type progress struct {
	out     io.Writer
	what    string
	changes bool // the line may be written over
	percent atomic.Uint64
	stop    chan struct{}
	ended   chan struct{}
}

// progress begins. It must be ended.
func (g *program) progress(what string) *progress {
	f, isFile := g.Errs.(*os.File)
	p := &progress{
		out: g.Errs, what: what, changes: isFile && isatty.IsTerminal(f.Fd()) && g.env("TERM") != "dumb",
		stop: make(chan struct{}), ended: make(chan struct{}),
	}
	go p.show()
	return p
}

// set says how much is done. It may be called from several goroutines at once.
func (p *progress) set(percent float64) { p.percent.Store(math.Float64bits(percent)) }

// end ends it and takes the line away.
func (p *progress) end() {
	close(p.stop)
	<-p.ended
}

func (p *progress) show() {
	const often, rarely = 200 * time.Millisecond, 5 * time.Second
	defer close(p.ended)
	wait, shown := quietFor, false
	for {
		select {
		case <-p.stop:
			if shown && p.changes {
				_, _ = io.WriteString(p.out, "\r\x1b[K")
			}
			return
		case <-time.After(wait):
		}
		line := fmt.Sprintf("%s: %.0f %%", p.what, math.Float64frombits(p.percent.Load()))
		if wait = often; p.changes {
			line = "\r" + line + "\x1b[K"
		} else {
			line, wait = line+"\n", rarely
		}
		_, _ = io.WriteString(p.out, line)
		shown = true
	}
}
