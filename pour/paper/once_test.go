package paper

import (
	"regexp"
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
