package live

import (
	"os"
	"strings"
	"time"

	"golang.org/x/sys/unix"
)

// SystemClock is the machine's clock. Its steady clock is Linux's time since boot, which goes on in sleep and is shared by every
// terminal until the next boot. The session names the terminal; it serves where there is no such clock.
func SystemClock(session string) Clock {
	start := time.Now()
	boot, err := os.ReadFile("/proc/sys/kernel/random/boot_id")
	id := strings.TrimSpace(string(boot))
	return func() Moment {
		now := time.Now()
		var ts unix.Timespec
		if err != nil || id == "" || unix.ClockGettime(unix.CLOCK_BOOTTIME, &ts) != nil {
			return Moment{Wall: now, Steady: now.Sub(start), Of: session, Sleeps: true}
		}
		return Moment{Wall: now, Steady: time.Duration(ts.Nano()), Of: "boot " + id}
	}
}
