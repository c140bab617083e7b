package label_test

import (
	"strings"
	"testing"

	"pourbench/pour/day"
	"pourbench/pour/label"
)

// row is a market with one row that is answered by such a word.
func row(finds string, m label.Market) label.Market {
	m.Rows = []label.Row{{ID: "it", Text: "it", AsOf: 20000, Finds: finds}}
	return m
}

func TestADesignAnswersWhatItCan(t *testing.T) {
	weighed := label.Declare(label.Weighing{Bars: w1(), Market: eu()})
	long, old, none := label.Market{Allergens: label.AllergensLong}, label.Market{Allergens: label.AllergensOld}, label.Market{Allergens: label.AllergensNone}
	there := label.Market{ID: "vale"}
	for _, c := range []struct {
		finds  string
		market label.Market
		is     label.Design
		want   label.State
		why    string
	}{
		{"maker", long, label.Design{}, label.Open, "nobody"},
		{"maker", long, label.Design{Maker: label.Maker{Name: "Alpine Meadow"}}, label.Open, "no address"},
		{"maker", long, label.Design{Maker: label.Maker{Name: "Alpine Meadow", Address: "Alp 1"}}, label.Unknown, "is it where"},
		{"maker", there, label.Design{Maker: label.Maker{Market: "vale", Name: "Alpine Meadow", Address: "Alp 1"}}, label.Ticked, "Alpine"},
		{"contact", long, label.Design{}, label.Open, "no contact"},
		{"contact", long, label.Design{Maker: label.Maker{Contact: "alp.example"}}, label.Unknown, "alp.example"},
		{"contact", there, label.Design{Maker: label.Maker{Market: "vale", Contact: "alp.example"}}, label.Ticked, "alp.example"},
		{"net", long, label.Design{Net: weighed}, label.Ticked, "97 g, by 12"},
		{"net", long, label.Design{Net: label.Net{From: label.FromForecast, Text: "97 g"}}, label.Unknown, "forecast"},
		{"net", long, label.Design{Net: label.Net{Why: "too light"}}, label.Open, "too light"},
		{"letters", long, label.Design{}, label.Unknown, "not known"},
		{"letters", long, label.Design{LeastMM: 3}, label.Unknown, "not drawn"},
		{"letters", long, label.Design{LeastMM: 3, LetterMM: 3}, label.Ticked, "3 mm, and 3 are"},
		{"letters", long, label.Design{LeastMM: 3, LetterMM: 2.9}, label.Open, "2.9 mm, where 3 are"},
		{"letters", long, label.Design{LeastMM: 3.175, LetterMM: 3.175}, label.Ticked, "3.175 mm, and 3.175"},
		{"date", long, label.Design{}, label.Open, "no date"},
		{"date", long, label.Design{Dated: true}, label.Ticked, ""},
		{"lot", long, label.Design{}, label.Unknown, "poured"},
		{"lot", long, label.Design{Lot: "261129A"}, label.Ticked, "261129A"},
		{"identity", long, label.Design{}, label.Ticked, ""},
		{"list", long, label.Design{}, label.Open, "no list"},
		{"list", long, label.Design{Listed: true, Unsure: []string{"tamanu"}}, label.Open, "tamanu"},
		{"list", long, label.Design{Listed: true}, label.Ticked, "packets"},
		{"allergens", none, label.Design{Unstated: []string{"hay"}}, label.Unknown, "no list"},
		{"allergens", long, label.Design{Unstated: []string{"hay"}}, label.Open, "hay"},
		{"allergens", long, label.Design{Either: []string{"orange"}}, label.Open, "orange"},
		{"allergens", long, label.Design{Prohibited: []string{"Atranol"}}, label.Open, "Atranol"},
		{"allergens", old, label.Design{}, label.Ticked, "summed"},
		{"long-list", long, label.Design{}, label.Ticked, ""},
		{"long-list", old, label.Design{}, label.Open, "old list"},
		{"room", long, label.Design{}, label.Unknown, ""},
		{"room", long, label.Design{Fits: true}, label.Ticked, ""},
		{"room", long, label.Design{Crowded: "the list is too long"}, label.Open, "too long"},
		{"claims", long, label.Design{}, label.Unknown, ""},
		{"claims", long, label.Design{Claims: []label.Claim{{Word: "heals", Class: label.ClaimDrug}}}, label.Open, "heals"},
		{"food", long, label.Design{}, label.Unknown, "look at the bar"},
		{"food", long, label.Design{Food: "it has icing"}, label.Open, "icing"},
		{"glitter", long, label.Design{}, label.Ticked, ""},
		{"glitter", long, label.Design{Glitter: []string{"star glitter"}}, label.Open, "star glitter"},
		{"report", long, label.Design{}, label.Open, "names no report"},
		{"report", long, label.Design{Verdict: label.Verdict{Report: "R-12"}}, label.Unknown, "as you entered it"},
		{"report", long, label.Design{Verdict: label.Verdict{Report: "R-12", Missed: make([]label.Miss, 1)}}, label.Open, "outside"},
		{"report", long, label.Design{Verdict: label.Verdict{Report: "R-12", Why: "no such report"}}, label.Unknown, "no such"},
		{"", long, label.Design{}, label.Unknown, ""},
	} {
		got := label.Checks(row(c.finds, c.market), c.is, nil, 0)[0]
		if got.State != c.want || !strings.Contains(got.Why, c.why) {
			t.Errorf("%s of %+v: %s, %q; want %s, %q", c.finds, c.is, got.State, got.Why, c.want, c.why)
		}
	}
}

func TestATickNeverHidesWhatTheDesignSays(t *testing.T) {
	ticks := map[string]bool{"it": true}
	m := label.Market{}
	if c := label.Checks(row("", m), label.Design{}, ticks, 0)[0]; c.State != label.Ticked || c.Why != "ticked by you" {
		t.Errorf("what only she can tell: %+v", c)
	}
	if c := label.Checks(row("maker", m), label.Design{}, ticks, 0)[0]; c.State != label.Open || !strings.Contains(c.Why, "you ticked it, but nobody") {
		t.Errorf("what is open: %+v", c)
	}
}

func TestARowIsOldAfterTwelveMonths(t *testing.T) {
	asOf, _ := day.Parse("2026-11-28")
	m := label.Market{Rows: []label.Row{{ID: "it", AsOf: asOf}}}
	for text, want := range map[string]bool{"2026-11-28": false, "2027-11-28": false, "2027-11-29": true, "2029-01-01": true} {
		today, err := day.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := label.Checks(m, label.Design{}, nil, today)[0].Stale; got != want {
			t.Errorf("on %s stale is %v", text, got)
		}
	}
	if label.Checks(m, label.Design{}, nil, 0)[0].Stale {
		t.Error("it is old on no day")
	}
}

func TestEveryAnswerHasItsWord(t *testing.T) {
	for _, word := range label.Answers() {
		if c := label.Checks(row(word, label.Market{Allergens: label.AllergensLong}), label.Design{}, nil, 0)[0]; c.Why == "" {
			t.Errorf("%q answers nothing", word)
		}
	}
}
