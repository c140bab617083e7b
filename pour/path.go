package pour

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour/strict"
)

// Number returns the number at a path of the plan file, and its row; a count is one too.
func Number(p Plan, path string) (float64, Field, bool) {
	f, _ := p.field(path)
	switch at := f.At.(type) {
	case *float64:
		return *at, f, true
	case *int:
		return float64(*at), f, true
	}
	return 0, Field{}, false
}

// SetNumber sets the number at a path of the plan file; a count takes whole numbers alone.
func SetNumber(path string, v float64) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		switch at := f.At.(type) {
		case *float64:
			*at = v
			if f.Known != nil {
				*f.Known = v > 0
			}
			return p, nil
		case *int:
			if v != math.Trunc(v) || math.Abs(v) > 1e6 {
				return p, fmt.Errorf("set %s to %s: it is counted; write a whole number", f.Label, strict.Short(v))
			}
			*at = int(v)
			return p, nil
		}
		return p, fmt.Errorf("set %s: there is no such number in this plan", path)
	}
}

// Word returns the word at a path of the plan file, and its row; a word that is left out means the first.
func Word(p Plan, path string) (string, Field, bool) {
	f, _ := p.field(path)
	at, ok := f.At.(*string)
	if !ok || f.Takes != TakesWord {
		return "", Field{}, false
	}
	if *at == "" {
		return f.Choices()[0], f, true
	}
	return *at, f, true
}

// SetWord sets the word at a path of the plan file. A size, a shape or a tip of the icing brings the usual figures it lacks.
func SetWord(path, v string) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		at, ok := f.At.(*string)
		if !ok || f.Takes != TakesWord {
			return p, fmt.Errorf("set %s: there is no such word in this plan", path)
		}
		was := *at
		*at = v
		p.chosen(path, was)
		return p, nil
	}
}

// Text returns the text at a path of the plan file, as it stands there, and its row.
func Text(p Plan, path string) (string, Field, bool) {
	f, _ := p.field(path)
	at, ok := f.At.(*string)
	if !ok {
		return "", Field{}, false
	}
	return *at, f, true
}

// SetText sets the text at a path of the plan file: a name, a colour, an id of the shelf. Empty: as if it were left out.
func SetText(path, v string) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		at, ok := f.At.(*string)
		if !ok {
			return p, fmt.Errorf("set %s: there is no such text in this plan", path)
		}
		*at = v
		return p, nil
	}
}

// Switch returns whether the switch at a path of the plan file is on, and its row.
func Switch(p Plan, path string) (bool, Field, bool) {
	f, _ := p.field(path)
	at, ok := f.At.(*bool)
	if !ok {
		return false, Field{}, false
	}
	return *at, f, true
}

// SetSwitch turns the switch at a path of the plan file on or off.
func SetSwitch(path string, on bool) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		at, ok := f.At.(*bool)
		if !ok {
			return p, fmt.Errorf("set %s: there is no such switch in this plan", path)
		}
		*at = on
		return p, nil
	}
}

// Numbers returns the list of numbers at a path of the plan file, and its row.
func Numbers(p Plan, path string) ([]float64, Field, bool) {
	f, _ := p.field(path)
	at, ok := f.At.(*[]float64)
	if !ok {
		return nil, Field{}, false
	}
	return slices.Clone(*at), f, true
}

// SetNumbers sets the list of numbers at a path of the plan file.
func SetNumbers(path string, list []float64) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		at, ok := f.At.(*[]float64)
		if !ok {
			return p, fmt.Errorf("set %s: there is no such list of numbers in this plan", path)
		}
		*at = slices.Clone(list)
		return p, nil
	}
}
