package command

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/disk"
	"pourbench/pour/paper"
	"pourbench/pour/sticker"
)

// labelOut says as what a label is handed out.
type labelOut struct {
	file   string
	paper  string // to print several on; empty: one, as large as itself
	count  int
	gap    float64
	margin float64
	band   bool
	json   bool
}

// mostLabels is how many labels are printed at once.
const mostLabels = 2000

// flags are the flags of what a label is handed out as.
func (o *labelOut) flags(cmd *cobra.Command) {
	var names []string
	for _, p := range sticker.Papers() {
		names = append(names, p.Name)
	}
	cmd.Flags().StringVarP(&o.file, "output", "o", "", "the file to write, .pdf, .svg or .txt; \"-\" is the label's words alone on standard output")
	cmd.Flags().StringVar(&o.paper, "sheet", "", "of a PDF or SVG: sheets of "+strings.Join(names, " or ")+" with several labels and marks to cut by; none: one label as large as itself")
	cmd.Flags().IntVar(&o.count, "count", 0, "how many labels; 0: one sheet full")
	cmd.Flags().Float64Var(&o.gap, "gap", 0, "mm between two labels of a sheet; 0: 4")
	cmd.Flags().Float64Var(&o.margin, "margin", 0, "mm left free at the edges of a sheet; 0: 10")
	cmd.Flags().BoolVar(&o.band, "band", false, "a band round the bar in its true cured size")
	cmd.Flags().BoolVar(&o.json, "json", false, "print every figure of the label as JSON")
}

// print is what was asked for, in the words of what prints it.
func (o *labelOut) print() (sticker.Print, error) {
	p := sticker.Print{Count: o.count, GapMM: o.gap, MarginMM: o.margin, Band: o.band}
	switch {
	case o.paper == "" && (o.count != 0 || o.gap != 0 || o.margin != 0):
		return p, errors.New("print the labels: --count, --gap and --margin are of a sheet; say with --sheet on which")
	case o.count < 0 || o.count > mostLabels:
		return p, fmt.Errorf("print the labels: --count %d cannot be; write 1 to %d, or 0 for one sheet full", o.count, mostLabels)
	case !(o.gap >= 0 && o.gap <= 100) || !(o.margin >= 0 && o.margin <= 100):
		return p, errors.New("print the labels: --gap and --margin are 0 to 100 mm")
	case o.paper == "":
		return p, nil
	}
	var err error
	p.Paper, err = sticker.PaperOf(o.paper)
	return p, err
}

// labelOut prints a label, or writes it whole or not at all.
func (g *program) labelOut(l labelsheet, o labelOut) error {
	how, err := o.print()
	switch {
	case err != nil:
		return err
	case o.json && o.file != "":
		return errors.New("print the label as --json: that goes to standard output; leave -o away")
	case o.json:
		return paper.WriteLabel(g.Out, l.sheet.Label)
	case o.file == "" && (o.band || o.paper != ""):
		return errors.New("print the labels: name the file with -o, such as -o labels.pdf")
	}
	if l.on.Logo, err = logo(l.shelf.Label.Logo); err != nil {
		return err
	}
	one, err := sticker.Of(l.sheet, l.shelf, l.on)
	if err != nil && o.file != "" {
		return err
	}
	if err == nil {
		l.told.Printed = one.Text()
	}
	switch o.file {
	case "":
		return g.print(paper.LabelText(l.told))
	case "-":
		if _, err := one.For("label.txt", how); err != nil { // what must not be printed is not printed here either
			return err
		}
		return g.print(l.told.Printed)
	}
	draw, err := one.For(o.file, how)
	if err != nil {
		return err
	}
	if err := overwrites(o.file, "label", "%PDF", "<?xml", "<svg", firstWord(l.told.Printed)); err != nil {
		return err
	}
	if err := saved("the label", o.file, draw); err != nil {
		return err
	}
	for _, n := range one.Notes(how) {
		g.say("%s", n)
	}
	for _, open := range l.open() {
		g.say("%s", open)
	}
	return nil
}

// open is what stands against a label that was printed all the same: the cautions and stops of the label, and a report that is not there.
func (l *labelsheet) open() []string {
	var out []string
	for _, w := range l.sheet.Warnings {
		if w.Where == "label" && w.Severity != pour.Note {
			out = append(out, "to be seen to before it is used: "+w.Text+"; "+w.Do)
		}
	}
	if why := l.sheet.Label.Report.Why; why != "" {
		out = append(out, "to be seen to before it is used: "+why)
	}
	return out
}

// firstWord is what a text begins with.
func firstWord(text string) string {
	word, _, _ := strings.Cut(text, "\n")
	return word[:min(len(word), 12)]
}

// mostLogo is how large the file of a logo may be, bytes.
const mostLogo = 20 << 20

// logo reads the file of her logo; none is nil.
func logo(file string) ([]byte, error) {
	if file == "" {
		return nil, nil
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, fmt.Errorf("put your logo on the label: open %s: %w; name another file in your label file, or none", file, disk.Reason(err))
	}
	defer f.Close() //nolint:errcheck // it was only read
	whole, err := io.ReadAll(io.LimitReader(f, mostLogo+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("put your logo on the label: read %s: %w", file, disk.Reason(err))
	case len(whole) > mostLogo:
		return nil, fmt.Errorf("put your logo on the label: %s is over %d MB; make it smaller", file, mostLogo>>20)
	}
	return whole, nil
}
