package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// CodeTable is every warning as a Markdown table, as the README prints it.
func CodeTable() string {
	var b strings.Builder
	b.WriteString("| code | severity | meaning |\n|---|---|---|\n")
	for _, c := range pour.Codes() {
		fmt.Fprintf(&b, "| `%s` | %s | %s |\n", c.Code, c.Severity, c.Meaning)
	}
	return b.String()
}
