// Package planfile turns plans into TOML files and back.
//
// Reading is strict: an unknown key, a value of the wrong kind and a figure that cannot be are refused, each with its
// line and how to mend it. What keys there are, pour's list of fields says; reading, writing and the reference go by it.
// Writing is plain: the keys in a fixed order, floats in the shortest form that reads back as the same number.
// The program owns the file: comments in it are not kept when it saves, and the first line says so.
package planfile

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// mostItems is above the longest list a plan can have: an order of its own for the rounds of as many jugs and passes as there may be.
const mostItems = 8192

// form is the kind of file a plan is. A plan with every list full and pages of notes stays under a tenth of the bytes;
// the items are above what [pour.Plan.Check] lets pass, which has the better words for a list that is only somewhat too long.
func form() strict.Form {
	return strict.Form{
		Noun: "plan", Bytes: 512 << 10, Items: mostItems, Letters: 200, Long: "longer text goes into notes",
		Again: "begin again from a plan that pourbench wrote", Home: homes,
	}
}

// Read reads a plan and checks it against the shelf. The name stands in front of every fault, as a path or "stdin" would.
// Any failure is an [*strict.Error].
func Read(name string, r io.Reader, s pour.Shelf) (pour.Plan, error) {
	src, err := form().Slurp(name, r)
	if err != nil {
		return pour.Plan{}, err
	}
	return read(name, src, &s)
}

// read reads a plan; with no shelf it is not checked, only its shape is.
func read(name, src string, s *pour.Shelf) (pour.Plan, error) {
	file, err := form().Open(name, src)
	if err != nil {
		return pour.Plan{}, err
	}
	p := pour.Blank()
	if top := file.Top(); format(top) {
		readPlan(top, &p)
		if s != nil {
			check(file, p, *s)
		}
	}
	if err := file.Err(); err != nil {
		return pour.Plan{}, err
	}
	return p, nil
}

// format reads the version of the file, and reports whether the rest can be read by this program.
func format(top *strict.Table) bool {
	const key, newest = "format", int64(pour.FormatVersion)
	n := newest
	if !top.Has(key) {
		top.Say(key, "", "is missing", fmt.Sprintf("write format = %d as the first line, if this is a plan", newest))
	}
	top.Whole(key, &n)
	switch {
	case n > newest:
		top.Say(key, fmt.Sprint(n), fmt.Sprintf("this plan was written by a newer pourbench; this one reads format %d", newest),
			"use the newer pourbench; the file is fine and was left as it is")
	case n < newest:
		top.Say(key, fmt.Sprint(n), "there never was such a format", fmt.Sprintf("write format = %d", newest))
	}
	return n == newest
}

func readPlan(top *strict.Table, p *pour.Plan) {
	if top.Has(string(pour.Icing)) {
		b := pour.BlankBatch(pour.Icing)
		p.Icing = &b
	}
	known := []string{"format", string(pour.Icing)}
	tables := p.Tables()
	for _, t := range tables[1:] {
		known = append(known, t.Key)
	}
	readTable(top, tables[0].Fields, known...)
	for _, t := range tables[1:] {
		in, ok := top.Section(t.Key)
		if !ok {
			continue
		}
		readTable(in, t.Fields)
		if n := pour.BatchName(t.Key); n == pour.Base || n == pour.Icing {
			size(in, n, p.Batch(n))
		}
	}
}

// readTable reads one table by its fields; known are keys that are read elsewhere.
func readTable(t *strict.Table, fields []pour.Field, known ...string) {
	for _, f := range fields {
		known = append(known, f.Key)
	}
	t.Only(known...)
	for _, f := range fields {
		if f.Need == pour.Required {
			t.Missing(f.Key)
		}
		there := false
		switch text, isText := f.At.(*string); {
		case isText && f.Takes == pour.TakesProse:
			t.Prose(f.Key, text)
		case f.List():
			in := t.List(f.Key)
			f.Items(len(in), func(i int, fields []pour.Field) { readTable(in[i], fields) })
		default:
			there = t.Read(f.Key, f.At)
		}
		if f.Known != nil {
			*f.Known = there
		}
	}
}

// size takes the way a batch is sized from the one size given, where the file does not name the way.
func size(t *strict.Table, n pour.BatchName, b *pour.Batch) {
	if t.Has("size") {
		return
	}
	ways := []struct{ key, size string }{{"oils_g", pour.SizeOils}}
	if n == pour.Icing {
		ways = append(ways, struct{ key, size string }{"per_bar_g", pour.SizeBar}, struct{ key, size string }{"layer_mm", pour.SizeLayer})
	}
	given := 0
	for _, w := range ways {
		if t.Has(w.key) {
			b.Size = w.size
			given++
		}
	}
	if given > 1 {
		t.Say("size", "", "is missing, and more than one size is given", `write size = "bar", "layer" or "oils", whichever counts`)
	}
}

// check adds what the plan itself finds wrong, but for what only follows from a fault already told.
func check(file *strict.File, p pour.Plan, s pour.Shelf) {
	shape, told := file.Told(), []string(nil)
	for _, f := range p.Check(s) {
		if slices.Contains(told, f.Path) || slices.ContainsFunc(shape, func(said string) bool { return follows(f.Path, said) }) {
			continue
		}
		file.Add(f)
		told = append(told, f.Path)
	}
}

// follows reports whether a fault at path may be no more than the echo of the fault at said: the same place, one
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

// homes says where a key belongs, for a key that stands in the wrong section.
func homes(key string) []string {
	var out []string
	eachTable(func(header string, fields []pour.Field) {
		for _, f := range fields {
			switch {
			case f.Key != key || f.List():
			case header == "":
				out = append(out, "above the first [section]")
			default:
				out = append(out, "under "+header)
			}
		}
	})
	return out
}

// eachTable visits every table a plan file can have, the icing's and those of lists included, with its header; the rows point at a plan of no use.
func eachTable(visit func(header string, fields []pour.Field)) {
	p := pour.Blank()
	p.Icing = &pour.Batch{}
	for _, t := range p.Tables() {
		header := ""
		if t.Key != "" {
			header = "[" + t.Key + "]"
		}
		visit(header, t.Fields)
		eachList(t.Key, t.Fields, visit)
	}
}

func eachList(path string, fields []pour.Field, visit func(header string, fields []pour.Field)) {
	for _, f := range fields {
		f.Items(1, func(_ int, fields []pour.Field) {
			at := path + "." + f.Key
			visit("[["+at+"]]", fields)
			eachList(at, fields, visit)
		})
	}
}
