package plain

import (
	"strings"
	"unicode"
)

// Slug makes a name for files and ids of a name for people: small letters, digits and dashes, at most 40 of them. Where nothing is left it is the
// word given.
func Slug(name, otherwise string) string {
	const most = 40
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case b.Len() >= most:
		case r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if s := strings.Trim(b.String(), "-"); s != "" {
		return s
	}
	return otherwise
}
