package pour_test

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/whatif"
)

// pipedOver is the loaf of 250 × 80 in bars of 25, ten of them, with icing in a shape, measures that never lack, and a disc of 16 that stands 4 out.
func pipedOver(t *testing.T, bends ...func(*pour.Piping, *pour.Embed)) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := hanger(t)
	p.Piping, p.Icing.Size = rosette(), pour.SizeShape
	q := &p.Piping
	q.CoilMM, q.PerBar, q.LeastG, q.BagG, q.ResiduePercent = 5, 2, 200, 250, 7
	q.WidthMM, q.HeightMM, q.HeadMM, q.TailMM, q.LayerMM, q.ReliefMM = 16, 11, 9, 12, 8, 12
	e := pour.Embed{Name: "moon", LengthMM: 16, HeightMM: 15, OutMM: 4}
	for _, b := range bends {
		b(q, &e)
	}
	p.Top.Embeds = []pour.Embed{e}
	return p, shelf
}

// What of a piece lies under what is piped, by hand: two rosettes of 5 + 5 + 7.21 stand 20 to each side, so that they begin 11.395 from the middle.
func TestAnEmbedUnderIcingIsSaidByHowFarItLiesUnder(t *testing.T) {
	across := func(mm float64) func(*pour.Piping, *pour.Embed) {
		return func(_ *pour.Piping, e *pour.Embed) { e.AcrossMM = mm }
	}
	along := func(mm float64) func(*pour.Piping, *pour.Embed) {
		return func(_ *pour.Piping, e *pour.Embed) { e.AlongMM = mm }
	}
	piece := func(outline string, long, wide, high, out float64) func(*pour.Piping, *pour.Embed) {
		return func(_ *pour.Piping, e *pour.Embed) {
			e.Outline, e.LengthMM, e.WidthMM, e.HeightMM, e.OutMM = outline, long, wide, high, out
		}
	}
	units := func(shape, along string, n int) func(*pour.Piping, *pour.Embed) {
		return func(q *pour.Piping, _ *pour.Embed) { q.Shape, q.Along, q.PerBar, q.Rows = shape, along, n, n }
	}
	rope := func(q *pour.Piping, _ *pour.Embed) { q.Tip, q.TipMM, q.Swell = pour.TipRound, 8, 1 }
	three := func(_ *pour.Piping, e *pour.Embed) {
		e.In, e.AtMM, e.LengthMM = pour.EmbedOwn, []float64{12.5, 25, 37.5}, 6
	}
	for _, c := range []struct {
		name, says string // empty: nothing is said
		with       []func(*pour.Piping, *pour.Embed)
	}{
		{"a disc beside them", "", []func(*pour.Piping, *pour.Embed){across(3)}},
		{"a disc 16 from one", "10 of 10 pieces lie where icing is piped: a rosette reaches 0.6 mm over the one at 12.5 mm", []func(*pour.Piping, *pour.Embed){across(4)}},
		{"a disc under one", "a rosette covers the one at 12.5 mm from end A, and what stands out is in the tip's way or disappears", []func(*pour.Piping, *pour.Embed){across(20)}},
		{"one as low as the base", "and what lies under it is not seen", []func(*pour.Piping, *pour.Embed){piece("", 16, 0, 15, 0), across(20)}},
		{"one higher than they", "and what stands out is in the tip's way", []func(*pour.Piping, *pour.Embed){piece("", 16, 0, 30, 10), across(20)}},
		{"one that is set into the icing", "", []func(*pour.Piping, *pour.Embed){piece("", 16, 0, 10, 10), across(20)}},
		{"a box with its side at 12", "a rosette reaches 0.6 mm over", []func(*pour.Piping, *pour.Embed){piece(pour.OutlineBox, 16, 16, 15, 4), across(4)}},
		{"a narrower box", "", []func(*pour.Piping, *pour.Embed){piece(pour.OutlineBox, 16, 14, 15, 4), across(4)}},
		{"a ball of which 10.6 mm are seen", "a rosette reaches 1.9 mm over", []func(*pour.Piping, *pour.Embed){piece(pour.OutlineBall, 16, 0, 0, 2), across(8)}},
		{"the same further in", "", []func(*pour.Piping, *pour.Embed){piece(pour.OutlineBall, 16, 0, 0, 2), across(4)}},
		{"a ball in the batter", "", []func(*pour.Piping, *pour.Embed){piece(pour.OutlineBall, 16, 0, 0, 0), across(20)}},
		{"a rod that stands out", "1 of 1 pieces lie where icing is piped: a rosette reaches 5.6 mm over it", []func(*pour.Piping, *pour.Embed){piece(pour.OutlineRod, 10, 10, 10, 3), across(12)}},
		{"a rod in the batter", "", []func(*pour.Piping, *pour.Embed){piece(pour.OutlineRod, 10, 10, 10, 0), across(20)}},
		{"some of several", "2 of 3 pieces", []func(*pour.Piping, *pour.Embed){units(pour.PipeRosette, "", 1), three}},
		{"a row of shells from 24 on", "a shell reaches 1.0 mm over", []func(*pour.Piping, *pour.Embed){units(pour.PipeShells, pour.PipeLoaf, 2), piece(pour.OutlineBox, 20, 10, 10, 4), across(20)}},
		{"beside a shell's head", "a shell", []func(*pour.Piping, *pour.Embed){units(pour.PipeShells, "", 1), piece(pour.OutlineBox, 4, 4, 10, 2), along(-8), across(6)}},
		{"beside a shell's tail", "", []func(*pour.Piping, *pour.Embed){units(pour.PipeShells, "", 1), piece(pour.OutlineBox, 4, 4, 10, 2), along(8), across(6)}},
		{"a rope along the loaf, 4 to each side", "a rope reaches 1.0 mm over", []func(*pour.Piping, *pour.Embed){units(pour.PipeRope, pour.PipeLoaf, 1), rope, across(11)}},
		{"beside that rope", "", []func(*pour.Piping, *pour.Embed){units(pour.PipeRope, pour.PipeLoaf, 1), rope, across(13)}},
		{"a rope across each bar", "a rope reaches 12.0 mm over", []func(*pour.Piping, *pour.Embed){units(pour.PipeRope, "", 1), rope, across(30)}},
		{"beside that one", "", []func(*pour.Piping, *pour.Embed){units(pour.PipeRope, "", 1), rope, piece(pour.OutlineBox, 4, 4, 10, 2), along(8)}},
		{"a spooned top of 8 and half of 12", "it stands 13.0 mm out of the base, and the icing spooned over it lies 14.0 mm high", []func(*pour.Piping, *pour.Embed){units(pour.PipeSpooned, "", 1), piece("", 16, 0, 40, 13)}},
		{"out of that top", "", []func(*pour.Piping, *pour.Embed){units(pour.PipeSpooned, "", 1), piece("", 16, 0, 40, 14.5)}},
	} {
		p, shelf := pipedOver(t, c.with...)
		w, ok := found(pour.Weigh(p, shelf), "embed-iced")
		if ok != (c.says != "") || !strings.Contains(w.Text, c.says) || ok && w.Where != "embed moon" {
			t.Errorf("%s: said %v, %q at %s", c.name, ok, w.Text, w.Where)
		}
	}
}

// A tube's pieces stand up its height and its icing on its upper end; without icing there is nothing to lie under.
func TestNoIcingLiesOverATubesPieces(t *testing.T) {
	p, shelf := pipedOver(t, func(_ *pour.Piping, e *pour.Embed) { e.AcrossMM = 20 })
	p.Mould.Shape, p.Mould.LengthMM = pour.ShapeTube, p.Mould.WidthMM
	if w, ok := found(pour.Weigh(p, shelf), "embed-iced"); ok {
		t.Errorf("in a tube: %q", w.Text)
	}
	p, shelf = pipedOver(t, func(_ *pour.Piping, e *pour.Embed) { e.AcrossMM = 20 })
	p.Icing = nil
	if w, ok := found(pour.Weigh(p, shelf), "embed-iced"); ok {
		t.Errorf("without icing: %q", w.Text)
	}
}

// What is offered moves the piece or the icing: a small piece goes to the nearest free place beside the rosette over it, a large one has the rosettes
// piped otherwise, and one in a spooned top stands further out.
func TestAnEmbedUnderIcingIsMended(t *testing.T) {
	for _, c := range []struct {
		with func(*pour.Piping, *pour.Embed)
		says string
	}{
		{func(q *pour.Piping, e *pour.Embed) { q.PerBar, e.LengthMM = 1, 10 }, "set moon 14 mm off the middle, to the right seen from end A"}, // 8.605 + 5
		{func(_ *pour.Piping, e *pour.Embed) { e.AcrossMM = 6.5 }, "set moon 3 mm off the middle, to the right seen from end A"},
		{func(q *pour.Piping, _ *pour.Embed) { q.PerBar = 3 }, "pipe 2 on each bar"},
		{func(q *pour.Piping, e *pour.Embed) { q.Shape, e.HeightMM = pour.PipeSpooned, 50 }, "let moon stand 14 mm out"},
	} {
		p, shelf := pipedOver(t, c.with)
		s := pour.Work(p, shelf, pour.Hand{})
		for i, w := range s.Warnings {
			if w.Code != "embed-iced" {
				continue
			}
			offered := whatif.MendsOf(s, shelf, pour.Hand{}, func(x pour.Warning) bool { return x == w })[i]
			if len(offered) == 0 || offered[0].Says != c.says {
				t.Errorf("for %q: %+v, want %q", w.Text, offered, c.says)
			}
			for _, m := range offered {
				mends(t, s, shelf, w, m)
			}
			c.says = ""
		}
		if c.says != "" {
			t.Errorf("nothing is said where one is to %s", c.says)
		}
	}
}

// A new piece is put where no rosette is: in the middle between two, beside one in the middle, and as small as the room between three of 17.21 in 80.
func TestANewEmbedStandsBesideTheIcing(t *testing.T) {
	for _, c := range []struct {
		perBar       int
		long, across float64
	}{
		{2, 19, 0},    // 22.8 are free: as long as the cuts leave
		{1, 19, 18.5}, // 8.605 + 9.5 and the next half
		{3, 9, 13.5},  // 8.605 to 18.062
		{9, 19, 0},    // no room at all
	} {
		p, shelf := pipedOver(t, func(q *pour.Piping, _ *pour.Embed) { q.PerBar = c.perBar })
		e := p.NewEmbed("star")
		if e.LengthMM != c.long || e.AcrossMM != c.across {
			t.Errorf("beside %d rosettes: %v long, %v off the middle, want %v and %v", c.perBar, e.LengthMM, e.AcrossMM, c.long, c.across)
		}
		p.Top.Embeds = []pour.Embed{e}
		if w, ok := found(pour.Weigh(p, shelf), "embed-iced"); ok != (c.perBar == 9) {
			t.Errorf("beside %d rosettes it is said: %q", c.perBar, w.Text)
		}
	}
}
