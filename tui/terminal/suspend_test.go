package terminal

import "testing"

func TestOnlyOnWindowsAProgramCannotWait(t *testing.T) {
	for system, can := range map[string]bool{"linux": true, "darwin": true, "freebsd": true, "windows": false} {
		if got := NoSuspend(system); got == "" != can {
			t.Errorf("%s: %q", system, got)
		}
	}
}
