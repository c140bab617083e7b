package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// T8: ten bars with three rosettes each of 0.978016661 g, 7 % left behind, a bag of 250 g. 1.4342566 g batter to a gram of oils is worked example 5
// of the chemistry pages.
func TestTheBatchOfTheWorkedExample(t *testing.T) {
	net := 30 * shape.Grams(973.15090635, 1.005)
	near(t, "what comes out", net, 29.3405, 2e-6)
	b, ok := shape.Bagged(net, 250, []float64{1}, shape.Residue{Part: 0.07})
	if !ok || b.Fills != 1 || b.Bags != 1 {
		t.Errorf("one bag is filled once, not %+v", b)
	}
	near(t, "what is made", b.Made, 31.5, 0.002)
	near(t, "what stays", b.Left, 2.2, 0.01)
	near(t, "the oils", b.Made/1.4342566, 22.0, 0.0005)
}

// 600 g net, 15 g kept by each bag of 250 g: three bags keep 45 g, and of 645 g each takes 215; one bag keeps 15 g, and 615 g are three fillings. Of
// 600 g net by percent, 20 % more than stays: 750 g, of which a bag for four fifths takes 600 in three fillings and the other 150 in one.
func TestResidueByTheBagCountsBagsNotFillings(t *testing.T) {
	third := 1.0 / 3
	for _, c := range []struct {
		parts []float64
		left  shape.Residue
		want  shape.Bagging
	}{
		{[]float64{third, third, third}, shape.Residue{PerBag: 15, Part: 0.07}, shape.Bagging{Made: 645, Left: 45, Fills: 3, Bags: 3}},
		{[]float64{1}, shape.Residue{PerBag: 15}, shape.Bagging{Made: 615, Left: 15, Fills: 3, Bags: 1}},
		{[]float64{0.8, 0, 0.2}, shape.Residue{Part: 0.2}, shape.Bagging{Made: 750, Left: 150, Fills: 4, Bags: 2}},
	} {
		b, ok := shape.Bagged(600, 250, c.parts, c.left)
		if !ok || b != c.want {
			t.Errorf("%v: want %+v, got %+v", c.parts, c.want, b)
		}
		if back, ok := shape.Emptied(c.want.Made, 250, c.parts, c.left); !ok || back != c.want {
			t.Errorf("%v, back: want %+v, got %+v", c.parts, c.want, back)
		}
	}
	if b, ok := shape.Bagged(0, 250, []float64{1}, shape.Residue{PerBag: 15}); !ok || b != (shape.Bagging{}) {
		t.Errorf("nothing to pipe needs no bag, got %+v", b)
	}
	if b, ok := shape.Emptied(10, 250, []float64{1}, shape.Residue{PerBag: 15}); !ok || b.Left != 10 {
		t.Errorf("no more stays in a bag than was in it, got %+v", b)
	}
}

func TestWhatCannotBeBaggedIsRefused(t *testing.T) {
	for _, c := range []struct {
		net, fill float64
		left      shape.Residue
	}{
		{100, 15, shape.Residue{PerBag: 15}},
		{100, 0, shape.Residue{}},
		{100, 250, shape.Residue{Part: 1}},
		{-1, 250, shape.Residue{}},
		{math.NaN(), 250, shape.Residue{}},
		{math.Inf(1), 250, shape.Residue{}},
	} {
		if b, ok := shape.Bagged(c.net, c.fill, []float64{1}, c.left); ok {
			t.Errorf("%+v is taken: %+v", c, b)
		}
		if b, ok := shape.Emptied(c.net, c.fill, []float64{1}, c.left); ok {
			t.Errorf("%+v is taken back: %+v", c, b)
		}
	}
}

func TestBagsAreEnoughAndNeverTooMany(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		net, fill := rapid.Float64Range(0.1, 3000).Draw(t, "net"), rapid.Float64Range(50, 400).Draw(t, "fill")
		left := shape.Residue{Part: rapid.Float64Range(0, 0.3).Draw(t, "part"), PerBag: rapid.Float64Range(0, 45).Draw(t, "per bag") * float64(rapid.IntRange(0, 1).Draw(t, "by the bag"))}
		n := rapid.IntRange(1, 4).Draw(t, "bags")
		parts := make([]float64, n)
		for i := range parts {
			parts[i] = 1 / float64(n)
		}
		b, ok := shape.Bagged(net, fill, parts, left)
		if !ok {
			t.Fatal("refused")
		}
		if math.Abs(b.Made-b.Left-net) > 1e-6 || b.Left < 0 || b.Bags != n || b.Fills < n {
			t.Fatalf("%g g come to %+v", net, b)
		}
		if float64(b.Fills)*fill < b.Made-1e-6 || float64(b.Fills-n)*fill >= b.Made+1e-6 {
			t.Fatalf("%d fillings of %g g in %d bags for %g g", b.Fills, fill, n, b.Made)
		}
		back, ok := shape.Emptied(b.Made, fill, parts, left)
		same(t, "the way back", back.Made-back.Left, net)
		if twice, _ := shape.Bagged(2*net, fill, parts, left); ok && left.PerBag == 0 {
			same(t, "twice as much", twice.Left/twice.Made, b.Left/b.Made)
		}
	})
}

// A bag that lies flat 200 wide and 300 long: a film of half a millimetre on 61 336 mm², a tip 40 long from radius 10 to 6, two thirds filled.
func TestTheFilmOfTheWorkedExample(t *testing.T) {
	near(t, "the mouth", shape.BagRadius(200), 63.662, 1e-5)
	near(t, "the wall", shape.BagFilm(200, 300, 1), 61336, 1e-5)
	film, tip, fill := shape.BagFilm(200, 300, 0.5), shape.Frustum(10, 6, 40), shape.BagHolds(200, 300, 2.0/3)
	near(t, "the film", film/1000, 30.7, 0.002)
	near(t, "the tip", tip/1000, 8.2, 0.002)
	near(t, "both", shape.Grams(film+tip, 1.005), 39.1, 0.001)
	near(t, "the filling", fill/1000, 849, 0.0003)
	near(t, "its grams", shape.Grams(fill, 1.005), 853, 0.0003)
	near(t, "what stays of it", (film+tip)/fill, 0.046, 0.01)
	if part := shape.Grams(film+tip, 1.005) / (150 + shape.Grams(film+tip, 1.005)); part <= 0.2 {
		t.Errorf("a fill of 150 g leaves %.3f of itself", part)
	}
}

// Thirty units at 8 s and two bags at 2.5 min: 4 + 5.
func TestPipingTakesItsUnitsAndItsBags(t *testing.T) {
	near(t, "the minutes", shape.Piping(30, 8, 2, 2.5), 9, 1e-12)
}
