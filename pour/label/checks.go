package label

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"time"

	"pourbench/pour/day"
)

// State is how a line of a market's list stands.
type State string

// The states.
const (
	Ticked  State = "ticked"  // the design answers it, or the maker ticked it
	Open    State = "open"    // the design says it is not met, or it is to be done
	Unknown State = "unknown" // nothing here can tell
)

// Check is a line of a market's list for one design or batch.
type Check struct {
	Row   Row
	State State
	Why   string // what it rests on
	Stale bool   // its row was looked up over twelve months ago
}

// Design is what of a design, and of its batch, answers a market's list by itself.
type Design struct {
	Maker      Maker // who stands on it; the zero Maker: nobody
	Net        Net
	LetterMM   float64 // height of the weight's figures as the label is drawn; 0: not drawn yet
	LeastMM    float64 // their least height; 0: not known
	Dated      bool    // best before, or months after opening
	Lot        string  // of the batch; empty: it is not poured
	Listed     bool    // the list of ingredients was worked out
	Unsure     []string
	Unstated   []string // scents of which no allergens are stated
	Either     []string // substances of which it has to be asked which they are
	Prohibited []string // substances that may not be there, or not so much of them
	Crowded    string   // why not all has room on it; empty: not known, or it has
	Fits       bool     // it was drawn, and all has room
	Claims     []Claim
	Food       string   // why it could be taken for food
	Glitter    []string // what of it is plastic
	Verdict    Verdict
}

// answers are what finds the state of a row, by the word in [Row.Finds].
func answers() map[string]func(d *Design, m Market) (State, string) {
	return map[string]func(*Design, Market) (State, string){
		"maker":   (*Design).maker,
		"contact": (*Design).contact,
		"net":     (*Design).net,
		"letters": (*Design).letters,
		"date": func(d *Design, _ Market) (State, string) {
			return either(d.Dated, "it is dated", "no date and no months are stated")
		},
		"lot":       (*Design).lot,
		"identity":  func(*Design, Market) (State, string) { return Ticked, "it stands on the label that is printed here" },
		"list":      (*Design).list,
		"allergens": (*Design).allergens,
		"long-list": (*Design).longList,
		"room":      (*Design).room,
		"claims":    (*Design).claims,
		"food":      (*Design).food,
		"glitter":   (*Design).glitter,
		"report":    (*Design).report,
	}
}

// Answers lists the words of [Row.Finds].
func Answers() []string { return slices.Sorted(maps.Keys(answers())) }

// Checks goes through the market's list: a row that the design answers stands as it says; one that only the maker can answer is ticked where she ticked it,
// and unknown else. What the design says is open stays open though she ticked it. The zero today is not known: no row is stale then.
func Checks(m Market, is Design, ticks map[string]bool, today day.Day) []Check {
	out := make([]Check, 0, len(m.Rows))
	all := answers()
	for _, r := range m.Rows {
		c := Check{Row: r, State: Unknown, Stale: stale(r.AsOf, today)}
		if find := all[r.Finds]; find != nil {
			c.State, c.Why = find(&is, m)
		}
		switch {
		case !ticks[r.ID]:
		case c.State == Open:
			c.Why = "you ticked it, but " + c.Why
		case c.State == Unknown:
			c.State, c.Why = Ticked, "ticked by you"
		}
		out = append(out, c)
	}
	return out
}

// stale reports whether what was looked up on a day is over twelve months old.
func stale(asOf, today day.Day) bool {
	if today == 0 {
		return false
	}
	return today > day.Of(asOf.At(12, 0, time.UTC).AddDate(1, 0, 0))
}

func either(ok bool, yes, no string) (State, string) {
	if ok {
		return Ticked, yes
	}
	return Open, no
}

func (d *Design) maker(m Market) (State, string) {
	switch {
	case d.Maker.Name == "":
		return Open, "nobody is stated for this market: pourbench label maker name"
	case d.Maker.Address == "":
		return Open, d.Maker.Name + " has no address in your label file: pourbench label maker address"
	}
	return d.there(m, d.Maker.Name)
}

func (d *Design) contact(m Market) (State, string) {
	if d.Maker.Contact == "" {
		return Open, "no contact is stated in your label file: pourbench label maker contact"
	}
	return d.there(m, d.Maker.Contact)
}

// there is ticked only for who was stated for this very market: whether another's address lies where it has to, nothing here can tell.
func (d *Design) there(m Market, what string) (State, string) {
	if d.Maker.Market != m.ID || m.ID == "" {
		return Unknown, what + " is stated for wherever no other is: is it where this line asks for it?"
	}
	return Ticked, what
}

func (d *Design) net(Market) (State, string) {
	switch {
	case d.Net.Why != "":
		return Open, d.Net.Why
	case d.Net.From == FromForecast:
		return Unknown, d.Net.Text + " by a forecast: weigh the cured bars"
	}
	return Ticked, fmt.Sprintf("%s, by %d bars weighed", d.Net.Text, d.Net.Bars)
}

func (d *Design) letters(Market) (State, string) {
	least, drawn := mm(d.LeastMM), mm(d.LetterMM)
	switch {
	case d.LeastMM <= 0:
		return Unknown, "the least height is not known as long as what it goes by is not"
	case d.LetterMM <= 0:
		return Unknown, least + " mm or more; the label is not drawn yet"
	}
	return either(d.LetterMM >= d.LeastMM-slack, drawn+" mm, and "+least+" are asked for", drawn+" mm, where "+least+" are asked for")
}

// mm writes a height; a thousandth is more than anybody measures.
func mm(v float64) string { return short(math.Round(v*1000) / 1000) }

func (d *Design) lot(Market) (State, string) {
	if d.Lot == "" {
		return Unknown, "the batch has its lot once it is poured"
	}
	return Ticked, d.Lot
}

func (d *Design) list(Market) (State, string) {
	switch {
	case !d.Listed:
		return Open, "no list could be worked out"
	case len(d.Unsure) > 0:
		return Open, "not sure of the name of " + strings.Join(d.Unsure, ", ")
	}
	return Ticked, "it follows the market's order; check it against your packets"
}

func (d *Design) allergens(m Market) (State, string) {
	switch {
	case m.Allergens == AllergensNone:
		return Unknown, "no list is followed there"
	case len(d.Prohibited) > 0:
		return Open, "may not be there, or not so much of it: " + strings.Join(d.Prohibited, ", ")
	case len(d.Either) > 0:
		return Open, "ask which it is: " + strings.Join(d.Either, ", ")
	case len(d.Unstated) > 0:
		return Open, "no allergens are stated of " + strings.Join(d.Unstated, ", ")
	}
	return Ticked, "summed over all scents of the cured bar"
}

func (d *Design) longList(m Market) (State, string) {
	return either(m.Allergens == AllergensLong, "the long list is used", "this market's label uses the old list")
}

func (d *Design) room(Market) (State, string) {
	switch {
	case d.Crowded != "":
		return Open, d.Crowded
	case d.Fits:
		return Ticked, "all of it has room on the label"
	}
	return Unknown, "the label is not drawn yet"
}

func (d *Design) claims(Market) (State, string) {
	if len(d.Claims) == 0 {
		return Unknown, "no word that was looked for, English ones alone, stands in your own text; only you know what you say elsewhere"
	}
	return Open, d.Claims[0].Tell()
}

func (d *Design) food(Market) (State, string) {
	if d.Food == "" {
		return Unknown, "nothing in the design says that it looks like food; look at the bar"
	}
	return Open, d.Food
}

func (d *Design) glitter(Market) (State, string) {
	if len(d.Glitter) > 0 {
		return Open, "plastic is in " + strings.Join(d.Glitter, ", ")
	}
	return Ticked, "no plastic glitter that the shelf knows of"
}

func (d *Design) report(Market) (State, string) {
	switch v := d.Verdict; {
	case v.Report == "":
		return Open, "the plan names no report"
	case v.Why != "":
		return Unknown, v.Why
	case len(v.Missed) > 0:
		return Open, "the design is outside report " + v.Report
	}
	return Unknown, "inside report " + d.Verdict.Report + " as you entered it: what holds is what the assessor wrote, so tick it when you have looked there"
}
