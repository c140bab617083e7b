// Package planfile turns plans into TOML files and back.
//
// Reading is strict: an unknown key, a value of the wrong kind and a figure that cannot be are refused, each with its
// line and how to mend it. All text is made safe for terminals here, once, so that nothing after it has to.
// Writing is plain: the keys in a fixed order, floats in the shortest form that reads back as the same number.
// The program owns the file: comments in it are not kept when it saves, and the first line says so.
package planfile

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"pourbench/pour"
	"pourbench/pour/plain"
)

// mostBytes bounds a plan file. A plan with every list full and pages of notes stays under a tenth of it.
const mostBytes = 512 << 10

// Read reads a plan and checks it against the shelf. The name stands in front of every problem, as a path or "stdin" would.
// Any failure is an [*Error].
func Read(name string, r io.Reader, s pour.Shelf) (pour.Plan, error) {
	src, err := slurp(name, r)
	if err != nil {
		return pour.Plan{}, err
	}
	p, _, err := read(name, src, &s)
	return p, err
}

func slurp(name string, r io.Reader) (string, error) {
	src, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err != nil {
		return "", failed(name, err, "look whether the file can be read at all")
	}
	if len(src) > mostBytes {
		return "", failed(name, fmt.Errorf("is longer than %d KiB, which no plan is", mostBytes>>10), "name a plan file")
	}
	return string(src), nil
}

// reader collects what is wrong with one file while it is read.
type reader struct {
	file     string
	index    index
	problems []Problem
	said     []string // paths that have a problem: nothing more is said of them
}

// read reads a plan; with no shelf it is not checked, only its shape is.
func read(name, src string, s *pour.Shelf) (pour.Plan, index, error) {
	r := reader{file: plain.Line(name), index: newIndex(src)}
	tree, problem := parse(src, r.index)
	if problem != nil {
		problem.File = r.file
		return pour.Plan{}, index{}, &Error{Problems: []Problem{*problem}}
	}
	p := blankPlan()
	if r.format(tree) {
		r.plan(tree, &p)
		if s != nil {
			r.check(p, *s)
		}
	}
	if err := r.err(); err != nil {
		return pour.Plan{}, r.index, err
	}
	return p, r.index, nil
}

// parse reads the TOML. The library is trusted to report, and watched in case it panics on what it did not foresee.
func parse(src string, x index) (tree map[string]any, problem *Problem) {
	defer func() {
		if recover() != nil {
			problem = &Problem{What: "is not TOML that can be read", Mend: "begin again from a plan that pourbench wrote"}
		}
	}()
	if x.deep.line > 0 {
		return nil, &Problem{Line: x.deep.line, Column: x.deep.column, What: "goes deeper than any plan", Mend: "close brackets where they end; a key has at most three dots"}
	}
	if _, err := toml.Decode(src, &tree); err != nil {
		var broken toml.ParseError
		if errors.As(err, &broken) {
			return nil, syntax(src, broken)
		}
		return nil, &Problem{What: plain.Line(err.Error()), Mend: "begin again from a plan that pourbench wrote"}
	}
	return tree, nil
}

// format reads the version of the file, and reports whether the rest can be read by this program.
func (r *reader) format(tree map[string]any) bool {
	v, ok := tree["format"]
	if !ok {
		r.say("format", "", "is missing", fmt.Sprintf("write format = %d as the first line, if this is a plan", pour.FormatVersion))
		return true
	}
	n, ok := r.whole("format", v)
	switch {
	case !ok || n == pour.FormatVersion:
		return true
	case n > pour.FormatVersion:
		r.say("format", fmt.Sprint(n), fmt.Sprintf("this plan was written by a newer pourbench; this one reads format %d", pour.FormatVersion),
			"use the newer pourbench; the file is fine and was left as it is")
	default:
		r.say("format", fmt.Sprint(n), "there never was such a format", fmt.Sprintf("write format = %d", pour.FormatVersion))
	}
	return false
}

func (r *reader) plan(tree map[string]any, p *pour.Plan) {
	if _, ok := tree[string(pour.Icing)]; ok {
		b := blankBatch(defaultIcingSize)
		p.Icing = &b
	}
	known := []string{"format", string(pour.Icing)}
	all := sections(p)
	for _, s := range all {
		known = append(known, s.key)
	}
	r.table("", tree, topFields(p), known)
	for _, s := range all {
		v, ok := tree[s.key]
		sub, isTable := v.(map[string]any)
		if ok && !isTable {
			r.kind(s.key, v, "a section is wanted", fmt.Sprintf("write a line [%s] and its keys under it", s.key))
			continue
		}
		r.table(s.key, sub, s.fields, nil)
		if b := p.Batch(pour.BatchName(s.key)); b != nil && isBatch(s.key) {
			r.size(s.key, sub, b)
		}
	}
}

func isBatch(key string) bool { return key == string(pour.Base) || key == string(pour.Icing) }

// table reads one table by its fields; known are keys that are read elsewhere.
func (r *reader) table(path string, tree map[string]any, fields []field, known []string) {
	names := slices.Clone(known)
	for _, f := range fields {
		names = append(names, f.key)
	}
	unknown := make([]string, 0)
	for key := range tree {
		if !slices.Contains(names, key) {
			unknown = append(unknown, key)
		}
	}
	slices.Sort(unknown)
	for _, key := range unknown {
		r.unknown(path, key, names, tree)
	}
	for _, f := range fields {
		at := join(path, f.key)
		v, ok := tree[f.key]
		switch {
		case ok:
			r.put(at, v, f.at)
		case f.need == required && !slices.Contains(r.said, at):
			r.say(at, "", "is missing", missingMend(path, f.key))
		}
	}
}

func missingMend(path, key string) string {
	switch {
	case path == "":
		return fmt.Sprintf("write %s = … above the first [section]", key)
	case strings.Contains(path, "["):
		return fmt.Sprintf("write %s = … in this [[%s]]", key, bare(path))
	}
	return fmt.Sprintf("write %s = … under [%s]", key, path)
}

// size takes the way a batch is sized from the one size given, where the file does not name the way.
func (r *reader) size(path string, tree map[string]any, b *pour.Batch) {
	if _, ok := tree["size"]; ok {
		return
	}
	ways := []struct{ key, size string }{{"oils_g", pour.SizeOils}}
	if path == string(pour.Icing) {
		ways = append(ways, struct{ key, size string }{"per_bar_g", pour.SizeBar}, struct{ key, size string }{"layer_mm", pour.SizeLayer})
	}
	given := 0
	for _, w := range ways {
		if _, ok := tree[w.key]; ok {
			b.Size = w.size
			given++
		}
	}
	if given > 1 {
		r.say(path+".size", "", "is missing, and more than one size is given", `write size = "bar", "layer" or "oils", whichever counts`)
	}
}
