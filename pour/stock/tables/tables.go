// Package tables hands stock on and takes it in as tables after RFC 4180: packs, movements, what batches cost, and sales. Numbers are decimal with a
// point, days are year-month-day, quantities are g or pieces; a text that a spreadsheet would run gets an apostrophe, and loses it on the way in.
package tables

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"pourbench/pour/day"
	"pourbench/pour/plain"
	"pourbench/pour/strict"
)

// What a table may hold.
const (
	mostBytes = 64 << 20
	mostRows  = 1_000_000
)

// written writes a table: its columns, and rows until there are no more.
func written(w io.Writer, what string, columns []string, rows func(row func(...string))) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	_ = out.Write(columns) // what goes wrong comes out of Error below
	rows(func(cells ...string) {
		for i := range cells {
			cells[i] = plain.Cell(cells[i])
		}
		_ = out.Write(cells)
	})
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("write the %s as CSV: %w", what, err)
	}
	return nil
}

// row is one row of a table that is read, by the names of its columns.
type row struct {
	line  int
	cells map[string]string
}

// at is a cell.
func (r row) at(column string) string { return r.cells[column] }

// refuse says what of a row cannot be.
func (r row) refuse(format string, args ...any) error {
	return fmt.Errorf("line %d: "+format, append([]any{r.line}, args...)...)
}

// rows reads a table that has all needed columns and none but those known. A table of semicolons is read too, as spreadsheets write it where the
// decimal sign is a comma.
func rows(r io.Reader, known, needed []string) ([]row, error) {
	src, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err != nil {
		return nil, err
	}
	if len(src) > mostBytes {
		return nil, errors.New("it is too long to be a table of stock")
	}
	text := strings.TrimPrefix(string(src), "\ufeff")
	in := csv.NewReader(strings.NewReader(text))
	if head, _, _ := strings.Cut(text, "\n"); strings.Contains(head, ";") && !strings.Contains(head, ",") {
		in.Comma = ';'
	}
	head, err := in.Read()
	if err != nil {
		return nil, fmt.Errorf("its first line names no columns: %w; write %s", err, strings.Join(needed, ","))
	}
	if err := columns(head, known, needed); err != nil {
		return nil, err
	}
	var out []row
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return nil, err // it names the line
		}
		line, _ := in.FieldPos(0)
		if len(out) >= mostRows {
			return nil, errors.New("it has more than a million rows")
		}
		next := row{line, map[string]string{}}
		for i, c := range cells {
			next.cells[head[i]] = uncelled(plain.Line(c))
		}
		out = append(out, next)
	}
}

// columns refuses columns that are unknown, named twice or missing.
func columns(head, known, needed []string) error {
	for i, c := range head {
		head[i] = strings.ToLower(strings.TrimSpace(c))
		if !slices.Contains(known, head[i]) {
			return fmt.Errorf("the column %q: %s", plain.Line(c), strict.Meant(head[i], known, "the columns are "+strings.Join(known, ", "), ""))
		}
		if slices.Contains(head[:i], head[i]) {
			return fmt.Errorf("the column %q stands there twice: leave one", head[i])
		}
	}
	for _, c := range needed {
		if !slices.Contains(head, c) {
			return fmt.Errorf("the column %q is missing; these are needed: %s", c, strings.Join(needed, ", "))
		}
	}
	return nil
}

// uncelled takes away the apostrophe that a cell got on its way out.
func uncelled(cell string) string {
	if rest, ok := strings.CutPrefix(cell, "'"); ok && plain.Cell(rest) != rest {
		return rest
	}
	return cell
}

// date writes a day; none is an empty cell.
func date(d day.Day) string {
	if d == 0 {
		return ""
	}
	return d.String()
}

// readDay reads a day; an empty cell is none.
func readDay(cell string) (day.Day, error) {
	if cell == "" {
		return 0, nil
	}
	return day.Parse(cell)
}
