package terminal

import (
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

// EndedError is returned by [Show] when a signal ended the model: the terminal's closing, or a request to end.
type EndedError struct{ Signal syscall.Signal }

func (e EndedError) Error() string { return fmt.Sprintf("ended by a signal: %v", e.Signal) }

// Exit is the exit code of a process that a signal ended, as shells tell it: 128 and the signal's number.
func (e EndedError) Exit() int { return 128 + int(e.Signal) }

// Ended is the error for a program that a signal has ended: [ErrInterrupted], or an [EndedError].
func Ended(s os.Signal) error {
	if number, ok := s.(syscall.Signal); ok && s != os.Interrupt {
		return EndedError{number}
	}
	return ErrInterrupted
}

// onHangup calls gone whenever the terminal hangs up, which would else end the program as it stands, or the process is asked to end,
// until stop is called. Stop returns the signal that came first, or nil: by then every one that came is heard.
func onHangup(gone func()) (stop func() os.Signal) {
	came := make(chan os.Signal, 1)
	signal.Notify(came, signals()...)
	var first os.Signal
	heard := make(chan struct{})
	go func() {
		defer close(heard)
		for s := range came {
			if first == nil {
				first = s
			}
			gone()
		}
	}()
	return func() os.Signal {
		signal.Stop(came)
		close(came)
		<-heard
		return first
	}
}
