package season

import (
	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook/life"
)

// Board is a season worked out: every date with what it wants and gets, every pour with its days, and what collides.
type Board struct {
	Today      day.Day
	House      House
	Dates      []DateRow // by day
	Rows       []Row     // by the day of their date, then by the day of the pour; without a date last
	Collisions []Collision
}

// Band is a day with the ends of its band of 80 %. Of the day by which to pour, Early is by the early end of the cure and so the latest.
type Band struct{ Early, Middle, Late day.Day }

// Verdict says how a pour stands to the date it is for.
type Verdict string

// The verdicts.
const (
	NoDate  Verdict = ""          // it is for none, or its day is not known
	InTime  Verdict = "in time"   // also if it dries as slowly as the late end of the band
	Likely  Verdict = "likely"    // by the middle of the band, not by its late end
	Luck    Verdict = "with luck" // by the early end alone
	TooLate Verdict = "too late"
	Past    Verdict = "day past" // the day it was planned for is over, and it stands in no logbook
	Gone    Verdict = "gone by"  // the date is over
)

// EmbedBy is a kind of embed and the day by which it is to be made.
type EmbedBy struct {
	Name string
	By   day.Day
}

// Row is one pour of the season.
type Row struct {
	Key   string     // names it, also in another season's board: the logged id, or its plan and date
	Name  string     // of its design
	ID    string     // in the logbook; empty: it is planned
	Plan  string     // path of its plan as the file has it; empty: it stands in the logbook
	Entry int        // the place of its [[pour]] in the file, from 1; 0: it has none
	For   string     // name of the date it is for; empty: none
	State life.State // of a pour in the logbook

	Placed  bool // its days are known: it was poured, has a day or has a date
	Fixed   bool // its day was named, or is past
	Missed  bool // planned for a day that is over, and not poured: it covers nothing, and Cut and Ready are as if poured on the next day that there is
	Pour    day.Day
	Cut     day.Day
	Ready   Band
	HasDate bool
	Due     day.Day // of the date
	Label   day.Day // the first day of labelling: by then it must be dry
	By      Band    // the last bench days to pour for that: by the early end, the middle and, to be sure, the late end of the cure's band
	Embeds  []EmbedBy

	Verdict   Verdict
	LateDays  int // by the middle of the band after the first day of labelling; below 0: to spare
	Bars      int // that it gives or, poured, has left; where BarsKnown
	BarsKnown bool
	Needs     []pour.MaterialNeed // of a planned one
	Fault     error               // why nothing is known of it

	mould   pour.Mould
	inMould bool    // its days in the mould count
	onRack  bool    // its days on the rack count
	uncut   bool    // it was poured, and its cut is yet to come
	lawless bool    // its weighings follow no drying law: Ready is by the plan
	next    day.Day // of a missed pour, the first bench day from today on
	cut     int     // days in the mould
	span    Span    // days on the rack
}

// Planned reports whether it is yet to be poured.
func (r Row) Planned() bool { return r.ID == "" }

// DateRow is one date of the season.
type DateRow struct {
	Date
	Label  day.Day // the first day of labelling
	Rows   []int   // the pours for it, by their places on the board
	Covers []Cover // what it wants and gets, design by design
}

// Cover is what a date wants of a design, and where it comes from. Wanted = From's bars + Short, always.
type Cover struct {
	Design  string
	Wanted  int
	From    []Share
	Short   int
	Unsure  int // of the bars it gets, those that are dry in time by the middle of the band and not by its late end
	Unknown int // pours of that design, dry in time, of which nobody knows how many bars are left
}

// Share is what one pour gives to a date.
type Share struct {
	Row  int
	Bars int
}

// CollisionKind says what collides.
type CollisionKind string

// What collides. A later one is worse only in what it costs to mend.
const (
	MouldInUse   CollisionKind = "mould in use"
	MouldMissing CollisionKind = "no such mould"
	BenchFull    CollisionKind = "bench full"
	OffDay       CollisionKind = "no bench day"
	DayPast      CollisionKind = "day past"
	RackFull     CollisionKind = "rack full"
	NotCovered   CollisionKind = "bars missing"
	Late         CollisionKind = "too late"
	EmbedsLate   CollisionKind = "embeds late"
)

// Collision is one thing that cannot be as it is planned.
type Collision struct {
	Kind CollisionKind
	Day  day.Day // on which, or from which
	Row  int     // the pour that gives way; -1: none in particular
	With []int   // the pours it collides with
	Over int     // bars that the rack has no place for
	Date string  // the date it is about; empty: none
	Text string  // what collides, in one sentence without a stop
	Help string  // what would help; empty where nothing can be said
}
