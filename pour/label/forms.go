package label

// EU is the name in the form used in the EU: without the English word, a colourant by its number.
func (n *Name) EU() string { return n.plain() }

// Forms are the texts that stand for the name in lists: INCI with the English word in brackets, the form used in the EU, English, French. Some can be empty
// or the same.
func (n *Name) Forms() [4]string { return [4]string{n.INCI, n.plain(), n.English, n.French} }
