package invoice

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/pour/lot"
)

// sort is what a piece of a line is.
type sort int

const (
	word sort = iota
	number
	unit
	currency
	times // ×
	per   // /
	at    // @
	percent
	apart // a column ends
)

// token is one piece of a line.
type token struct {
	sort  sort
	text  string
	chunk int // which run of letters without a blank it stands in
}

// words is what a line is read with: the words that bring something behind them, and the ledger's own currency.
type words struct {
	details []detail
	own     string
}

// line is a line in pieces.
type line struct {
	words
	chunks []string // as they stand, without the marks around them
	tokens []token
}

// dashes are signs that part one thing from the next where they stand alone.
const dashes = " - – — | = / , . : · "

// lined takes a line apart. What stands in quotes is one piece.
func (w words) lined(text string) line {
	l := line{words: w}
	quoted := ""
	for _, field := range strings.Fields(text) {
		closed, closes := strings.CutSuffix(strings.TrimRight(field, ",.:)"), `"`)
		switch {
		case quoted != "" && closes:
			l.put(quoted+" "+closed, token{sort: word})
			quoted = ""
			continue
		case quoted != "":
			quoted += " " + field
			continue
		case len(closed) > 1 && field[0] == '"' && closes:
			l.put(closed[1:], token{sort: word})
			continue
		case len(field) > 1 && field[0] == '"' && !closes:
			quoted = field[1:]
			continue
		case strings.Contains(dashes, " "+field+" "):
			l.put(field, token{sort: apart})
			continue
		}
		l.field(field)
	}
	if quoted != "" {
		l.put(quoted, token{sort: word})
	}
	return l
}

// put adds a run of letters that is one piece.
func (l *line) put(chunk string, t token) {
	t.text, t.chunk = chunk, len(l.chunks)
	l.chunks = append(l.chunks, chunk)
	l.tokens = append(l.tokens, t)
}

// field takes a run of letters without a blank apart, if all of it is numbers, units and signs; else it is a word.
func (l *line) field(field string) {
	bare := strings.Trim(field, `()[],"`)
	if head, tail, ok := strings.Cut(bare, ":"); ok && len(l.chunks) == 0 && isKind(head) {
		l.put(head+":", token{sort: word})
		l.field(tail)
		return
	} else if ok && tail != "" && l.detailAt([]string{head}) != nil {
		l.put(head, token{sort: word})
		l.field(tail)
		return
	}
	if head, ok := strings.CutSuffix(bare, ":"); ok {
		if head != "" {
			l.field(head)
		}
		l.put(":", token{sort: apart})
		return
	}
	if bare == "" {
		return
	}
	tokens := measured(bare, l.own)
	if len(tokens) == 0 || dayLike(bare) {
		l.put(bare, token{sort: word})
		return
	}
	for _, t := range tokens {
		t.chunk = len(l.chunks)
		l.tokens = append(l.tokens, t)
	}
	l.chunks = append(l.chunks, bare)
}

// isKind reports whether a word is a kind of material.
func isKind(word string) bool { return slices.Contains(lot.Kinds(), lot.Kind(strings.ToLower(word))) }

// measured takes a run of letters apart into numbers, units and signs; none: something else is in it. A word alone is a unit only where it
// follows a number, which is seen later.
func measured(chunk, own string) []token {
	var out []token
	runes := []rune(chunk)
	for i := 0; i < len(runes); {
		from := i
		var t token
		switch r := runes[i]; {
		case unicode.IsDigit(r), (r == '-' || r == '.') && i == 0 && len(runes) > 1 && unicode.IsDigit(runes[1]):
			i = numberEnd(runes, i+1)
			t = token{sort: number, text: strings.TrimRight(string(runes[from:i]), "-–.,")}
		case unicode.IsLetter(r):
			for i < len(runes) && unicode.IsLetter(runes[i]) {
				i++
			}
			t = letters(string(runes[from:i]), own)
		default:
			i++
			t = sign(r)
		}
		if t.sort == word {
			return nil
		}
		out = append(out, t)
	}
	return out
}

// numberEnd is where the number ends whose first sign stands before a place: digits with points, commas and apostrophes between them, and the dash
// that some write for no cents.
func numberEnd(runes []rune, i int) int {
	for i < len(runes) && (unicode.IsDigit(runes[i]) || strings.ContainsRune(".,'’", runes[i]) && i+1 < len(runes) && unicode.IsDigit(runes[i+1])) {
		i++
	}
	if i+2 == len(runes) && strings.ContainsRune(".,", runes[i]) && strings.ContainsRune("-–", runes[i+1]) {
		return i + 2
	}
	return i
}

// letters are a unit, a currency or a times sign.
func letters(text, own string) token {
	switch _, is := lot.UnitOf(text); {
	case strings.EqualFold(text, "x"):
		return token{sort: times, text: text}
	case isCode(text, own):
		return token{sort: currency, text: text}
	case is:
		return token{sort: unit, text: text}
	}
	return token{sort: word, text: text}
}

func sign(r rune) token {
	switch {
	case r == '×' || r == '*':
		return token{sort: times, text: string(r)}
	case r == '/':
		return token{sort: per, text: "/"}
	case r == '@':
		return token{sort: at, text: "@"}
	case r == '%':
		return token{sort: percent, text: "%"}
	case unicode.Is(unicode.Sc, r):
		return token{sort: currency, text: string(r)}
	}
	return token{sort: word}
}

// codes are currencies that makers buy in, by their codes (ISO 4217; memory). The ledger's own is known whichever it is.
const codes = " EUR USD GBP CHF CAD AUD NZD SEK NOK DKK ISK PLN CZK HUF RON BGN RSD UAH TRY ILS ZAR JPY CNY KRW TWD HKD SGD INR IDR THB VND PHP MYR AED SAR EGP MAD NGN KES GHS BRL MXN ARS CLP COP PEN "

func isCode(text, own string) bool {
	return len(text) == 3 && strings.Contains(codes, " "+text+" ") || own != "" && text == own
}
