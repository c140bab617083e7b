package presets_test

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"pourbench/pour"
)

// nameless are words of sources that name no document: nobody could look such a source up.
func nameless() *regexp.Regexp {
	return regexp.MustCompile(`(?i)style of|supplier'?s?'? (sheet|page|review|cop)|trade (summary|cop|sheet)|handbook entr|encyclopa?edia|teaching note|` +
		`lecture|pharmacognosy|\ban? (data )?sheet\b|ingredient sheet|published table\b|second hand`)
}

// documents are the names of documents that the shelf's figures come from.
func documents() *regexp.Regexp {
	return regexp.MustCompile(`Codex (CXS|STAN) \d+|British Pharmac|USP|Ph\. Eur\.|AGMARK|SNIMA|GB/T|FSSAI|CFR \d|Regulation \(E|` +
		`Nutrients \d|Molecules \d|J\. [A-Z]|Pharm\. Res\.|IJPSR|Span\. J\.|PlantFAdb|USDA SR 24|CRC Handbook|CAMEO|Canakci and Sanli|` +
		`SFDA draft standard|Sloan and Labuza 1975|and Lutton 1966|Greweling|English Wikipedia|Canadian schedule|CosIng`)
}

// sourceFault says what is wrong with a source, or "": a source is a named document, "derived", "common practice" or "memory",
// and its confidence says no more than its text.
func sourceFault(src pour.Source) string {
	names := documents().MatchString(src.Text)
	says := func(word string) bool { return regexp.MustCompile(`(?i)\b` + word + `\b`).MatchString(src.Text) }
	ok := map[string]bool{
		"read":            names && !says("memory"),
		"read (2nd-hand)": names && !says("memory"),
		"mixed":           names && (says("memory") || says("derived") || says("common practice") || says("assumed")),
		"memory":          says("memory"),
		"derived":         says("derived") || says("by its kind"),
		"common practice": says("common practice"),
		"invented":        says("invented"),
	}
	switch {
	case nameless().MatchString(src.Text):
		return "names no document that can be looked up"
	case !ok[src.Confidence]:
		return "does not bear its confidence out"
	}
	return ""
}

func TestSourcesAreNamedDocumentsDerivedPracticeOrMemory(t *testing.T) {
	for _, e := range entries(shelf(t)) {
		for _, src := range e.sources {
			if fault := sourceFault(src); fault != "" {
				t.Errorf("%s %s: the source %q (%s) %s", e.table, e.id, src.Text, src.Confidence, fault)
			}
		}
	}
}

func TestNamelessSourcesAreRefused(t *testing.T) {
	for _, src := range []pour.Source{
		{Text: "handbook entry in the style of the Merck Index", Confidence: "read"},
		{Text: "a supplier sheet, from memory", Confidence: "memory"},
		{Text: "Codex CXS 210 Table 2 (memory); a supplier's page", Confidence: "memory"},
		{Text: "a trusted book", Confidence: "read"},
		{Text: "Codex CXS 210 Table 2 (memory)", Confidence: "read"},
		{Text: "Codex CXS 210 Table 2, via transcription", Confidence: "memory"},
		{Text: "Codex CXS 210 Table 2, via transcription", Confidence: "mixed"},
		{Text: "what makers do", Confidence: "common practice"},
		{Text: "", Confidence: "derived"},
	} {
		if sourceFault(src) == "" {
			t.Errorf("%q (%s) was taken for a source", src.Text, src.Confidence)
		}
	}
}

func TestNoShelfFileCitesWhatHasNoName(t *testing.T) {
	files, err := filepath.Glob("*.toml")
	if err != nil || len(files) != 11 {
		t.Fatalf("%d shelf files, %v", len(files), err)
	}
	for _, name := range append(files, "../testdata/oils.csv", "../testdata/README.md") {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, found := range nameless().FindAllString(string(text), -1) {
			t.Errorf("%s: %q", name, found)
		}
	}
}
