package strict

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// mostDepth bounds arrays within arrays and keys within keys; our files nest three deep. The TOML library needs time
// that grows with the square of the depth, so a file is scanned before it is parsed.
const mostDepth = 64

// scanner walks a file. Where the syntax is broken it moves on by one byte: what it tells from there on is of no use, and not used.
type scanner struct {
	src      string
	i        int
	line     int
	from     int // byte offset up to which this line's letters are counted
	seen     int // letters before that
	depth    int
	here     string         // path of the table the keys belong to
	count    map[string]int // items so far of every array of tables
	places   map[string]place
	spans    *spans   // the bytes of everything, for who writes into the text; nil: not wanted
	comments []string // without the hash, trimmed
	deep     place    // of the first bracket or dotted key that goes deeper than any file of ours; line 0: none
}

// newScanner looks for depth and comments alone or, what takes longer, for the place of every key too.
func newScanner(src string, places bool) *scanner {
	s := &scanner{src: strings.TrimPrefix(src, "\ufeff"), line: 1}
	if places {
		s.places, s.count = map[string]place{}, map[string]int{}
	}
	return s
}

func (s *scanner) all() {
	for s.blank(); s.i < len(s.src); s.blank() {
		before := s.i
		if s.peek() == '[' {
			s.header()
		} else {
			s.pair(s.here)
		}
		if s.i == before {
			s.i++
		}
	}
}

func (s *scanner) peek() byte {
	if s.i < len(s.src) {
		return s.src[s.i]
	}
	return 0
}

func (s *scanner) place() place {
	s.seen += utf8.RuneCountInString(s.src[s.from:s.i])
	s.from = s.i
	return place{s.line, s.seen + 1}
}

// mark notes where a key stands; the first time counts.
func (s *scanner) mark(path string, p place) {
	if _, ok := s.places[path]; !ok {
		s.places[path] = p
	}
}

// to moves to a byte offset and counts the lines on the way.
func (s *scanner) to(end int) {
	for end = min(end, len(s.src)); s.i < end; s.i++ {
		if s.src[s.i] == '\n' {
			s.line++
			s.from, s.seen = s.i+1, 0
		}
	}
}

// blank passes over spaces, ends of lines and comments.
func (s *scanner) blank() {
	for s.i < len(s.src) {
		switch s.peek() {
		case ' ', '\t', '\r', '\n':
			s.to(s.i + 1)
		case '#':
			end := s.i + len(s.src[s.i:])
			if n := strings.IndexByte(s.src[s.i:], '\n'); n >= 0 {
				end = s.i + n
			}
			s.comments = append(s.comments, strings.TrimSpace(s.src[s.i+1:end]))
			s.to(end)
		default:
			return
		}
	}
}

func (s *scanner) spaces() {
	for s.peek() == ' ' || s.peek() == '\t' {
		s.i++
	}
}

// key reads a dotted key and the place of its first letter.
func (s *scanner) key() ([]string, place) {
	var parts []string
	s.spaces()
	at := s.place()
	for s.i < len(s.src) {
		if len(parts) == mostDepth {
			s.stop(at)
			break
		}
		s.spaces()
		from := s.i
		if c := s.peek(); c == '"' || c == '\'' {
			s.text()
			parts = append(parts, strings.Trim(s.src[from:s.i], string(c)))
		} else {
			for s.i < len(s.src) && !strings.ContainsRune(" \t\r\n.=[]{},#\"'", rune(s.peek())) {
				s.i++
			}
			parts = append(parts, s.src[from:s.i])
		}
		s.spaces()
		if s.peek() != '.' {
			break
		}
		s.i++
	}
	return parts, at
}

// stop ends the scan at something too deep.
func (s *scanner) stop(at place) {
	s.deep = at
	s.i = len(s.src)
}

// header reads [table] or [[table]] and makes it the one the next keys belong to.
func (s *scanner) header() {
	at, from := s.place(), s.i
	s.i++
	array := s.peek() == '['
	if array {
		s.i++
	}
	parts, _ := s.key()
	if s.places != nil {
		s.enter(parts, array, at)
	}
	for s.peek() == ']' || s.peek() == ' ' || s.peek() == '\t' {
		s.i++
	}
	s.spans.header(s.here, from, s.bare(from))
}

// enter makes a table the one the next keys belong to.
func (s *scanner) enter(parts []string, array bool, at place) {
	path := ""
	for k, part := range parts {
		path = join(path, part)
		s.mark(path, at)
		if array && k == len(parts)-1 {
			s.count[path]++
		}
		if n := s.count[path]; n > 0 {
			path = fmt.Sprintf("%s[%d]", path, n-1)
			s.mark(path, at)
		}
	}
	s.here = path
}

// pair reads key = value.
func (s *scanner) pair(table string) {
	s.spaces()
	from := s.i
	parts, at := s.key()
	path := table
	if s.places != nil {
		for _, part := range parts {
			path = join(path, part)
			s.mark(path, at)
		}
	}
	if s.spaces(); s.peek() == '=' {
		s.i++
		value := s.i + len(s.src[s.i:]) - len(strings.TrimLeft(s.src[s.i:], " \t"))
		s.value(path)
		s.spans.pair(path, table, span{from, value, s.bare(value), s.depth > 0})
	}
}

// bare is where what was read from there on ends, without the blanks behind it. What is not closed is read past the end of the text.
func (s *scanner) bare(from int) int {
	return from + len(strings.TrimRight(s.src[from:max(from, min(s.i, len(s.src)))], " \t"))
}

// value reads whatever stands after the sign, and marks the items of arrays and inline tables.
func (s *scanner) value(path string) {
	s.depth++
	defer func() { s.depth-- }()
	if s.depth > mostDepth {
		s.stop(s.place())
		return
	}
	s.spaces()
	switch s.peek() {
	case '"', '\'':
		s.text()
	case '[':
		s.items(']', func(n int) {
			item := path
			if s.places != nil {
				item = fmt.Sprintf("%s[%d]", path, n)
				s.mark(item, s.place())
			}
			from := s.i
			s.value(item)
			s.spans.item(item, span{from, from, s.bare(from), true})
		})
	case '{':
		s.items('}', func(int) { s.pair(path) })
	default:
		for s.i < len(s.src) && !strings.ContainsRune(",]}#\r\n", rune(s.peek())) {
			s.i++
		}
	}
}

// items reads what stands between brackets, item by item.
func (s *scanner) items(end byte, item func(n int)) {
	s.i++
	for n := 0; s.i < len(s.src); {
		s.blank()
		before := s.i
		switch s.peek() {
		case end:
			s.i++
			return
		case ',':
			s.i++
		default:
			item(n)
			n++
		}
		if s.i == before {
			s.i++
		}
	}
}

// text passes over a quoted text of any of the four kinds.
func (s *scanner) text() {
	quote := s.src[s.i : s.i+1]
	long := strings.Repeat(quote, 3)
	if strings.HasPrefix(s.src[s.i:], long) {
		s.i += 3
		s.close(quote, long)
		for s.peek() == quote[0] { // up to two quotes may stand right before the closing three
			s.i++
		}
		return
	}
	s.i++
	s.close(quote, quote)
}

// close moves past the closing mark; a backslash hides the letter after it, but not between single quotes.
func (s *scanner) close(quote, mark string) {
	for s.i < len(s.src) && !strings.HasPrefix(s.src[s.i:], mark) {
		if s.src[s.i] == '\\' && quote == `"` {
			s.to(s.i + 1)
		}
		s.to(s.i + 1)
	}
	s.i = min(s.i+len(mark), len(s.src))
}
