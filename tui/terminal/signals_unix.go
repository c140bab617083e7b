//go:build unix

package terminal

import (
	"os"
	"syscall"
)

func signals() []os.Signal { return []os.Signal{syscall.SIGHUP, syscall.SIGTERM} }
