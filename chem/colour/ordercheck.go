package colour

import (
	"fmt"
	"math"
)

// nodes checks the problem and returns the batters to order, in the maker's order.
func (p OrderProblem) nodes() ([]int, error) {
	if err := p.checkMud(); err != nil {
		return nil, err
	}
	if err := p.checkPins(); err != nil {
		return nil, err
	}
	var nodes []int
	for i := range p.Mud {
		if i != p.Spacer {
			nodes = append(nodes, i)
		}
	}
	if len(nodes) > MostOrdered {
		return nil, fmt.Errorf("%d of them are too many: at most %d can be tried", len(nodes), MostOrdered)
	}
	if p.Current == nil {
		return nodes, nil
	}
	return p.Current, p.checkCurrent(len(nodes))
}

func (p OrderProblem) checkMud() error {
	n := len(p.Mud)
	for i, row := range p.Mud {
		if len(row) != n {
			return fmt.Errorf("row %d of the mud table has %d scores for %d batters: give one for each", i, len(row), n)
		}
	}
	for i, row := range p.Mud {
		for k, v := range row {
			if i == k {
				continue
			}
			if !(v >= 0 && v <= 1) {
				return fmt.Errorf("the mud of %d with %d is %g: give 0 to 1", i, k, v)
			}
			if math.Abs(v-p.Mud[k][i]) > 1e-9 {
				return fmt.Errorf("the mud of %d with %d is %g one way and %g the other: give one score", i, k, v, p.Mud[k][i])
			}
		}
	}
	return nil
}

func (p OrderProblem) checkPins() error {
	for i, pin := range [3]int{p.First, p.Last, p.Spacer} {
		name := [3]string{"first", "last", "spacer"}[i]
		if pin != None && (pin < 0 || pin >= len(p.Mud)) {
			return fmt.Errorf("the %s batter is %d of %d: give an index from 0, or %d for none", name, pin, len(p.Mud), None)
		}
		if i < 2 && pin != None && pin == p.Spacer {
			return fmt.Errorf("batter %d is both %s and spacer: unpin it or choose another spacer", pin, name)
		}
	}
	alone := len(p.Mud) == 1 || (len(p.Mud) == 2 && p.Spacer != None)
	if p.First != None && p.First == p.Last && !alone {
		return fmt.Errorf("batter %d is both first and last: unpin one end", p.First)
	}
	return nil
}

func (p OrderProblem) checkCurrent(n int) error {
	if len(p.Current) != n {
		return fmt.Errorf("the present order names %d batters of %d: name each once, without the spacer", len(p.Current), n)
	}
	seen := make([]bool, len(p.Mud))
	for _, i := range p.Current {
		if i < 0 || i >= len(p.Mud) || i == p.Spacer || seen[i] {
			return fmt.Errorf("the present order names batter %d wrongly: name each of them once, without the spacer", i)
		}
		seen[i] = true
	}
	return nil
}
