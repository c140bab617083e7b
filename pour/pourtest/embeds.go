package pourtest

import (
	"pgregory.net/rapid"

	"pourbench/pour"
)

// drawEmbeds draws none or some kinds of embeds of every outline and material, in the bars and elsewhere, clear of the cuts and not.
func drawEmbeds(t *rapid.T, p *pour.Plan) {
	p.Top.Embeds = nil
	for i := range max(rapid.IntRange(-2, 2).Draw(t, "kinds of embeds"), 0) {
		e := pour.Embed{
			Name: []string{"moon", "star"}[i], Outline: rapid.SampledFrom([]string{"", pour.OutlineBall, pour.OutlineBox, pour.OutlineEllipse, pour.OutlineRod, pour.OutlineOwn}).Draw(t, "outline"),
			LengthMM: odd(t, "embed's length", 2, 30), TurnDeg: odd(t, "turned", -180, 180), AnyTurn: rapid.IntRange(0, 3).Draw(t, "any way round") == 0,
			HeightMM: dosed(t, "embed's height", 30), OutMM: dosed(t, "stands out", 12), WidthMM: dosed(t, "embed's width", 30),
			G: dosed(t, "embed weighs", 20), DensityGML: rapid.SampledFrom([]float64{0, 0, 1.12}).Draw(t, "embed's density"),
			Material: rapid.SampledFrom([]string{"", pour.EmbedMelt, pour.EmbedDried, pour.EmbedOther}).Draw(t, "material"),
			MadeDays: dosed(t, "made before", 40), Every: rapid.IntRange(0, 3).Draw(t, "every so many bars"), PerBar: rapid.IntRange(0, 3).Draw(t, "in each bar"),
			AlongMM: dosed(t, "off the middle", 6), AcrossMM: dosed(t, "off to the right", 10),
		}
		switch rapid.IntRange(0, 3).Draw(t, "made of") {
		case 0:
			e.MadeOf = []pour.MadeOf{{Name: "Glycerin", Percent: 30}, {Name: "Aqua", Percent: 70}}
		case 1:
			e.MadeOf = []pour.MadeOf{{Name: "Glycerin"}, {Name: "Nobody Knows"}}
		case 2:
			e.AsBase = true
		}
		if e.Outline == pour.OutlineOwn {
			e.Corners = []float64{0, 0, 7, 1, 5, odd(t, "a corner", 2, 9)}
		}
		if rapid.IntRange(0, 2).Draw(t, "where told") == 0 {
			e.In, e.AtMM = pour.EmbedOwn, []float64{odd(t, "at", 0, 200), odd(t, "and at", 0, 420)}
		}
		p.Top.Embeds = append(p.Top.Embeds, e)
	}
	c := &p.Cut
	c.RimMM, c.EyeMM = dosed(t, "rim", 30), float64(rapid.IntRange(0, 1).Draw(t, "the eye stays"))*odd(t, "eye", 200, 900)
	c.SightDeg, c.ClearMM, c.PlaceMM, c.WanderMM = odd(t, "look", 0, 30), odd(t, "wanted", 0, 5), odd(t, "placing", 0, 3), odd(t, "wander", 0, 2)
}
