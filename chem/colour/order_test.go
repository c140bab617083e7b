package colour

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// drawProblem draws up to seven batters with coarse scores, so that ties are common.
func drawProblem(t *rapid.T) OrderProblem {
	n := rapid.IntRange(1, 7).Draw(t, "n")
	p := OrderProblem{Mud: make([][]float64, n), First: None, Last: None, Spacer: None, Ring: rapid.Bool().Draw(t, "ring")}
	for i := range p.Mud {
		p.Mud[i] = make([]float64, n)
		for k := range i {
			p.Mud[i][k] = float64(rapid.IntRange(0, 8).Draw(t, "mud")) / 8
			p.Mud[k][i] = p.Mud[i][k]
		}
	}
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	roles := rapid.Permutation(all).Draw(t, "roles")
	for i, role := range []*int{&p.First, &p.Last, &p.Spacer} {
		if i < n && rapid.Bool().Draw(t, "pinned") {
			*role = roles[i]
		}
	}
	p.Current = slices.DeleteFunc(rapid.Permutation(all).Draw(t, "current"), func(i int) bool { return i == p.Spacer })
	return p
}

// orders calls try with every order of left after laid, those nearest to left's own order first.
func orders(laid, left []int, try func([]int)) {
	if len(left) == 0 {
		try(laid)
	}
	for i, next := range left {
		rest := append(slices.Clone(left[:i]), left[i+1:]...)
		orders(append(slices.Clone(laid), next), rest, try)
	}
}

// bruteForce tries all orders. Scores are eighths, so sums are exact.
func bruteForce(p OrderProblem) (best []int, worst, total float64) {
	worst = math.Inf(1)
	orders(nil, p.Current, func(o []int) {
		last := len(o) - 1
		if (p.First != None && o[0] != p.First) || (p.Last != None && o[last] != p.Last) {
			return
		}
		if p.Ring && p.First == None && p.Last == None && o[0] != p.Current[0] {
			return // the same ring, turned
		}
		w, s := 0.0, 0.0
		border := func(a, b int) { w, s = max(w, p.Mud[a][b]), s+p.Mud[a][b] }
		for i, a := range o {
			b := o[(i+1)%len(o)]
			if i == last && (!p.Ring || last == 0) {
				continue
			}
			if p.Spacer != None {
				border(a, p.Spacer)
				border(p.Spacer, b)
			} else {
				border(a, b)
			}
		}
		if w < worst || (w == worst && s < total) {
			best, worst, total = slices.Clone(o), w, s
		}
	})
	return best, worst, total
}

func TestBestOrderEqualsTryingAllOrders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		if len(p.Current) == 0 {
			return // the spacer alone
		}
		order, worst, total, err := BestOrder(p)
		if err != nil {
			t.Fatal(err)
		}
		wantOrder, wantWorst, wantTotal := bruteForce(p)
		if worst != wantWorst || total != wantTotal || !slices.Equal(order, wantOrder) {
			t.Fatalf("%+v: got %v %g %g, want %v %g %g", p, order, worst, total, wantOrder, wantWorst, wantTotal)
		}
	})
}

func TestBestOrderKeepsTheMakersOrderWhenItIsAsGood(t *testing.T) {
	mud := make([][]float64, 5)
	for i := range mud {
		mud[i] = []float64{0.1, 0.1, 0.1, 0.1, 0.1}
	}
	own := []int{3, 0, 4, 2, 1}
	order, worst, _, err := BestOrder(OrderProblem{Mud: mud, First: None, Last: None, Spacer: None, Current: own})
	if err != nil || !slices.Equal(order, own) || worst != 0.1 {
		t.Errorf("got %v (worst %g), %v; want %v", order, worst, err, own)
	}
}

func TestBestOrderRefusesContradictionsWithAReason(t *testing.T) {
	square := func(n int, v float64) [][]float64 {
		m := make([][]float64, n)
		for i := range m {
			m[i] = slices.Repeat([]float64{v}, n)
		}
		return m
	}
	lopsided := square(2, 0)
	lopsided[0][1] = 0.5
	free := OrderProblem{Mud: square(3, 0), First: None, Last: None, Spacer: None}
	change := func(f func(*OrderProblem)) OrderProblem { p := free; f(&p); return p }
	for want, p := range map[string]OrderProblem{
		"too many":         change(func(p *OrderProblem) { p.Mud = square(13, 0) }),
		"0 to 1":           change(func(p *OrderProblem) { p.Mud = square(3, 1.5) }),
		"is NaN":           change(func(p *OrderProblem) { p.Mud = square(3, math.NaN()) }),
		"one score":        change(func(p *OrderProblem) { p.Mud = lopsided }),
		"one for each":     change(func(p *OrderProblem) { p.Mud = [][]float64{{0}, {0, 0}} }),
		"unpin one end":    change(func(p *OrderProblem) { p.First, p.Last = 1, 1 }),
		"another spacer":   change(func(p *OrderProblem) { p.First, p.Spacer = 1, 1 }),
		"index from 0":     change(func(p *OrderProblem) { p.Last = 3 }),
		"each once":        change(func(p *OrderProblem) { p.Current = []int{0, 1} }),
		"batter 1 wrongly": change(func(p *OrderProblem) { p.Current = []int{0, 1, 1} }),
	} {
		order, _, _, err := BestOrder(p)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: got %v and error %v, want one about %q", p, order, err, want)
		}
	}
}

func TestBestOrderOfNoBattersIsEmpty(t *testing.T) {
	order, worst, total, err := BestOrder(OrderProblem{First: None, Last: None, Spacer: None})
	if len(order) != 0 || worst != 0 || total != 0 || err != nil {
		t.Errorf("got %v %g %g %v", order, worst, total, err)
	}
}
