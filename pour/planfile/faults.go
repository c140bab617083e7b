package planfile

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/plain"
)

// mostNoted bounds the problems that are kept to be sorted; a file with more of them is no plan.
const mostNoted = 500

// say notes a problem at a key of the file.
func (r *reader) say(path, value, what, mend string) {
	if len(r.problems) == mostNoted {
		return
	}
	at := r.index.find(path)
	r.problems = append(r.problems, Problem{
		File: r.file, Line: at.line, Column: at.column,
		Path: plain.Line(path), Value: value, What: what, Mend: mend,
	})
	r.said = append(r.said, path)
}

// check adds what the plan itself finds wrong, but for what only follows from a problem already told.
func (r *reader) check(p pour.Plan, s pour.Shelf) {
	shape := slices.Clone(r.said)
	for _, f := range p.Check(s) {
		if slices.Contains(r.said, f.Path) || slices.ContainsFunc(shape, func(said string) bool { return follows(f.Path, said) }) {
			continue
		}
		r.say(f.Path, plain.Line(f.Value), plain.Line(f.Problem), plain.Line(f.Mend))
	}
}

// follows reports whether a fault at path may be no more than the echo of the problem at said: the same place, one
// inside the other, or a scent sent to a jug whose name could not be read.
func follows(path, said string) bool {
	if within(path, said) || within(said, path) {
		return true
	}
	batch, _, _ := strings.Cut(said, ".")
	return within(said, batch+".jug") && within(path, batch+".scent") && strings.HasSuffix(path, ".into")
}

func within(path, outer string) bool {
	rest, ok := strings.CutPrefix(path, outer)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// err gives everything found, in the order of the file, or nil.
func (r *reader) err() error {
	if len(r.problems) == 0 {
		return nil
	}
	slices.SortStableFunc(r.problems, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	more := max(0, len(r.problems)-mostProblems)
	return &Error{Problems: r.problems[:len(r.problems)-more], More: more}
}

// bare drops the indices of a path, which gives it as a header has it.
func bare(path string) string { return regexp.MustCompile(`\[\d+\]`).ReplaceAllString(path, "") }

// unknown reports a key that no plan has, with the key that was probably meant.
func (r *reader) unknown(path, key string, names []string, tree map[string]any) {
	at := join(path, key)
	free := slices.DeleteFunc(slices.Clone(names), func(n string) bool { _, used := tree[n]; return used })
	if near := nearest(key, free); near != "" {
		r.say(at, "", "is no key of a plan", fmt.Sprintf("did you mean %s?", near))
		r.said = append(r.said, join(path, near))
		return
	}
	mend := "take it out; the keys here are " + strings.Join(names, ", ")
	if home := homes(key); len(home) > 0 && path != "" {
		mend = fmt.Sprintf("move it: %s belongs %s", key, strings.Join(home, " or "))
	} else if len(home) > 0 {
		mend = fmt.Sprintf("move it: %s belongs %s, not above the first [section]", key, strings.Join(home, " or "))
	}
	r.say(at, "", "is no key of a plan here", mend)
}
