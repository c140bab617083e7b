package plain

import "strings"

// Introducers of control sequences that run on in printable text, by ECMA-48 (5th edition, 1991), 5.4 and 5.6.
const (
	esc  = '\x1b'
	csi  = '\u009b' // also ESC [
	bell = '\a'     // ends a command string as xterm sends it; ECMA-48 knows ST alone
	st   = '\u009c' // also ESC \
)

// escaped is how many bytes of s belong to a control sequence that begins there: with its parameters and its last letter, or a command string up
// to its end. A sequence that is not ended is its introducer alone, so that the text after it is kept. 0: none begins there.
func escaped(s string) int {
	switch {
	case strings.HasPrefix(s, string(csi)): // without a parameter rather a letter read in a wrong encoding: a quotation mark of Windows
		if n := sequence(s, len(string(csi))); n > len(string(csi))+1 {
			return n
		}
		return len(string(csi))
	case len(s) < 2 || s[0] != esc:
		return 0
	case s[1] == '[':
		return sequence(s, 2)
	case strings.IndexByte("]PX^_", s[1]) >= 0: // operating system command, device control, start of string, privacy message, application program
		return command(s)
	}
	return 0
}

// sequence is the length of a control sequence whose parameters begin at a byte: parameters, intermediates and one final byte.
func sequence(s string, from int) int {
	i := from
	for i < len(s) && s[i] >= 0x30 && s[i] <= 0x3f {
		i++
	}
	for i < len(s) && s[i] >= 0x20 && s[i] <= 0x2f {
		i++
	}
	if i < len(s) && s[i] >= 0x40 && s[i] <= 0x7e {
		return i + 1
	}
	return from
}

// command is the length of a command string up to its end on the same line.
func command(s string) int {
	for i := 2; i < len(s) && s[i] != '\n' && s[i] != '\r'; i++ {
		switch {
		case s[i] == bell:
			return i + 1
		case strings.HasPrefix(s[i:], "\x1b\\"):
			return i + 2
		case strings.HasPrefix(s[i:], string(st)):
			return i + len(string(st))
		}
	}
	return 2
}
