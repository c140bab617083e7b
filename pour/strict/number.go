package strict

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ParseNumber reads a number as makers type it, with a decimal point or a decimal comma. What could be read in two ways
// ("1.234,5", or "1,234", which may be a thousand or one and a bit) is refused, and so is anything that is not a finite number.
func ParseNumber(text string) (float64, error) {
	t := strings.TrimSpace(text)
	t = strings.TrimSuffix(strings.TrimSuffix(t, "%"), " ")
	switch {
	case t == "":
		return 0, fmt.Errorf("read %q as a number: there is nothing in it; type digits, as in 12.5", text)
	case strings.ContainsAny(t, ",") && strings.ContainsAny(t, "."):
		return 0, fmt.Errorf("read %q as a number: it has a comma and a point; write one decimal sign and nothing between thousands, as in 1234.5", text)
	case strings.Count(t, ",") > 1 || strings.Count(t, ".") > 1:
		return 0, fmt.Errorf("read %q as a number: it has two decimal signs; write nothing between thousands, as in 1234.5", text)
	case thousandsLike(t):
		return 0, fmt.Errorf("read %q as a number: it could be %s or %s; write the one you mean without the comma", text,
			strings.Replace(t, ",", "", 1), strings.TrimRight(strings.Replace(t, ",", ".", 1), "0"))
	}
	plain := strings.Replace(t, ",", ".", 1)
	if strings.Trim(plain, "0123456789.+-") != "" {
		return 0, fmt.Errorf("read %q as a number: only digits and one decimal sign can stand in it, as in 12.5", text)
	}
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("read %q as a number: type digits and one decimal sign, as in 12.5", text)
	}
	return v, nil
}

// thousandsLike says whether a text reads as thousands as well as decimals: one to three digits that are not all zero, a comma, exactly three digits.
// A point is always a decimal sign here.
func thousandsLike(t string) bool {
	whole, part, ok := strings.Cut(strings.TrimLeft(t, "+-"), ",")
	return ok && len(part) == 3 && len(whole) >= 1 && len(whole) <= 3 && strings.Trim(whole, "0") != ""
}

// WithPoint writes a number that was typed with a decimal comma with a point, as it is kept in files; what is no number stays as it is, for whoever reads it
// to refuse.
func WithPoint(text string) string {
	if _, err := ParseNumber(text); err != nil {
		return text
	}
	return strings.Replace(text, ",", ".", 1)
}

// PointThousands says why a number of whole units cannot be read where its point may part thousands, as in 1.000: three digits behind it, and one
// to three before it that do not begin with 0. Empty: it can. Of grams nobody weighs thousandths, and no price has them.
func PointThousands(text string) string {
	at := strings.LastIndex(text, ".")
	if at < 1 || at > 3 || len(text)-at != 4 || text[0] == '0' {
		return ""
	}
	return fmt.Sprintf("read %q as a number: it could be %s or %s; write the one you mean without the point", text, strings.ReplaceAll(text, ".", ""),
		strings.TrimRight(strings.TrimRight(text, "0"), "."))
}
