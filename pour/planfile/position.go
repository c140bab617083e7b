package planfile

import "strings"

// place is where something stands in a file: line and column from 1, the column counted in letters.
type place struct{ line, column int }

// index says where every key of a TOML file stands. The TOML library gives positions for broken syntax only; a value
// of the wrong type or outside its range needs one as much.
type index struct {
	at       map[string]place
	comments []string // without the hash, trimmed
	deep     place    // of the first bracket or dotted key that goes deeper than any plan; line 0: none
}

// find returns the place of a key or, when it does not stand in the file, of the nearest table around it.
func (x index) find(path string) place {
	for path != "" {
		if p, ok := x.at[path]; ok {
			return p
		}
		path = parent(path)
	}
	return place{}
}

// parent is the path of what holds a key: "a.b[1].c" is held by "a.b[1]", that by "a.b", that by "a".
func parent(path string) string {
	return path[:max(0, strings.LastIndexAny(path, ".["))]
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
