package panel

import (
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// faceLines is how many lines the picture likes.
const faceLines = 40

// face is where the picture stands on its own station. It is drawn on an easel, which the other stations have too.
func face() Panel {
	return Panel{
		ID: faceID, Title: "The swirl", picture: true, Easel: true,
		want: func(*Facts) int { return faceLines },
		Draw: func(f *Facts, a screen.Area, _ grid.Cursor, _ bool) { f.Picture(a) },
	}
}

// faceID names the panel of the picture.
const faceID = "face"
