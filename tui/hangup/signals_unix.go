//go:build unix

package hangup

import (
	"os"
	"syscall"
)

func signals() []os.Signal { return []os.Signal{syscall.SIGHUP} }
