//go:build unix

package terminal

import (
	"os"
	"syscall"
)

// hangups are the signals that say the terminal is gone.
func hangups() []os.Signal { return []os.Signal{syscall.SIGHUP} }
