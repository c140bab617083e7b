package pour

import (
	"fmt"
	"strconv"
	"strings"
)

// Told is one line of an account: a word in front, and what it says.
type Told struct{ Lead, Text string }

// Tell says an account in lines, for paper and screen: what the figure is, its formula in words and in numbers, what these are and
// where they come from, its band, and the warnings that hang on it. Numbers are metric, as everything is worked out.
func (a Account) Tell() []Told {
	if a.Word != "" {
		return []Told{{a.Label, a.Word}, {"", a.Path}, {"from", "your plan"}, {"note", a.Why}}
	}
	if !a.Value.Known {
		return []Told{{a.Label, "not worked out: " + a.Absent}, {"", a.Path}}
	}
	out := []Told{{a.Label, measured(a.Value.V, a.Unit)}, {"", a.Path}, {"is", a.How.Words()}, {"", "= " + a.How.Numbers()}}
	if a.Why != "" {
		out = append(out, Told{"note", a.Why})
	}
	for i, in := range a.How.Inputs() {
		lead := ""
		if i == 0 {
			lead = "from"
		}
		out = append(out, Told{lead, in.tell()})
	}
	switch {
	case a.Low.Known && a.High.Known:
		out = append(out, Told{"band", measured(a.Low.V, a.Unit) + " to " + measured(a.High.V, a.Unit) + ": " + a.Band})
	case a.Low.Known:
		out = append(out, Told{"band", "from " + measured(a.Low.V, a.Unit) + ", its end beyond what is followed: " + a.Band})
	}
	return append(out, a.tellFeeds()...)
}

// measured draws a number with six digits and its unit.
func measured(v float64, u Unit) string {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	if err != nil {
		return dash // what was just written can be read
	}
	text := strconv.FormatFloat(r+0, 'f', -1, 64)
	if u != "" {
		text += " " + string(u)
	}
	return text
}

func (in Input) tell() string {
	text := in.Name + ": " + measured(in.V, in.Unit) + ", " + in.From
	if in.Figure != "" {
		text += " (" + in.Figure + ")"
	}
	if in.Source.Text != "" {
		text += ": " + in.Source.Told()
	}
	if in.Source.Confidence == "memory" && !strings.Contains(in.Source.Told(), "not looked up") {
		text += " (as remembered, not looked up)"
	}
	return text
}

func (a Account) tellFeeds() []Told {
	var out []Told
	lead := "feeds"
	for _, code := range a.Feeds {
		for _, c := range Codes() {
			if c.Code != code {
				continue
			}
			out = append(out, Told{lead, fmt.Sprintf("%s (%s): %s", c.Code, c.Severity, c.Meaning)})
			lead = ""
		}
		for _, w := range a.Fires {
			if w.Code == code {
				out = append(out, Told{"", "  stands now: " + w.Told()})
			}
		}
	}
	return out
}
