package trace

import "strings"

// Tree is what a thing went into, or what went into it, as lines.
type Tree struct {
	Of    Thing
	Way   Way
	Lines []Line // the first is the thing itself
}

// Line is one line of a tree.
type Line struct {
	Depth int // 0: the thing itself
	Thing Thing
	Text  string // the thing, and how much of the one above it went there
	Mark  string // what is odd about it; empty: nothing
	Again bool   // what is below it stands further up already

	last []bool // of it and of every line above it, from the root down: no line of the same thing comes after
}

// Tree follows a thing one way. Every thing is followed once: where it comes again its line says so, so that a tree is never longer than there are
// links, however they cross and even where a ledger that was mended by hand goes round. Places of bars that were told are not told again.
func (g Graph) Tree(t Thing, way Way) Tree {
	w := walk{g: g, way: way, seen: map[Thing]bool{t: true}, tree: Tree{Of: t, Way: way}}
	w.tree.Lines = []Line{{Thing: t, Text: g.Tell(t), Mark: g.mark(t)}}
	w.below(t, nil)
	return w.tree
}

// Both is what went into a thing and where it went, without a way in which there is nothing. A thing that is linked to nothing has one tree of one line.
func (g Graph) Both(t Thing) []Tree {
	var out []Tree
	for _, way := range []Way{Backward, Forward} {
		if len(g.Links(t, way)) > 0 {
			out = append(out, g.Tree(t, way))
		}
	}
	if len(out) == 0 {
		out = []Tree{g.Tree(t, Forward)}
	}
	return out
}

// walk is a tree being written.
type walk struct {
	g    Graph
	way  Way
	seen map[Thing]bool
	tree Tree
}

// below writes what a thing is linked to.
func (w *walk) below(t Thing, above []bool) {
	links := w.g.Links(t, w.way)
	var told []Link
	for _, l := range links {
		if far := l.far(w.way); far.Kind != Place || !w.seen[far] {
			told = append(told, l)
		}
	}
	for i, l := range told {
		far := l.far(w.way)
		line := Line{
			Depth: len(above) + 1, Thing: far, Text: w.g.tellLink(l, w.way), Mark: join(l.Doubt, w.g.mark(far)),
			last: append(append([]bool(nil), above...), i == len(told)-1),
		}
		line.Again = w.seen[far] && len(w.g.Links(far, w.way)) > 0
		seen := w.seen[far]
		w.seen[far] = true
		w.tree.Lines = append(w.tree.Lines, line)
		if !seen {
			w.below(far, line.last)
		}
	}
}

// Lead is the branches before the text of a line, in letters any printer has, and those before the further lines of a text that is broken.
func (l Line) Lead() (first, further string) {
	var b strings.Builder
	for i, last := range l.last {
		switch {
		case i == len(l.last)-1 && last:
			return b.String() + "`- ", b.String() + "   "
		case i == len(l.last)-1:
			return b.String() + "|- ", b.String() + "|  "
		case last:
			b.WriteString("   ")
		default:
			b.WriteString("|  ")
		}
	}
	return "", ""
}

// Words is the text of a line with what is odd about it.
func (l Line) Words() string {
	text := l.Text
	if l.Again {
		text += " (as above)"
	}
	if l.Mark != "" {
		text += " [! " + l.Mark + "]"
	}
	return text
}

// join is both of two texts.
func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}
