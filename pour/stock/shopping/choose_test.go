package shopping_test

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/lot"
	"pourbench/pour/money"
	"pourbench/pour/stock/shopping"
)

func price(t interface{ Fatal(...any) }, s string) money.Amount {
	a, err := money.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// tried is what one way to buy comes to, worked out with the standard library's fractions.
type tried struct {
	cost *big.Rat
	left int64
	n    int
}

// everyWay tries every way to buy with no pack too many of any one size, and keeps the best by the rule.
func everyWay(need int64, sizes []int64, prices []*big.Rat, rule shopping.Rule) tried {
	var best *tried
	var try func(i int, got int64, cost *big.Rat, n int)
	try = func(i int, got int64, cost *big.Rat, n int) {
		if i == len(sizes) {
			if got < need {
				return
			}
			now := tried{new(big.Rat).Set(cost), got - need, n}
			if best == nil || before(now, *best, rule) {
				best = &now
			}
			return
		}
		for k := int64(0); (k-1)*sizes[i] < need; k++ {
			c := new(big.Rat).Mul(prices[i], new(big.Rat).SetInt64(k))
			try(i+1, got+k*sizes[i], c.Add(c, cost), n+int(k))
		}
	}
	try(0, 0, new(big.Rat), 0)
	return *best
}

func before(a, b tried, rule shopping.Rule) bool {
	cost, left := a.cost.Cmp(b.cost), cmp.Compare(a.left, b.left)
	if rule == shopping.LeastLeft {
		cost, left = left, cost
	}
	return cmp.Or(cost, left, cmp.Compare(a.n, b.n)) < 0
}

// The choice is the best of all, by trying every one.
func TestThePacksAreTheBestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rule := rapid.SampledFrom([]shopping.Rule{shopping.Cheapest, shopping.LeastLeft}).Draw(t, "rule")
		grain := rapid.Int64Range(1, 30000).Draw(t, "grain")
		need := rapid.Int64Range(1, 40*grain).Draw(t, "need")
		var offers []shopping.Offer
		var sizes []int64
		var prices []*big.Rat
		for range rapid.IntRange(1, 4).Draw(t, "offers") {
			size := grain * rapid.Int64Range(3, 25).Draw(t, "size")
			text := rapid.SampledFrom([]string{"0.10", "1", "2", "2.5", "2.50", "4.999999999", "5", "7.35", "10", "999999999"}).Draw(t, "price")
			p, _ := new(big.Rat).SetString(text)
			sizes, prices = append(sizes, size), append(prices, p)
			offers = append(offers, shopping.Offer{Size: lot.Quantity(size), Usable: lot.Quantity(size), Price: price(t, text), Priced: true})
		}
		c, ok := shopping.Choose(lot.Quantity(need), offers, rule)
		want := everyWay(need, sizes, prices, rule)
		cost, _ := new(big.Rat).SetString(c.Cost.String())
		if !ok || c.Coarse || cost.Cmp(want.cost) != 0 || int64(c.Leftover) != want.left || c.Packs != want.n {
			t.Fatalf("%s: %v, want cost %s, left %d in %d packs", rule, c, want.cost.FloatString(9), want.left, want.n)
		}
		got := int64(0)
		for _, b := range c.Buys {
			got += int64(b.Offer.Usable) * int64(b.Count)
		}
		if got-need != want.left {
			t.Fatalf("%v come to %d of %d", c.Buys, got, need)
		}
	})
}

// By hand: 6.2 kg of olive oil in cans of 5 kg at 38.50, 1 kg at 9.20 and 250 g at 3.10. Two cans are 77.00; a can, a kilogram and a quarter are 50.80
// and leave 50 g.
func TestPacksByHand(t *testing.T) {
	g := func(v int) lot.Quantity { return lot.Quantity(v) * lot.One }
	offers := []shopping.Offer{
		{Size: g(5000), Usable: g(5000), Price: price(t, "38.50"), Priced: true},
		{Size: g(1000), Usable: g(1000), Price: price(t, "9.20"), Priced: true},
		{Size: g(250), Usable: g(250), Price: price(t, "3.10"), Priced: true},
		{Size: g(6200), Usable: g(6200)}, // without a price it is passed over
	}
	for need, want := range map[int]string{
		6200: "1×5000 1×1000 1×250 50.80 left 50",
		5000: "1×5000 38.50 left 0",
		250:  "1×250 3.10 left 0",
		700:  "1×1000 9.20 left 300", // three quarters would be 9.30
		500:  "2×250 6.20 left 0",
		4500: "1×5000 38.50 left 500", // the large can is cheaper than what would be enough
	} {
		c, ok := shopping.Choose(g(need), offers, shopping.Cheapest)
		if got := told(c); !ok || got != want {
			t.Errorf("%d g: %s, want %s", need, got, want)
		}
	}
	if c, ok := shopping.Choose(g(4500), offers, shopping.LeastLeft); !ok || told(c) != "4×1000 2×250 43.00 left 0" {
		t.Errorf("least left over: %s", told(c))
	}
	if c, ok := shopping.Choose(g(700), offers[3:], shopping.Cheapest); !ok || c.Priced || told(c) != "1×6200 0.00 left 5500" {
		t.Errorf("without any price: %s", told(c))
	}
	if _, ok := shopping.Choose(g(1), nil, shopping.Cheapest); ok {
		t.Error("packs were chosen of none")
	}
	if c, ok := shopping.Choose(0, nil, shopping.Cheapest); !ok || c.Packs != 0 {
		t.Errorf("for nothing: %v", c)
	}
}

func told(c shopping.Choice) string {
	text := ""
	for _, b := range c.Buys {
		text += fmt.Sprintf("%d×%s ", b.Count, b.Offer.Size)
	}
	return text + c.Cost.String() + " left " + c.Leftover.String()
}

// What cannot be looked at in every way is still enough, and says so.
func TestANeedOfManyFinePacksIsStillEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		need := lot.Quantity(rapid.Int64Range(1e9, 1e11).Draw(t, "need"))
		a := lot.Quantity(rapid.Int64Range(2e7, 9e7).Draw(t, "a"))
		offers := []shopping.Offer{{Size: a, Usable: a, Price: price(t, "2"), Priced: true}, {Size: a + 1, Usable: a + 1, Price: price(t, "2.01"), Priced: true}}
		c, ok := shopping.Choose(need, offers, shopping.Cheapest)
		if !ok || !c.Coarse || c.Leftover < 0 {
			t.Fatalf("%v, %t", c, ok)
		}
	})
}

// The last price counts, of each supplier; what cost nothing and what was made is no offer; what usually stays in the tub is not counted on.
func TestOffersAreWhatWasPaidLast(t *testing.T) {
	kg := 1000 * lot.One
	packs := []lot.Pack{
		{Size: kg, Price: price(t, "9.00"), Supplier: "mill", Bought: 200},
		{Size: kg, Price: price(t, "8.00"), Supplier: "mill", Bought: 100},
		{Size: kg, Price: price(t, "7.00"), Supplier: "market", Bought: 50},
		{Size: 5 * kg, Loss: kg / 10, Price: price(t, "30.00"), Bought: 60},
		{Size: 2 * kg, Bought: 300},
		{Size: 3 * kg, Price: price(t, "3.00"), Made: true, Bought: 300},
	}
	typed := []shopping.Offer{{Size: kg, Usable: kg, Supplier: "mill", Price: price(t, "8.50"), Priced: true, Day: 250}, {Size: kg / 2, Usable: kg / 2}, {Size: kg, Usable: kg, Supplier: "mill", Day: 400}}
	got := ""
	for _, o := range shopping.Offers(packs, typed) {
		got += fmt.Sprintf("%s (%s) %s %t %s\n", o.Size, o.Usable, o.Price, o.Typed, o.Supplier)
	}
	want := "5000 (4900) 30.00 false \n1000 (1000) 7.00 false market\n1000 (1000) 8.50 true mill\n500 (500) 0.00 true \n"
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// What costs the same leaves as little over as can be, in however many packs; of what leaves the same over, the fewest packs are taken.
func TestWhatCostsTheSameLeavesLeastOver(t *testing.T) {
	g := func(v int) lot.Quantity { return lot.Quantity(v) * lot.One }
	offers := []shopping.Offer{
		{Size: g(12), Usable: g(12), Price: price(t, "2"), Priced: true},
		{Size: g(10), Usable: g(10), Price: price(t, "3"), Priced: true},
		{Size: g(5), Usable: g(5), Price: price(t, "1"), Priced: true},
	}
	for rule, want := range map[shopping.Rule]string{shopping.Cheapest: "2×5 2.00 left 0", shopping.LeastLeft: "2×5 2.00 left 0"} {
		if c, _ := shopping.Choose(g(10), offers, rule); told(c) != want {
			t.Errorf("%s: %s, want %s", rule, told(c), want)
		}
	}
	offers[1].Price = price(t, "2")
	if c, _ := shopping.Choose(g(10), offers, shopping.Cheapest); told(c) != "1×10 2.00 left 0" {
		t.Errorf("%s", told(c))
	}
	slices.Reverse(offers)
	if c, _ := shopping.Choose(g(10), offers, shopping.Cheapest); told(c) != "1×10 2.00 left 0" {
		t.Errorf("the smaller first: %s", told(c))
	}
}
