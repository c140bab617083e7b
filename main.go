// Pourbench is a terminal workbench for designing multi-colour soap pours.
//
// Without a command it opens the workbench on a plan; the other commands print what is worked out from one.
package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"runtime/debug"
	"strings"
	"time"

	"github.com/adrg/xdg"
	"github.com/mattn/go-isatty"
	"github.com/natefinch/atomic"
	"github.com/spf13/cobra"

	"pourbench/chem/clock"
	"pourbench/pour"
	"pourbench/pour/paper"
	"pourbench/pour/planfile"
	"pourbench/presets"
	"pourbench/tui"
	"pourbench/tui/live"
	"pourbench/tui/terminal"
)

// Exit codes, part of the contract with scripts.
const (
	exitOK          = 0
	exitCaution     = 1 // check: a caution
	exitUnreadable  = 2 // a plan that cannot be read, or a wrong use of a command
	exitStop        = 3 // check: a stop
	exitInterrupted = 130
)

// gcPercent lets the heap grow to a few times what is live before it is collected: a whole bench is a few megabytes, and a collection
// in the middle of a keystroke costs more than they do. GOGC in the environment still decides.
const gcPercent = 400

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(gcPercent)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is the whole program but for the process: it returns the exit code.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	b := &bench{in: in, out: out, errs: errs}
	root := b.root()
	root.SetArgs(args)
	root.SetOut(out)
	root.SetErr(errs)
	err := root.Execute()
	if err == nil {
		return b.exit
	}
	if errors.Is(err, terminal.ErrInterrupted) {
		return exitInterrupted
	}
	_, _ = fmt.Fprintln(errs, "pourbench:", err)
	return exitUnreadable
}

// bench is what the commands share.
type bench struct {
	in         io.Reader
	out, errs  io.Writer
	shelfFile  string
	colour     string
	background string
	noMouse    bool
	exit       int
}

func (b *bench) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "pourbench [PLAN]",
		Short: "Design a multi-colour soap pour before lye meets oil",
		Long: `Design a multi-colour soap pour before lye meets oil.

Opens the workbench on PLAN, or on the built-in example. When standard output is
no terminal it prints the checklist instead. PLAN "-" reads standard input.`,
		Example: `  pourbench                          open the built-in example
  pourbench meadow.toml              open a plan
  pourbench checklist meadow.toml    print its checklist
  pourbench figures meadow.toml      every figure as JSON
  pourbench check meadow.toml        warnings; exit 1 a caution, 3 a stop`,
		Args:          cobra.MaximumNArgs(1),
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE:          func(_ *cobra.Command, args []string) error { return b.open(args) },
	}
	root.PersistentFlags().StringVar(&b.shelfFile, "shelf", "", "your own shelf file, laid over the built-in shelf (default: "+shelfHint()+" if it is there)")
	root.PersistentFlags().StringVar(&b.colour, "color", "auto", "auto, always, never, 16, 256 or truecolor")
	root.PersistentFlags().StringVar(&b.background, "background", "auto", "auto, dark or light")
	root.Flags().BoolVar(&b.noMouse, "no-mouse", false, "leave the mouse to the terminal")
	root.AddCommand(
		b.command("checklist [PLAN]", "Print the bench checklist", b.checklist),
		b.command("figures [PLAN]", "Print every figure as JSON", b.figures),
		b.command("check [PLAN]", "Print the warnings; exit 0 nothing above a note, 1 a caution, 3 a stop", b.check),
		b.pictureCommand(),
		b.runCommand(),
		b.logbookCommand(),
		&cobra.Command{
			Use: "keys", Short: "Print the table of keys", Args: cobra.NoArgs,
			RunE: func(*cobra.Command, []string) error {
				_, err := fmt.Fprint(b.out, tui.KeyTable())
				return err
			},
		},
		&cobra.Command{
			Use: "codes", Short: "Print the table of warnings", Args: cobra.NoArgs,
			RunE: func(*cobra.Command, []string) error { _, err := fmt.Fprint(b.out, paper.CodeTable()); return err },
		},
	)
	root.AddCommand(b.manual(root))
	return root
}

// manual prints the man page: the commands from their own descriptions, the keys from their table. Written here, not by the man
// printer of the command library, because that brings a Markdown and a YAML reader which every start would pay for.
func (b *bench) manual(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use: "man", Short: "Print the man page", Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			page := ".TH POURBENCH 1 \"\" \"pourbench " + version() + "\"\n.SH NAME\npourbench \\- " + root.Short +
				"\n.SH SYNOPSIS\n.B pourbench\n[PLAN] [flags]\n.SH DESCRIPTION\n" + root.Long + "\n.SH COMMANDS\n"
			for _, c := range root.Commands() {
				page += ".TP\n.B " + c.Use + "\n" + c.Short + "\n"
			}
			page += ".SH OPTIONS\n.nf\n" + root.LocalFlags().FlagUsages() + ".fi\n"
			_, err := fmt.Fprint(b.out, page, tui.KeyManual())
			return err
		},
	}
}

// command makes a command that works a plan out and hands the sheet on.
func (b *bench) command(use, short string, do func(pour.Sheet, pour.Shelf) error) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			sheet, shelf, _, err := b.worked(args)
			if err != nil {
				return err
			}
			return do(sheet, shelf)
		},
	}
}

// worked is the sheet of the plan named, with the shelf and the hand it was worked out with.
func (b *bench) worked(args []string) (pour.Sheet, pour.Shelf, clock.Hand, error) {
	shelf, err := b.shelf()
	if err != nil {
		return pour.Sheet{}, shelf, clock.Hand{}, err
	}
	doc, err := b.load(args, shelf)
	if err != nil {
		return pour.Sheet{}, shelf, clock.Hand{}, err
	}
	hand := b.hand(shelf)
	return pour.Work(doc.Plan, shelf, hand), shelf, hand, nil
}

func (b *bench) checklist(s pour.Sheet, shelf pour.Shelf) error {
	_, err := io.WriteString(b.out, paper.Checklist(s, shelf))
	return err
}

func (b *bench) figures(s pour.Sheet, _ pour.Shelf) error { return paper.WriteFigures(b.out, s) }

func (b *bench) check(s pour.Sheet, _ pour.Shelf) error {
	text, exit := paper.Check(s)
	b.exit = exit
	_, err := io.WriteString(b.out, text)
	return err
}

// pictureCommand draws the swirl.
func (b *bench) pictureCommand() *cobra.Command {
	o := paper.PictureOptions{}
	file, seed := "", int64(0)
	var cmd *cobra.Command
	cmd = b.command("picture -o FILE.png [PLAN]", "Draw the swirl as a PNG: a bar, all bars, the loaf, the top", func(s pour.Sheet, shelf pour.Shelf) error {
		if cmd.Flags().Changed("seed") {
			plan, err := pour.Apply(s.Plan, shelf, pour.Reseed(seed))
			if err != nil {
				return err
			}
			s = pour.Work(plan, shelf, b.hand(shelf))
		}
		return b.picture(s, file, o)
	})
	cmd.Flags().StringVarP(&file, "output", "o", "", "the file to write; \"-\" is standard output")
	cmd.Flags().StringVar(&o.View, "view", paper.ViewBar, strings.Join(paper.Views(), ", "))
	cmd.Flags().IntVar(&o.Bar, "bar", 0, "which bar, from 1 (default: the middle one)")
	cmd.Flags().IntVar(&o.Width, "width", 1200, "width in pixels")
	cmd.Flags().BoolVar(&o.Weeks, "weeks", false, "in the colours after some weeks, where vanillin browns a jug")
	cmd.Flags().Int64Var(&seed, "seed", 0, "another of the faces this technique can pour (default: the plan's)")
	return cmd
}

// picture writes the picture whole or not at all; what takes longer than a moment says so on standard error.
func (b *bench) picture(s pour.Sheet, file string, o paper.PictureOptions) error {
	if file == "" {
		return errors.New("draw a picture: say where to, as in -o bar.png")
	}
	ctx, cancel := signal.NotifyContext(context.Background(), os.Interrupt)
	defer cancel()
	working := time.AfterFunc(time.Second, func() { _, _ = fmt.Fprintf(b.errs, "drawing %s, %d pixels wide ...\n", o.View, o.Width) })
	defer working.Stop()
	var png bytes.Buffer
	if err := paper.Picture(ctx, &png, s, o); err != nil {
		return err
	}
	if file == "-" {
		_, err := png.WriteTo(b.out)
		return err
	}
	if err := atomic.WriteFile(file, &png); err != nil {
		return fmt.Errorf("write %s: %w", file, err)
	}
	return nil
}

// open opens the workbench, or prints the checklist where there is no terminal to draw on.
func (b *bench) open(args []string) error {
	shelf, err := b.shelf()
	if err != nil {
		return err
	}
	doc, err := b.load(args, shelf)
	if err != nil {
		return err
	}
	if !b.terminal() {
		return b.checklist(pour.Work(doc.Plan, shelf, b.hand(shelf)), shelf)
	}
	say := ""
	if len(args) == 0 {
		say = "the built-in example; save as makes it your own"
	}
	return tui.Run(tui.Options{
		Document: doc, Shelf: shelf, Hand: b.hand(shelf), Examples: func() []tui.Example { return examples(shelf) }, StateDir: filepath.Join(stateHome(), "pourbench"),
		Colour: b.colour, Background: b.background, NoMouse: b.noMouse, Say: say, Notes: b.errs,
		Learned: func() (string, error) { return lesson(shelf) },
		Pour: func(p pour.Plan) error {
			hand := b.hand(shelf)
			return b.pourLive(live.Options{Shelf: shelf, Hand: hand, Sheet: pour.Work(p, shelf, hand)}, false)
		},
	})
}

// examples reads the plans that come with the program. One that a maker's own shelf does not carry is left out.
func examples(shelf pour.Shelf) []tui.Example {
	var list []tui.Example
	for _, name := range presets.Plans() {
		text, err := presets.Plan(name)
		if err != nil {
			continue // it is built in: it cannot fail
		}
		plan, err := planfile.Read(name+" (built in)", bytes.NewReader(text), shelf)
		if err != nil {
			continue // the maker's shelf has taken away what it needs
		}
		list = append(list, tui.Example{Name: name, Plan: plan})
	}
	return list
}

// terminal says whether there is a terminal that can hold a full screen.
func (b *bench) terminal() bool {
	f, ok := b.out.(*os.File)
	return ok && isatty.IsTerminal(f.Fd()) && os.Getenv("TERM") != "dumb"
}

// load reads the plan named, standard input for "-", or the built-in example.
func (b *bench) load(args []string, shelf pour.Shelf) (planfile.Document, error) {
	if len(args) == 1 && args[0] != "-" {
		return planfile.Load(args[0], shelf)
	}
	name, reader := "standard input", b.in
	if len(args) == 0 {
		demo := presets.Plans()[0]
		text, err := presets.Plan(demo)
		if err != nil {
			return planfile.Document{}, err
		}
		name, reader = demo+" (built in)", bytes.NewReader(text)
	}
	plan, err := planfile.Read(name, reader, shelf)
	return planfile.Document{Plan: plan}, err
}

// shelf is the built-in shelf with the maker's own laid over it.
func (b *bench) shelf() (pour.Shelf, error) {
	shelf, err := presets.Shelf()
	if err != nil {
		return shelf, err
	}
	path := b.shelfFile
	if path == "" {
		path = filepath.Join(configHome(), "pourbench", "shelf.toml")
		if _, err := os.Stat(path); err != nil {
			return shelf, nil // no shelf of her own
		}
	}
	f, err := os.Open(path)
	if err != nil {
		return shelf, fmt.Errorf("open your shelf file: %w; name another with --shelf", err)
	}
	defer func() { _ = f.Close() }() // only read
	return presets.Overlay(shelf, path, f)
}

func shelfHint() string { return filepath.Join("~", ".config", "pourbench", "shelf.toml") }

// configHome honours XDG_CONFIG_HOME on every system, and ~/.config on macOS too, where terminal users look for it.
func configHome() string {
	if home := os.Getenv("XDG_CONFIG_HOME"); home != "" {
		return home
	}
	if xdg.Home != "" && os.PathSeparator == '/' {
		return filepath.Join(xdg.Home, ".config")
	}
	return xdg.ConfigHome
}

func stateHome() string {
	if home := os.Getenv("XDG_STATE_HOME"); home != "" {
		return home
	}
	return xdg.StateHome
}

// version is the module version, or the commit it was built from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			return "0.1 (" + s.Value[:12] + ")"
		}
	}
	return "0.1"
}
