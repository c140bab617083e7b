package pour

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Input is one number that a reckoning starts from.
type Input struct {
	Name   string
	V      float64
	Unit   Unit
	From   string // where it comes from: a key of the plan, the shelf, a law of nature or a measurement
	Figure string // path of the figure it is; empty: it is none of the sheet's
	Source Source // of what the shelf says
}

// Term is one step of a reckoning: a number, or terms put together. The zero Term is the number 0.
type Term struct {
	op    termOp
	of    []Term
	input *Input
	plain float64 // a bare number of the formula: 100, 1000
	name  string  // of a model
	model func([]float64) float64
}

type termOp int

const (
	opNumber termOp = iota
	opInput
	opSum
	opLess
	opTimes
	opBy
	opDown  // down to whole steps
	opRound // to the nearest step
	opMax
	opPlace // a place of what is apportioned on a step by largest remainder
	opModel // what no formula of one line gives
)

func bare(v float64) Term           { return Term{plain: v} }
func product(of ...Term) Term       { return Term{op: opTimes, of: of} }
func ratio(a, b Term) Term          { return Term{op: opBy, of: []Term{a, b}} }
func percentOf(a Term) Term         { return ratio(a, bare(100)) }
func down(a, step Term) Term        { return Term{op: opDown, of: []Term{a, step}} }
func nearestStep(a, step Term) Term { return Term{op: opRound, of: []Term{a, step}} }
func larger(a, b Term) Term         { return Term{op: opMax, of: []Term{a, b}} }
func leaf(in Input) Term            { return Term{op: opInput, input: &in} }

// sum adds terms up; a bare 0 among them is not said.
func sum(of ...Term) Term {
	of = slices.DeleteFunc(of, Term.nothing)
	switch len(of) {
	case 0:
		return bare(0)
	case 1:
		return of[0]
	}
	return Term{op: opSum, of: of}
}

// less takes one term from another; to take a bare 0 away is not said.
func less(a, b Term) Term {
	if b.nothing() {
		return a
	}
	return Term{op: opLess, of: []Term{a, b}}
}

func (t Term) nothing() bool { return t.op == opNumber && t.plain == 0 }

func place(i int, step Term, of []Term) Term {
	return Term{op: opPlace, of: append([]Term{bare(float64(i + 1)), step}, of...)}
}

// modelled is what a model makes of its inputs, worked out again by the model itself.
func modelled(name string, run func([]float64) float64, of ...Term) Term {
	return Term{op: opModel, of: of, name: name, model: run}
}

// Value works the term out.
func (t Term) Value() float64 { return t.work(func(v float64) float64 { return v }) }

// AsShown works the term out from its numbers as they are shown.
func (t Term) AsShown() float64 { return t.work(round9) }

// Modelled says whether a model has a part in the term, so that its numbers cannot be worked out on paper.
func (t Term) Modelled() bool { return t.op == opModel || slices.ContainsFunc(t.of, Term.Modelled) }

func (t Term) work(read func(float64) float64) float64 {
	v := make([]float64, len(t.of))
	for i, x := range t.of {
		v[i] = x.work(read)
	}
	switch t.op {
	case opInput:
		return read(t.input.V)
	case opSum:
		all := 0.0
		for _, x := range v {
			all += x
		}
		return all
	case opLess:
		return v[0] - v[1]
	case opTimes:
		all := 1.0
		for _, x := range v {
			all *= x
		}
		return all
	case opBy:
		return v[0] / v[1]
	case opDown:
		return floorTo(v[0], v[1])
	case opRound:
		return roundTo(v[0], v[1])
	case opMax:
		return max(v[0], v[1])
	case opPlace:
		return Apportion(v[2:], v[1])[int(v[0])-1]
	case opModel:
		return t.model(v)
	default:
		return t.plain
	}
}

// Words is the formula in words.
func (t Term) Words() string { return t.say(func(in Input) string { return in.Name }) }

// Numbers is the formula with this plan's numbers, in so many digits that working them out gives the figure.
func (t Term) Numbers() string { return t.say(func(in Input) string { return digits(in.V) }) }

// digits draws a number with nine of them, which is more than any scale shows and less than a float holds.
func digits(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return dash
	}
	return strconv.FormatFloat(round9(v)+0, 'f', -1, 64)
}

// round9 is a number as nine digits show it; what is no number stays none.
func round9(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 9, 64), 64)
	if err != nil {
		return v // what was just written can be read
	}
	return r
}

func (t Term) say(draw func(Input) string) string {
	part := func(i int, tight bool) string {
		x := t.of[i]
		text := x.say(draw)
		if tight && (x.op == opSum || x.op == opLess) || t.op == opBy && i == 1 && (x.op == opTimes || x.op == opBy) {
			return "(" + text + ")"
		}
		return text
	}
	join := func(sep string, tight bool) string {
		parts := make([]string, len(t.of))
		for i := range t.of {
			parts[i] = part(i, tight)
		}
		return strings.Join(parts, sep)
	}
	switch t.op {
	case opInput:
		return draw(*t.input)
	case opSum:
		return join(" + ", false)
	case opLess:
		return part(0, false) + " − " + part(1, true)
	case opTimes:
		return join(" × ", true)
	case opBy:
		return join(" ÷ ", true)
	case opDown, opRound, opMax, opPlace, opModel:
		return t.verb() + "(" + join("; ", false) + ")"
	default:
		return digits(t.plain)
	}
}

// verb is what stands before the brackets of a term that is no arithmetic.
func (t Term) verb() string {
	switch t.op {
	case opDown:
		return "down to whole steps "
	case opRound:
		return "to the nearest step "
	case opMax:
		return "the larger of "
	case opPlace:
		return "in whole steps by largest remainder, place "
	default:
		return t.name + " "
	}
}

// Inputs lists what a term starts from, each once, in the order of the formula.
func (t Term) Inputs() []Input {
	var out []Input
	seen := map[string]bool{}
	t.each(func(in Input) {
		if key := fmt.Sprint(in.Name, in.V, in.Figure); !seen[key] {
			seen[key] = true
			out = append(out, in)
		}
	})
	return out
}

func (t Term) each(do func(Input)) {
	if t.op == opInput {
		do(*t.input)
	}
	for _, x := range t.of {
		x.each(do)
	}
}
