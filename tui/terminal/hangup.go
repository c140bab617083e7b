package terminal

import (
	"os"
	"os/signal"
)

// onHangup calls gone whenever the terminal hangs up, which would else end the program as it stands, until stop is called.
func onHangup(gone func()) (stop func()) {
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
