package pour

import (
	"slices"
	"strings"
)

// JugName is what a jug of a colourant is called until the maker names it: the word of its name that is a colour, so that it is short, or all
// of it up to what tells it from others of its kind.
func (c Colourant) JugName() string {
	name, _, _ := strings.Cut(c.Name, ",")
	name, _, _ = strings.Cut(name, " (")
	for word := range strings.FieldsSeq(name) {
		if slices.Contains(colourWords(), strings.ToLower(word)) {
			return strings.ToLower(word)
		}
	}
	return strings.TrimSpace(name)
}

// colourWords are the colours a jug can be called after.
func colourWords() []string {
	return strings.Fields("white blue indigo violet purple pink red orange yellow black brown green gold copper bronze silver turquoise rose pearl")
}
