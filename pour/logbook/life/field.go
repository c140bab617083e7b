package life

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// Field is one thing that is said of an event.
type Field struct {
	Key      string // what it is called when it is typed
	Label    string
	Means    string
	Unit     string
	Low      float64
	High     float64
	Whole    bool     // a whole number
	Words    []string // what it usually is
	Only     bool     // and nothing else
	Required bool
	Lead     bool                // typed without its key, in the order of the fields
	Rest     bool                // takes the words that are left
	Form     func(string) error  // what a text has to look like; nil: anything
	Dated    bool                // a day, with or without its hour
	Spelt    func(string) string // how a text is written in the file; nil: as it is typed
	At       any                 // *string, *float64, *int, *[]int or *[]float64 in the event
}

// Set reads what was typed into the event. Nothing leaves the field empty. An error says how to type it.
func (f Field) Set(text string) error {
	text = strings.TrimSpace(plain.Text(text))
	if text == "" && f.Required {
		switch f.At.(type) {
		case *float64, *int:
			return strict.Fault{Path: f.Key, Value: `""`, Problem: "has nothing in it", Mend: "write " + f.Describe()}
		}
	}
	var err error
	switch at := f.At.(type) {
	case *string:
		if err = f.word(&text); err == nil {
			*at = text
		}
	case *float64:
		*at, err = f.number(text)
	case *int:
		var v float64
		v, err = f.number(text)
		*at = int(v)
	case *[]float64:
		*at, err = f.numbers(strings.FieldsFunc(text, blank))
	case *[]int:
		var list []float64
		list, err = f.numbers(strings.FieldsFunc(text, func(r rune) bool { return blank(r) || r == ',' }))
		*at = nil
		for _, v := range list {
			*at = append(*at, int(v))
		}
	}
	var fault strict.Fault
	if err != nil && !errors.As(err, &fault) { // a fault names its key
		err = fmt.Errorf("%s: %w", f.Key, err)
	}
	return err
}

// SetOn is [Field.Set] of what a maker typed today: a day is read in every way she may write it.
func (f Field) SetOn(text string, today day.Day) error {
	if text = strings.TrimSpace(plain.Text(text)); f.Dated && text != "" {
		moment, err := day.ReadMoment(text, today)
		if err != nil {
			return fmt.Errorf("%s: %w", f.Key, err)
		}
		text = moment
	}
	return f.Set(text)
}

func blank(r rune) bool { return r == ' ' || r == '\t' || r == ';' || r == '\n' }

// word is a text as the field takes it: a word it knows is written as it knows it.
func (f Field) word(text *string) error {
	if *text == "" {
		return nil
	}
	if i := slices.IndexFunc(f.Words, func(w string) bool { return strings.EqualFold(w, *text) }); i >= 0 {
		*text = f.Words[i]
	} else if f.Only {
		return strict.NoWord(f.Key, *text, f.Words)
	}
	if f.Spelt != nil {
		*text = f.Spelt(*text)
	}
	if f.Form != nil {
		return f.Form(*text)
	}
	return nil
}

func (f Field) number(text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	v, err := strict.ParseNumber(text)
	if err != nil {
		return 0, err
	}
	_, count := f.At.(*int)
	_, counts := f.At.(*[]int)
	switch {
	case !(v >= f.Low && v <= f.High):
		return 0, strict.Outside(f.Key, v, f.Low, f.High)
	case (f.Whole || count || counts) && v != math.Trunc(v):
		return 0, strict.Fault{Path: f.Key, Value: strict.Short(v), Problem: "is no whole number", Mend: "write a whole number, as in 3"}
	}
	return v, nil
}

func (f Field) numbers(words []string) ([]float64, error) {
	var out []float64
	for _, w := range words {
		v, err := f.number(strings.TrimSuffix(w, ","))
		if err != nil {
			return nil, err
		}
		out = append(out, v)
	}
	return out, nil
}

// Text is what the field holds, as it is typed; empty where there is nothing in it.
func (f Field) Text() string {
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	switch at := f.At.(type) {
	case *string:
		return *at
	case *float64:
		if *at != 0 || f.Required {
			return number(*at)
		}
	case *int:
		if *at != 0 || f.Required && f.Low == 0 {
			return strconv.Itoa(*at)
		}
	case *[]int:
		return joined(*at, strconv.Itoa)
	case *[]float64:
		return joined(*at, number)
	}
	return ""
}

// Describe says what goes into the field.
func (f Field) Describe() string {
	out := f.Label
	if f.Means != "" {
		out = f.Means
	}
	if len(f.Words) > 0 {
		out += ": " + strings.Join(f.Words, ", ")
	}
	if f.Unit != "" {
		out += ", " + f.Unit
	}
	return out
}

func joined[T any](list []T, word func(T) string) string {
	words := make([]string, len(list))
	for i, v := range list {
		words[i] = word(v)
	}
	return strings.Join(words, " ")
}

// The forms a text may have to have.

func isDay(s string) error {
	for _, form := range []string{time.DateOnly, dayAndHour} {
		if _, err := time.Parse(form, s); err == nil {
			return nil
		}
	}
	return fmt.Errorf("%q is no day; write it as year-month-day, such as 2026-12-06, with the hour where it counts: 2026-12-06 09:30", s)
}

// dayAndHour is how a day is written with its hour.
const dayAndHour = "2006-01-02 15:04"

func isPrice(s string) error {
	return matches(s, `^\d{1,9}(\.\d{1,6})?$`, "is no price; write a decimal number, such as 7.50")
}

func isCurrency(s string) error {
	return matches(s, `^[A-Z]{3}$`, "is no code of a currency; write its three capital letters, such as EUR")
}

func isColour(s string) error {
	return matches(s, `^#[0-9a-fA-F]{6}$`, "is no colour; write it as #rrggbb")
}

func matches(s, form, fault string) error {
	if !regexp.MustCompile(form).MatchString(s) {
		return fmt.Errorf("%q %s", s, fault)
	}
	return nil
}

// once gathers words of both batches of a plan, each once.
func once(p pour.Plan, of func(*pour.Batch) []string) []string {
	var out []string
	for _, n := range []pour.BatchName{pour.Base, pour.Icing} {
		if b := p.Batch(n); b != nil {
			for _, w := range of(b) {
				if !slices.Contains(out, w) {
					out = append(out, w)
				}
			}
		}
	}
	return out
}
