package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/strict"
	"pourbench/tui/batches"
)

// lifeCommands are the commands that log what becomes of a batch: one for every kind of event, from the table of their fields, and those that mend.
func (g *program) lifeCommands() []*cobra.Command {
	var out []*cobra.Command
	for _, f := range life.Forms() {
		out = append(out, g.lifeCommand(f))
	}
	return append(out,
		g.book("correct ID EVENT KEY=VALUE", "Log an event anew in the place of one that was mistyped, or say of what a weight was; its name may be its first letters", anyWords,
			"correct "+examplePour+" e12 count=3 price=7.50", g.correct),
		g.book("take-back ID EVENT", "Take back an event of a batch's life or a weight of its pour; its name may be its first letters", 2,
			"take-back "+examplePour+" e12", g.takeBack))
}

// lifeCommand logs one kind of event. Fields that lead are typed in their order, the others are flags.
func (g *program) lifeCommand(form life.Form) *cobra.Command {
	e := logbook.Event{Kind: form.Kind}
	fields := life.Fields(&e, pour.Plan{})
	use := form.Command + " ID"
	for _, f := range fields {
		if f.Lead && f.Required {
			use += " " + shout(f)
		}
	}
	for _, f := range fields {
		if f.Lead && !f.Required || f.Rest && !f.Required {
			use += " [" + shout(f) + "]"
		} else if f.Rest {
			use += " " + shout(f)
		}
	}
	typed := map[string]*string{}
	cmd := g.book(use, "Log: "+form.Means, anyWords, form.Command+" "+examplePour+" "+form.Example, func(book logbook.Book, shelf pour.Shelf, args []string) error {
		record, err := book.Read(args[0], shelf)
		if err != nil {
			return err
		}
		e := logbook.Event{Kind: form.Kind}
		fields := life.Fields(&e, record.Plan)
		rest, err := leading(fields, args[1:])
		if err != nil {
			return err
		}
		for _, f := range fields {
			if text := typed[f.Key]; text != nil && *text != "" {
				err = f.SetOn(*text, g.today())
			}
			if f.Rest && len(rest) > 0 {
				err = f.Set(strings.Join(rest, " "))
			}
			if err != nil {
				return err
			}
		}
		return g.logLife(book, shelf, record, e)
	})
	for _, f := range fields {
		_, counts := f.At.(*int)
		if !f.Lead && !f.Rest || counts && !f.Required {
			typed[f.Key] = new(string)
			cmd.Flags().StringVar(typed[f.Key], f.Key, "", f.Describe())
		}
	}
	return cmd
}

// shout is a field as the use of a command names it.
func shout(f life.Field) string { return strings.ToUpper(strings.ReplaceAll(f.Label, " ", "-")) }

// leading sets the fields that are typed without their keys, and returns the words behind them.
func leading(fields []life.Field, words []string) ([]string, error) {
	for _, f := range fields {
		if !f.Lead || len(words) == 0 {
			continue
		}
		n := 1
		switch f.At.(type) {
		case *[]float64:
			if n = numbers(words); n == 0 && f.Required {
				n = 1 // to be told what is wrong with it
			}
		case *int:
			if !f.Required && numbers(words[:1]) == 0 {
				n = 0 // as well
			}
		case *string:
			known := slices.ContainsFunc(f.Words, func(w string) bool { return strings.EqualFold(w, words[0]) })
			if !f.Required && !known {
				n = 0 // it is one of the words that follow
			}
		}
		if err := f.Set(strings.Join(words[:n], " ")); err != nil {
			return nil, err
		}
		words = words[n:]
	}
	return words, nil
}

// numbers is how many words at the front are numbers.
func numbers(words []string) int {
	for i, w := range words {
		if _, err := strict.ParseNumber(w); err != nil {
			return i
		}
	}
	return len(words)
}

// logLife logs an event of a batch's life and says what it wrote, beside what was planned and what of it is doubtful.
func (g *program) logLife(book logbook.Book, shelf pour.Shelf, record logbook.Pour, e logbook.Event) error {
	if e.Kind == logbook.Photo && e.Corrects == "" {
		if err := batches.IsPicture(e.Life.Path); err != nil {
			return err
		}
	}
	out, err := life.Log(book, shelf, record.ID, e, g.now(), session())
	if err != nil {
		return err
	}
	if len(out.Doubts) > 0 {
		g.say("%s. It is logged all the same; pourbench logbook correct %s %s KEY=VALUE puts it right", strings.Join(out.Doubts, "; "), record.ID, out.Event.ID)
	}
	return g.print(fmt.Sprintf("%s: %s (%s)\n", record.ID, out.Tell(record.Plan.Show), out.Event.ID))
}

// named finds an event by its id or the first letters of it.
func named(record logbook.Pour, id string) (logbook.Event, error) {
	var found []logbook.Event
	for _, e := range record.Events {
		if e.ID == id || strings.HasPrefix(e.ID, id+"-") {
			return e, nil
		}
		if strings.HasPrefix(e.ID, id) {
			found = append(found, e)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return logbook.Event{}, fmt.Errorf("find the event %q: %s has none that begins so; pourbench logbook show %s lists them", id, record.ID, record.ID)
	}
	var list strings.Builder
	for _, e := range found {
		fmt.Fprintf(&list, "\n  %s  %s  %s", e.ID, e.Day(), life.Tell(e, record.Plan.Show))
	}
	return logbook.Event{}, fmt.Errorf("find the event %q: %d events of %s begin so; type more of one of them:%s", id, len(found), record.ID, list.String())
}

// correct logs an event anew with some of its fields changed.
func (g *program) correct(book logbook.Book, shelf pour.Shelf, args []string) error {
	record, err := book.Read(args[0], shelf)
	if err != nil {
		return err
	}
	was, err := named(record, args[1])
	if err != nil {
		return err
	}
	e := life.Correction(was)
	fields := life.Fields(&e, record.Plan)
	for _, word := range args[2:] {
		key, value, ok := strings.Cut(word, "=")
		i := slices.IndexFunc(fields, func(f life.Field) bool { return f.Key == key })
		if !ok || i < 0 {
			var keys []string
			for _, f := range fields {
				keys = append(keys, f.Key)
			}
			return fmt.Errorf("correct %q: write KEY=VALUE; the keys of an event %q are %s", word, e.Kind, strings.Join(keys, ", "))
		}
		if err := fields[i].SetOn(value, g.today()); err != nil {
			return err
		}
	}
	return g.logLife(book, shelf, record, e)
}

// takeBack lets an event count no more.
func (g *program) takeBack(book logbook.Book, shelf pour.Shelf, args []string) error {
	record, err := book.Read(args[0], shelf)
	if err != nil {
		return err
	}
	e, err := named(record, args[1])
	if err != nil {
		return err
	}
	return g.logLife(book, shelf, record, logbook.Event{Kind: logbook.TakenBack, What: e.ID})
}
