package label

import "strings"

// Dried tells where water would stand if a list went by the bar that is sold, which weighs curedG, and not by the bar as it was made, of which lines are
// the list. All that a bar loses is taken to be water. It is for screens: a list goes by what was put in (Regulation (EC) 1223/2009 Art. 19(1)(g), "at the time
// they are added": read 2nd-hand), and this is what somebody who looks at the bar might ask. Empty where water stays where it is, where there is none, or
// where the cured mass cannot be.
func Dried(lines []Line, curedG float64, m Market) string {
	made, at := 0.0, -1
	for i := range lines {
		made += lines[i].G
		if strings.EqualFold(lines[i].Name.INCI, water().INCI) {
			at = i
		}
	}
	if at < 0 || !(curedG > 0 && curedG <= made) {
		return ""
	}
	left := lines[at].G - (made - curedG)
	behind := ""
	for i := at + 1; i < len(lines) && m.place(lines[i].Class) == 0; i++ {
		if lines[i].G > left {
			behind = lines[i].Text
		}
	}
	if behind == "" {
		return ""
	}
	return lines[at].Text + " stands as it was put in; by what is left in the cured bar it would come after " + behind
}
