// Package hangup tells a screen that its terminal is gone, which would else end the program as it stands: work not kept, the terminal
// not given back.
package hangup

import (
	"os"
	"os/signal"
)

// Watch calls gone whenever the terminal hangs up, until stop is called.
func Watch(gone func()) (stop func()) {
	hup := make(chan os.Signal, 1)
	signal.Notify(hup, signals()...)
	go func() {
		for range hup {
			gone()
		}
	}()
	return func() {
		signal.Stop(hup)
		close(hup)
	}
}
