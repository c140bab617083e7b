package pour_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"pourbench/pour"
)

// splitOf is the demo plan with so many jugs of the base at equal shares, none held.
func splitOf(demo pour.Plan, jugs int) pour.Plan {
	p := demo.Clone()
	p.Icing, p.Swirl.First, p.Swirl.Last, p.Run.Order = nil, "", "", nil
	p.Base.Jugs, p.Base.Scents = nil, nil
	for i := range jugs {
		p.Base.Jugs = append(p.Base.Jugs, pour.Jug{Name: string(rune('A' + i)), SharePercent: 100 / float64(jugs)})
	}
	return p
}

// sharesOf is the shares of the base as a maker reads them, a held one with a star.
func sharesOf(p pour.Plan) string {
	var out []string
	for _, j := range p.Base.Jugs {
		s := p.Show.Number(j.SharePercent, 1)
		if j.Held {
			s += "*"
		}
		out = append(out, s)
	}
	return strings.Join(out, " ")
}

// The ways through a split, each share by hand.
func TestATypedShareStays(t *testing.T) {
	typed := func(jug int, v float64) pour.Edit { return pour.TypeShare(pour.Base, jug, v) }
	nudged := func(jug int, v float64) pour.Edit { return pour.SetShare(pour.Base, jug, v) }
	hold := func(jug int, held bool) pour.Edit { return pour.HoldShare(pour.Base, jug, held) }
	demo, shelf := shelved(t)
	for what, c := range map[string]struct {
		jugs  int
		edits []pour.Edit
		want  string
	}{
		"of three the first typed stays":        {3, []pour.Edit{typed(0, 50), typed(1, 30)}, "50.0* 30.0 20.0"},
		"the last two give way to each other":   {3, []pour.Edit{typed(0, 50), typed(1, 30), typed(2, 15)}, "50.0* 35.0 15.0"},
		"of two neither is held":                {2, []pour.Edit{typed(0, 70), typed(1, 40)}, "60.0 40.0"},
		"one alone is all there is":             {1, []pour.Edit{typed(0, 100)}, "100.0"},
		"of five three are held":                {5, []pour.Edit{typed(0, 40), typed(1, 10), typed(2, 20), typed(3, 5), typed(4, 12)}, "40.0* 10.0* 20.0* 18.0 12.0"},
		"typed again it stays held":             {3, []pour.Edit{typed(0, 50), typed(0, 60)}, "60.0* 20.0 20.0"},
		"typed again with one other free":       {3, []pour.Edit{typed(0, 50), hold(1, true), typed(0, 60)}, "60.0* 25.0* 15.0"},
		"nudged, nothing is held":               {3, []pour.Edit{nudged(0, 50), nudged(1, 30)}, "46.7 30.0 23.3"}, // 70 in 50:25
		"a nudge lets no hold go":               {3, []pour.Edit{typed(0, 50), nudged(0, 51)}, "51.0* 24.5 24.5"},
		"let go, it gives way":                  {3, []pour.Edit{typed(0, 50), hold(0, false), typed(1, 40)}, "40.0 40.0* 20.0"}, // 60 in 50:25
		"nothing typed is held too":             {3, []pour.Edit{typed(0, 0), typed(1, 30)}, "0.0* 30.0 70.0"},
		"a typed one and a new jug":             {3, []pour.Edit{typed(0, 90), pour.AddJug(pour.Base, 2, "D")}, "90.0* 2.5 2.5 5.0"},
		"a new jug where nothing is left":       {3, []pour.Edit{typed(0, 100), pour.AddJug(pour.Base, 2, "D")}, "100.0* 0.0 0.0 0.0"},
		"one of the free ones gone":             {4, []pour.Edit{typed(0, 40), pour.RemoveJug(pour.Base, 3)}, "40.0* 30.0 30.0"},
		"the typed one gone":                    {3, []pour.Edit{typed(0, 40), pour.RemoveJug(pour.Base, 0)}, "50.0 50.0"},
		"moved, its hold goes with it":          {3, []pour.Edit{typed(0, 50), pour.MoveJug(pour.Base, 0, 2), typed(0, 10)}, "10.0 40.0 50.0*"},
		"three decimals as they were typed":     {3, []pour.Edit{typed(0, 33.335), typed(1, 33.335)}, "33.3* 33.3 33.3"},
		"an other held by hand counts":          {4, []pour.Edit{hold(3, true), hold(2, true), typed(0, 30)}, "30.0 20.0 25.0* 25.0*"},
		"the same number typed again is a hold": {4, []pour.Edit{typed(0, 25), typed(1, 45)}, "25.0* 45.0* 15.0 15.0"},
	} {
		p := after(t, splitOf(demo, c.jugs), shelf, c.edits...)
		if got := sharesOf(p); got != c.want {
			t.Errorf("%s: %s, want %s", what, got, c.want)
		}
	}
}

// What held shares do not leave is refused, and the refusal says what to do.
func TestWhatHeldSharesDoNotLeaveIsRefused(t *testing.T) {
	demo, shelf := shelved(t)
	p := splitOf(demo, 3)
	one := after(t, p, shelf, pour.TypeShare(pour.Base, 0, 50))
	all := after(t, one, shelf, pour.HoldShare(pour.Base, 1, true))
	for what, c := range map[string]struct {
		plan pour.Plan
		edit pour.Edit
		want string
	}{
		"more than is left": {one, pour.TypeShare(pour.Base, 1, 60), "set the share of B to 60 %: held ones leave 50 %; let one go first"},
		"nothing free":      {all, pour.TypeShare(pour.Base, 2, 10), "set the share of C to 10 %: every other one is held; let one go first"},
	} {
		got, err := pour.Apply(c.plan, shelf, c.edit)
		if !errors.Is(err, pour.ErrHeld) || !strings.HasSuffix(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", what, err, c.want)
		}
		if diff := cmp.Diff(c.plan, got); diff != "" {
			t.Errorf("%s: refused and changed: %s", what, diff)
		}
	}
	if _, err := pour.Apply(splitOf(demo, 1), shelf, pour.TypeShare(pour.Base, 0, 50)); err == nil || errors.Is(err, pour.ErrHeld) || !strings.Contains(err.Error(), "add another first") {
		t.Errorf("the only jug at 50 %%: %v", err)
	}
	if _, err := pour.Apply(all, shelf, pour.TypeShare(pour.Base, 2, 25)); err != nil {
		t.Errorf("what it has already is refused: %v", err)
	}
}

// However shares are typed, nudged, held and let go and jugs come and go: they sum to 100, what is typed is as it was typed, what was held
// is untouched, and what becomes held is so by the rule, counted here by another way: a jug is held where two names stand without a mark.
func TestTypedSharesKeepToTheRule(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(rt *rapid.T) {
		p := splitOf(demo, rapid.IntRange(1, 6).Draw(rt, "jugs"))
		for range rapid.IntRange(1, 14).Draw(rt, "edits") {
			jug := rapid.IntRange(0, len(p.Base.Jugs)-1).Draw(rt, "jug")
			v := float64(rapid.IntRange(0, 1000).Draw(rt, "tenths")) / 10
			typing := false
			var edit pour.Edit
			switch rapid.IntRange(0, 8).Draw(rt, "kind") {
			case 0:
				edit = pour.SetShare(pour.Base, jug, v)
			case 1:
				edit = pour.HoldShare(pour.Base, jug, rapid.Bool().Draw(rt, "held"))
			case 2:
				edit = pour.AddJug(pour.Base, jug, "new")
			case 3:
				edit = pour.RemoveJug(pour.Base, jug)
			case 4:
				edit = pour.MoveJug(pour.Base, jug, rapid.IntRange(0, len(p.Base.Jugs)-1).Draw(rt, "to"))
			default:
				edit, typing = pour.TypeShare(pour.Base, jug, v), true
			}
			next, err := pour.Apply(p, shelf, edit)
			if err != nil {
				continue
			}
			if sum := sumOf(next.Base.Jugs, func(j pour.Jug) float64 { return j.SharePercent }); math.Abs(sum-100) > 0.01+1e-9 {
				rt.Fatalf("%s became %s: %v", sharesOf(p), sharesOf(next), sum)
			}
			if typing {
				checkTyped(rt, p, next, jug, v)
			}
			p = next
		}
	})
}

func checkTyped(t *rapid.T, before, after pour.Plan, jug int, v float64) {
	said := fmt.Sprintf("%s, jug %d typed %v: %s", sharesOf(before), jug, v, sharesOf(after))
	marks := strings.Fields(sharesOf(before))
	marks = slices.Delete(marks, jug, jug+1)
	marks = slices.DeleteFunc(marks, func(s string) bool { return strings.HasSuffix(s, "*") })
	was, is := before.Base.Jugs[jug], after.Base.Jugs[jug]
	if want := was.Held || len(marks) > 1; is.Held != want {
		t.Fatalf("%s: held %v, want %v", said, is.Held, want)
	}
	if len(marks) > 0 && is.SharePercent != v {
		t.Fatalf("%s: it is %v", said, is.SharePercent)
	}
	for i, j := range before.Base.Jugs {
		if i != jug && (j.Held != after.Base.Jugs[i].Held || j.Held && j.SharePercent != after.Base.Jugs[i].SharePercent) {
			t.Fatalf("%s: the held %+v became %+v", said, j, after.Base.Jugs[i])
		}
	}
	if len(marks) == 1 { // one gives way alone: even the rounded figures sum, where what it gives way to was typed to a tenth
		tenths, whole := 0, true
		for i, s := range strings.Fields(sharesOf(after)) {
			f, err := strconv.ParseFloat(strings.TrimSuffix(s, "*"), 64)
			if err != nil {
				t.Fatal(err)
			}
			tenths += int(math.Round(f * 10))
			whole = whole && math.Abs(after.Base.Jugs[i].SharePercent-f) < 1e-9
		}
		if whole && tenths != 1000 {
			t.Fatalf("%s: shown they sum to %d tenths", said, tenths)
		}
	}
}

// Typing alone locks nobody out: whatever was typed, every jug of two or more has another that can give way to it.
func TestTypingLocksNobodyOut(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(rt *rapid.T) {
		p := splitOf(demo, rapid.IntRange(2, 6).Draw(rt, "jugs"))
		for range rapid.IntRange(1, 20).Draw(rt, "typed") {
			jug := rapid.IntRange(0, len(p.Base.Jugs)-1).Draw(rt, "jug")
			edit := pour.TypeShare(pour.Base, jug, float64(rapid.IntRange(0, 1000).Draw(rt, "tenths"))/10)
			if rapid.IntRange(0, 5).Draw(rt, "add one") == 0 {
				edit = pour.AddJug(pour.Base, jug, "new")
				if _, err := pour.Apply(p, shelf, edit); err != nil {
					rt.Fatalf("%s: no jug can be added: %v", sharesOf(p), err)
				}
			}
			next, err := pour.Apply(p, shelf, edit)
			if err != nil && (!errors.Is(err, pour.ErrHeld) || !strings.Contains(err.Error(), "held ones leave")) {
				rt.Fatalf("%s: %v", sharesOf(p), err)
			}
			p = next
			for i := range p.Base.Jugs {
				left := 100.0 // what the held ones beside it leave
				for k, j := range p.Base.Jugs {
					if k != i && j.Held {
						left -= j.SharePercent
					}
				}
				for _, v := range []float64{0, max(left, 0) / 2} {
					if _, err := pour.Apply(p, shelf, pour.TypeShare(pour.Base, i, v)); err != nil {
						rt.Fatalf("%s: jug %d cannot be %v: %v", sharesOf(p), i, v, err)
					}
				}
			}
		}
	})
}
