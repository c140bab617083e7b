package tui

import (
	"image"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/exp/golden"

	tea "charm.land/bubbletea/v2"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/panel"
	"pourbench/tui/picture"
	"pourbench/tui/screen"
)

// now is the picture on show.
func now(m *model) *picture.Print { return m.studio.mounts[placeNow].print }

// swirling is the station of the swirl at a size.
func swirling(t testing.TB, w, h int) *model {
	t.Helper()
	m := opened(t, w, h)
	drive(m, "f5")
	return m
}

func TestThePictureWithoutColourIsSigns(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		m := swirling(t, size[0], size[1])
		_, cmd := m.Update(tea.ColorProfileMsg{Profile: colorprofile.ASCII})
		finish(m, cmd)
		t.Run(map[int]string{80: "80x24", 120: "120x36"}[size[0]], func(t *testing.T) {
			golden.RequireEqual(t, []byte(trimmed(frame(m))))
		})
	}
}

func TestThePictureOfALateRevisionIsDropped(t *testing.T) {
	m := opened(t, 120, 36)
	_, early := m.Update(key("+"))
	_, late := m.Update(key("+"))
	finish(m, late)
	want := now(m)
	if want == nil || !want.Plate.Fine {
		t.Fatal("no picture with smooth edges was drawn")
	}
	finish(m, early)
	if now(m) != want {
		t.Error("a picture of the plan before took the place of the present one")
	}
	m.Update(printedMsg{place: placeNow, ticket: m.studio.mounts[placeNow].ticket - 1})
	if now(m) != want {
		t.Error("a stale message took the picture away")
	}
}

func TestADraftComesFirstAndIsRefinedAfterwards(t *testing.T) {
	m := opened(t, 120, 36)
	m.Update(key("+"))
	f := &m.studio.mounts[placeNow]
	plate, err := picture.Draft(f.shot)
	if err != nil {
		t.Fatal(err)
	}
	_, refine := m.Update(printedMsg{place: placeNow, ticket: f.ticket, print: plate.Print(f.dye)})
	if now(m).Plate != plate || refine == nil {
		t.Fatal("the draft is not shown, or not refined")
	}
	finish(m, refine)
	if !now(m).Plate.Fine {
		t.Error("the picture was not refined")
	}
}

func TestANewRevisionStopsTheRefinementOfTheOneBefore(t *testing.T) {
	m := opened(t, 120, 36)
	m.Update(key("+"))
	f := &m.studio.mounts[placeNow]
	plate, err := picture.Draft(f.shot)
	if err != nil {
		t.Fatal(err)
	}
	_, refine := m.Update(printedMsg{place: placeNow, ticket: f.ticket, print: plate.Print(f.dye)})
	m.Update(key("+"))
	if msg := refine(); msg != nil {
		t.Errorf("work for a plan that is gone was finished: %T", msg)
	}
}

func TestColoursAloneReuseTheTracedPicture(t *testing.T) {
	m := swirling(t, 120, 36)
	plate, print := now(m).Plate, now(m)
	if err := m.session.Apply("colour", pour.SetBatterColour(pour.Base, 1, "#2f8f6a")); err != nil {
		t.Fatal(err)
	}
	m.settle()
	finish(m, m.develop())
	if now(m).Plate != plate {
		t.Error("another colour had the swirl traced again")
	}
	if now(m) == print {
		t.Error("another colour did not change the picture")
	}
}

func TestSteppingThroughTheBarsComesRoundAndBackToWhatWasDrawn(t *testing.T) {
	m := swirling(t, 80, 24)
	first := now(m).Plate
	drive(m, "> > right")
	if m.studio.bar != 3 || !strings.Contains(frame(m), "bar 4 of 10") {
		t.Errorf("three steps on the bar is %d", m.studio.bar+1)
	}
	drive(m, "< < left")
	if now(m).Plate != first {
		t.Error("the first bar was traced again")
	}
	drive(m, "<")
	if m.studio.bar != 9 {
		t.Errorf("before the first bar comes bar %d, want the last", m.studio.bar+1)
	}
}

func TestTheViewGoesRound(t *testing.T) {
	m := swirling(t, 120, 36)
	for _, want := range []picture.View{picture.Bars, picture.Long, picture.Top, picture.Stands, picture.Slice, picture.Bar} {
		drive(m, "v")
		if got := now(m).Plate.Shot.View; got != want {
			t.Errorf("the view is %v, want %v", got, want)
		}
	}
}

func TestAnotherFaceIsAnEditThatCanBeUndone(t *testing.T) {
	m := swirling(t, 120, 36)
	drive(m, "R")
	if got := m.session.Plan().Swirl.Seed; got != 8 || !m.session.Dirty() {
		t.Errorf("the seed is %d, want 8", got)
	}
	drive(m, "u")
	if got := m.session.Plan().Swirl.Seed; got != 7 {
		t.Errorf("after undo the seed is %d, want 7", got)
	}
}

func TestTwoVariantsStandSideBySideWithTheirPrices(t *testing.T) {
	m := swirling(t, 120, 36)
	drive(m, "b")
	before := m.price()
	goTo(t, m, panel.Swirl, "orders")
	drive(m, "down enter")
	if m.price() == before {
		t.Fatal("another order costs the same")
	}
	f := frame(m)
	for _, want := range append(before[:], m.price()[0], "kept: drop, face 7", "now: drop, face 7") {
		if !strings.Contains(f, want) {
			t.Errorf("the frame does not say %q", want)
		}
	}
	kept := m.studio.mounts[placeKept].print
	if kept == nil || kept.Plate == now(m).Plate {
		t.Error("the two pictures are one")
	}
	drive(m, "b")
	if m.studio.kept != nil || strings.Contains(frame(m), "kept: drop") {
		t.Error("the kept picture was not let go")
	}
}

func TestTakingAnOrderPoursTheJugsThatWay(t *testing.T) {
	m := swirling(t, 120, 36)
	goTo(t, m, panel.Swirl, "orders")
	want := m.facts.Colours.Mingling.Orders[1].Jugs
	drive(m, "down enter")
	sheet := m.session.Sheet()
	for i, jug := range sheet.PourOrder() {
		if jug != want[i] {
			t.Fatalf("poured %v, want %v", sheet.PourOrder(), want)
		}
	}
}

func TestPinsAndTechniqueAreCells(t *testing.T) {
	m := swirling(t, 120, 36)
	goTo(t, m, panel.Swirl, "technique")
	drive(m, "down 6 enter")
	if got := m.session.Plan().Swirl.Passes; got != 6 {
		t.Errorf("passes are %d, want 6", got)
	}
	for i, r := range m.grids[m.at().ID].Rows {
		if r.Cells[0].Text == "poured last" {
			m.cursors[m.at().ID] = grid.Cursor{Row: i, Col: 1}
		}
	}
	drive(m, "space space down space")
	if s := m.session.Plan().Swirl; s.Last != "gentian" || !s.PotBetween {
		t.Errorf("pinned last is %q, pot between %v", s.Last, s.PotBetween)
	}
}

func TestTheFaceIsOneKeyAwayOnANarrowScreenAndNeverOnTheCursor(t *testing.T) {
	for s := range panel.Places {
		m := opened(t, 80, 24)
		visit(m, panel.Place(s))
		if m.station == panel.Swirl {
			continue
		}
		drive(m, "v")
		if now(m) == nil || !strings.Contains(frame(m), "v puts it away") {
			t.Errorf("%s: no face", m.here().Name)
			continue
		}
		for range 30 {
			drive(m, "down")
			at, ok := m.cursorOf()
			if ok && at.In(m.peekRect()) {
				t.Errorf("%v: the face stands on the cursor at %v", m.station, at)
				break
			}
		}
		drive(m, "v")
		if strings.Contains(frame(m), "v puts it away") {
			t.Errorf("%v: the face stays", m.station)
		}
	}
}

func TestTheFaceIsInViewOnWideScreensAndVSaysSo(t *testing.T) {
	m := opened(t, 120, 36)
	for s := range panel.Places {
		visit(m, panel.Place(s))
		if f := &m.studio.mounts[placeNow]; f.print == nil || f.stop == nil {
			t.Errorf("%v: no face in view", m.station)
		}
	}
	drive(m, "f4 v")
	if !strings.Contains(m.status.Text(), "in view already") {
		t.Errorf("v says %q", m.status.Text())
	}
}

func TestTheCountsOfTheFaceAreThoseOfTheBarOnShow(t *testing.T) {
	m := swirling(t, 200, 60)
	f := frame(m)
	if !strings.Contains(f, "of its borders") || !strings.Contains(f, " against ") {
		t.Fatal("nothing was counted")
	}
	sum := 0.0
	for _, v := range m.studio.measured.of.Shares {
		sum += v
	}
	if sum < 0.999 || sum > 1.001 {
		t.Errorf("the parts of the face sum to %v", sum)
	}
	before := m.studio.measured.ticket
	drive(m, "i")
	if m.studio.measured.ticket != before {
		t.Error("letters had the face counted again")
	}
	drive(m, ">")
	if m.studio.measured.ticket == before {
		t.Error("another bar was not counted")
	}
}

func TestVanillinIsShownAfterSomeWeeks(t *testing.T) {
	m := swirling(t, 120, 36)
	fresh := now(m)
	drive(m, "f")
	if now(m).Plate != fresh.Plate || now(m).Dye.Same(fresh.Dye) || !strings.Contains(frame(m), "after some weeks") {
		t.Error("the browned colours are not shown")
	}
	m.studio.weeks = false
	for i := len(base(m).Scents) - 1; i >= 0; i-- {
		if err := m.session.Apply("no scent", pour.RemoveScent(pour.Base, i)); err != nil {
			t.Fatal(err)
		}
	}
	m.settle()
	finish(m, m.workFigures())
	drive(m, "f")
	if m.studio.weeks || !strings.Contains(m.status.Text(), "vanillin") {
		t.Errorf("without vanillin f says %q", m.status.Text())
	}
}

func TestWarningsDoNotFlickerWhileFiguresAreWorkedOut(t *testing.T) {
	m := opened(t, 120, 36)
	before := len(m.session.Warnings())
	m.Update(key("+"))
	if got := len(m.session.Warnings()); got != before {
		t.Errorf("while the clock works %d warnings stand, before it were %d", got, before)
	}
}

func TestAClickOnABarOfTheStripShowsIt(t *testing.T) {
	m := swirling(t, 120, 36)
	drive(m, "v")
	e, _ := m.easel()
	tile := now(m).Plate.Tiles()[6]
	at := tile.Rect.Add(e.now.Min).Min
	_, cmd := m.Update(tea.MouseClickMsg{X: at.X + 1, Y: at.Y + 1, Button: tea.MouseLeft})
	finish(m, cmd)
	if m.studio.bar != 6 {
		t.Errorf("the bar is %d, want 7", m.studio.bar+1)
	}
}

// On a small screen all bars would be confetti: three are shown, and the keys of the bars move along the loaf.
func TestOnASmallScreenThreeBarsAreShownAndMoveAlong(t *testing.T) {
	m := swirling(t, 80, 24)
	drive(m, "v")
	bars := func() (out []int) {
		for _, tile := range now(m).Plate.Tiles() {
			out = append(out, tile.Bar)
			if w := tile.Rect.Dx(); w < 20 {
				t.Errorf("a bar is %d columns wide", w)
			}
		}
		return out
	}
	for _, c := range []struct {
		keys, says string
		want       []int
	}{
		{"", "bars 1 to 3 of 10", []int{0, 1, 2}}, {"> > > >", "bars 4 to 6 of 10", []int{3, 4, 5}}, {"> > > > >", "bars 8 to 10 of 10", []int{7, 8, 9}},
	} {
		drive(m, c.keys)
		if got := bars(); !slices.Equal(got, c.want) || !strings.Contains(frame(m), c.says) {
			t.Errorf("after %q the bars %v are shown, want %v and %q", c.keys, got, c.want, c.says)
		}
	}
	if m = swirling(t, 200, 60); len(m.studio.design.Bars) != 10 {
		t.Fatal("the example has other bars")
	}
	drive(m, "v")
	if got := len(now(m).Plate.Tiles()); got != 10 {
		t.Errorf("a large screen shows %d bars", got)
	}
}

// Where two pictures beside each other would both be small, one stands in the place of the other.
func TestTwoVariantsTakeTurnsWhereBothHaveNoRoom(t *testing.T) {
	m := swirling(t, 80, 24)
	drive(m, "z")
	if !strings.Contains(m.status.Text(), "no picture is kept") {
		t.Errorf("with nothing kept z says %q", m.status.Text())
	}
	drive(m, "v b R")
	whole := now(m).Plate.Tiles()[0].Rect
	if f := frame(m); !strings.Contains(f, "now: drop, face 8") || strings.Contains(f, "kept: drop") || whole.Dx() < 20 {
		t.Errorf("the present picture is not alone at full size, but %v", whole)
	}
	drive(m, "z") // of another seed, whose tips stand a few mm higher or lower: the bar below them is a cell or two narrower or wider
	kept := m.studio.mounts[placeKept].print
	if f := frame(m); !strings.Contains(f, "kept: drop, face 7") || strings.Contains(f, "now: drop") || kept == nil || !kept.Plate.Tiles()[0].Rect.In(whole.Inset(-2)) || kept.Plate.Tiles()[0].Rect.Dx() < whole.Dx()-2 {
		t.Error("the kept picture does not stand in the place of the present one")
	}
	drive(m, "z")
	if !strings.Contains(frame(m), "now: drop, face 8") {
		t.Error("the present picture did not come back")
	}
	drive(m, "z b")
	if m.studio.kept != nil || !now(m).Plate.Tiles()[0].Rect.In(image.Rect(0, 0, 80, 24)) || strings.Contains(frame(m), "kept: drop") {
		t.Error("the kept picture was not let go")
	}
	m = swirling(t, 120, 36)
	drive(m, "b z")
	if !strings.Contains(m.status.Text(), "both pictures are in view") {
		t.Errorf("beside each other z says %q", m.status.Text())
	}
}

// All bars are as large as the room allows: the legend stands where it costs them least, and no row is left half empty.
func TestAllBarsTakeTheRoomThereIs(t *testing.T) {
	for _, size := range [][2]int{{120, 36}, {160, 45}} {
		m := swirling(t, size[0], size[1])
		drive(m, "v")
		tiles := now(m).Plate.Tiles()
		first, sixth := tiles[0].Rect, tiles[5].Rect
		if len(tiles) != 10 || first.Min.X != sixth.Min.X || first.Max.Y >= sixth.Min.Y {
			t.Errorf("at %v the first bar of %d stands in %v, the sixth in %v", size, len(tiles), first, sixth)
		}
		e, _ := m.easel()
		most := 0 // of five columns and two rows, in all the room there is with the legend at either side
		for _, room := range []image.Point{{e.in.Dx() - m.legendW(true) - legendGap, e.in.Dy() - 1}, {e.in.Dx(), e.in.Dy() - 2 - m.legendFlow(e.in.Dx()).rows}} {
			wide, high := m.studio.design.Recipe.FaceMM()
			high += m.studio.peak.mm
			most = max(most, min((room.X-8)/5, int(2*float64(room.Y/2-1)*wide/high)))
		}
		if first.Dx() < most {
			t.Errorf("at %v a bar is %d wide, but could be %d", size, first.Dx(), most)
		}
	}
}

func TestTheCellsOfThePictureAreAChoice(t *testing.T) {
	m := swirling(t, 80, 24)
	for _, want := range []screen.Mosaic{screen.Quarters, screen.Sixths, screen.Halves, screen.Quarters} {
		if got := now(m).Plate.Shot.Mosaic; got != want {
			t.Fatalf("the cells are of mosaic %d, want %d", got, want)
		}
		across, down := want.Grain()
		f := frame(m)
		for glyphs, finest := range map[string]screen.Mosaic{"▙▟▛▜▚▞": screen.Quarters, "🬂🬎🬭🬹🬏🬞🬁🬀🬱🬵": screen.Sixths} {
			if strings.ContainsAny(f, glyphs) != (want == finest) {
				t.Errorf("with %d × %d pixels in a cell the frame has, or lacks, %s", across, down, glyphs)
			}
		}
		drive(m, "M")
	}
	drive(m, "i M")
	if !strings.Contains(m.status.Text(), "letters") {
		t.Errorf("with letters M says %q", m.status.Text())
	}
	for cells, want := range map[string]screen.Mosaic{"2": screen.Halves, "4": screen.Quarters, "6": screen.Sixths, "": screen.Quarters} {
		if m := newModel(Options{Document: m.opt.Document, Shelf: m.opt.Shelf, Cells: cells}); m.studio.mosaic != want {
			t.Errorf("a bench of cells of %q pixels has mosaic %d, want %d", cells, m.studio.mosaic, want)
		}
	}
}
