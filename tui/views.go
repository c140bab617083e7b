package tui

import (
	"fmt"

	"pourbench/tui/keys"
	"pourbench/tui/picture"
	"pourbench/tui/screen"
)

// turnPicture changes what is seen of the swirl and says whether the key was one that does. [model.cannot] has said that it can.
func (m *model) turnPicture(id keys.ID) bool {
	if m.at().Easel && m.barsShown() { // the arrows have nothing else to do here
		switch id {
		case keys.Left:
			id = keys.PrevBar
		case keys.Right:
			id = keys.NextBar
		}
	}
	s := &m.studio
	switch id {
	case keys.NextView:
		s.view = (s.view + 1) % picture.View(picture.Views)
	case keys.ShowFace:
		s.peek = !s.peek
	case keys.PrevBar:
		m.turnBar(-1)
	case keys.NextBar:
		m.turnBar(1)
	case keys.StepBack:
		m.step(-1)
	case keys.StepOn:
		m.step(1)
	case keys.Reroll:
		m.reroll()
	case keys.Compare:
		m.compare()
	case keys.Weeks:
		s.weeks = !s.weeks
		m.say(map[bool]string{true: "the colours after some weeks, where vanillin browns them: an estimate", false: "the colours fresh"}[s.weeks])
	case keys.OtherFace:
		s.other = !s.other
		m.say(map[bool]string{true: "this is the kept picture", false: "this is the picture as it is now"}[s.other])
	case keys.Cells:
		s.mosaic = map[screen.Mosaic]screen.Mosaic{screen.Quarters: screen.Sixths, screen.Sixths: screen.Halves, screen.Halves: screen.Quarters}[s.mosaic]
		across, down := s.mosaic.Grain()
		m.say(fmt.Sprintf("%d pixels in each character; {cells of the picture} goes on to the next", across*down))
	case keys.Bare:
		s.bare = !s.bare
		m.say(map[bool]string{true: "bare colours", false: "as cut soap looks"}[s.bare])
	case keys.Letters:
		s.letters = !s.letters
	default:
		return false
	}
	return true
}
