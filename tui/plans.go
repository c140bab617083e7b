package tui

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/tui/dialog"
	"pourbench/tui/screen"
)

// Ids of the list of plans that are no paths; no path starts with such a sign.
const (
	examplePrefix = "\x00"
	newPlanID     = "\x01new"
	pourPrefix    = "\x02"
)

// onFile is a plan file that can be opened, as far as it was looked into.
type onFile struct {
	path     string
	modified time.Time
	looked   bool
	plan     pour.Plan
	err      error
}

// listedMsg brings the plan files that can be opened, and lookedMsg what stands in them, for the list that shows them.
type (
	listedMsg struct {
		files []onFile
		pours []Past
	}
	lookedMsg struct {
		list  *dialog.List
		files []onFile
		pours []Past
	}
)

// How many plans are listed, and how many of them, the latest, are looked into.
const (
	mostListed = 500
	mostLooked = 60
)

// largestLooked is the largest file that is looked into for the list, bytes: a plan is a few kilobytes.
const largestLooked = 1 << 20

// list finds the plans that were opened or saved before and those of the folder, the latest first.
func (m *model) list() tea.Cmd {
	dir, state, logged := filepath.Dir(m.file.path), m.opt.StateDir, m.opt.Pours
	return func() tea.Msg {
		var paths []string
		if state != "" {
			paths, _ = planfile.Known(state) // a list that cannot be read is no reason to open nothing
			paths = paths[max(len(paths)-mostListed, 0):]
		}
		here, _ := filepath.Glob(filepath.Join(dir, "*.toml"))
		files := onDisk(append(here, paths...), os.Stat)
		slices.SortStableFunc(files, func(a, b onFile) int {
			return cmp.Or(b.modified.Compare(a.modified), cmp.Compare(a.path, b.path))
		})
		var pours []Past
		if logged != nil {
			pours, _ = logged() // nor is a logbook that cannot be read
		}
		return listedMsg{files[:min(len(files), mostListed)], pours[:min(len(pours), mostListed)]}
	}
}

// patience is how long a file may take to say that it is there: one on a network that is gone says nothing for minutes.
const patience = 400 * time.Millisecond

// onDisk is the plain files among paths, each once, as far as they answer in time.
func onDisk(paths []string, stat func(string) (os.FileInfo, error)) []onFile {
	seen, there := map[string]bool{}, make(chan onFile, len(paths))
	asked := 0
	for _, p := range paths {
		whole, err := filepath.Abs(p)
		if err != nil || seen[whole] {
			continue
		}
		seen[whole] = true
		asked++
		go func() {
			f := onFile{path: p}
			if info, err := stat(whole); err == nil && info.Mode().IsRegular() {
				f.modified = info.ModTime()
			}
			there <- f
		}()
	}
	var out []onFile
	late := time.After(patience)
	for range asked {
		select {
		case f := <-there:
			if !f.modified.IsZero() {
				out = append(out, f)
			}
		case <-late:
			return out
		}
	}
	return out
}

// listed opens the list of plans at once and looks into them beside the keyboard.
func (m *model) listed(msg listedMsg) tea.Cmd {
	l := &dialog.List{Title: "Open a plan: pick one, or type a path", Free: "open the file of that path", Choose: m.openPlan}
	l.Items = m.plansOf(msg.files, msg.pours)
	if len(msg.files) > 0 {
		l.At = 1 // the latest plan
	}
	m.dialogs.Open(l)
	shelf := m.session.Shelf()
	return func() tea.Msg {
		files := slices.Clone(msg.files)
		for i := range files[:min(len(files), mostLooked)] {
			files[i].look(shelf)
		}
		return lookedMsg{l, files, msg.pours}
	}
}

// look reads what the list says of a file.
func (f *onFile) look(shelf pour.Shelf) {
	info, err := os.Stat(f.path)
	if err != nil || info.Size() > largestLooked {
		return
	}
	doc, err := planfile.Load(f.path, shelf)
	f.looked, f.plan, f.err = true, doc.Plan, err
}

// looked says in the list what stands in its files.
func (m *model) looked(msg lookedMsg) {
	if m.dialogs.Top() == dialog.Dialog(msg.list) {
		msg.list.Put(m.plansOf(msg.files, msg.pours))
	}
}

// plansOf lists a new plan, plan files, templates, pours that can be poured again and examples.
func (m *model) plansOf(files []onFile, pours []Past) []dialog.Item {
	out := []dialog.Item{{ID: newPlanID, Name: "a new plan", Aside: "asks what is wanted", Detail: []string{"A new plan", "A few questions, and a whole plan to change."}}}
	var templates []dialog.Item
	for _, f := range files {
		it := m.fileItem(f)
		if f.looked && f.plan.Template {
			templates = append(templates, it)
			continue
		}
		out = append(out, it)
	}
	out = append(out, templates...)
	for _, p := range pours {
		out = append(out, dialog.Item{ID: pourPrefix + p.ID, Name: p.Name, Aside: "poured " + p.Day, Detail: []string{p.Name, "pour it again: its plan as a new one, with what happened at " + p.ID, p.Words}})
	}
	for _, e := range m.examples() {
		it := dialog.Item{ID: examplePrefix + e.Name, Name: e.Plan.Name, Aside: "example", Swatches: m.coloursOf(e.Plan)}
		it.Detail = append([]string{e.Plan.Name, "an example that comes with pourbench"}, m.planWords(e.Plan)...)
		out = append(out, it)
	}
	return out
}

func (m *model) examples() []Example {
	if m.opt.Examples == nil {
		return nil
	}
	return m.opt.Examples()
}

// fileItem is the line of a plan file.
func (m *model) fileItem(f onFile) dialog.Item {
	day := f.modified.Format("2006-01-02")
	it := dialog.Item{ID: f.path, Name: filepath.Base(f.path), Aside: day, Detail: []string{filepath.Base(f.path), f.path, "saved " + f.modified.Format("2006-01-02 15:04")}}
	switch {
	case !f.looked:
	case f.err != nil:
		it.Aside = "cannot be read"
		first, _, _ := strings.Cut(f.err.Error(), "\n")
		it.Detail = append(it.Detail, first)
	default:
		it.Name, it.Swatches = f.plan.Name, m.coloursOf(f.plan)
		if f.plan.Template {
			it.Aside = "template"
		}
		it.Detail[0] = f.plan.Name
		it.Detail = append(it.Detail, m.planWords(f.plan)...)
	}
	return it
}

// planWords says what a plan is, in words.
func (m *model) planWords(p pour.Plan) []string {
	names := make([]string, len(p.Base.Jugs))
	for i, j := range p.Base.Jugs {
		names[i] = j.Name
	}
	technique, _ := m.session.Shelf().Technique(p.Swirl.Technique)
	out := []string{technique.Name + ": " + strings.Join(names, ", ")}
	if p.Icing != nil {
		out[0] += "; with an icing"
	}
	return append(out, p.Notes)
}

// coloursOf is the colours of a plan's base, jug by jug, as its sheet has them.
func (m *model) coloursOf(p pour.Plan) []screen.Colour {
	sheet := pour.Weigh(p, m.session.Shelf())
	var out []screen.Colour
	for _, j := range sheet.Base.Jugs {
		if c, ok := screen.Hex(j.Colour.Hex); ok {
			out = append(out, c)
		}
	}
	return out
}
