//go:build !linux

package live

import "time"

// SystemClock is the machine's clock. Its steady clock is the Go runtime's, which may stand still in sleep and ends with the
// process; the session, which names the terminal, keeps two of them apart.
func SystemClock(session string) Clock {
	start := time.Now()
	return func() Moment {
		now := time.Now()
		return Moment{Wall: now, Steady: now.Sub(start), Of: session, Sleeps: true}
	}
}
