package season

import (
	"fmt"
	"path/filepath"

	"pourbench/pour"
	"pourbench/pour/day"
	"pourbench/pour/logbook"
	"pourbench/pour/logbook/life"
	"pourbench/pour/planfile"
)

// Gather reads the season's file in the maker's folder of data and the plans it names, and takes the batches of her logbook as they stand. A
// plan that cannot be read is a fault of its pour and of nothing else.
func Gather(dir string, book logbook.Book, shelf pour.Shelf, hand pour.Hand, batches []life.Batch, today day.Day) (Facts, error) {
	file, err := Load(dir)
	if err != nil {
		return Facts{}, err
	}
	f := Facts{File: file, Designs: map[string]Design{}, Today: today}
	for _, p := range file.Pours {
		if _, known := f.Designs[p.Plan]; !known && p.Plan != "" {
			f.Designs[p.Plan] = readDesign(PlanPath(dir, p.Plan), shelf, hand)
		}
	}
	for _, b := range batches {
		if b.Fault != nil {
			continue
		}
		mould := pour.Mould{}
		if s := (Standing{State: b.State}); s.inMould() {
			if p, err := book.Read(b.ID, shelf); err == nil {
				mould = p.Plan.Mould
			}
		}
		f.Standing = append(f.Standing, StandingOf(b, mould))
	}
	return f, nil
}

// PlanPath is the file of a plan that the season's file names, from the folder that is in.
func PlanPath(dir, named string) string {
	if filepath.IsAbs(named) {
		return named
	}
	return filepath.Join(dir, named)
}

func readDesign(path string, shelf pour.Shelf, hand pour.Hand) Design {
	doc, err := planfile.Load(path, shelf)
	if err != nil {
		return Design{Name: filepath.Base(path), Fault: fmt.Errorf("its plan cannot be used: %w", err)}
	}
	sheet := pour.Weigh(doc.Plan, shelf).Time(shelf, hand)
	d := DesignOf(sheet)
	d.Needs = sheet.Wants(shelf)
	return d
}

// StandingOf is a batch as the season sees it. The mould is that of its plan; it counts only while the loaf is in it.
func StandingOf(b life.Batch, mould pour.Mould) Standing {
	s := Standing{ID: b.ID, Name: b.Name, State: b.State, Poured: b.Poured, Cut: b.Course.CutDay(), Mould: mould, Bars: b.Bars}
	done := b.Course.Done()
	if !s.onRack() && !s.uncut() && b.Course.Ready.Known {
		done = b.Course.Ready // its maker says that it is ready
	}
	s.Ready = Band{done.Early, done.Day, done.Late}
	s.Lawless = b.Drying.Misfit() && s.onRack() && !b.Course.Ready.Known
	if s.uncut() && !s.Bars.Known && b.Planned.Bars > 0 { // nobody could count them yet
		s.Bars = life.Account{Known: true, Planned: true, Bars: b.Planned.Bars, Left: b.Planned.Bars}
	}
	return s
}
