package strict

import (
	"fmt"
	"maps"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"
)

// treeOf reads a TOML text whatever it says: lists of tables as lists, in either way of writing one.
func treeOf(src string) (tree any, err error) {
	defer func() {
		if recover() != nil {
			tree, err = nil, ErrOtherwise
		}
	}()
	raw := map[string]any{}
	if _, err := toml.Decode(src, &raw); err != nil {
		return nil, fmt.Errorf("it is no TOML: %w", err)
	}
	return evened(raw), nil
}

// evened is a tree in which a list is one kind of value.
func evened(v any) any {
	switch v := v.(type) {
	case map[string]any:
		out := make(map[string]any, len(v))
		for k, x := range v {
			out[k] = evened(x)
		}
		return out
	case []map[string]any:
		out := make([]any, len(v))
		for i, x := range v {
			out[i] = evened(x)
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i, x := range v {
			out[i] = evened(x)
		}
		return out
	}
	return v
}

// valueOf reads a value as TOML text.
func valueOf(text string) (any, bool) {
	tree, err := treeOf("v = " + text)
	if err != nil {
		return nil, false
	}
	of, ok := tree.(map[string]any)
	return of["v"], ok && len(of) == 1
}

// steps parts a path into keys and places: "oil[3].name" is oil, 3, name.
func steps(path string) []string {
	return strings.FieldsFunc(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' })
}

// planted is a tree with a value at a path; tables on the way are made.
func planted(tree any, path, value string) (any, bool) {
	v, ok := valueOf(value)
	if !ok {
		return nil, false
	}
	return at(tree, steps(path), func(any, bool) (any, bool) { return v, true })
}

// grown is a tree with one more item in a list.
func grown(tree any, path, item string) (any, bool) {
	v, ok := valueOf(item)
	if !ok {
		return nil, false
	}
	return at(tree, steps(path), func(old any, there bool) (any, bool) {
		list, isList := old.([]any)
		if there && !isList {
			return nil, false
		}
		return append(append([]any(nil), list...), v), true
	})
}

// at is a tree with something else at a path; its tables are copied on the way.
func at(tree any, path []string, change func(old any, there bool) (any, bool)) (any, bool) {
	if len(path) == 0 {
		return change(tree, tree != nil)
	}
	if list, ok := tree.([]any); ok {
		i, err := strconv.Atoi(path[0])
		if err != nil || i < 0 || i >= len(list) {
			return nil, false
		}
		out := append([]any(nil), list...)
		out[i], ok = at(list[i], path[1:], change)
		return out, ok
	}
	table, ok := tree.(map[string]any)
	if !ok && tree != nil {
		return nil, false
	}
	out := maps.Clone(table)
	if out == nil {
		out = map[string]any{}
	}
	out[path[0]], ok = at(table[path[0]], path[1:], change)
	return out, ok
}

// uprooted is a tree without what stands at a path.
func uprooted(tree any, path string) any {
	all := steps(path)
	home, last := all[:len(all)-1], all[len(all)-1]
	out, _ := at(tree, home, func(old any, _ bool) (any, bool) {
		switch old := old.(type) {
		case map[string]any:
			next := maps.Clone(old)
			delete(next, last)
			return next, true
		case []any:
			i, err := strconv.Atoi(last)
			if err != nil || i >= len(old) {
				return old, true
			}
			return append(append([]any(nil), old[:i]...), old[i+1:]...), true
		}
		return old, true
	})
	return out
}

// pruned is a tree without empty lists and empty tables, which taking out the last thing of one may or may not leave behind.
func pruned(v any) any {
	switch v := v.(type) {
	case map[string]any:
		out := map[string]any{}
		for k, x := range v {
			if x = pruned(x); x != nil {
				out[k] = x
			}
		}
		if len(out) == 0 {
			return nil
		}
		return out
	case []any:
		out := make([]any, 0, len(v))
		for _, x := range v {
			out = append(out, pruned(x))
		}
		if len(out) == 0 {
			return nil
		}
		return out
	}
	return v
}
