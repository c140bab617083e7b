package keys

// picturing is the keys of the picture. On the station of the swirl v turns it; elsewhere v brings it up.
func picturing() []Binding {
	return []Binding{
		{ID: NextView, Keys: []string{"v"}, Needs: Picture, Label: "view", Help: "look at one bar, at all bars, at a cut along the loaf, at the loaf from above, at a bar sliced off", Foot: 20},
		{ID: ShowFace, Keys: []string{"v"}, Needs: Elsewhere, Label: "face", Help: "show the face of a bar over the bench, or put it away; wide screens show it always", Foot: 20},
		{ID: PrevBar, Keys: []string{"<"}, Label: "bars", Beside: NextBar, Foot: 21, FootOn: Picture, Help: "look at the bar before; {left} too where the picture has the keys"},
		{ID: NextBar, Keys: []string{">"}, Help: "look at the next bar; {right} too where the picture has the keys"},
		{ID: Replay, Keys: []string{"p"}, Needs: Picture, Label: "watch", Help: "watch the pour from the empty mould to the last stroke; again: stop", Foot: 22},
		{ID: StepBack, Keys: []string{"("}, Needs: Picture, Help: "go back one step of the pour"},
		{ID: StepOn, Keys: []string{")"}, Needs: Picture, Help: "go on one step of the pour"},
		{ID: Reroll, Keys: []string{"R"}, Label: "another face", Help: "pour another of the many faces this design can have; {undo} brings the one before back", Foot: 23, FootOn: Picture},
		{ID: Compare, Keys: []string{"b"}, Needs: Picture, Label: "compare", Help: "keep the picture as it is now at the left and go on designing at the right, or in its place where both have no room; again: let it go", Foot: 24},
		{ID: OtherFace, Keys: []string{"z"}, Needs: Picture, Help: "where two compared pictures have no room beside each other: show the one or the other"},
		{ID: Weeks, Keys: []string{"f"}, Label: "fresh or aged", Foot: 25, FootOn: Picture, Help: "show the colours fresh, or as vanillin browns them after some weeks"},
		{ID: Letters, Keys: []string{"i"}, Label: "letters", Foot: 26, FootOn: Picture, Help: "show the jugs' letters over the colours, or take them off"},
		{ID: Cells, Keys: []string{"M"}, Help: "draw the picture with four pixels in a character, with six, which needs a font that has them, or with two, which every terminal has"},
		{ID: Bare, Keys: []string{"g"}, Needs: Picture, Help: "draw real pixels as cut soap looks, or in its bare colours; only terminals that draw pictures show it"},
	}
}
