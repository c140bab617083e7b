package panel

import (
	"testing"

	"pourbench/pour"
	"pourbench/pour/planfile"
	"pourbench/presets"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
	"pourbench/tui/look"
)

// worked is what the panels of the plan in a file are drawn from, everything worked out.
func worked(t *testing.T, path string, change func(*pour.Plan)) *Facts {
	t.Helper()
	shelf, err := presets.Shelf()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := planfile.Load(path, shelf)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&doc.Plan)
	}
	sheet := pour.Work(doc.Plan, shelf, pour.Hand{})
	return &Facts{
		Keys: keys.BuiltIn(),
		Plan: doc.Plan, Sheet: &sheet, Timed: &sheet, Fresh: true, Shelf: shelf, Show: doc.Plan.Show, Look: look.New(true),
		Warnings: sheet.Warnings, Colours: &sheet, ColoursFresh: true,
	}
}

const meadow = "../testdata/meadow.toml"

// everyPanel calls a function for every panel of every station, with and without an icing.
func everyPanel(call func(s Station, p *Panel)) {
	for _, s := range Stations() {
		for _, icing := range []bool{true, false} {
			for _, p := range s.Panels(icing) {
				call(s, p)
			}
		}
	}
}

func TestEveryPanelHasANameOfItsOwnAndSomethingToSee(t *testing.T) {
	titles := map[layout.ID]string{}
	everyPanel(func(s Station, p *Panel) {
		if p.ID == "" || p.Title == "" || p.Grid == nil && p.Draw == nil {
			t.Errorf("%s: the panel %q is called %q and has neither grid nor drawing, or no name", s.Name, p.ID, p.Title)
		}
		if other, known := titles[p.ID]; known && other != p.Title {
			t.Errorf("%q is the name of %q and of %q", p.ID, other, p.Title)
		}
		titles[p.ID] = p.Title
	})
	for _, s := range Stations() {
		for _, icing := range []bool{true, false} {
			seen := map[layout.ID]bool{}
			for _, p := range s.Panels(icing) {
				if seen[p.ID] {
					t.Errorf("%s shows %q twice", s.Name, p.ID)
				}
				seen[p.ID] = true
			}
		}
	}
}

func TestEveryStationHasAKeyOfItsOwn(t *testing.T) {
	goes := map[keys.ID]string{}
	for _, s := range Stations() {
		if other := goes[s.Go]; other != "" || s.Go == "" {
			t.Errorf("%s and %s are both reached by %q", s.Name, other, s.Go)
		}
		goes[s.Go] = s.Name
	}
	for _, b := range keys.Table() {
		delete(goes, b.ID)
	}
	if len(goes) > 0 {
		t.Errorf("no key goes to %v", goes)
	}
}

func TestNoKeyDoesTwoThingsOnAPanel(t *testing.T) {
	everyPanel(func(s Station, p *Panel) {
		does := map[string]keys.ID{}
		for _, b := range keys.Table() {
			if b.Mode != keys.Bench || !b.Acts(p.Has()) {
				continue
			}
			for _, k := range b.Keys {
				if other, taken := does[k]; taken {
					t.Errorf("%s, %s: %q is both %q and %q", s.Name, p.ID, k, other, b.ID)
				}
				does[k] = b.ID
			}
		}
	})
}

// What a panel has for keys to act on and what its keys come to must not part.
func TestWhatAPanelHasItsKeysComeTo(t *testing.T) {
	f := worked(t, meadow, nil)
	needs := map[keys.ID]keys.Need{
		keys.Add: keys.Adding, keys.Hold: keys.Held, keys.Colour: keys.Coloured, keys.Remove: keys.Removing, keys.Rename: keys.Named,
		keys.Earlier: keys.Ordered, keys.Later: keys.Ordered,
	}
	everyPanel(func(s Station, p *Panel) {
		for id, need := range needs {
			do, ok := p.Press(id, f, On{Row: grid.Row{Item: -1, Sub: -1}})
			if has := p.Has()&need != 0; ok != has {
				t.Errorf("%s, %s: the key to %s comes to something: %v, the panel has it: %v", s.Name, p.ID, id, ok, has)
			}
			if ok && do.Why == "" && do.Edit == nil && do.Pick == nil {
				t.Errorf("%s, %s: where the cursor is on nothing the key to %s does nothing and does not say why", s.Name, p.ID, id)
			}
		}
		if item := p.Has() & (keys.Coloured | keys.Removing | keys.Named | keys.Ordered); item != 0 && p.Grid == nil {
			t.Errorf("%s, %s: keys act on its items, and it has no rows", s.Name, p.ID)
		}
	})
}

func TestThePanelInFocusIsOnEveryScreen(t *testing.T) {
	for _, icing := range []bool{true, false} {
		f := worked(t, meadow, func(p *pour.Plan) {
			if !icing {
				p.Icing = nil
			}
		})
		for _, s := range Stations() {
			ask := layout.Ask{Picture: s.Picture, Warnings: f.WarningLines()}
			for i, column := range s.Columns(icing) {
				for _, p := range column {
					g := grid.Grid{}
					if p.Grid != nil {
						g = p.Grid(f)
					}
					ask.Columns[i] = append(ask.Columns[i], p.Lay(f, g))
				}
			}
			for ask.W = layout.MinW; ask.W <= 210; ask.W += 15 {
				for ask.H = layout.MinH; ask.H <= 70; ask.H += 6 {
					for _, p := range s.Panels(icing) {
						ask.Focus = p.ID
						if r, ok := layout.Split(ask).Find(p.ID); !ok || r.Dy() < 3 {
							t.Fatalf("%s at %d×%d shows %q in %v", s.Name, ask.W, ask.H, p.ID, r)
						}
					}
				}
			}
		}
	}
}

func TestNoRowHasMoreCellsThanItsGridHasColumns(t *testing.T) {
	f := worked(t, meadow, nil)
	everyPanel(func(s Station, p *Panel) {
		if p.Grid == nil {
			return
		}
		g := p.Grid(f)
		for i, r := range g.Rows {
			for k := len(g.Columns); k < len(r.Cells); k++ {
				if r.Cells[k].Kind != grid.Blank || r.Cells[k].Text != "" {
					t.Errorf("%s, %s: row %d has %q behind its last column", s.Name, p.ID, i, r.Cells[k].Text)
				}
			}
		}
	})
}
