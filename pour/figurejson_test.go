package pour_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/paper"
)

// leaves is what the figures of a sheet say, each by its place as a script would ask for it: "base.jugs[1].batter_g". A leaf is a float64, a
// string or nil; of a list that is empty its own place is kept, as an empty text.
type leaves map[string]any

// written is a sheet's figures as `pourbench figures` prints them, read back.
func written(t rapid.TB, s pour.Sheet) leaves {
	t.Helper()
	var text bytes.Buffer
	if err := paper.WriteFigures(&text, s); err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := json.Unmarshal(text.Bytes(), &tree); err != nil {
		t.Fatal(err)
	}
	out := leaves{}
	out.take("", tree)
	return out
}

func (l leaves) take(at string, v any) {
	switch x := v.(type) {
	case map[string]any:
		for key, part := range x {
			l.take(strings.TrimPrefix(at+"."+key, "."), part)
		}
	case []any:
		if len(x) == 0 {
			l[at] = ""
		}
		for i, part := range x {
			l.take(fmt.Sprintf("%s[%d]", at, i), part)
		}
	default:
		l[at] = v
	}
}

// number is a leaf that has to be a number.
func (l leaves) number(t rapid.TB, at string) float64 {
	t.Helper()
	v, ok := l[at].(float64)
	if !ok {
		t.Fatalf("%s is %v, no number", at, l[at])
	}
	return v
}

// differ lists where two sets of leaves differ, numbers by more than a part in a thousand million, and what stands in one alone. A number that
// is none stands for one that must not be known.
func (l leaves) differ(want leaves) []string {
	var out []string
	for _, at := range slices.Sorted(maps.Keys(l)) {
		if _, ok := want[at]; !ok {
			out = append(out, fmt.Sprintf("%s is %v, and nobody reckoned it", at, l[at]))
		}
	}
	for _, at := range slices.Sorted(maps.Keys(want)) {
		got, ok := l[at]
		switch w := want[at].(type) {
		case float64:
			v, isNumber := got.(float64)
			if unknown := (math.IsNaN(w) || math.IsInf(w, 0)) && got == nil && ok; !unknown && (!isNumber || !near(v, w, 1e-9)) {
				out = append(out, fmt.Sprintf("%s is %v, reckoned %.12g", at, got, w))
			}
		default:
			if !ok || got != w {
				out = append(out, fmt.Sprintf("%s is %v, reckoned %v", at, got, w))
			}
		}
	}
	return out
}

// without drops what lies under any of the places named.
func (l leaves) without(places ...string) leaves {
	out := leaves{}
	for at, v := range l {
		if !slices.ContainsFunc(places, func(p string) bool { return strings.Contains(at, p) }) {
			out[at] = v
		}
	}
	return out
}
