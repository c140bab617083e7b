// Package labelfile is the file of what a maker states once for all her labels: who stands on them by market, her own logo, and what an assessor's
// reports allow. It lies in her folder of data, is written by hand as well as by the program, and whatever is changed in it leaves the rest as it stands.
package labelfile

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"pourbench/pour/day"
	"pourbench/pour/label"
	"pourbench/pour/ownfile"
	"pourbench/pour/strict"
)

// FileName is the file in the maker's folder of data.
const FileName = "label.toml"

// FileFormat is the version of the file this program writes and reads.
const FileFormat = 1

func form() strict.Form {
	return strict.Form{Noun: "label file", Bytes: 1 << 20, Items: 2000, Letters: mostText, Again: "take a look at what was changed last"}
}

// Load reads what is stated for labels in a folder of data. A file that is not there states nothing. A logo's path goes from that folder.
func Load(dir string) (label.House, error) {
	file := NewStore(dir)
	text, err := file.Text()
	if err != nil {
		return label.House{}, err
	}
	h, err := Read(file.Path(), text)
	if h.Logo != "" && !filepath.IsAbs(h.Logo) {
		h.Logo = filepath.Join(dir, h.Logo)
	}
	return h, err
}

// Read reads the text of a label file; no text states nothing. Any failure is a [*strict.Error].
func Read(name, text string) (label.House, error) {
	file, err := ownfile.Open(form(), name, text, FileFormat, "it is what your labels say")
	if err != nil || file == nil {
		return label.House{}, err
	}
	var h label.House
	top := file.Top()
	top.Only("format", keyLogo, "maker", "report")
	readLogo(top, &h.Logo)
	for _, t := range top.List("maker") {
		h.Makers = append(h.Makers, readMaker(t, h.Makers))
	}
	for _, t := range top.List("report") {
		h.Reports = append(h.Reports, readReport(t, h.Reports))
	}
	if err := file.Err(); err != nil {
		return label.House{}, err
	}
	return h, nil
}

func readLogo(t *strict.Table, at *string) {
	if !t.Line(keyLogo, at, mostText) {
		return
	}
	switch strings.ToLower(filepath.Ext(*at)) {
	case ".png", ".jpg", ".jpeg":
	default:
		t.Say(keyLogo, strict.Quote(*at), "is no picture that can be drawn on a label", "name a file that ends in .png, .jpg or .jpeg")
	}
}

func readMaker(t *strict.Table, before []label.Maker) label.Maker {
	var m label.Maker
	known := []string{}
	for _, r := range makerRows(&m) {
		known = append(known, r.key)
		if t.Line(r.key, r.at, r.most) && *r.at == "" {
			t.Say(r.key, `""`, "is empty", "write it, or take the line out")
		}
	}
	t.Only(known...)
	t.Missing(keyName)
	if slices.ContainsFunc(before, func(o label.Maker) bool { return o.Market == m.Market }) {
		where := "for " + m.Market
		if m.Market == "" {
			where = "without a market"
		}
		t.Say(keyMarket, strict.Quote(m.Market), "has a maker already "+where, "leave one of them, or give each its own market")
	}
	return m
}

func readReport(t *strict.Table, before []label.Report) label.Report {
	var r label.Report
	t.Only(keyID, keyAbout, keyOn, "range")
	t.Missing(keyID)
	t.Missing(keyOn)
	if t.Line(keyID, &r.ID, mostID) && r.ID == "" {
		t.Say(keyID, `""`, "is empty", "write the number that stands on the report")
	}
	t.Line(keyAbout, &r.Of, mostText)
	var on time.Time
	if t.Day(keyOn, &on) {
		r.On = day.Of(on)
	}
	if slices.ContainsFunc(before, func(o label.Report) bool { return o.ID == r.ID && r.ID != "" }) {
		t.Say(keyID, strict.Quote(r.ID), "stands there twice", "put both into one report, or give each the number that stands on it")
	}
	for _, x := range t.List("range") {
		r.Ranges = append(r.Ranges, readRange(x, r.Ranges))
	}
	return r
}

func readRange(t *strict.Table, before []label.Range) label.Range {
	t.Only(keyOf, keyLeast, keyMost)
	t.Missing(keyOf)
	t.Missing(keyMost)
	of := ""
	var x label.Range
	if t.Line(keyOf, &of, mostText) {
		var err error
		if x, err = label.RangeOf(of); err != nil {
			t.Say(keyOf, strict.Quote(of), "cannot be used", err.Error())
		}
	}
	t.Within(keyLeast, &x.Least, 0, 100)
	if t.Within(keyMost, &x.Most, 0, 100) && x.Least > x.Most {
		t.Say(keyLeast, strict.Short(x.Least), fmt.Sprintf("is more than the most, %s", strict.Short(x.Most)), "write the smaller of the two as least")
	}
	if slices.ContainsFunc(before, func(o label.Range) bool { return x.Kind != "" && o.Of() == x.Of() }) {
		t.Say(keyOf, strict.Quote(of), "has two ranges in this report", "leave one of them")
	}
	return x
}
