package script_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pourbench/pour/script"
)

func listed(s script.Script) string {
	var out []string
	for _, a := range s.Acts {
		text := fmt.Sprintf("%s %d", a.Kind, a.Item)
		if a.Wait {
			text += " waits"
		}
		out = append(out, text)
	}
	return strings.Join(out, ", ")
}

// The order on the top is that of the trade: what runs comes before pieces, pieces before grains, and what wants a skin last (common practice, no source).
func TestTheTopIsDressedInItsOrder(t *testing.T) {
	s := script.Top(script.Dressing{Into: []int{1}, Wet: []int{3}, Onto: []int{0, 2}, Grain: []int{0, 2}, Skin: []int{1}})
	if got, want := listed(s), "set embeds 1, strew 3, set embeds 0, set embeds 2, strew 0, strew 2, strew 1 waits"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if !s.Acts[0].Into || s.Acts[2].Into {
		t.Error("what goes into the base is not told from what stands in the icing")
	}
	if got := script.Top(script.Dressing{}); len(got.Acts) != 0 {
		t.Errorf("a bare top has acts: %v", got.Acts)
	}
}

func TestALoafIsCutOneByOneOrAtOnceAndWhatIsNotCutIsWeighed(t *testing.T) {
	for _, c := range []struct {
		k    script.Knife
		want string
	}{
		{
			script.Knife{Cuts: 2, Aside: true, Pieces: 2, Strewn: []int{0}, Cured: []int{1}},
			"try whether it is firm 0, lay the marks 0, cut 0, cut 1, set aside 0, weigh 0, weigh 1, wipe 0, strew 0, strew 1 waits",
		},
		{script.Knife{Cuts: 9, Gang: true, Pieces: 1}, "try whether it is firm 0, lay the marks 0, cut 0, weigh 0, wipe 0"},
		{script.Knife{Pieces: 2}, "try whether it is firm 0, weigh 0, weigh 1"},
	} {
		s := script.Cutting(c.k)
		if got := listed(s); got != c.want {
			t.Errorf("%+v: %s, want %s", c.k, got, c.want)
		}
		for _, a := range s.Acts {
			if a.Kind == script.Cut && c.k.Cuts == 2 && (a.Round != a.Item+1 || a.Rounds != 2) {
				t.Errorf("cut %d is told as %d of %d", a.Item, a.Round, a.Rounds)
			}
		}
	}
}

// The base is tried once, before any bag is filled, and a bag before it is piped.
func TestAShapedIcingIsTriedFilledAndPiped(t *testing.T) {
	shares := []float64{0.6, 0, 0.4}
	kinds := func(s script.Script) (out []string) {
		for _, a := range s.Acts {
			out = append(out, fmt.Sprintf("%s %d×%d", a.Kind, a.Jug, a.Times))
		}
		return out
	}
	bags := []script.Bag{{Fills: 2, Units: 18}, {}, {Fills: 1, Units: 12}}
	got := kinds(script.Bags(shares, []int{0, 1, 2}, false, script.Shaped{Peak: true, Bags: bags}))
	if want := []string{"try a peak -1×0", "fill the bag 0×2", "pipe 0×18", "fill the bag 2×1", "pipe 2×12"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	got = kinds(script.Bags(shares, []int{0, 1, 2}, true, script.Shaped{Peak: true, Bags: []script.Bag{{Fills: 3, Units: 30}}}))
	if want := []string{"try a peak -1×0", "fill the bag -1×3", "pipe -1×30"}; !slices.Equal(got, want) {
		t.Errorf("in one bag: %v, want %v", got, want)
	}
	if got = kinds(script.Bags(shares, []int{0, 1, 2}, true, script.Shaped{Peak: true, Bags: []script.Bag{{}}})); !slices.Equal(got, []string{"try a peak -1×0", "pipe -1×0"}) {
		t.Errorf("spooned: %v", got)
	}
}
