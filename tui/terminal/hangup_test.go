package terminal

import (
	"errors"
	"os"
	"syscall"
	"testing"
)

func TestWhatASignalEndsSaysWhich(t *testing.T) {
	if err := Ended(os.Interrupt); !errors.Is(err, ErrInterrupted) {
		t.Errorf("interrupted, it is %v", err)
	}
	for s, exit := range map[syscall.Signal]int{syscall.SIGTERM: 143, syscall.SIGHUP: 129} {
		var ended EndedError
		if err := Ended(s); !errors.As(err, &ended) || ended.Exit() != exit {
			t.Errorf("%v ends it with %v, exit %d, want %d", s, err, ended.Exit(), exit)
		}
	}
}
