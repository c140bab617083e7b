package paper

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pourbench/pour"
)

// statements is the sentences of a paper that are long enough to state something, each as one line.
func statements(text string) []string {
	var out []string
	text = regexp.MustCompile(`\f?.*page \d+ of \d+\n=+\n(.*goes on.*\n-+\n)?`).ReplaceAllString(text, "")
	text = regexp.MustCompile(`\.(\d)`).ReplaceAllString(text, ",$1") // a decimal point ends no sentence
	for _, s := range strings.FieldsFunc(flat(text), func(r rune) bool { return r == '.' || r == '!' || r == '[' || r == ']' || r == '_' }) {
		if s = strings.TrimSpace(s); len(s) > 45 {
			out = append(out, s)
		}
	}
	return out
}

// A paper says nothing twice but what is done to both batches.
func TestNothingIsSaidTwice(t *testing.T) {
	sheets, shelf := examples(t)
	sheets = append(sheets, work(testPlan()))
	both := regexp.MustCompile(`^(base|icing)?:? ?(Stages expected in|Jugs, and the chance|Superfat|Lye concentration|from this lye-in|lye into the oils|Goggles, gloves and sleeves on, air|` +
		`Alkali into the water|make it: alkali|Spoons, an estimate|draw the comb|round \d)`)
	for i, s := range sheets {
		if i == len(sheets)-1 {
			shelf = testShelf()
		}
		for _, text := range []string{Checklist(s, shelf), Bench(s, shelf, false)} {
			seen := map[string]bool{}
			for _, said := range statements(text) {
				if seen[said] && !both.MatchString(regexp.MustCompile(`^[\d. ]+`).ReplaceAllString(said, "")) {
					t.Errorf("%s: said twice: %q", s.Plan.Name, said)
				}
				seen[said] = true
			}
			for _, w := range s.Warnings {
				if n := strings.Count(flat(text), flat(plain(sentence(w.Text)))); n > 1 {
					t.Errorf("%s: %s is said %d times", s.Plan.Name, w.Code, n)
				}
			}
		}
	}
}

// Moments and lengths are minutes and seconds, whatever the paper.
func TestClockTimesAreMinutesAndSecondsThroughout(t *testing.T) {
	sheets, shelf := examples(t)
	other := regexp.MustCompile(`\d min\b|\d h \d|\d+\.\d+ min`)
	for _, s := range sheets {
		for _, text := range []string{Checklist(s, shelf), Bench(s, shelf, false), Bench(s, shelf, true)} {
			if found := other.FindString(flat(text)); found != "" {
				t.Errorf("%s: a time is told as %q", s.Plan.Name, found)
			}
		}
	}
}

// What is said of cut and cure is the plan's own, and nothing else.
func TestCutAndCureAreThePlansOwn(t *testing.T) {
	p := testPlan()
	p.Bed.CutAfterH, p.Bed.CureDays = 31, 77
	for _, text := range everyPaper(p) {
		_, part, _ := strings.Cut(flat(text), "CUT AND CURE")
		found := regexp.MustCompile(`\d+ (h|d|days|weeks)\b`).FindAllString(part, -1)
		if strings.Join(found, ", ") != "31 h, 77 d" {
			t.Errorf("cut and cure say %v:\n%s", found, part)
		}
	}
}

// The bench paper tells a caution that the hands can heed, with what to do where lye or scent is handled; what was to be decided before is
// counted only, and notes are.
func TestTheBenchPaperTellsWhatBearsOnTheHands(t *testing.T) {
	p := testPlan()
	p.Base.Extras = []pour.ExtraPart{{Extra: "sugar", PercentOfOils: 1, In: pour.InLye}}
	s := work(p)
	text := flat(Bench(s, testShelf(), false))
	told, counts := 0, 0
	for _, w := range s.Warnings {
		n := strings.Count(strings.ToLower(text), strings.ToLower(flat(plain(sentence(w.Text)))))
		switch {
		case w.Severity == pour.Note, w.Code == "colour-dies", w.Code == "muddy-neighbours":
			if counts++; n != 0 {
				t.Errorf("%s is told", w.Code)
			}
		case n != 1:
			t.Errorf("%s is told %d times", w.Code, n)
		default:
			told++
		}
		if strings.HasPrefix(w.Code, "lye-meets") && !strings.Contains(text, flat(plain(sentence(w.Do)))) {
			t.Errorf("what to do is not said of %s", w.Code)
		}
	}
	if told == 0 || counts == 0 || !strings.Contains(text, "On the full paper besides: ") {
		t.Errorf("%d are told, %d are counted", told, counts)
	}
}

// Both papers name what to do in an emergency in the same words.
func TestEveryPaperSaysWhatToDoInAnEmergency(t *testing.T) {
	stopped := testPlan()
	stopped.Base.SuperfatPercent = -3
	for _, text := range append(everyPaper(testPlan()), everyPaper(stopped)...) {
		for _, want := range emergency() {
			if n := strings.Count(flat(text), want); n != 1 {
				t.Errorf("%q is said %d times", want, n)
			}
		}
	}
}

// The papers count the plan's warnings as check does: one said once of both batches counts for either, and says that it is of both.
func TestThePapersCountAsCheckDoes(t *testing.T) {
	sheets, shelf := examples(t)
	merged := 0
	for _, s := range sheets {
		ofBoth := 0
		for _, w := range s.Warnings {
			for _, other := range s.Warnings {
				if w.Where == "base" && other.Where == "icing" && w.Text == other.Text && w.Do == other.Do {
					ofBoth++
				}
			}
		}
		merged += ofBoth
		want, _, _ := strings.Cut(strings.TrimPrefix(flat(first(Check(s, nil))), s.Plan.Name+": "), "CAUTION")
		full := flat(Checklist(s, shelf))
		_, index, _ := strings.Cut(full, "behind a !: ")
		index, _, _ = strings.Cut(index, ". Read it before")
		for _, kind := range []string{"caution", "note"} {
			if got, all := sumOf(index, kind), sumOf(want, kind); got != all {
				t.Errorf("%s: the full paper's index adds up to %d of %s, check says %d", s.Plan.Name, got, kind, all)
			}
		}
		if got := strings.Count(full, "So it is of base and icing."); got != ofBoth {
			t.Errorf("%s: %d warnings say that they are of both, %d are", s.Plan.Name, got, ofBoth)
		}
		_, besides, _ := strings.Cut(flat(Bench(s, shelf, false)), "On the full paper besides: ")
		if besides, _, _ = strings.Cut(besides, "."); sumOf(besides, "note") != sumOf(want, "note") {
			t.Errorf("%s: the bench paper counts %q besides, check says %q", s.Plan.Name, besides, want)
		}
	}
	if merged == 0 {
		t.Error("no example says anything of both batches")
	}
}

func first(text string, _ int) string { return text }

// sumOf adds up the numbers before a word.
func sumOf(text, word string) int {
	sum := 0
	for _, found := range regexp.MustCompile(`(\d+) `+word).FindAllStringSubmatch(text, -1) {
		n, _ := strconv.Atoi(found[1])
		sum += n
	}
	return sum
}

// How the loaf is kept is said in the same words on every paper and by the warning of gel.
func TestTheBedIsToldAlikeEverywhere(t *testing.T) {
	for keep, want := range map[string][2]string{
		pour.BedBare:     {"over it lightly without touching the top, no wrapping", "covered lightly, not wrapped, in air of"},
		pour.BedInsulate: {"over it without touching the top and wrap it warm, towards gel", "wrapped, the loaf"},
		pour.BedChill:    {"over it without touching the top and chill it, apart from food, against gel", "chilled, the loaf"},
	} {
		p := testPlan()
		p.Bed.Keep = keep
		for _, text := range everyPaper(p) {
			if strings.Count(flat(text), want[0]) != 1 || strings.Contains(text, "bare") {
				t.Errorf("%s: %q is not said, or bare is:\n%s", keep, want[0], text)
			}
		}
		if text, _ := Check(work(p), nil); !strings.Contains(strings.ToLower(flat(text)), want[1]) {
			t.Errorf("%s: the warning of gel does not say %q:\n%s", keep, want[1], text)
		}
	}
}

// The bench paper tells what a jug weighs when it is split and with all that goes in, as its pours take it.
func TestTheBenchPaperTellsWhatAJugComesTo(t *testing.T) {
	s := work(testPlan())
	small, large := flat(Bench(s, testShelf(), false)), flat(Bench(s, testShelf(), true))
	for _, b := range s.Batches() {
		for _, j := range b.Jugs {
			full := s.Plan.Show.Weight(j.TotalG)
			if said := regexp.MustCompile(`all in it[ .]+` + full); !said.MatchString(small) || !said.MatchString(large) {
				t.Errorf("%s weighs %s full, which is not said:\n%s", j.Name, full, small)
			}
		}
	}
}

// A jug whose size the plan does not state has to be larger than what goes in, one that it states is told beside it.
func TestAJugToGatherIsLargerThanWhatGoesIn(t *testing.T) {
	p := testPlan()
	p.Base.Jugs[0].CapacityML, p.Base.Jugs[1].CapacityML = 0, 2000
	text := flat(print(p))
	for _, want := range []string{"jug " + p.Base.Jugs[0].Name + ", larger than what goes in", "jug " + p.Base.Jugs[1].Name + " of 2000 mL; what goes in"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said:\n%s", want, text)
		}
	}
}
