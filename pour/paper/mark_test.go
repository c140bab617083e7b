package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// A mould filled to 66.5 mm is marked there, to the half millimetre; with embeds the mark says that they are in it.
func TestTheMarkOfTheBaseIsNotRoundedAway(t *testing.T) {
	p, shelf := demo(t)
	p.Mould.FillMM, p.Base.Size = 66.5, pour.SizeMould
	plain := Checklist(pour.Work(p, shelf, pour.Hand{}), shelf)
	p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 18, HeightMM: 18, OutMM: 4.5}}
	set := Checklist(pour.Work(p, shelf, pour.Hand{}), shelf)
	if !strings.Contains(plain, " 66.5 mm") || strings.Contains(plain, "its embeds in it") {
		t.Error("the mark without embeds is not at 66.5 mm, or speaks of some")
	}
	if !strings.Contains(set, " 66.5 mm") || !strings.Contains(set, "its embeds in it") {
		t.Error("the mark with embeds is not at 66.5 mm, or does not speak of them")
	}
}
