package planfile

import (
	"strings"

	"github.com/agnivade/levenshtein"

	"pourbench/pour"
)

// nearest returns the key that was probably meant: within two slips of the finger, or the same word with its unit or
// its subject left out ("share" or "percent" for "share_percent"). Empty when none is near.
func nearest(key string, keys []string) string {
	const slips, longest = 2, 40
	if len(key) > longest {
		return ""
	}
	best, distance := "", slips+1
	for _, k := range keys {
		if d := levenshtein.ComputeDistance(strings.ToLower(key), k); d < distance && 2*d < len(key) {
			best, distance = k, d
		}
	}
	if best != "" {
		return best
	}
	for _, k := range keys {
		if len(key) > 2 && (strings.HasPrefix(k, key+"_") || strings.HasSuffix(k, "_"+key)) {
			return k
		}
	}
	return ""
}

// homes says where a key belongs, for a key that stands in the wrong section.
func homes(key string) []string {
	p := blankPlan()
	p.Icing = &pour.Batch{}
	var out []string
	for _, f := range topFields(&p) {
		if f.key == key {
			out = append(out, "above the first [section]")
		}
	}
	for _, s := range sections(&p) {
		out = append(out, homesIn(key, "["+s.key+"]", s.key, s.fields)...)
	}
	return out
}

func homesIn(key, header, path string, fields []field) []string {
	var out []string
	for _, f := range fields {
		l, isList := f.at.(list)
		if f.key == key && !isList {
			out = append(out, "under "+header)
		}
		if isList {
			sub := path + "." + f.key
			out = append(out, homesIn(key, "[["+sub+"]]", sub, l.blank())...)
		}
	}
	return out
}
