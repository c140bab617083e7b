package command

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/adrg/xdg"
	"github.com/spf13/cobra"

	"pourbench/pour"
	"pourbench/pour/backup"
	"pourbench/pour/disk"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/plain"
	"pourbench/pour/planfile"
)

// exitLeft is the exit code of a backup that had to leave something out.
const exitLeft = 1

// backupCommands keep what a maker would miss, and put it back.
func (g *program) backupCommands() []*cobra.Command {
	replace, plans := false, "."
	keep := &cobra.Command{
		Use: "backup FILE.zip", Short: "Keep plans, shelf, pours and unsaved work in one archive", Args: cobra.ExactArgs(1),
		Long: `Keep plans, shelf, pours and unsaved work in one archive: the plans your bench has
opened or saved, your own shelf, the logbook's pours with what your calendar was
told, and work that was never saved.

The archive is a zip of the plain files, with a list of them that you can read.`,
		RunE: func(_ *cobra.Command, args []string) error { return g.backup(args[0], g.asker(replace)) },
	}
	back := &cobra.Command{
		Use: "restore FILE.zip", Short: "Put back what a backup holds", Args: cobra.ExactArgs(1),
		Long: `Put back what a backup holds. All of it is checked before anything is written. What is there and the
same is passed over; what is there and differs is asked about, and without a terminal nothing is
written unless --replace is given.

A plan goes back to where it came from in your home folder, any other into the folder of --plans.`,
		RunE: func(_ *cobra.Command, args []string) error { return g.restore(args[0], plans, g.asker(replace)) },
	}
	for _, c := range []*cobra.Command{keep, back} {
		c.Flags().BoolVar(&replace, "replace", false, "write over what is there and differs, without asking")
	}
	back.Flags().StringVar(&plans, "plans", plans, "folder for plans that cannot go back to where they came from")
	return []*cobra.Command{keep, back}
}

// places is where things are kept for this maker.
func (g *program) places(plans string) (backup.Places, error) {
	if abs, err := filepath.Abs(plans); err == nil {
		plans = abs
	}
	if info, err := os.Stat(plans); err != nil || !info.IsDir() {
		return backup.Places{}, fmt.Errorf("put plans into %s: there is no such folder; make it first", plans)
	}
	home := g.env("HOME")
	if home == "" {
		home = xdg.Home
	}
	return backup.Places{Home: home, Shelf: g.shelfPath(), Book: g.bookDir(), Data: g.dataDir(), State: g.stateDir(), Plans: plans}, nil
}

// backup writes the archive. What cannot be kept is told, and the rest is kept all the same.
func (g *program) backup(file string, ask *asker) error {
	p, err := g.places(".")
	if err != nil {
		return err
	}
	files, left := backup.Gather(p)
	if len(files) == 0 && len(left) == 0 {
		return errors.New("back up: there is nothing yet: no plan that was opened or saved, no shelf of your own, no pour, no unsaved work")
	}
	fill := func(w io.Writer) error { return backup.Write(w, files, g.now()) }
	err = disk.OS().Save(file, fill, disk.Want{Mode: disk.Private, New: true})
	if errors.Is(err, fs.ErrExist) {
		if err := ask.leave(file + " is there already"); err != nil {
			return err
		}
		err = disk.OS().Save(file, fill, disk.Want{Mode: disk.Private})
	}
	if err != nil {
		return fmt.Errorf("write the backup %s: %w", file, disk.Reason(err))
	}
	for _, f := range files {
		if err := g.tell("kept", f.Kind, f.From); err != nil {
			return err
		}
	}
	for _, why := range left {
		g.say("left out: %v", why)
		g.exit = exitLeft
	}
	g.sayPictures()
	return nil
}

// sayPictures says how many pictures of pours are in no backup: they may be large, and lie where the maker put them.
func (g *program) sayPictures() {
	shelf, err := g.shelf()
	if err != nil {
		return // it is said where the shelf is used
	}
	if _, err := os.Stat(g.bookDir()); err != nil {
		return
	}
	book, err := logbook.OpenBook(g.bookDir())
	if err != nil {
		return
	}
	batches, err := life.All(book, shelf, pour.Hand{}, g.today())
	if err != nil {
		return
	}
	n := 0
	for _, b := range batches {
		n += len(b.Of(logbook.Photo))
	}
	if n > 0 {
		are := map[bool]string{true: "1 picture of your pours is", false: fmt.Sprintf("%d pictures of your pours are", n)}[n == 1]
		g.say("%s not in it: copy them yourself, to the same place beside %s", are, g.bookDir())
	}
}

// restore puts back what an archive holds, and says of every file what became of it.
func (g *program) restore(file, plans string, ask *asker) error {
	p, err := g.places(plans)
	if err != nil {
		return err
	}
	steps, err := readBackup(file, p)
	if err != nil {
		return err
	}
	if err := ask.first(steps); err != nil {
		return err
	}
	for _, s := range steps {
		done, err := g.putBack(s, ask)
		if err != nil {
			return err
		}
		if err := g.tell(done, s.Kind, s.Path); err != nil {
			return err
		}
	}
	return nil
}

func readBackup(file string, p backup.Places) ([]backup.Step, error) {
	f, info, err := disk.Read(file)
	if err != nil {
		return nil, fmt.Errorf("read the backup %s: %w", file, disk.Reason(err))
	}
	defer f.Close() //nolint:errcheck // nothing was written
	files, err := backup.Read(file, f, info.Size())
	if err != nil {
		return nil, err
	}
	return p.Steps(files)
}

// putBack puts one file back and says what became of it.
func (g *program) putBack(s backup.Step, ask *asker) (done string, err error) {
	done = "put back"
	switch s.State {
	case backup.Same:
		return "the same is there", nil
	case backup.Living:
		return "left: its bench is open", nil
	case backup.Other:
		if err := ask.leave(s.Path + " differs from the one in the backup"); errors.Is(err, errKept) {
			return "left as it is", nil
		} else if err != nil {
			return "", err
		}
		done = "replaced"
	}
	if err := s.Put(); err != nil {
		return "", err
	}
	if s.Kind == backup.Plan {
		return done, planfile.Remember(g.stateDir(), s.Path)
	}
	return done, nil
}

// tell lists what became of one file.
func (g *program) tell(done string, k backup.Kind, path string) error {
	return g.print(fmt.Sprintf("%-8s %-7s %s\n", done, k, plain.Line(path)))
}
