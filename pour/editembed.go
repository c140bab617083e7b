package pour

import "fmt"

// SetNumbers sets the list of numbers at a path of the plan file.
func SetNumbers(path string, v []float64) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		at, ok := f.At.(*[]float64)
		if !ok {
			return p, fmt.Errorf("set %s: there is no such list of numbers in this plan", path)
		}
		*at = append([]float64(nil), v...)
		return p, nil
	}
}

// SetCount sets the whole number at a path of the plan file.
func SetCount(path string, n int) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		at, ok := f.At.(*int)
		if !ok {
			return p, fmt.Errorf("set %s: there is no such whole number in this plan", path)
		}
		*at = n
		return p, nil
	}
}

// SetSwitch says yes or no at a path of the plan file.
func SetSwitch(path string, on bool) Edit {
	return func(p Plan) (Plan, error) {
		f, _ := p.field(path)
		at, ok := f.At.(*bool)
		if !ok {
			return p, fmt.Errorf("set %s: there is nothing to switch at that place of this plan", path)
		}
		*at = on
		return p, nil
	}
}

// AddEmbed adds a kind of embed in every bar: a disc that takes two thirds of a bar, a quarter of it standing out.
func AddEmbed(name string) Edit {
	return func(p Plan) (Plan, error) {
		if len(p.Top.Embeds) >= maxParts {
			return p, fmt.Errorf("add an embed: %d kinds are there already, which is all a plan holds", maxParts)
		}
		long := max(round3(p.Mould.BarMM*2/3), 1)
		high := min(long, round3(p.Mould.FillMM/2))
		p.Top.Embeds = append(p.Top.Embeds, Embed{Name: name, LengthMM: long, HeightMM: high, OutMM: round3(high / 4)})
		return p, nil
	}
}

// RemoveEmbed takes a kind of embed out.
func RemoveEmbed(i int) Edit {
	return func(p Plan) (Plan, error) {
		if err := inRange(p.Top.Embeds, i, "embed"); err != nil {
			return p, err
		}
		p.Top.Embeds = append(p.Top.Embeds[:i:i], p.Top.Embeds[i+1:]...)
		return p, nil
	}
}
