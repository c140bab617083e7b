package invoice

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"pourbench/pour/day"
)

// written is a day as it was written: its last day where only a month was named.
type written struct {
	day   day.Day
	month bool // no day of the month was named
	used  int  // how many runs of letters it took
}

// dated reads the day at the front of some runs of letters: year first, or parted by dots, or with the month in letters. Where day and month could
// change places it is refused.
func dated(chunks []string) (written, error) {
	if len(chunks) == 0 {
		return written{}, fmt.Errorf("which day? Write it behind the word as 2027-05-31")
	}
	first := strings.Trim(chunks[0], ",.")
	if w, ok := named(chunks); ok {
		return w, nil
	}
	mark := ""
	for _, m := range []string{"-", "/", "."} {
		if strings.Contains(first, m) {
			mark = m
			break
		}
	}
	if mark == "" {
		return written{}, noDay(first)
	}
	parts := strings.Split(first, mark)
	n := make([]int, len(parts))
	for i, p := range parts {
		v, err := strconv.Atoi(p)
		if err != nil || v <= 0 || len(p) > 4 {
			return written{}, noDay(first)
		}
		n[i] = v
	}
	switch {
	case len(n) == 2 && len(parts[0]) == 4:
		return monthEnd(n[0], n[1], 1, first)
	case len(n) == 2 && len(parts[1]) == 4:
		return monthEnd(n[1], n[0], 1, first)
	case len(n) == 3 && len(parts[0]) == 4:
		return on(n[0], n[1], n[2], 1, first)
	case len(n) != 3 || len(parts[2]) != 4:
		return written{}, noDay(first)
	case mark == "." || n[0] > 12 || n[0] == n[1]:
		return on(n[2], n[1], n[0], 1, first)
	case n[1] > 12:
		return on(n[2], n[0], n[1], 1, first)
	}
	return written{}, fmt.Errorf("read the day %q: it could be %04d-%02d-%02d or %04d-%02d-%02d; write the one you mean so", first, n[2], n[0], n[1], n[2], n[1], n[0])
}

func noDay(text string) error {
	return fmt.Errorf("read the day %q: write it as 2027-05-31, or as 31 May 2027", text)
}

// on is a day that is in the calendar.
func on(year, month, dom, used int, text string) (written, error) {
	t := time.Date(year, time.Month(month), dom, 0, 0, 0, 0, time.UTC)
	if month < 1 || month > 12 || t.Day() != dom || year < 1990 || year > 2200 {
		return written{}, fmt.Errorf("read the day %q: no calendar has it; write it as 2027-05-31", text)
	}
	return written{day: day.Of(t), used: used}, nil
}

// monthEnd is the last day of a month: what is best before a month is so to its end (Regulation (EU) 1169/2011, Annex X; memory).
func monthEnd(year, month, used int, text string) (written, error) {
	if _, err := on(year, month, 1, used, text); err != nil {
		return written{}, err
	}
	t := time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC)
	return written{day: day.Of(t), month: true, used: used}, nil
}

// named reads a day with its month in letters: 31 May 2027, May 31, 2027, May 2027.
func named(chunks []string) (written, bool) {
	month, numbers := 0, []int{}
	for i, c := range chunks[:min(len(chunks), 3)] {
		c = strings.ToLower(strings.Trim(c, ".,"))
		m := day.MonthOf(c)
		v, err := strconv.Atoi(c)
		switch {
		case m > 0 && month == 0:
			month = m
		case err == nil && len(numbers) < 2:
			numbers = append(numbers, v)
		default:
			return written{}, false
		}
		if month > 0 && len(numbers) > 0 && numbers[len(numbers)-1] >= 1000 {
			text := strings.Join(chunks[:i+1], " ")
			if len(numbers) == 1 {
				w, err := monthEnd(numbers[0], month, i+1, text)
				return w, err == nil
			}
			w, err := on(numbers[1], month, numbers[0], i+1, text)
			return w, err == nil
		}
	}
	return written{}, false
}

// dayLike reports whether a run of letters looks like a day: three numbers parted by the same sign.
func dayLike(chunk string) bool {
	for _, mark := range []string{"-", "/", "."} {
		if parts := strings.Split(chunk, mark); len(parts) == 3 && strings.Trim(strings.Join(parts, ""), "0123456789") == "" && parts[0] != "" && parts[1] != "" && len(parts[2]) > 0 {
			return true
		}
	}
	return false
}
