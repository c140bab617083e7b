package lines

import (
	"bufio"
	"errors"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"pourbench/pour/plain"
)

// longest is how many bytes a line may hold. What is longer was not typed.
const longest = 4096

// TooLong is said to a line that is too long to be one.
const TooLong = "No: that line is longer than 4096 signs, and nothing was done. ? tells what can be said here."

// Event is what comes in: a line, a signal, or the end.
type Event struct {
	Text   string
	Long   bool      // the line was too long to be one; its text is not kept
	Signal os.Signal // nil: none
	End    bool      // nothing more comes
}

// Talk is what plain mode talks through: one for a whole process, since what was read ahead of the input is in it.
type Talk struct {
	In  *Input
	Out *Paper
}

// Input is lines and signals, in the order they come.
type Input struct {
	Events  <-chan Event
	signals chan os.Signal
}

// Open listens for lines and for signals that end a program.
func Open(in io.Reader) *Input {
	events, signals := make(chan Event), make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	go read(in, events)
	go func() {
		for s := range signals {
			events <- Event{Signal: s}
		}
	}()
	return &Input{Events: events, signals: signals}
}

// Close stops listening for signals. A reader that waits for a line is left to the end of the process.
func (i *Input) Close() {
	signal.Stop(i.signals)
	close(i.signals)
}

func read(in io.Reader, events chan<- Event) {
	r := bufio.NewReaderSize(in, longest)
	for {
		text, err := r.ReadSlice('\n')
		e := Event{Text: Clean(string(text)), Long: errors.Is(err, bufio.ErrBufferFull)}
		for errors.Is(err, bufio.ErrBufferFull) {
			_, err = r.ReadSlice('\n')
		}
		if err == nil || e.Long || e.Text != "" {
			events <- e
		}
		for err != nil { // whoever asks, it has ended
			events <- Event{End: true}
		}
	}
}

// Clean takes from a line what a terminal or a file put into it and nobody meant: controls, and blanks at its ends. A line of nothing but keys that
// write escapes, as arrows do where lines are read, is no empty line, which would answer a question: of such a line a sign is left that answers none.
func Clean(text string) string {
	clean := strings.TrimSpace(plain.Line(text))
	if clean == "" && strings.ContainsAny(text, "\x1b\u009b") {
		return noAnswer
	}
	return clean
}

// noAnswer is what is left of a line of escapes alone.
const noAnswer = "^["
