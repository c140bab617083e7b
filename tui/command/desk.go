package command

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour/day"
	"pourbench/pour/disk"
	"pourbench/pour/lot"
	"pourbench/pour/paper"
	"pourbench/pour/stock"
	"pourbench/pour/stock/desk"
	"pourbench/pour/stock/invoice"
)

// deskCommands write into the ledger what comes, is opened, counted, lost and corrected, and look through it.
func (g *program) deskCommands() []*cobra.Command {
	return []*cobra.Command{g.receiveCommand(), g.openCommand(), g.countCommand(), g.loseCommand(), g.correctCommand(), g.takeBackCommand(), g.ruleCommand(), g.entriesCommand(), g.checkCommand()}
}

// deskCommand is a command that writes into the ledger, under its lock, and says what it wrote.
func (g *program) deskCommand(use, short string, most int, example string, do func(stock.State, []string) (desk.Deed, error)) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Example: "  pourbench stock " + example, Args: takes(most),
		RunE: func(_ *cobra.Command, args []string) error {
			return g.atDesk(func(s stock.State) (desk.Deed, error) { return do(s, args) })
		},
	}
}

// atDesk does something to the ledger and prints what is said of it.
func (g *program) atDesk(do func(stock.State) (desk.Deed, error)) error {
	var deed desk.Deed
	var doubts []stock.Doubt
	written, err := g.ledger().Decide(g.now(), session(), func(s stock.State) (out []stock.Entry, err error) {
		if deed, err = do(s); err != nil {
			return nil, err
		}
		doubts, err = s.Check(deed.Entries...)
		return deed.Entries, err
	})
	if errors.Is(err, desk.ErrReceived) {
		return fmt.Errorf("%w (--again)", err)
	}
	if err != nil {
		return err
	}
	for _, d := range doubts {
		g.say("%s; it is written all the same", strings.TrimSuffix(d.Text+": "+d.Mend, ": "))
	}
	text := strings.Join(deed.Said, "\n")
	if len(written) == 1 {
		text += " (" + written[0].ID + ")"
	}
	return g.print(text + "\n")
}

// day reads a day as it was typed today.
func (g *program) day(text string) (day.Day, error) { return day.Read(text, g.today()) }

// dayFlag is the day something was on, today where none is typed.
func (g *program) dayFlag(cmd *cobra.Command) func() (day.Day, error) {
	typed := cmd.Flags().String("day", "", "the day it was, such as 2026-11-28, 28.11. or yesterday (default: today)")
	return func() (day.Day, error) {
		if *typed == "" {
			return g.today(), nil
		}
		return g.day(*typed)
	}
}

// receiveCommand writes in what came, from one line or from an invoice.
func (g *program) receiveCommand() *cobra.Command {
	paste, yes, again := "", false, false
	cmd := &cobra.Command{
		Use: "receive [WORDS]", Short: "Write in what came, as one line or from the lines of an invoice",
		Long: `Write in what came, in one line: what, its size, what it cost, and whatever else is
known of it, in any order:

  olive 5 kg 38.50 post 4.50 lot A12 exp 2027-05-31 from the mill

Sizes are in g, kg, oz, lb, in ml or l where the shelf has a density, or in pieces;
several packs are 2 x 500 g, and then a price says whether it is each or together; a
price may be one per unit (7.70/kg), and free is one too. Other words: bought DAY,
tare 350 g (the empty tub), loss 2 % (what usually stays in it). Packaging and others
that are on no shelf: packaging: kraft box 100 pieces 36.

With --paste the lines of an invoice are read from a file, or from standard input
with -. You are told line by line what was understood, and asked before anything is
written. Postage and discounts in lines of their own are shared by price.`,
		Example: `  pourbench stock receive "olive 5 kg 38.50 post 4.50 lot A12 exp 2027-05-31 from the mill"
  pourbench stock receive --paste invoice.txt
  pourbench stock receive --paste - --yes < invoice.txt`,
		RunE: func(_ *cobra.Command, args []string) error {
			if paste != "" && len(args) > 0 {
				return errors.New("receive: write a line, or --paste FILE; not both")
			}
			if paste != "" {
				return g.receivePasted(paste, yes, again)
			}
			return g.receive(strings.Join(args, " "), again)
		},
	}
	cmd.Flags().StringVar(&paste, "paste", "", "a file with the lines of an invoice, or - for standard input")
	cmd.Flags().BoolVar(&yes, "yes", false, "write what was understood without asking")
	cmd.Flags().BoolVar(&again, "again", false, "the very same came once more")
	return cmd
}

// known is what a line of an invoice is read against.
func (g *program) known(s stock.State) (invoice.Known, error) {
	shelf, err := g.catalogue()
	return invoice.Known{Shelf: shelf, Held: s.Stock, Currency: s.Currency, Today: g.today()}, err
}

// receive writes in what one line says.
func (g *program) receive(text string, again bool) error {
	return g.atDesk(func(s stock.State) (desk.Deed, error) {
		known, err := g.known(s)
		if err != nil {
			return desk.Deed{}, err
		}
		line, err := invoice.One(text, known)
		if err != nil {
			return desk.Deed{}, err
		}
		deed, err := desk.Receive(s, []invoice.Item{line.Item}, again)
		deed.Said = append(deed.Said, line.Notes...)
		return deed, err
	})
}

// receivePasted tells what was understood of an invoice, and writes it in when that is agreed to.
func (g *program) receivePasted(file string, yes, again bool) error {
	text, err := g.pasted(file)
	if err != nil {
		return err
	}
	state, err := g.stocked()
	if err != nil {
		return err
	}
	known, err := g.known(state)
	if err != nil {
		return err
	}
	inv := invoice.Read(text, known)
	if err := g.print(paper.InvoiceText(inv)); err != nil {
		return err
	}
	if why := inv.Refused(); why != "" {
		return fmt.Errorf("receive what is in %s: %s", file, why)
	}
	odd := inv.Count(invoice.Odd) + inv.Cut
	switch {
	case yes && odd > 0:
		return fmt.Errorf("receive what is in %s: %d lines are not understood, and nothing is written; mend them or take them out", file, odd)
	case !yes && file == "-":
		g.say("nothing is written; --yes writes it")
		return nil
	case !yes:
		ask := g.asker(false)
		if ask.in == nil {
			g.say("nothing is written, because there is nobody to ask; --yes writes it")
			return nil
		}
		if !ask.agree(fmt.Sprintf("Write in the %d that were understood?", inv.Count(invoice.Taken))) {
			g.say("nothing is written")
			return nil
		}
	}
	return g.atDesk(func(s stock.State) (desk.Deed, error) { return desk.Receive(s, inv.Items(), again) })
}

// mostPasted bounds what is read as an invoice, bytes.
const mostPasted = 1 << 20

// pasted reads the lines of an invoice.
func (g *program) pasted(file string) (string, error) {
	from := g.In
	if file != "-" {
		f, _, err := disk.Given(file)
		if err != nil {
			return "", fmt.Errorf("open the invoice %s: %w", file, disk.Reason(err))
		}
		defer func() { _ = f.Close() }() // only read
		from = f
	}
	text, err := io.ReadAll(io.LimitReader(from, mostPasted+1))
	switch {
	case err != nil:
		return "", fmt.Errorf("read the invoice %s: %w", file, err)
	case len(text) > mostPasted:
		return "", fmt.Errorf("read the invoice %s: it is longer than a million letters; paste its lines alone", file)
	}
	return string(text), nil
}

func (g *program) openCommand() *cobra.Command {
	var on func() (day.Day, error)
	cmd := g.deskCommand("open PACK", "Write in that a pack was opened", 1, "open olive-1", func(s stock.State, args []string) (desk.Deed, error) {
		at, err := on()
		if err != nil {
			return desk.Deed{}, err
		}
		return desk.Open(s, args[0], at)
	})
	on = g.dayFlag(cmd)
	return cmd
}

// kindOf is the kind of what is in a pack, for reading quantities; of a pack that is not there none is asked for.
func kindOf(s stock.State, pack string) lot.Kind {
	p, _ := s.Pack(pack)
	return p.Material.Kind
}

func (g *program) countCommand() *cobra.Command {
	var on func() (day.Day, error)
	tare, why := "", ""
	cmd := g.deskCommand("count PACK WEIGHED", "Write in what is left in a pack: its weight with the tub, less the empty tub; or its pieces", anyWords, "count olive-1 2650 --tare 350",
		func(s stock.State, args []string) (desk.Deed, error) {
			w := desk.Weighing{Pack: args[0], Why: why}
			var err error
			if w.On, err = on(); err != nil {
				return desk.Deed{}, err
			}
			if w.Found, err = invoice.Quantity(strings.Join(args[1:], " "), kindOf(s, args[0])); err != nil {
				return desk.Deed{}, err
			}
			if tare != "" {
				t, err := invoice.Quantity(tare, lot.Other)
				if err != nil {
					return desk.Deed{}, err
				}
				w.Tare = &t
			}
			return desk.Count(s, w)
		})
	on = g.dayFlag(cmd)
	cmd.Flags().StringVar(&tare, "tare", "", "what the empty tub weighs, such as 350 g; 0 where it was weighed without (default: what the pack says)")
	cmd.Flags().StringVar(&why, "why", "", "why it differs from the book; wanted where it is no usual loss")
	return cmd
}

func (g *program) loseCommand() *cobra.Command {
	var on func() (day.Day, error)
	why := ""
	cmd := g.deskCommand("lose PACK [AMOUNT]", "Write in what was spilled or thrown away; without AMOUNT all that is left", anyWords, "lose olive-1 200 --why spilled",
		func(s stock.State, args []string) (desk.Deed, error) {
			at, err := on()
			if err != nil {
				return desk.Deed{}, err
			}
			q := lot.Quantity(0)
			if len(args) > 1 {
				if q, err = invoice.Quantity(strings.Join(args[1:], " "), kindOf(s, args[0])); err != nil {
					return desk.Deed{}, err
				}
				if q == 0 {
					return desk.Deed{}, fmt.Errorf("lose %s of %s: nothing was lost", args[1], args[0])
				}
			}
			return desk.Lose(s, args[0], q, why, at)
		})
	on = g.dayFlag(cmd)
	cmd.Flags().StringVar(&why, "why", "", "why; always wanted")
	return cmd
}

func (g *program) correctCommand() *cobra.Command {
	return g.deskCommand("correct ENTRY KEY=VALUE", "Write an entry anew with some of it changed: "+strings.Join(desk.CorrectKeys(""), ", "), anyWords, "correct s12 price=46.25 lot=A13",
		func(s stock.State, args []string) (desk.Deed, error) { return desk.Correct(s, args[0], args[1:]) })
}

func (g *program) takeBackCommand() *cobra.Command {
	why := ""
	cmd := g.deskCommand("take-back ENTRY", "Let an entry count no more; its name may be its first letters", 1, "take-back s12",
		func(s stock.State, args []string) (desk.Deed, error) { return desk.TakeBack(s, args[0], why) })
	cmd.Flags().StringVar(&why, "why", "", "why")
	return cmd
}

func (g *program) ruleCommand() *cobra.Command {
	currency, why := "", ""
	cmd := g.deskCommand("rule [fifo|average]", "How costs are found, one rule for all, and the currency of all prices", 1, "rule fifo --currency EUR",
		func(s stock.State, args []string) (desk.Deed, error) {
			if len(args) == 0 && currency == "" {
				return desk.Deed{}, fmt.Errorf("set the rule of costs: write %s or %s, or --currency; it is %s now", lot.FIFO, lot.Average, s.Formula)
			}
			return desk.Rule(s, lot.Formula(strings.Join(args, "")), currency, why)
		})
	cmd.Flags().StringVar(&currency, "currency", "", "the three letters of the currency all prices are in; nothing is converted")
	cmd.Flags().StringVar(&why, "why", "", "why it changes; wanted once something came")
	return cmd
}

func (g *program) entriesCommand() *cobra.Command {
	last := 0
	cmd := &cobra.Command{
		Use: "entries", Short: "List the entries of the ledger that count, by their days", Args: cobra.NoArgs, Example: "  pourbench stock entries --last 10",
		RunE: func(*cobra.Command, []string) error {
			s, err := g.stocked()
			if err != nil {
				return err
			}
			if last <= 0 {
				last = len(s.Entries)
			}
			return g.print(paper.EntryList(s, last))
		},
	}
	cmd.Flags().IntVar(&last, "last", 0, "only so many of the last")
	return cmd
}

// checkCommand looks for what cannot be, and ends with 1 where something is.
func (g *program) checkCommand() *cobra.Command {
	return &cobra.Command{
		Use: "check", Short: "Look through the ledger for what can hardly be; exit 1 where something is", Args: cobra.NoArgs, Example: "  pourbench stock check",
		RunE: func(*cobra.Command, []string) error {
			s, err := g.stocked()
			if err != nil {
				return err
			}
			if len(s.Odd) > 0 {
				g.exit = 1
			}
			return g.print(paper.LedgerDoubts(s))
		},
	}
}
