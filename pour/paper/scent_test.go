package paper

import (
	"errors"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"pourbench/chem"
	"pourbench/pour/day"
	"pourbench/pour/logbook/learn"
	"pourbench/pour/logbook/scents"
)

// rose is a page with something of everything.
func rose(t *testing.T) scents.Page {
	t.Helper()
	on := func(text string) day.Day {
		d, err := day.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	return scents.Page{
		ID: "alp-rose", Name: "Alp rose", OnShelf: true, Behaviour: "fast", Poured: 7, Trials: 1, LeftOut: 1,
		First: on("2026-12-05"), Last: on("2027-03-20"),
		Clock:    &learn.Finding{ID: "alp-rose", Name: "Alp rose", LoadPercent: 3, Prior: 2, Factor: 1.84, Low: 1.31, High: 2.58, Pours: 5, Behaviour: "fast"},
		Troubles: []scents.Trouble{{Word: "seizes", Pours: 2, Alone: 1}, {Word: "rices", Pours: 1}},
		Browning: []scents.Browned{
			{Pour: "2026-12-05-alpine-meadow", Jug: "poppy", Alone: true, Predicted: chem.BrowningTan, Looked: true, Seen: 2, Week: 4, Placed: true, Colour: "#c8a070"},
			{Pour: "2027-01-02-alpine-meadow", Jug: "poppy", Alone: true, Predicted: chem.BrowningTan},
			{Pour: "2027-03-20-first-snow", Jug: "pot", Predicted: chem.BrowningNone, Looked: true, Seen: 0.5},
		},
		Weeks: []scents.Week{{Week: 0, Mean: 3.4, Low: 2, High: 4, N: 5}, {Week: 2, Mean: 2.5, Low: 2.5, High: 2.5, N: 1}, {Week: 8, Mean: 1, Low: 0, High: 2, N: 2}},
		Words: []scents.Word{{Text: "rose", Times: 4}, {Text: "a bit sharp", Times: 1}}, Unplaced: 1, Shared: 2,
		Audiences: []scents.Audience{{Name: "bright", Sold: 12, Given: 1, From: 3}, {From: 1, Sold: 2}},
	}
}

func TestAScentsPageTellsAllOfIt(t *testing.T) {
	page := rose(t)
	golden.RequireEqual(t, ScentText(page, ScentOnPaper)+"\n\n"+ScentText(scents.Page{ID: "made-up", Name: "made-up", Weeks: page.Weeks[2:]}, ScentOnPaper)+"\n\n"+
		ScentList([]scents.Page{page, {ID: "made-up", Name: "made-up"}}, []learn.Unread{{ID: "x", Err: errors.New("it is locked")}})+"\n\n"+ScentList(nil, nil))
}

// The page of a scent is for a terminal of 80 columns, of letters every printer has, and makes no figure of how a scent goes.
func TestAScentsPageFitsAndInventsNothing(t *testing.T) {
	page := rose(t)
	for i := range 30 { // more jugs and words than are told
		page.Browning = append(page.Browning, scents.Browned{Pour: strings.Repeat("long", 15), Jug: "a jug", Looked: true, Seen: 1, Week: i, Placed: true})
		page.Words = append(page.Words, scents.Word{Text: strings.Repeat("word ", i+1), Times: 1})
	}
	text := ScentText(page, ScentOnPaper)
	for line := range strings.SplitSeq(text, "\n") {
		if width(line) > 80 {
			t.Errorf("%d columns: %q", width(line), line)
		}
	}
	for line := range strings.SplitSeq(ScentText(page, ScentOnScreen), "\n") {
		if width(line) > ScentOnScreen {
			t.Errorf("%d columns on a screen: %q", width(line), line)
		}
	}
	if strings.ContainsFunc(text, func(r rune) bool { return r > '~' }) || !strings.Contains(text, "the last 8 of them") || strings.Count(text, "predicted") > 12 {
		t.Errorf("the page:\n%s", text)
	}
	if !strings.Contains(text, "was measured nowhere that was found") {
		t.Error("the page does not say that no figure of evaporation was found")
	}
}
