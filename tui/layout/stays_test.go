package layout

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// cutting asks for the station of the cuts: the map M of them stays above bars R and, where there is one column, plan K and weighing list W.
func cutting(w, h int, focus ID) Ask {
	return Ask{W: w, H: h, Focus: focus, Warnings: 3, Columns: [3][]Panel{
		{{ID: "M", Want: 16, Least: 8, Stays: true}, {ID: "R", Want: 14, Least: 7}}, {{ID: "K", Want: 22, Least: 7}}, of("W"),
	}}
}

// topping asks for the station of the top: toppings O, embeds E, piping P; what follows F, details D; weighing list W.
func topping(w, h int, focus ID) Ask {
	return Ask{W: w, H: h, Focus: focus, Warnings: 3, Columns: [3][]Panel{
		{{ID: "O", Want: 3, Least: 3}, {ID: "E", Want: 3, Least: 3}, {ID: "P", Want: 26, Least: 26}}, {{ID: "F", Want: 18, Least: 18}, {ID: "D", Want: 16, Least: 16}}, of("W"),
	}}
}

func drawn(ask Ask, parts ...string) string {
	want := "T\nt\n" + strings.Join(parts, "")
	var lines []string
	for _, l := range strings.Split(strings.TrimSuffix(want, "\n"), "\n") {
		if len(l) == 1 {
			l = strings.Repeat(l, ask.W/5)
		}
		lines = append(lines, l)
	}
	return strings.Join(lines, "\n") + "\n"
}

func rows(n int, line string) string { return strings.Repeat(line+"\n", n) }

func compare(t *testing.T, ask Ask, parts ...string) {
	t.Helper()
	if d := cmp.Diff(drawn(ask, parts...), drawing(Split(ask), ask.W, ask.H)); d != "" {
		t.Error(d)
	}
}

func TestAtEightyByTwentyFourTheMapOfTheCutsStaysAboveWhatIsChanged(t *testing.T) {
	compare(t, cutting(80, 24, "M"), rows(10, "M"), rows(9, "R"), rows(1, "!"), rows(1, "s"), rows(1, "f"))
	compare(t, cutting(80, 24, "K"), rows(10, "M"), rows(9, "K"), rows(1, "!"), rows(1, "s"), rows(1, "f"))
	compare(t, cutting(80, 24, "W"), rows(10, "M"), rows(9, "W"), rows(1, "!"), rows(1, "s"), rows(1, "f"))
}

func TestAtAHundredAndTwentyTheCutHasItsPlanBesideTheMap(t *testing.T) {
	compare(t, cutting(120, 36, "M"),
		rows(14, "MMMMMMMMMMMMMMMM********"), rows(4, "MMMMMMMMMMMMMMMMKKKKKKKK"), rows(9, "RRRRRRRRRRRRRRRRKKKKKKKK"), rows(5, "!"), rows(1, "s"), rows(1, "f"))
}

func TestOnALargeScreenTheCutHasThreeColumns(t *testing.T) {
	compare(t, cutting(200, 60, "M"),
		rows(18, strings.Repeat("M", 18)+strings.Repeat("K", 11)+strings.Repeat("*", 11)), rows(11, strings.Repeat("R", 18)+strings.Repeat("K", 11)+strings.Repeat("*", 11)),
		rows(22, strings.Repeat("R", 18)+strings.Repeat("K", 11)+strings.Repeat("W", 11)), rows(5, "!"), rows(1, "s"), rows(1, "f"))
}

func TestTheTopAtTheThreeSizes(t *testing.T) {
	compare(t, topping(80, 24, "O"), rows(5, "O"), rows(14, "E"), rows(1, "!"), rows(1, "s"), rows(1, "f"))
	compare(t, topping(80, 24, "P"), rows(19, "P"), rows(1, "!"), rows(1, "s"), rows(1, "f"))
	compare(t, topping(120, 36, "O"),
		rows(5, "OOOOOOOOOOOOOOOO********"), rows(5, "EEEEEEEEEEEEEEEE********"), rows(4, "PPPPPPPPPPPPPPPP********"), rows(13, "PPPPPPPPPPPPPPPPFFFFFFFF"), rows(5, "!"), rows(1, "s"), rows(1, "f"))
	compare(t, topping(200, 60, "O"),
		rows(5, strings.Repeat("O", 18)+strings.Repeat("F", 11)+strings.Repeat("*", 11)), rows(5, strings.Repeat("E", 18)+strings.Repeat("F", 11)+strings.Repeat("*", 11)),
		rows(10, strings.Repeat("P", 18)+strings.Repeat("F", 11)+strings.Repeat("*", 11)), rows(9, strings.Repeat("P", 18)+strings.Repeat("D", 11)+strings.Repeat("*", 11)),
		rows(22, strings.Repeat("P", 18)+strings.Repeat("D", 11)+strings.Repeat("W", 11)), rows(5, "!"), rows(1, "s"), rows(1, "f"))
}

func TestWhereThereIsNoRoomWhatStaysIsAPageLikeTheOthers(t *testing.T) {
	for h := MinH; h <= 70; h++ {
		for _, focus := range []ID{"M", "R", "K", "W"} {
			l := Split(cutting(80, h, focus))
			if _, ok := l.Find(focus); !ok {
				t.Fatalf("80×%d does not show %s", h, focus)
			}
			covered(t, l, 80, h)
			if _, ok := l.Find("M"); !ok && h >= 24 {
				t.Errorf("80×%d with %s in focus does not show the map", h, focus)
			}
		}
	}
}
