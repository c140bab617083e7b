package keys

import (
	"slices"

	"pourbench/tui/layout"
)

// looking is the keys of the picture. On the station of the swirl v turns it; elsewhere v brings it up.
func looking() []Binding {
	swirl := []layout.Kind{layout.Face, layout.Technique, layout.Orders, layout.Pairs, layout.Measures}
	var others []layout.Kind
	for k := range layout.Kinds {
		if !slices.Contains(swirl, layout.Kind(k)) {
			others = append(others, layout.Kind(k))
		}
	}
	return []Binding{
		{ID: NextView, Keys: []string{"v"}, Panels: swirl, Label: "view", Help: "look at one bar, at all bars, at a cut along the loaf, at the loaf from above", Foot: 20},
		{ID: ShowFace, Keys: []string{"v"}, Panels: others, Label: "face", Help: "show the face of a bar over the bench, or put it away; wide screens show it always", Foot: 20},
		{ID: PrevBar, Keys: []string{"<"}, Label: "bars", Foot: 21, FootOn: swirl, Help: "look at the bar before; ← too where the picture has the keys"},
		{ID: NextBar, Keys: []string{">"}, Help: "look at the next bar; → too where the picture has the keys"},
		{ID: Replay, Keys: []string{"p"}, Panels: swirl, Label: "watch", Help: "watch the pour from the empty mould to the last stroke; again: stop", Foot: 22},
		{ID: StepBack, Keys: []string{"("}, Panels: swirl, Help: "go back one step of the pour"},
		{ID: StepOn, Keys: []string{")"}, Panels: swirl, Help: "go on one step of the pour"},
		{ID: Reroll, Keys: []string{"R"}, Label: "another face", Help: "pour another of the many faces this design can have; u brings the one before back", Foot: 23, FootOn: swirl},
		{ID: Compare, Keys: []string{"b"}, Panels: swirl, Label: "compare", Help: "keep the picture as it is now at the left and go on designing at the right; again: let it go", Foot: 24},
		{ID: Weeks, Keys: []string{"f"}, Label: "fresh or aged", Foot: 25, FootOn: swirl, Help: "show the colours fresh, or as vanillin browns them after some weeks"},
		{ID: Letters, Keys: []string{"i"}, Label: "letters", Foot: 26, FootOn: swirl, Help: "show the jugs' letters over the colours, or take them off"},
	}
}
