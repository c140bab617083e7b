package strict

import "strings"

// place is where something stands in a file: line and column from 1, the column counted in letters. The TOML library
// gives positions for broken syntax only; a value of the wrong type or outside its range needs one as much.
type place struct{ line, column int }

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
