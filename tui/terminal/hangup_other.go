//go:build !unix

package terminal

import "os"

// hangups are the signals that say the terminal is gone; a closed console ends the program by itself here.
func hangups() []os.Signal { return []os.Signal{os.Kill} }
