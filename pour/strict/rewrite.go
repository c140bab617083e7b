package strict

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
)

// ErrOtherwise is why a file is not written into: it has been written in a way that the change cannot be made in without touching more.
var ErrOtherwise = errors.New("this place of the file is written in a way that only a hand can change")

// Pair is a key and its value as TOML text: "12.5", `"olive"`.
type Pair struct{ Key, Value string }

// Set gives a key of a TOML text a value and keeps every other byte: comments, blank lines, order, line ends. The path is that of faults,
// "oil[3].density_g_ml"; the value is TOML text. A key that is not there comes after the others of its table, a section that is not there
// at the end. What was written is read back: where it is not the text with this one change, nothing is changed and the error is
// [ErrOtherwise] or says what is no TOML.
func Set(src, path, value string) (string, error) {
	return rewritten(src, func(t *text) (string, error) { return t.set(path, value) },
		func(tree any) (any, bool) { return planted(tree, path, value) }, func(tree any) any { return tree })
}

// Unset takes a key, a section or an item of a list out of a TOML text and keeps every other byte; a comment behind the key stays. What
// is not there is no error.
func Unset(src, path string) (string, error) {
	if !spansOf(strings.TrimPrefix(src, bom)).holds(path) {
		return src, nil
	}
	return rewritten(src, func(t *text) (string, error) { return t.unset(path) },
		func(tree any) (any, bool) { return pruned(uprooted(tree, path)), true }, pruned)
}

// Append adds a table to a list of tables, `oil` or `scent[2].allergen`, after the last one of it; of a list that is not there at the end
// of what it belongs to. Every other byte stays.
func Append(src, list string, pairs ...Pair) (string, error) {
	return rewritten(src, func(t *text) (string, error) { return t.add(list, pairs) },
		func(tree any) (any, bool) { return grown(tree, list, inline(pairs)) }, func(tree any) any { return tree })
}

// Value is what stands at a key of a TOML text, as it is written; empty: nothing, or a section of its own.
func Value(src, path string) string {
	src = strings.TrimPrefix(src, bom)
	at := spansOf(src).pairs[path]
	return src[at.value:at.to]
}

const bom = "\ufeff"

// rewritten makes a change and looks whether what came out, as read has it, is what was asked for, and nothing else.
func rewritten(src string, change func(*text) (string, error), want func(tree any) (any, bool), read func(tree any) any) (string, error) {
	bare := strings.TrimPrefix(src, bom)
	before, err := treeOf(bare)
	if err != nil {
		return "", err
	}
	out, err := change(&text{src: bare, spans: spansOf(bare)})
	if err != nil {
		return "", err
	}
	wanted, ok := want(before)
	after, err := treeOf(out)
	switch {
	case !ok:
		return "", ErrOtherwise
	case err != nil:
		return "", fmt.Errorf("%w (%w)", ErrOtherwise, err)
	case !reflect.DeepEqual(read(after), wanted):
		return "", ErrOtherwise
	}
	return src[:len(src)-len(bare)] + out, nil
}

// text is a TOML text with the places of everything in it.
type text struct {
	src string
	*spans
}

// put is the text with something in the place of some bytes.
func (t *text) put(from, to int, what string) string { return t.src[:from] + what + t.src[to:] }

// newline is how lines end in this text.
func (t *text) newline() string {
	if strings.Contains(t.src, "\r\n") {
		return "\r\n"
	}
	return "\n"
}

// lineEnd is where the line ends that a byte stands on, before its end sign.
func (t *text) lineEnd(at int) int {
	if n := strings.IndexByte(t.src[at:], '\n'); n >= 0 {
		at += n
		if at > 0 && t.src[at-1] == '\r' {
			at--
		}
		return at
	}
	return len(t.src)
}

// lineStart is where the line begins that a byte stands on.
func (t *text) lineStart(at int) int { return strings.LastIndexByte(t.src[:at], '\n') + 1 }

// indent is the blanks that the line of a byte begins with.
func (t *text) indent(at int) string {
	line := t.src[t.lineStart(at):at]
	return line[:len(line)-len(strings.TrimLeft(line, " \t"))]
}

// set writes a value over the one that is there, or a new line or item for it.
func (t *text) set(path, value string) (string, error) {
	if at, ok := t.pairs[path]; ok {
		return t.put(at.value, at.to, value), nil
	}
	if at, ok := t.items[path]; ok {
		return t.put(at.value, at.to, value), nil
	}
	key := lastKey(path)
	for home := parent(path); ; home = parent(home) {
		switch at, inPair := t.pairs[home]; {
		case inPair:
			return t.into(home, at, key+" = "+value)
		case t.items[home].to > 0:
			return t.into(home, t.items[home], key+" = "+value)
		case t.headers[home].to > 0:
			return t.below(t.last[home], key+" = "+value), nil
		case home == "":
			return t.atTop(path, key, value)
		}
		key = lastKey(home) + "." + key
	}
}

// lastKey is the last key of a path.
func lastKey(path string) string { return strings.TrimPrefix(path[len(parent(path)):], ".") }

// into adds something to an inline table or a list between brackets.
func (t *text) into(path string, at span, what string) (string, error) {
	end := at.to - 1
	if end <= at.value || !strings.ContainsRune("}]", rune(t.src[end])) {
		return "", ErrOtherwise
	}
	last := 0
	for _, of := range []map[string]span{t.pairs, t.items} {
		for p, x := range of {
			if p != path && under(p, path) {
				last = max(last, x.to)
			}
		}
	}
	if last == 0 {
		pad := " "
		if t.src[end] == ']' {
			pad = ""
		}
		return t.put(at.value+1, end, pad+what+pad), nil
	}
	return t.put(last, last, ", "+what), nil
}

// below writes a line below the one that something stands on, indented like it.
func (t *text) below(x span, line string) string {
	end := t.lineEnd(x.to)
	return t.put(end, end, t.newline()+t.indent(x.from)+line)
}

// atTop writes a key that stands above the first header, or a section that is not there yet.
func (t *text) atTop(path, key, value string) (string, error) {
	home := parent(path)
	switch {
	case home != "" && !t.holds(home):
		return t.atEnd("["+Header(home)+"]", Pair{lastKey(path), value}), nil
	case t.last[""].to > 0:
		return t.below(t.last[""], key+" = "+value), nil
	case len(t.order) == 0:
		return t.atEnd("", Pair{key, value}), nil
	}
	at := t.lineStart(t.headers[t.order[0]].from)
	for at > 0 && strings.HasPrefix(strings.TrimLeft(t.src[t.lineStart(at-1):], " \t"), "#") { // the comment on the first header stays with it
		at = t.lineStart(at - 1)
	}
	return t.put(at, at, key+" = "+value+t.newline()+t.newline()), nil
}

// atEnd writes a table at the end of the file, a blank line before it.
func (t *text) atEnd(header string, pairs ...Pair) string {
	nl := t.newline()
	lead := ""
	switch {
	case t.src == "":
	case !strings.HasSuffix(t.src, "\n"):
		lead = nl + nl
	case header != "" && strings.TrimSpace(t.src) != "":
		lead = nl
	}
	return t.src + lead + block(header, "", nl, pairs)
}

// block is a header with its pairs, a line each.
func block(header, indent, nl string, pairs []Pair) string {
	var b strings.Builder
	if header != "" {
		b.WriteString(indent + header + nl)
	}
	for _, p := range pairs {
		b.WriteString(indent + p.Key + " = " + p.Value + nl)
	}
	return b.String()
}

// inline is pairs as one inline table.
func inline(pairs []Pair) string {
	parts := make([]string, len(pairs))
	for i, p := range pairs {
		parts[i] = p.Key + " = " + p.Value
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}

// add adds a table to a list.
func (t *text) add(list string, pairs []Pair) (string, error) {
	if at, ok := t.pairs[list]; ok {
		return t.into(list, at, inline(pairs))
	}
	header, home := "[["+Header(list)+"]]", parent(list)
	if t.headers[list+"[0]"].to == 0 && home != "" && t.headers[home].to == 0 { // it is in an inline table, where no header reaches
		return t.set(list, "["+inline(pairs)+"]")
	}
	if home == "" {
		return t.atEnd(header, pairs...), nil
	}
	like := t.headers[home]
	if first, ok := t.headers[list+"[0]"]; ok {
		like = first
	}
	nl, end := t.newline(), t.lineEnd(t.end(home))
	return t.put(end, end, nl+nl+strings.TrimSuffix(block(header, t.indent(like.from), nl, pairs), nl)), nil
}

// unset takes out what stands at a path.
func (t *text) unset(path string) (string, error) {
	for _, of := range []map[string]span{t.pairs, t.items} {
		if at, ok := of[path]; ok {
			if at.between {
				return t.unlist(at), nil
			}
			return t.unline(at.from, at.to), nil
		}
	}
	if at, ok := t.headers[path]; ok {
		return t.unline(at.from, t.end(path)), nil
	}
	if at, ok := t.headers[path+"[0]"]; ok {
		return t.again(t.unline(at.from, t.end(path+"[0]")), path)
	}
	return t.undot(path)
}

// again takes out what is left at a path of a text.
func (t *text) again(out, path string) (string, error) {
	next := &text{src: out, spans: spansOf(out)}
	if !next.holds(path) {
		return out, nil
	}
	return next.unset(path)
}

// undot takes out a table that is written as dotted keys, one after the other.
func (t *text) undot(path string) (string, error) {
	first, from := "", len(t.src)
	for p, at := range t.pairs {
		if under(p, path) && at.from < from {
			first, from = p, at.from
		}
	}
	if first == "" {
		return "", ErrOtherwise
	}
	return t.again(t.unline(from, t.pairs[first].to), path)
}

// unline takes bytes out, and their line with them where nothing else stands on it.
func (t *text) unline(from, to int) string {
	start, end := t.lineStart(from), t.lineEnd(to)
	if strings.TrimSpace(t.src[start:from]) != "" || strings.TrimSpace(t.src[to:end]) != "" {
		for to < end && (t.src[to] == ' ' || t.src[to] == '\t') {
			to++
		}
		return t.put(from, to, "")
	}
	if end < len(t.src) {
		end += strings.IndexByte(t.src[end:], '\n') + 1
	}
	return t.put(start, end, "")
}

// unlist takes an item out of an inline table or a list, and the comma that went with it.
func (t *text) unlist(at span) string {
	rest := strings.TrimLeft(t.src[at.to:], " \t")
	if strings.HasPrefix(rest, ",") {
		rest = strings.TrimLeft(rest[1:], " \t")
		return t.put(at.from, len(t.src)-len(rest), "")
	}
	before := strings.TrimRight(t.src[:at.from], " \t\r\n")
	if cut, ok := strings.CutSuffix(before, ","); ok {
		return t.put(len(cut), at.to, "")
	}
	return t.put(at.from, at.to, "")
}
