package batches

import (
	"fmt"
	"strconv"

	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/tui/listing"
	"pourbench/tui/screen"
)

// line is a line of what is told of a batch.
type line struct {
	lead  string // words before it
	text  string
	style screen.Style
	head  bool // it begins a part
	mark  int  // which of the marks it tells, from 1; 0: none
	plot  int  // so many lines of the drying curve begin here; 0: none
}

// leadW is the room that the words before a line have.
const leadW = 12

// told is all that is told of a batch, each line broken to a width.
func (m *Model) told(b *life.Batch, w int) []line {
	var out []line
	head := func(name string) { out = append(out, line{lead: name, head: true}) }
	say := func(lead, text string, st screen.Style) {
		out = append(out, broken(line{lead: lead, text: text, style: st}, w)...)
	}
	if b.Fault != nil {
		say("× file", b.Fault.Error(), m.look.Wrong)
		say("", m.opt.Folder, m.look.Quiet)
		return out
	}
	say("state", string(b.State)+", "+m.since(b), m.stateStyle(b.State))
	say("poured", b.Poured.String()+", "+ago(b.Poured, m.opt.Today), m.look.Text)
	if len(b.Swatches) > 0 {
		out = append(out, line{lead: "colours", text: swatchesHere})
	}
	if b.PlanErr != nil {
		say("! plan", b.PlanErr.Error(), m.look.Caution)
	}
	for i, d := range b.Due {
		lead := "due"
		if i > 0 {
			lead = ""
		}
		st := m.look.Text
		if d.Day <= m.opt.Today && d.Kind != life.DueReady {
			st = m.look.Caution
		}
		say(lead, d.Text, st)
	}
	say("bars", accountWords(b.Bars), m.look.Text)
	if b.Bars.Missing < 0 {
		say("!", fmt.Sprintf("%d more are accounted for than there were: count what is left, or correct a mark", -b.Bars.Missing), m.look.Caution)
	}
	for _, l := range m.drying(b) {
		say(l.lead, l.text, l.style)
	}
	if rows := m.plotRows(b); rows > 0 {
		out = append(out, line{plot: rows})
		for range rows - 1 {
			out = append(out, line{})
		}
	}
	for _, part := range m.kinds(b) {
		head(part.name)
		for _, l := range part.lines {
			say(l.lead, l.text, l.style)
		}
	}
	head("everything that was logged")
	if len(m.marks(b)) == 0 {
		say("", m.fill("nothing yet; {log anything} logs something"), m.look.Quiet)
	}
	for i, mk := range m.marks(b) {
		parts := broken(m.markLine(mk), w)
		for k := range parts {
			parts[k].mark = i + 1
		}
		out = append(out, parts...)
	}
	return out
}

// swatchesHere stands where the colours of a batch are drawn.
const swatchesHere = "\x00swatches"

// broken breaks a line to a width, what goes on under its text.
func broken(l line, w int) []line {
	if l.text == swatchesHere || l.head {
		return []line{l}
	}
	parts := screen.Wrap(l.text, max(w-leadW, 10))
	if len(parts) == 0 {
		return []line{l}
	}
	out := make([]line, len(parts))
	for i, p := range parts {
		out[i] = line{text: p, style: l.style, mark: l.mark}
	}
	out[0].lead = l.lead
	return out
}

// since says since when a batch is in its state.
func (m *Model) since(b *life.Batch) string {
	if b.Since == m.opt.Today {
		return "since today"
	}
	return fmt.Sprintf("since %s, day %d", b.Since, m.opt.Today-b.Since)
}

// accountWords is where the bars are.
func accountWords(a life.Account) string {
	if !a.Known && a.Bars == 0 {
		return "nobody has counted them yet"
	}
	count := func(n int, word string) string {
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n) + " " + word
	}
	of := count(a.Bars, "bars")
	if a.Planned {
		of += " as planned"
	}
	where := joined(", ", count(a.Sold, "sold"), count(a.Given, "given"), count(a.Kept, "kept"), count(a.Seconds, "seconds"), count(max(a.Missing, 0), "missing"))
	left := ""
	if a.Known {
		left = strconv.Itoa(a.Left) + " left"
	}
	return of + ": " + joined(", ", where, left)
}

// part is the marks of one kind, under its name.
type part struct {
	name  string
	lines []line
}

// kinds tells what was smelled, seen, tested, pictured and labelled, each under its name.
func (m *Model) kinds(b *life.Batch) []part {
	var out []part
	for _, k := range []struct {
		kind logbook.EventKind
		name string
	}{
		{logbook.Sniffed, "smelled over the weeks"},
		{logbook.Looked, "looked at"},
		{logbook.Tested, "tested"},
		{logbook.Photo, "pictures"},
		{logbook.Ticked, "ticked for a market"},
		{logbook.Lotted, "lots"},
		{logbook.Failed, "failed"},
	} {
		p := part{name: k.name}
		for _, e := range b.Of(k.kind) {
			p.lines = append(p.lines, line{lead: m.week(b, e), text: m.words(e), style: m.look.Text})
		}
		if len(p.lines) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// week says how long after the cut, or before it after the pour, an event was.
func (m *Model) week(b *life.Batch, e logbook.Event) string {
	at := dayOf(e)
	if b.CutDay == nil || at < *b.CutDay {
		return fmt.Sprintf("day %d", at-b.Poured)
	}
	const week = 7
	switch days := int(at - *b.CutDay); {
	case days == 0:
		return "at the cut"
	case days < week:
		return fmt.Sprintf("day %d", days)
	default:
		return fmt.Sprintf("week %d", days/week)
	}
}

// markLine is a mark with its day, and what became of it where it does not stand.
func (m *Model) markLine(mk life.Mark) line {
	l := line{lead: dayOf(mk.Event).String(), text: m.words(mk.Event), style: m.look.Text}
	if !mk.Standing {
		l.text, l.style = "× "+l.text+" ("+mk.Why+")", m.look.Quiet
	} else if mk.Event.Corrects != "" {
		l.text += " (corrected)"
	}
	return l
}

// drawBatch draws the chosen batch, the part of it that is in sight.
func (m *Model) drawBatch(box, a screen.Area) {
	box.Box(listing.Edge(m.inside, m.look))
	b, ok := m.chosen()
	if !ok {
		return
	}
	box.Text(2, 0, screen.Clip(" "+joined(", ", b.Name, b.ID)+" ", box.W()-4), m.look.Focus)
	lines := m.told(b, a.W())
	for y := range min(a.H(), max(len(lines)-m.scroll, 0)) {
		l := lines[m.scroll+y]
		if l.plot > 0 && y+l.plot <= a.H() {
			m.drawPlot(a.Cut(0, y, a.W(), l.plot), b)
		}
		m.drawLine(a.Cut(0, y, a.W(), 1), b, l, m.scroll+y == 0 || lines[m.scroll+y-1].mark != l.mark)
	}
	if m.scroll+a.H() < len(lines) {
		box.Right(box.W()-2, box.H()-1, " ↓ more ", m.look.Accent)
	}
	if m.scroll > 0 {
		box.Right(box.W()-2, 0, " ↑ more ", m.look.Accent)
	}
}

// drawLine draws a line of what is told of a batch; the chosen mark is reversed while the keys go to the batch.
func (m *Model) drawLine(a screen.Area, b *life.Batch, l line, first bool) {
	switch {
	case l.head:
		a.Text(0, 0, l.lead, m.look.Strong)
		return
	case l.text == swatchesHere:
		a.Text(0, 0, l.lead, m.look.Quiet)
		m.drawSwatches(a.Cut(leadW, 0, a.W()-leadW, 1), b.Swatches)
		return
	}
	a.Text(0, 0, screen.Clip(l.lead, leadW-1), m.look.Quiet)
	a.Text(leadW, 0, l.text, l.style)
	if m.inside && l.mark > 0 && l.mark == m.mark+1 {
		a.Restyle(0, 0, a.W(), func(screen.Style) screen.Style { return screen.Style{Attr: screen.Reverse} })
		if first {
			a.Focus(0, 0)
		}
	}
}

// settleBatch brings the chosen mark into sight while the keys go to the batch.
func (m *Model) settleBatch() {
	b, ok := m.chosen()
	area := listing.Within(m.place().Chosen)
	if !ok || area.Empty() {
		m.mark, m.scroll = 0, 0
		return
	}
	m.mark = min(max(m.mark, 0), max(len(m.marks(b))-1, 0))
	lines := m.told(b, area.Dx())
	m.scroll = max(min(m.scroll, len(lines)-area.Dy()), 0)
}

// bringMark scrolls so that the chosen mark is in sight.
func (m *Model) bringMark() {
	b, ok := m.chosen()
	area := listing.Within(m.place().Chosen)
	if !ok || area.Empty() {
		return
	}
	first, last := -1, -1
	for i, l := range m.told(b, area.Dx()) {
		if l.mark == m.mark+1 {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first >= 0 {
		m.scroll = min(max(m.scroll, last-area.Dy()+1), first)
	}
}
