package season

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Sign is how a verdict is drawn beside its colour.
func (v Verdict) Sign() string {
	switch v {
	case InTime:
		return "✓"
	case Likely:
		return "~"
	case Luck:
		return "?"
	case TooLate, Past:
		return "!"
	case Gone:
		return "×"
	}
	return " "
}

// ByWords says by when to pour, as "by Wed 18 Nov", or when it was poured.
func (b Board) ByWords(row int) string {
	r := b.Rows[row]
	switch {
	case r.Fault != nil:
		return "cannot be read"
	case !r.Planned():
		return "poured " + b.told(r.Pour)
	case r.Missed:
		return "past " + b.told(r.Pour)
	case r.Fixed:
		return "on " + b.told(r.Pour)
	case !r.HasDate:
		return "no day yet"
	case r.By.Middle < b.Today:
		return "too late"
	}
	return "by " + b.told(r.By.Middle)
}

// Tell says all of a row, from its date backwards to its pour; in the last lines what it collides with.
func (b Board) Tell(row int) []string {
	out := b.TellPlan(row)
	var own []Collision
	for _, c := range b.Collisions {
		if c.Row == row {
			own = append(own, c)
		}
	}
	for _, c := range b.gathered(own) {
		out = append(out, b.tellCollision(c)...)
	}
	return out
}

// TellPlan says all of a row but what it collides with; the first line says what it is.
func (b Board) TellPlan(row int) []string {
	r := b.Rows[row]
	out := b.tellHead(r)
	if r.Fault != nil {
		return append(out, strings.Split(r.Fault.Error(), "\n")...)
	}
	out = append(out, b.tellBy(r)...)
	if r.Placed {
		out = append(out, b.tellDays(r))
	}
	for _, e := range r.Embeds {
		out = append(out, fmt.Sprintf("make %s by %s", e.Name, b.told(e.By)))
	}
	return out
}

// tellHead names the pour, its bars and its date.
func (b Board) tellHead(r Row) []string {
	head := r.Name
	switch {
	case r.BarsKnown && !r.Planned():
		head += fmt.Sprintf(", %s left", counted(r.Bars, "bar"))
	case r.BarsKnown:
		head += ", " + counted(r.Bars, "bar")
	case r.Fault == nil:
		head += ", bars not counted"
	}
	if r.State != "" {
		head += ", " + string(r.State)
	}
	if !r.HasDate {
		return []string{head}
	}
	head += fmt.Sprintf(", for %s on %s", r.For, b.told(r.Due))
	if r.Label < r.Due {
		head += fmt.Sprintf(", labels from %s", b.told(r.Label))
	}
	return []string{head}
}

// tellBy says by which day to pour.
func (b Board) tellBy(r Row) []string {
	if !r.Planned() || !r.HasDate {
		return nil
	}
	sure := "to be sure by " + b.told(r.By.Late)
	if r.By.Late < b.Today {
		sure = "to be sure it had to be by " + b.told(r.By.Late)
	}
	early := ""
	if r.By.Early > r.By.Middle {
		early = "; with luck by " + b.told(r.By.Early)
	}
	switch {
	case r.By.Late == r.By.Early && r.By.Middle >= b.Today:
		return []string{"pour by " + b.told(r.By.Middle)}
	case r.By.Middle >= b.Today:
		return []string{fmt.Sprintf("pour by %s; %s%s", b.told(r.By.Middle), sure, early)}
	case r.Verdict == Gone:
		return []string{"its date is over"}
	}
	return []string{fmt.Sprintf("it had to be poured by %s, %s ago%s", b.told(r.By.Middle), counted(int(b.Today-r.By.Middle), "day"), early)}
}

// tellDays says what its days are.
func (b Board) tellDays(r Row) string {
	text := "poured " + b.told(r.Pour)
	switch {
	case r.Missed:
		text = fmt.Sprintf("planned for %s, which is past; if poured %s", b.told(r.Pour), b.told(r.next))
	case r.Planned() && r.Fixed:
		text = "planned for " + b.told(r.Pour)
	case r.Planned():
		text = "if poured " + b.told(r.Pour)
	}
	text += fmt.Sprintf(", %s, dry about %s", b.tellCut(r), b.told(r.Ready.Middle))
	if r.Ready.Early != r.Ready.Late {
		text += fmt.Sprintf(" (%s to %s)", b.told(r.Ready.Early), b.told(r.Ready.Late))
	}
	if r.lawless {
		text += " by the plan; its weighings follow no drying law"
	}
	switch {
	case r.Verdict == NoDate || r.Verdict == Gone:
	case r.LateDays > 0:
		text += fmt.Sprintf(": %s too late", counted(r.LateDays, "day"))
	case r.Missed:
		text += fmt.Sprintf(": %s to spare", counted(-r.LateDays, "day"))
	default:
		text += fmt.Sprintf(": %s, %s to spare", r.Verdict, counted(-r.LateDays, "day"))
	}
	return text
}

// tellCut says when the loaf was cut; one that is poured and whole is cut today at the earliest, and nobody knows that it will be.
func (b Board) tellCut(r Row) string {
	switch {
	case r.uncut && r.Cut <= b.Today:
		return "to be cut, today at the earliest"
	case r.uncut:
		return "to be cut " + b.told(r.Cut)
	}
	return "cut " + b.told(r.Cut)
}

// TellCollisions says all that collides, by day.
func (b Board) TellCollisions() []string {
	if len(b.Collisions) == 0 {
		return []string{"nothing collides"}
	}
	var out []string
	for _, c := range b.gathered(b.Collisions) {
		out = append(out, b.tellCollision(c)...)
	}
	return out
}

// gathered are collisions with weeks in a row that are too full told as one, where the worst of them is.
func (b Board) gathered(list []Collision) []Collision {
	var out, weeks []Collision
	flush := func() {
		if len(weeks) > 1 {
			worst := weeks[0]
			for _, w := range weeks {
				if w.Over > worst.Over {
					worst = w
				}
			}
			worst.Text = b.tellRacks(weeks, worst)
			weeks = []Collision{worst}
		}
		out = append(out, weeks...)
		weeks = nil
	}
	for _, c := range list {
		if c.Kind != RackFull {
			out = append(out, c)
			continue
		}
		if n := len(weeks); n > 0 && monday(weeks[n-1].Day)+week != monday(c.Day) {
			flush()
		}
		weeks = append(weeks, c)
	}
	flush()
	slices.SortStableFunc(out, func(x, y Collision) int { return cmp.Compare(x.Day, y.Day) })
	return out
}

// tellCollision says what collides and what would help.
func (b Board) tellCollision(c Collision) []string {
	out := []string{"! " + string(c.Kind) + ": " + c.Text}
	if c.Help != "" {
		out = append(out, "  → "+c.Help)
	}
	return out
}
