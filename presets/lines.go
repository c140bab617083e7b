package presets

import "strings"

// places tells on which line of a TOML file an entry or a key stands: the decoder gives positions for broken TOML only.
// It knows the shapes a shelf file is written in ([[table]] entries with one key a line) and answers 0 for any other.
type places struct {
	entries map[string][]place // by table name, in the order of the file
	top     map[string]int     // keys outside any table, and the first header of each table
}

type place struct {
	line int            // of its [[header]]
	keys map[string]int // by key; keys of a table inside it are "table.key"
}

func findPlaces(text string) places {
	p := places{entries: map[string][]place{}, top: map[string]int{}}
	table, prefix, quote := "", "", ""
	for i, line := range strings.Split(text, "\n") {
		if quote != "" || strings.TrimSpace(line) == "" {
			quote = openQuote(line, quote)
			continue
		}
		header, isEntry := headerOf(line)
		switch {
		case isEntry && !strings.Contains(header, "."):
			table, prefix = header, ""
			p.entries[table] = append(p.entries[table], place{line: i + 1, keys: map[string]int{}})
			p.note(p.top, header, i+1)
		case header != "":
			prefix = p.open(table, header, i+1)
		default:
			p.key(table, prefix, line, i+1)
		}
		quote = openQuote(line, "")
	}
	return p
}

// open enters a table inside an entry, or one that stands alone, and returns the prefix of its keys.
func (p places) open(table, header string, line int) string {
	first, rest, _ := strings.Cut(header, ".")
	p.note(p.top, first, line)
	if first != table || rest == "" || len(p.entries[table]) == 0 {
		return header + "."
	}
	p.note(p.last(table).keys, rest, line)
	return rest + "."
}

func (p places) key(table, prefix, line string, number int) {
	name, _, ok := strings.Cut(line, "=")
	name = strings.Trim(strings.TrimSpace(name), `"'`)
	if !ok || name == "" || strings.HasPrefix(name, "#") {
		return
	}
	if len(p.entries[table]) == 0 {
		p.note(p.top, prefix+name, number)
		return
	}
	keys := p.last(table).keys
	p.note(keys, prefix+name, number)
	first, _, _ := strings.Cut(name, ".")
	p.note(keys, prefix+first, number)
}

func (p places) last(table string) place { return p.entries[table][len(p.entries[table])-1] }

func (p places) note(keys map[string]int, key string, line int) {
	if _, seen := keys[key]; !seen {
		keys[key] = line
	}
}

// line returns where a key of an entry stands, or its header, or the table's first, or 0.
func (p places) line(table string, entry int, key string) int {
	list := p.entries[table]
	if entry < 0 || entry >= len(list) {
		return p.top[table]
	}
	if line, ok := list[entry].keys[key]; ok {
		return line
	}
	return list[entry].line
}

// headerOf returns the name in a [table] or [[table]] header, and whether it is the second kind.
func headerOf(line string) (name string, isEntry bool) {
	line = strings.TrimSpace(line)
	if !strings.HasPrefix(line, "[") {
		return "", false
	}
	inner, _, ok := strings.Cut(strings.TrimLeft(line, "["), "]")
	if !ok {
		return "", false
	}
	return strings.Trim(strings.TrimSpace(inner), `"'`), strings.HasPrefix(line, "[[")
}

// openQuote returns the mark of the multi-line string that is still open at the end of a line.
func openQuote(line, quote string) string {
	for line != "" {
		if quote != "" {
			_, after, closed := strings.Cut(line, quote)
			if !closed {
				return quote
			}
			line, quote = after, ""
			continue
		}
		double, single := strings.Index(line, `"""`), strings.Index(line, `'''`)
		switch {
		case double < 0 && single < 0:
			return ""
		case single < 0 || double >= 0 && double < single:
			line, quote = line[double+3:], `"""`
		default:
			line, quote = line[single+3:], `'''`
		}
	}
	return quote
}
