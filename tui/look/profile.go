package look

import (
	"slices"
	"strings"

	"github.com/charmbracelet/colorprofile"
)

// Profile is the colour profile asked for. NO_COLOR counts with any value that is not empty (no-color.org); a flag beats it.
// It says false where the terminal should be asked.
func Profile(colour string, environ []string) (colorprofile.Profile, bool) {
	switch colour {
	case "never":
		return colorprofile.ASCII, true
	case "truecolor":
		return colorprofile.TrueColor, true
	case "256":
		return colorprofile.ANSI256, true
	case "16":
		return colorprofile.ANSI, true
	case "always":
		return max(colorprofile.Env(environ), colorprofile.ANSI), true
	}
	noColour := slices.ContainsFunc(environ, func(kv string) bool { return strings.HasPrefix(kv, "NO_COLOR=") && len(kv) > len("NO_COLOR=") })
	return colorprofile.ASCII, noColour
}
