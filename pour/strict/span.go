package strict

import "strings"

// span is where something stands in the text of a file, in bytes. Of a header it is the line's own words.
type span struct {
	from    int // its key begins
	value   int // its value begins; of an item of a list and of a header as from
	to      int // it ends, without what stands behind it on the line
	between bool
}

// spans are the bytes of everything in a file, for who writes into it. A nil one notes nothing.
type spans struct {
	pairs   map[string]span // key = value, by the path of the key
	items   map[string]span // the items of lists between brackets
	headers map[string]span // [table] and [[table]], one for each time it is opened: the last counts
	last    map[string]span // the last pair that stands directly in a table, or the table's header
	order   []string        // headers in the order of the file
}

func newSpans() *spans {
	return &spans{pairs: map[string]span{}, items: map[string]span{}, headers: map[string]span{}, last: map[string]span{}}
}

func (s *spans) header(path string, from, to int) {
	if s == nil {
		return
	}
	s.headers[path] = span{from, from, to, false}
	s.last[path] = s.headers[path]
	s.order = append(s.order, path)
}

func (s *spans) pair(path, table string, at span) {
	if s == nil {
		return
	}
	s.pairs[path] = at
	s.last[table] = at
}

func (s *spans) item(path string, at span) {
	if s != nil {
		s.items[path] = at
	}
}

// spansOf finds the bytes of everything in a text.
func spansOf(src string) *spans {
	x := newScanner(src, true)
	x.spans = newSpans()
	x.all()
	return x.spans
}

// under says whether a path is another's, or of something in it.
func under(path, of string) bool {
	rest, ok := strings.CutPrefix(path, of)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// end is where all that belongs to a path ends; 0: nothing does.
func (s *spans) end(path string) int {
	end := 0
	for _, of := range []map[string]span{s.pairs, s.items, s.headers} {
		for at, x := range of {
			if under(at, path) {
				end = max(end, x.to)
			}
		}
	}
	return end
}

// holds says whether anything in the file stands below a path, or at it.
func (s *spans) holds(path string) bool { return s.end(path) > 0 }
