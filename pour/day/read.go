package day

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
)

// farthest is how many days a day without its year may be from today to be certain: beyond it the year before or after is about as near.
const farthest = 150

// Read reads a day as a maker types it: 2026-12-01, 1.12.2026, 1.12., 1 Dec 2026, 1 Dec, today, yesterday, tomorrow. Without a year it is the nearest to
// today. What could be two days is refused with both.
func Read(text string, today Day) (Day, error) {
	text = strings.ToLower(strings.TrimSpace(text))
	switch text {
	case "today":
		return today, nil
	case "yesterday":
		return today - 1, nil
	case "tomorrow":
		return today + 1, nil
	}
	if d, err := Parse(text); err == nil {
		return d, nil
	}
	t := typed{text: text, today: today}
	switch {
	case strings.ContainsFunc(text, unicode.IsLetter):
		return t.named()
	case strings.Trim(text, "0123456789. ") == "" && strings.Contains(text, "."):
		return t.numbered(".", " ")
	case strings.Contains(text, "/"):
		return t.numbered("/", "")
	}
	return t.numbered("-", "")
}

// ReadMoment reads a day with or without its hour, and gives it as it stands in files: 2026-12-01 or 2026-12-01 15:30.
func ReadMoment(text string, today Day) (string, error) {
	text = strings.TrimSpace(text)
	hour := ""
	if i := strings.LastIndexByte(text, ' '); i > 0 && strings.Contains(text[i:], ":") {
		at, err := time.Parse("15:04", text[i+1:])
		if err != nil {
			return "", fmt.Errorf("read the hour %q: write it behind the day, as in 2026-12-06 09:30", text[i+1:])
		}
		text, hour = text[:i], at.Format(" 15:04")
	}
	d, err := Read(text, today)
	if err != nil {
		return "", err
	}
	return d.String() + hour, nil
}

// typed is a day that is being read.
type typed struct {
	text  string
	today Day
}

func (t typed) unread() error {
	return fmt.Errorf("read the day %q: write it as year-month-day, such as %s, or as 1.12.2026, 1.12., 1 Dec, today or yesterday", t.text, t.today)
}

// named reads a day with its month in letters: 1 Dec, Dec 1, 1. December 2026.
func (t typed) named() (Day, error) {
	month, numbers := 0, []string{}
	for _, w := range strings.FieldsFunc(t.text, func(r rune) bool { return strings.ContainsRune(" .,-", r) }) {
		switch m := MonthOf(w); {
		case m > 0 && month == 0:
			month = m
		case m == 0 && strings.Trim(w, "0123456789") == "":
			numbers = append(numbers, w)
		default:
			return 0, t.unread()
		}
	}
	if month == 0 || len(numbers) == 0 {
		return 0, t.unread()
	}
	return t.of(numbers[0], strconv.Itoa(month), numbers[1:])
}

// numbered reads a day in numbers: day before month where they are parted by dots, else whichever of the two can be.
func (t typed) numbered(mark, beside string) (Day, error) {
	text := t.text
	if beside != "" {
		text = strings.ReplaceAll(text, beside, "")
	}
	parts := strings.Split(text, mark)
	if len(parts) == 3 && parts[2] == "" && mark == "." {
		parts = parts[:2] // 1.12.
	}
	if len(parts) < 2 || len(parts) > 3 || slices.Contains(parts, "") || strings.Trim(strings.Join(parts, ""), "0123456789") != "" {
		return 0, t.unread()
	}
	one, other, rest := parts[0], parts[1], parts[2:]
	if mark == "." || len(one) > 2 {
		return t.of(one, other, rest)
	}
	a, errA := t.of(one, other, rest)
	b, errB := t.of(other, one, rest)
	switch {
	case errA == nil && errB == nil && a != b:
		return 0, fmt.Errorf("read the day %q: it could be %s (%s) or %s (%s); write the one you mean so", t.text, a, a.Short(), b, b.Short())
	case errA != nil && errB == nil:
		return b, nil
	}
	return a, errA
}

// of is the day of those numbers; without a year the nearest to today.
func (t typed) of(dom, month string, year []string) (Day, error) {
	if len(dom) > 2 || len(month) > 2 || len(year) > 1 || len(year) == 1 && len(year[0]) != len("2026") {
		return 0, t.unread()
	}
	d, _ := strconv.Atoi(dom)
	m, _ := strconv.Atoi(month)
	if len(year) == 1 {
		y, _ := strconv.Atoi(year[0])
		if day, ok := inCalendar(y, m, d); ok {
			return day, nil
		}
		return 0, t.inNone()
	}
	var before, after []Day
	for y := t.today.utc().Year() - 1; y <= t.today.utc().Year()+1; y++ {
		if day, ok := inCalendar(y, m, d); ok && day <= t.today {
			before = append(before, day)
		} else if ok {
			after = append(after, day)
		}
	}
	near := slices.Concat(before[max(len(before)-1, 0):], after[:min(len(after), 1)])
	slices.SortFunc(near, func(a, b Day) int { return t.away(a) - t.away(b) })
	switch {
	case len(near) == 0:
		return 0, t.inNone()
	case t.away(near[0]) <= farthest:
		return near[0], nil
	case len(near) == 1:
		return 0, fmt.Errorf("read the day %q: of which year? Write it in full, such as %s", t.text, near[0])
	}
	return 0, fmt.Errorf("read the day %q: it could be %s or %s; write the one you mean so", t.text, min(near[0], near[1]), max(near[0], near[1]))
}

func (t typed) inNone() error {
	return fmt.Errorf("read the day %q: no calendar has it; write it as year-month-day, such as %s", t.text, t.today)
}

// away is how many days a day is from today.
func (t typed) away(d Day) int { return int(max(d-t.today, t.today-d)) }

// inCalendar is a day by its numbers; false: no calendar has it.
func inCalendar(year, month, dom int) (Day, bool) {
	at := time.Date(year, time.Month(month), dom, 0, 0, 0, 0, time.UTC)
	return Of(at), month >= 1 && month <= 12 && at.Day() == dom && dom > 0
}

// MonthOf is the month that a word in small letters names, in three letters or in full; 0: none.
func MonthOf(word string) int {
	for m := time.January; m <= time.December; m++ {
		full := strings.ToLower(m.String())
		if word == full || word == full[:3] || word == "sept" && m == time.September {
			return int(m)
		}
	}
	return 0
}
