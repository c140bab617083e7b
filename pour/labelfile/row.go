package labelfile

import (
	"fmt"
	"strings"

	"pourbench/pour/label"
	"pourbench/pour/strict"
)

// The keys of the file.
const (
	keyLogo   = "logo"
	keyMarket = "market"
	keyName   = "name"
	keyID     = "id"
	keyAbout  = "about"
	keyOn     = "on"
	keyOf     = "of"
	keyLeast  = "least"
	keyMost   = "most"
)

// What a file may say, letters. An id is as long as a plan can name.
const (
	mostID   = 40
	mostText = 400
)

// row is a key of a maker.
type row struct {
	key, means string
	most       int // letters
	at         *string
}

func makerRows(m *label.Maker) []row {
	return []row{
		{keyMarket, "the market she stands on labels in, by its id on the shelf; left out: wherever no other maker does", mostID, &m.Market},
		{keyName, "responsible person, maker or packer, as the label names it", 120, &m.Name},
		{"address", "where letters reach her, in one line", 240, &m.Address},
		{"contact", "telephone, website or e-mail, as the label has it", 120, &m.Contact},
	}
}

// MakerKeys lists what can be stated of a maker.
func MakerKeys() []string {
	var m label.Maker
	var out []string
	for _, r := range makerRows(&m)[1:] {
		out = append(out, r.key)
	}
	return out
}

// Reference tells every key of the file.
func Reference() string {
	var m label.Maker
	var maker []strict.Told
	for _, r := range makerRows(&m) {
		t := strict.Told{Key: r.key, Takes: fmt.Sprintf("text, %d letters", r.most), Means: r.means}
		if r.key == keyName {
			t.Default = "required"
		}
		maker = append(maker, t)
	}
	return fmt.Sprintf("A label file is TOML, begins with format = %d and lies in your folder of data. A key that is not named here is refused.\n\n", FileFormat) +
		strict.Reference("above the first [[header]]", "", []strict.Told{{Key: keyLogo, Takes: "path", Means: "your own logo, a PNG or JPEG file; not from a root: beside this file"}}) + "\n" +
		strict.Reference("[[maker]]", "who stands on a label", maker) + "\n" +
		strict.Reference("[[report]]", "what an assessor looked at", []strict.Told{
			{Key: keyID, Takes: fmt.Sprintf("text, %d letters", mostID), Default: "required", Means: "the number that stands on it: a plan names the report by it"},
			{Key: keyAbout, Takes: "text", Means: "what it is about"},
			{Key: keyOn, Takes: "day, 2026-03-14", Default: "required", Means: "the day it bears"},
		}) + "\n" +
		strict.Reference("[[report.range]]", "what it allows of one thing, percent of the bar as it was made; a material it has no range for is outside it", []strict.Told{
			{Key: keyOf, Takes: "kind and id", Default: "required", Means: `"oil olive", "scent lavender"; kinds: ` + strings.Join(label.RangeKinds(), ", ") + "; white is all white pigments together, superfat that of each batch: neither has an id"},
			{Key: keyLeast, Takes: "0 to 100 %", Default: "0", Means: "less is outside"},
			{Key: keyMost, Takes: "0 to 100 %", Default: "required", Means: "more is outside"},
		})
}
