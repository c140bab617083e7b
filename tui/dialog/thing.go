package dialog

import (
	"slices"
	"strings"
	"unicode"

	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Thing is what a line can be about.
type Thing struct {
	Name string // searched by what is typed
	Also string // the same in another spelling, searched too
	Says string // said behind the name
	Bare string // its name without which batch it is of: others have the same; empty: none has
	Had  bool   // something was typed of it before
}

func (t Thing) text() string { return t.Name + t.Says }

// mostListed is how many things stand below a line at most; more are scrolled.
const mostListed = 8

// parts are the words that search the things, and what is typed of the thing: that begins with a number, or is [Nothing]. Without things all is typed.
func (p *Prompt) parts(typed string) (words, value string) {
	typed = strings.TrimSpace(typed)
	if len(p.Things) == 0 {
		return "", typed
	}
	fields := strings.Fields(typed)
	for i, word := range fields {
		if numberBegins(word) || word == Nothing {
			return strings.Join(fields[:i], " "), strings.Join(fields[i:], " ")
		}
	}
	return typed, ""
}

// numberBegins reports whether a word begins as numbers do: by a digit, with or without a sign before it.
func numberBegins(word string) bool {
	for _, r := range word {
		switch {
		case unicode.IsDigit(r):
			return true
		case !strings.ContainsRune("+-−.,", r):
			return false
		}
	}
	return false
}

// matches are the places of the things that have every one of the words in their name.
func (p *Prompt) matches(words string) []int {
	var out []int
	for i, t := range p.Things {
		if hit, _ := t.holds(words); hit {
			out = append(out, i)
		}
	}
	return out
}

// holds reports whether a name has every one of the words, and whether words of it begin so.
func (t Thing) holds(words string) (hit, begins bool) {
	name := strings.ToLower(t.Name + " " + t.Also)
	hit, begins = true, true
	for w := range strings.FieldsSeq(strings.ToLower(words)) {
		hit = hit && strings.Contains(name, w)
		begins = begins && strings.Contains(" "+name, " "+w)
	}
	return hit, hit && begins
}

// seek goes to the thing that what is typed means: of those that match, where the line is about none of them, the first whose words begin so, and one that
// nothing was typed of before one that was.
func (p *Prompt) seek() {
	words, _ := p.parts(p.Typed.Text())
	found := p.matches(words)
	if words == "" || len(found) == 0 {
		return
	}
	best := func(i int) int {
		rank := 0
		if _, begins := p.Things[i].holds(words); !begins {
			rank += 2
		}
		if p.Things[i].Had && len(p.twins(words, i)) < 2 { // else the one at hand comes first, and it is asked
			rank++
		}
		return rank
	}
	to := found[0]
	for _, i := range found {
		if i == p.At && best(i) <= best(to) || best(i) < best(to) {
			to = i
		}
	}
	p.At = to
}

// twins are the places of the things that match and have the name of one of them but for their batch, that one included.
func (p *Prompt) twins(words string, at int) []int {
	return slices.DeleteFunc(p.matches(words), func(i int) bool {
		return i != at && (p.Things[at].Bare == "" || p.Things[i].Bare != p.Things[at].Bare)
	})
}

// either says which things the words may mean, of which something was typed before: a second weighing of the one, or the first of the other. Empty: it is
// plain which is meant, or she went to it by a key.
func (p *Prompt) either(words string) string {
	twins := p.twins(words, p.At)
	if words == "" || p.picked == words || len(twins) < 2 || !slices.ContainsFunc(twins, func(i int) bool { return p.Things[i].Had }) {
		return ""
	}
	names := make([]string, len(twins))
	for i, at := range twins {
		names[i] = p.Things[at].Name
		if p.Things[at].Had {
			names[i] += " ✓"
		}
	}
	return strings.Join(names, " or ")
}

func nothingMatches(words string) string {
	return "nothing here is called " + words + ": take letters away"
}

// turn goes round the things, of those that match what is typed.
func (p *Prompt) turn(by int) {
	words, _ := p.parts(p.Typed.Text())
	found := p.matches(words)
	if len(found) == 0 {
		return
	}
	for i, at := range found {
		if at == p.At {
			p.At = found[(i+by+len(found))%len(found)]
			return
		}
	}
	p.At = found[0]
}

// listed is how many lines the list below the line takes, with its rule and what is said under it.
func (p *Prompt) listed(f Frame, refused int) int {
	if len(p.Things) < 2 {
		return 0
	}
	const line, edges, rule = 2, 2, 1
	said := len(screen.Wrap(p.Text, f.room()))
	room := f.H - feet - line - edges - refused - rule - said
	if room < 2 {
		return 0
	}
	return rule + min(len(p.Things), mostListed, room) + said
}

// drawThings draws what matches what is typed, the highlighted one among it: ✓ marks one that something was typed of.
func (p *Prompt) drawThings(a screen.Area, l look.Look) {
	if a.H() < 2 || len(p.Things) < 2 {
		return
	}
	for x := range a.W() {
		a.Text(x, 0, "─", l.Rule)
	}
	said := screen.Wrap(p.Text, a.W())
	for i, line := range said {
		a.Text(0, a.H()-len(said)+i, line, l.Quiet)
	}
	rows := a.Cut(0, 1, a.W(), a.H()-1-len(said))
	words, _ := p.parts(p.Typed.Text())
	found := p.matches(words)
	if len(found) == 0 {
		rows.Text(0, 0, "no match", l.Quiet)
		return
	}
	at := 0
	for i, n := range found {
		if n == p.At {
			at = i
		}
	}
	first := min(max(at-rows.H()/2, 0), max(len(found)-rows.H(), 0))
	for y := range min(rows.H(), len(found)-first) {
		t := p.Things[found[first+y]]
		st := l.Text
		if t.Had {
			rows.Text(2, y, "✓", l.Quiet)
			st = l.Quiet
		}
		if first+y == at {
			rows.Text(0, y, "►", l.Focus)
			st = l.Strong
		}
		rows.Text(4, y, screen.Clip(t.text(), rows.W()-4), st)
	}
}
