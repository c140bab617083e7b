package strict

import (
	"fmt"
	"strings"
	"time"
)

// CutTorn parts a file that grows table by table from a table at its end that was being written when the machine stopped: one that does not end with
// a whole line for its last key, a moment. Item is the header of such a table, "[[event]]"; last is the key that is written last in every one.
func CutTorn(src, item, last string) (body, torn string) {
	at := strings.LastIndex(src, "\n[")
	if at < 0 || !strings.HasPrefix(item, src[at+1:min(len(src), at+1+len(item))]) {
		return src, ""
	}
	table := src[at+1:]
	for _, line := range strings.SplitAfter(table, "\n") {
		key, v, _ := strings.Cut(strings.TrimRight(line, "\n"), "=")
		if strings.TrimSpace(key) != last {
			continue
		}
		if _, err := time.Parse(time.RFC3339Nano, strings.TrimSpace(v)); err == nil || strings.HasSuffix(line, "\n") {
			return src, "" // whole; or mended by hand, and then the strict reader has its say
		}
	}
	return src[:at+1], table
}

// Ended is what has to be written before anything else after the text of a file, so that it begins a line.
func Ended(body string) string {
	if body != "" && !strings.HasSuffix(body, "\n") {
		return "\n"
	}
	return ""
}

// Fits refuses to let a file grow beyond what can be read back.
func (f Form) Fits(bytes int) error {
	if bytes > f.Bytes {
		return fmt.Errorf("its file would be longer than the %d KiB that can be read back; take long notes out of it", f.Bytes>>10)
	}
	return nil
}
