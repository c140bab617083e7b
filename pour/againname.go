package pour

import (
	"fmt"
	"strconv"
	"strings"
)

// again is what the name of a plan that is poured again ends in, with a number from the second time on.
const again = ", again"

// longestName is the most letters of a plan's name.
const longestName = 80

// NameAgain is the name of a plan that pours again what a plan of a name poured, of 80 letters at most.
func NameAgain(name string) string {
	stem, nth, more := cutLast(name, again)
	end := again
	if more {
		n := 1
		if number, err := strconv.Atoi(strings.TrimSpace(nth)); err == nil && number > 1 {
			n = number
		}
		end = fmt.Sprintf("%s %d", again, n+1)
	}
	letters := []rune(stem)
	if most := longestName - len([]rune(end)); len(letters) > most {
		letters = letters[:most]
	}
	return strings.TrimSpace(string(letters)) + end
}

// DesignName is the name of the design that a plan of a name pours: plans that pour it again say so at the end of theirs.
func DesignName(name string) string {
	stem, _, _ := cutLast(name, again)
	return stem
}

// cutLast cuts a name before its last ending, where nothing but a number follows that.
func cutLast(name, end string) (stem, rest string, ok bool) {
	at := strings.LastIndex(name, end)
	if at <= 0 {
		return name, "", false
	}
	rest = name[at+len(end):]
	if strings.Trim(rest, " 0123456789") != "" {
		return name, "", false
	}
	return name[:at], rest, true
}
