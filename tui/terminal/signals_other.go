//go:build !unix

package terminal

import "os"

// signals are none that come: a closed console ends the program by itself here.
func signals() []os.Signal { return []os.Signal{os.Kill} }
