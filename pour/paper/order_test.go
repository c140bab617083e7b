package paper

import "testing"

func TestWhatIsDrawnAlikeIsAsPlanned(t *testing.T) {
	if got := beside("0.52", "0.52"); got != "0.52 as planned" {
		t.Error(got)
	}
	if got := beside("0.52", "0.61"); got != "0.52, planned 0.61" {
		t.Error(got)
	}
}
