package planfile

import (
	"fmt"
	"strings"
	"time"

	"pourbench/pour"
	"pourbench/pour/strict"
)

// Reference tells every key a plan file can have, table by table in the order of the file: what can stand there, what its
// absence means and what it is. It is drawn from pour's list of fields.
func Reference() string {
	var b strings.Builder
	fmt.Fprintf(&b, "A plan file is TOML, begins with format = %d and is always metric. A key that is left out means its default;\n"+
		"a key that is not named here is refused.\n", pour.FormatVersion)
	eachTable(func(header string, fields []pour.Field) {
		means := ""
		switch {
		case header == "":
			header = "above the first [section]"
		case header == "[icing]":
			means = "left out: no icing. It has what [base] has, its lists too, and:"
		case strings.HasPrefix(header, "[[icing."):
			return
		}
		b.WriteString("\n" + strict.Reference(header, means, told(fields, header)))
	})
	return b.String()
}

// told tells the keys of a table; of the icing, what it has that the base has not.
func told(fields []pour.Field, header string) []strict.Told {
	var keys []strict.Told
	for _, f := range fields {
		if header == "[icing]" && f.Key != "bags" && f.Key != "size" {
			continue
		}
		keys = append(keys, strict.Told{Key: f.Key, Takes: takes(f), Default: standard(f), Means: f.Means})
	}
	return keys
}

// takes says what can stand at a key.
func takes(f pour.Field) string {
	switch f.At.(type) {
	case *float64:
		return strings.TrimSpace(fmt.Sprintf("%s to %s %s", strict.Short(f.Low), strict.Short(f.High), f.Unit))
	case *int:
		return fmt.Sprintf("%g to %g, whole", f.Low, f.High)
	case *int64:
		return "whole number"
	case *bool:
		return "true or false"
	case *time.Time:
		return time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC).Format(strict.WallLayout)
	case *string:
		return text(f)
	case *[]float64:
		return "list of numbers"
	case *[]string:
		return "list of " + strings.ReplaceAll(text(f), "'s name", "") + "s"
	}
	if f.Inline {
		return "list on one line"
	}
	return fmt.Sprintf("tables, %g at most", f.High)
}

func text(f pour.Field) string {
	switch f.Takes {
	case pour.TakesWord:
		return strings.Join(f.Choices(), ", ")
	case pour.TakesName:
		return fmt.Sprintf("text, %g letters", f.High)
	case pour.TakesProse:
		return "text of many lines"
	case pour.TakesColour:
		return `"#rrggbb"`
	case pour.TakesJug:
		return "jug's name"
	case pour.TakesTask:
		return "task"
	case pour.TakesTechnique:
		return "technique's id"
	case pour.TakesOil:
		return "oil's id"
	case pour.TakesColourant:
		return "colourant's id"
	case pour.TakesExtra:
		return "extra's id"
	case pour.TakesScent:
		return "scent's id"
	case pour.TakesTopping:
		return "topping's id"
	case pour.TakesMarket:
		return "market's id"
	case pour.TakesMoney:
		return `amount, as "6.50"`
	case pour.TakesID:
		return "id of your own"
	}
	return "text"
}

// standard says what it means when a key is left out.
func standard(f pour.Field) string {
	switch {
	case f.Need == pour.Required:
		return "required"
	case f.Need == pour.Quiet:
		return ""
	case f.Words != "":
		return strings.Fields(f.Words)[0]
	}
	return strict.Short(f.Default)
}
