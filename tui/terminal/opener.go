package terminal

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"time"
)

// opener is the command that opens a file in the program the system has for it, on an operating system named as Go names it.
func opener(system, path string) []string {
	switch system {
	case "darwin":
		return []string{"open", path}
	case "windows":
		return []string{"rundll32", "url.dll,FileProtocolHandler", path}
	}
	return []string{"xdg-open", path}
}

// openerWait is how long a failure of the opener is waited for: one that only then fails has shown something by itself.
const openerWait = 1500 * time.Millisecond

// OpenFile opens a file in the program that the system has for it and does not wait for that to end.
func OpenFile(system, path string) error {
	words := opener(system, path)
	cmd := exec.CommandContext(context.Background(), words[0], words[1:]...) //nolint:gosec // one of three programs, and a path that is no flag: it is absolute
	if err := cmd.Start(); err != nil {
		if errors.Is(err, exec.ErrNotFound) {
			return fmt.Errorf("open %s: there is no %s on this machine; open it by hand", path, words[0])
		}
		return fmt.Errorf("open %s: %w", path, err)
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	select {
	case err := <-ended:
		if err != nil {
			return fmt.Errorf("open %s: %s could not: %w", path, words[0], err)
		}
	case <-time.After(openerWait):
	}
	return nil
}
