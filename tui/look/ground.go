package look

import (
	"strconv"
	"strings"
)

// Ground is what is known of the terminal's background.
type Ground int

// The grounds. Of one that is not known nothing is taken for granted.
const (
	Unknown Ground = iota
	Dark
	Light
)

// OfDark is the ground of a background that is dark or is not.
func OfDark(dark bool) Ground {
	if dark {
		return Dark
	}
	return Light
}

// Before is the ground before the terminal has said what it is: as asked for, "dark" or "light", else by the variable COLORFGBG that some
// terminals set ("15;0": white text on black, by their places among the sixteen colours; it is nowhere written down). The last of
// several counts, as the operating system has it.
func Before(asked string, environ []string) Ground {
	switch asked {
	case "dark":
		return Dark
	case "light":
		return Light
	}
	g := Unknown
	for _, kv := range environ {
		if v, ok := strings.CutPrefix(kv, "COLORFGBG="); ok {
			g = ofPlace(v[strings.LastIndexByte(v, ';')+1:])
		}
	}
	return g
}

// ofPlace is the ground that one of the sixteen colours makes, by its place: white and the bright ones but bright black are light.
func ofPlace(text string) Ground {
	place, err := strconv.Atoi(text)
	if err != nil || place < 0 || place > 15 {
		return Unknown
	}
	return OfDark(place < white || place == grey)
}

// On returns the look on a ground, with sixteen colours or more.
func On(g Ground, few bool) Look {
	switch {
	case g == Unknown:
		return Own()
	case few:
		return Sixteen(g == Dark)
	}
	return New(g == Dark)
}
