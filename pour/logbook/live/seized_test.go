package live

import (
	"math"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Marked as seizing at minute 10, a jug has no time left however long its window, even one the clock knows no window of; two minutes later it is that
// long over. What helps against seizing is said, and nothing of pouring it in time. Rices take nothing off its window, and before its lye is in
// there is no time to be left.
func TestAJugThatSeizesHasNoTimeLeft(t *testing.T) {
	for _, window := range []pour.Window{{From: pour.Know(15), To: pour.Know(40)}, {}} {
		l, s := handRun(12)
		s.Steps[1].Done = true // split before it seized
		s.Marks = []logbook.Event{{Kind: logbook.Troubled, Batch: pour.Base, Jug: "poppy", What: logbook.Seizes, Run: minutes(3 + 10)}}
		j := JugOutlook{Batch: pour.Base, Jug: "poppy", Window: window}
		got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, j)
		if !got.Seized || got.Verdict != Over || math.Abs(got.LeftMin.V+2) > 1e-9 || !got.LeftMin.Known {
			t.Errorf("it is %s with %v left", got.Verdict, got.LeftMin)
		}
		if len(got.Rescues) == 0 || got.Rescues[0].Kind != UseInBottom || got.Rescues[len(got.Rescues)-1].Kind != LeaveScent {
			t.Errorf("what helps is %+v", got.Rescues)
		}
		other := j
		other.Jug = "fern"
		if got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, other); got.Seized || got.Verdict == Over {
			t.Errorf("another jug is %s", got.Verdict)
		}
		other.Jug, other.Batch = "poppy", pour.Icing // of one name
		s.lyeIn[pour.Icing] = s.lyeIn[pour.Base]
		if got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, other); got.Seized {
			t.Error("the icing's jug of the same name seizes too")
		}
		s.Marks[0].What = logbook.Rices
		if got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, j); got.Seized || got.Verdict != Fine {
			t.Errorf("with rices it is %s", got.Verdict)
		}
		s.Marks[0].What, s.lyeIn = logbook.Seizes, nil
		if got := l.jugBoard(s, Board{Due: l.due(s, Outlook{})}, j); got.Seized || got.LeftMin.Known {
			t.Errorf("before the lye is in it has %v left", got.LeftMin)
		}
	}
}
