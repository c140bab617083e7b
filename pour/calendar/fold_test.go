package calendar_test

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/emersion/go-ical"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour/calendar"
)

func TestNoLineIsLongerThan75OctetsAndNoLetterIsSplit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries, _ := drawEntries(t, "261205A")
		text := write(t, entries)
		lines := strings.Split(text, "\r\n")
		if lines[len(lines)-1] != "" || strings.Count(text, "\n") != len(lines)-1 || strings.Count(text, "\r") != len(lines)-1 {
			t.Fatalf("lines end otherwise than by CRLF: %q", text)
		}
		for i, line := range lines[:len(lines)-1] {
			if len(line) > 75 || line == "" || !utf8.ValidString(line) {
				t.Errorf("line %d has %d octets: %q", i, len(line), line)
			}
			// As many letters as fit: the next one, of four octets at most, did not.
			if next := lines[i+1]; strings.HasPrefix(next, " ") {
				if _, size := utf8.DecodeRuneInString(next[1:]); len(line)+size <= 75 {
					t.Errorf("line %d is broken after %d octets though the next letter has %d", i, len(line), size)
				}
			}
		}
	})
}

func TestUnfoldedAndUnescapedByHandEveryTextIsWhatWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries, _ := drawEntries(t, "261205A")
		flat := strings.ReplaceAll(write(t, entries), "\r\n ", "") // unfold first: a fold may stand between a backslash and its letter
		var whats, words []string
		for line := range strings.SplitSeq(flat, "\r\n") {
			if v, ok := strings.CutPrefix(line, "SUMMARY:"); ok {
				whats = append(whats, unescape(v))
				words = append(words, "")
			}
			if v, ok := strings.CutPrefix(line, "DESCRIPTION:"); ok && unescape(v) != whats[len(whats)-1] { // an alarm says the summary
				words[len(words)-1] = unescape(v)
			}
		}
		for i, e := range entries {
			if whats[i] != e.What || words[i] != e.Words && e.Words != e.What {
				t.Errorf("entry %d says %q and %q, want %q and %q", i, whats[i], words[i], e.What, e.Words)
			}
		}
	})
}

// unescape reads TEXT by RFC 5545, 3.3.11.
func unescape(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] != '\\' {
			b.WriteByte(s[i])
			continue
		}
		i++
		if s[i] == 'n' || s[i] == 'N' {
			b.WriteByte('\n')
		} else {
			b.WriteByte(s[i])
		}
	}
	return b.String()
}

func TestASecondLibraryReadsEveryCalendar(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		entries, kinds := drawEntries(r, "Café–Blau")
		for i := range entries {
			entries[i].Cancelled = rapid.Bool().Draw(r, "cancelled")
			if entries[i].Cancelled {
				entries[i].Reminded, entries[i].Remind = false, 0
			}
		}
		cal, err := ical.NewDecoder(strings.NewReader(write(r, entries))).Decode()
		if err != nil {
			r.Fatal(err)
		}
		if d := cmp.Diff(entries, readBack(t, cal, "Café–Blau", kinds...), cmp.Comparer(time.Time.Equal)); d != "" {
			r.Error(d)
		}
	})
}

func TestEveryReminderIsADurationOfTheGrammar(t *testing.T) {
	for _, c := range []struct {
		d    time.Duration
		want string // RFC 5545, 3.3.6: days, then T and hours and minutes
	}{
		{0, "PT0M"},
		{9 * time.Hour, "PT9H"},
		{-time.Hour, "-PT1H"},
		{-90 * time.Minute, "-PT1H30M"},
		{5 * time.Minute, "PT5M"},
		{-24 * time.Hour, "-P1D"},
		{33*time.Hour + time.Minute, "P1DT9H1M"},
		{-(48*time.Hour + 2*time.Minute), "-P2DT2M"},
	} {
		e := sampleEntries()[0]
		e.Remind = c.d
		if text := write(t, []calendar.Entry{e}); !strings.Contains(text, "TRIGGER:"+c.want+"\r\n") {
			t.Errorf("%v: %q is missing in\n%s", c.d, c.want, text)
		}
	}
}
