package dialog

import (
	"image"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"pourbench/tui/entry"
	"pourbench/tui/keys"
	"pourbench/tui/look"
	"pourbench/tui/screen"
)

// Item is one entry of a list.
type Item struct {
	ID     string
	Name   string
	Also   []string // other names it goes by, searched like its name
	Aside  string   // said in the list, beside the name
	Detail []string // said of the highlighted entry, one paragraph each
	Says   string   // said in a column of its own, where the list has room for one
	Not    string   // why it cannot be taken now; it is taken all the same, and then said

	Swatches []screen.Colour // painted before the name
}

// List is a list that is searched by typing.
type List struct {
	Title  string
	Items  []Item
	Names  bool   // it is a list of names: a figure that is typed is sought in them alone, and never in what stands beside them
	Below  bool   // the details always stand below the entries, which have the whole width
	At     int    // the highlighted entry of those that match
	Free   string // what Enter does with typed text that matches nothing; empty: it is refused
	Choose func(id string) tea.Cmd
	Leave  func() tea.Cmd // what leaving it goes back to; nil: nothing

	search entry.Entry
	whole  bool // in plain lines, all of it is told
}

// leastLowH is the height a low list takes at least.
const leastLowH = 12

// The size a list likes, and the width from which the details have room beside the entries.
const (
	listW   = 96
	listH   = 24
	besideW = listW - 20
)

// Keys lists the keys of the footer.
func (l *List) Keys(f Frame) []keys.Binding {
	return goingBack(f.Keys.Footer(keys.List, 0), l.Leave != nil)
}

// goingBack names the key that closes after what it does where leaving goes back to something.
func goingBack(rows []keys.Binding, back bool) []keys.Binding {
	for i := range rows {
		if back && rows[i].ID == keys.Close {
			rows[i].Label = "back"
		}
	}
	return rows
}

// Paste puts text into the search.
func (l *List) Paste(text string) { l.search.Insert(text); l.At = 0 }

// Wheel goes to another entry.
func (l *List) Wheel(by int, _ Frame) { l.move(by * wheelRows) }

// Put changes what the list holds; the highlighted entry stays, wherever it stands then.
func (l *List) Put(items []Item) {
	id, found := "", l.matches()
	if len(found) > 0 {
		id = found[min(l.At, len(found)-1)].ID
	}
	l.Items = items
	if i := slices.IndexFunc(l.matches(), func(it Item) bool { return it.ID == id }); i >= 0 {
		l.At = i
	}
}

// matches lists the entries that hold every word typed, in their names, aside or details: first the one that is called so, then those that have the words
// whole in a name, then those in whose names words begin so, then those that have them in a name.
func (l *List) matches() []Item {
	words := strings.Fields(strings.ToLower(l.search.Text()))
	var tiers [5][]Item
	for _, it := range l.Items {
		if tier := l.tier(it, words); tier >= 0 {
			tiers[tier] = append(tiers[tier], it)
		}
	}
	return slices.Concat(tiers[:]...)
}

// tier is how well an entry matches some words, the best first; below 0: it does not.
func (l *List) tier(it Item, words []string) int {
	name := strings.ToLower(it.Name)
	if name == strings.Join(words, " ") {
		return 0
	}
	names := strings.ToLower(" " + strings.Join(append([]string{it.Name}, it.Also...), " ") + " ")
	print := strings.ToLower(it.Aside + " " + it.Says + " " + it.Not + " " + strings.Join(it.Detail, " "))
	tier := 1
	for _, w := range words {
		switch {
		case strings.Contains(names, " "+w+" "):
		case strings.Contains(names, " "+w):
			tier = max(tier, 2)
		case strings.Contains(names, w):
			tier = max(tier, 3)
		case strings.Contains(strings.ToLower(it.ID), w), !(l.Names && figure(w)) && strings.Contains(print, w):
			tier = 4
		default:
			return -1
		}
	}
	return tier
}

// figure says whether a word that is typed has a digit in it.
func figure(word string) bool { return strings.ContainsAny(word, "0123456789") }

// unmatched says that nothing matches what is typed and how to go on.
func (l *List) unmatched(typed string) string {
	if l.Names && figure(typed) {
		return "no name here has " + typed + " in it, and figures are not searched: take it away, or {close} leaves the list"
	}
	return "nothing matches " + typed + ": take letters away, or {close} leaves the list"
}

func (l *List) move(by int) {
	l.At = min(max(l.At+by, 0), max(len(l.matches())-1, 0))
}

// Press goes to an entry, takes one, searches or leaves the list.
func (l *List) Press(k tea.KeyPressMsg, f Frame) Result {
	if b, ok := f.Keys.Lookup(keys.List, 0, k.String()); ok {
		return l.Act(b.ID, f)
	}
	if typed(&l.search, k) {
		l.At = 0
	}
	return Result{}
}

// Act does what a key of the list comes to.
func (l *List) Act(id keys.ID, f Frame) Result {
	switch id {
	case keys.Close:
		return Result{Close: true, Do: l.Leave}
	case keys.Choose:
		return l.take(f)
	case keys.Up:
		l.move(-1)
	case keys.Down:
		l.move(1)
	case keys.PageUp:
		l.move(-listH / 2)
	case keys.PageDown:
		l.move(listH / 2)
	case keys.Find:
		return Result{Refused: typeToSearch}
	}
	return Result{}
}

// Away leaves the list, but not where what was typed is more than a search.
func (l *List) Away(f Frame) Result {
	if l.Free != "" && l.search.Text() != "" {
		return Result{Refused: f.Keys.Fill(keys.List, keptTyped)}
	}
	return Result{Close: true}
}

// take closes the list with the highlighted entry, or with the typed text where that is allowed.
func (l *List) take(f Frame) Result {
	id := strings.TrimSpace(l.search.Text())
	if found := l.matches(); len(found) > 0 {
		id = found[min(l.At, len(found)-1)].ID
	} else if l.Free == "" || id == "" {
		return Result{Refused: f.Keys.Fill(keys.List, l.unmatched(id))}
	}
	return Result{Close: true, Do: func() tea.Cmd { return l.Choose(id) }}
}

// Box is where the list stands.
func (l *List) Box(f Frame) image.Rectangle {
	h := min(listH, f.H-4)
	if f.Low {
		h = min(h, max(f.H*3/5, leastLowH))
	}
	return f.box(min(listW, f.W-4), h)
}

// rows is where the entries stand.
func (l *List) rows(f Frame) image.Rectangle {
	r := inside(l.Box(f))
	r.Min.Y = min(r.Min.Y+1, r.Max.Y) // the search
	if l.Box(f).Dx() >= besideW && !l.Below {
		r.Max.X = r.Min.X + r.Dx()*45/100
		return r
	}
	r.Max.Y = max(r.Max.Y-4, r.Min.Y) // the details stand below the entries
	return r
}

// first is the first entry shown so that the highlighted one is in sight.
func (l *List) first(rows int) int { return max(l.At-rows+1, 0) }

// Click highlights an entry, or takes the highlighted one.
func (l *List) Click(at image.Point, f Frame) Result {
	r := l.rows(f)
	i := l.first(r.Dy()) + at.Y - r.Min.Y
	switch {
	case !at.In(r) || i >= len(l.matches()):
	case i == l.At:
		return l.take(f)
	default:
		l.At = i
	}
	return Result{}
}

// Draw draws the entries and all about the highlighted one.
func (l *List) Draw(a screen.Area, f Frame, lk look.Look) {
	drawSearch(boxed(a, l.Box(f), l.Title, lk), l.search, lk)
	found := l.matches()
	rows := a.At(l.rows(f))
	if len(found) == 0 {
		text := "nothing matches"
		if l.Free != "" {
			text = f.Keys.Name(keys.List, keys.Choose) + ": " + l.Free
		}
		for y, line := range screen.Wrap(text, rows.W()) {
			rows.Text(0, y, line, lk.Quiet)
		}
		return
	}
	first, nameAt := l.first(rows.H()), l.nameAt()
	for y := range min(rows.H(), len(found)-first) {
		drawItem(rows.Cut(0, y, rows.W(), 1), nameAt, found[first+y], first+y == l.At, lk)
	}
	if l.search.Text() == "" { // nothing is being typed: the arrows have the focus
		rows.Focus(0, l.At-first)
	}
	l.drawDetail(a, f, found[min(l.At, len(found)-1)], lk)
}

// drawItem draws an entry on one line, its name from column x.
func drawItem(a screen.Area, x int, it Item, at bool, lk look.Look) {
	drawSwatches(a, x, it)
	st := lk.Text
	if it.Not != "" {
		st = lk.Quiet
	}
	end := a.Text(x, 0, screen.Clip(it.Name, a.W()-x), st)
	if it.Says != "" {
		end = drawSays(a, x, end, it, lk)
	}
	if room := a.W() - end - 2; room >= min(screen.Width(it.Aside), 4) {
		a.Right(a.W(), 0, screen.Clip(it.Aside, room), lk.Quiet)
	}
	if at {
		a.Text(0, 0, "►", lk.Focus)
		a.Restyle(x, 0, a.W()-x, func(screen.Style) screen.Style { return screen.Style{Attr: screen.Reverse} })
	}
}

// mostSwatches is how many colours are painted before a name: of more, the first.
const mostSwatches = 6

// swatchW is how many cells the colours before a name take: two for one colour, one for each of several.
func (it Item) swatchW() int {
	if len(it.Swatches) == 1 {
		return 2
	}
	return min(len(it.Swatches), mostSwatches)
}

// nameAt is the column where the names of the list begin, after the most colours that stand before one.
func (l *List) nameAt() int {
	const marks = 2
	w := 0
	for _, it := range l.Items {
		w = max(w, it.swatchW())
	}
	if w == 0 {
		return marks
	}
	return marks + w + 1
}

// drawSwatches paints the colours of an entry before its name.
func drawSwatches(a screen.Area, nameAt int, it Item) {
	w := it.swatchW()
	for i := range w {
		c := it.Swatches[min(i, len(it.Swatches)-1)]
		a.Cut(nameAt-1-w+i, 0, 1, 1).Fill(" ", screen.Style{Bg: c})
	}
}

// nameW is the room for a name before what is said of it.
const nameW = 20

// drawSays says in its column what an entry is, or why it cannot be taken now, and leaves room for what stands at the right. It returns
// where the text ends.
func drawSays(a screen.Area, x, end int, it Item, lk look.Look) int {
	text := it.Says
	if it.Not != "" {
		text = "× " + it.Not
	}
	from := max(x+nameW, end+2)
	return a.Text(from, 0, screen.Clip(text, a.W()-from-screen.Width(it.Aside)-2), lk.Quiet)
}

// drawDetail says all about the highlighted entry: beside the list, or below it on a narrow screen.
func (l *List) drawDetail(a screen.Area, f Frame, it Item, lk look.Look) {
	rows, in := l.rows(f), inside(l.Box(f))
	r := image.Rect(rows.Max.X+3, rows.Min.Y, in.Max.X, in.Max.Y)
	if rows.Max.Y < in.Max.Y {
		r = image.Rect(in.Min.X, rows.Max.Y+1, in.Max.X, in.Max.Y)
		for x := range in.Dx() {
			a.Text(in.Min.X+x, rows.Max.Y, "─", lk.Rule)
		}
	}
	out := a.At(r)
	y := 0
	for i, par := range it.Detail {
		st := lk.Text
		if i == 0 {
			st = lk.Strong
		}
		for _, line := range screen.Wrap(par, out.W()) {
			out.Text(0, y, line, st)
			y++
		}
	}
}
