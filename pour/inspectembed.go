package pour

import (
	"fmt"
	"math"
	"strings"

	"pourbench/pour/shape"
)

func embedCodes() []CodeInfo {
	return []CodeInfo{
		{"embed-cut", Caution, false, "a wire is likely to meet an embed"},
		{"embed-tight", Note, false, "an embed has room for the usual errors of hand, wire and eye, not for all of them at once"},
		{"embed-astray", Caution, false, "an embed stands where no bar is cut"},
		{"embed-sight", Note, false, "a slanted look at the mark would use up the room beside an embed"},
		{"embed-high", Caution, false, "an embed is buried by less than two thirds: the cutter may lift it out"},
		{"embed-deep", Caution, false, "an embed would reach the mould's floor"},
		{"embed-wall", Caution, false, "an embed may touch the mould's wall"},
		{"embed-touch", Caution, false, "two embeds may touch"},
		{"embed-iced", Caution, false, "icing is piped or spooned over an embed that should be seen"},
		{"embed-weight", Caution, false, "an embed weighs what soap of its size cannot"},
		{"embed-late", Caution, false, "an embed is made too late to be hard when it is set"},
		{"embed-hard", Note, false, "an embed harder than the loaf: a wire goes round it, not through"},
		{"embed-squeeze", Note, false, "all wires at once squeeze a loaf with embeds in its top"},
		{"embed-melts", Caution, false, "the loaf may get warm enough to soften a melt-and-pour embed"},
		{"embed-crowd", Stop, false, "more embeds than the loaf has room for"},
	}
}

// embedPlace is where a warning of a kind of embed stands.
func embedPlace(name string) string { return "embed " + name }

// Embed is the place in the sheet's list of the kind of embed a warning stands on; false: it stands on none.
func (w Warning) Embed(s *Sheet) (int, bool) {
	for i, k := range s.Embeds {
		if w.Where == embedPlace(k.Name) {
			return i, true
		}
	}
	return 0, false
}

// inspectEmbeds looks at every kind of embed, and at what all of them do to each other.
func (s *Sheet) inspectEmbeds() {
	for i := range s.Embeds {
		k, e := &s.Embeds[i], &s.Plan.Top.Embeds[i]
		s.inspectRoom(k)
		s.inspectSight(k)
		s.inspectDepth(i)
		s.inspectWalls(k)
		s.inspectAge(k, e)
		s.inspectWeight(k, e)
	}
	s.inspectTouching()
	s.inspectIced()
	s.inspectSqueeze()
	s.inspectCrowd()
}

// inspectRoom says which pieces a wire may meet, and which stand in no bar.
func (s *Sheet) inspectRoom(k *EmbedSheet) {
	show := s.Plan.Show
	for _, verdict := range [...]string{VerdictCut, VerdictTight, VerdictAstray} {
		n, at := 0, -1
		for i, p := range k.Pieces {
			if p.Verdict != verdict {
				continue
			}
			if n++; at < 0 || p.ClearMM.Known && p.ClearMM.V < k.Pieces[at].ClearMM.V {
				at = i
			}
		}
		if n == 0 {
			continue
		}
		p := k.Pieces[at]
		of := fmt.Sprintf("%s: %d of %d pieces", k.Name, n, len(k.Pieces))
		switch verdict {
		case VerdictAstray:
			s.warn(warning("embed-astray", embedPlace(k.Name), fmt.Sprintf("%s stand in no bar, at %s from end A", of, show.LenNear(p.CentreMM)), "set it in the middle of a bar, or cut a bar where it stands"))
		case VerdictTight:
			s.warn(warning("embed-tight", embedPlace(k.Name), fmt.Sprintf("%s are tight: bar %d leaves %s %s it, %s are enough as a rule and %s at worst", of, p.Bar,
				show.LenNear(p.ClearMM.V), beside(p), show.LenNear(p.Budget.Usual()), show.LenNear(max(p.Budget.Worst(), s.Plan.Cut.ClearMM))), "set it with care by its mark, look straight down, or give it more room"))
		default:
			s.warn(warning("embed-cut", embedPlace(k.Name), fmt.Sprintf("%s may be cut: in bar %d, at %s, %s beside %s and at least %s are needed", of, p.Bar,
				s.standsAt(p), s.isLeft(p.ClearMM.V), wordCut(p), show.LenNear(p.Budget.Usual())), "set it to the cuts, cut otherwise, or take a smaller piece"))
		}
	}
}

// standsAt words where a piece stands: of a slab that is cut along its length in both directions.
func (s *Sheet) standsAt(p EmbedPiece) string {
	at := s.Plan.Show.LenNear(p.CentreMM) + " from end A"
	if len(s.Cut.AcrossMM) > 0 {
		at += " and " + s.Plan.Show.LenNear(p.AcrossMM+s.Plan.Mould.WidthMM/2) + " from the left wall"
	}
	return at
}

// wordCut names the cut that comes nearest to a piece.
func wordCut(p EmbedPiece) string {
	if p.lengthwise() {
		return "the cut along the slab"
	}
	return "the cut"
}

// beside says on which sides a piece has least room.
func beside(p EmbedPiece) string {
	if p.lengthwise() {
		return "left or right of"
	}
	return "beside"
}

// isLeft words what is left beside a cut, or by how much a piece stands over it.
func (s *Sheet) isLeft(mm float64) string {
	if mm < 0 {
		return "it stands " + s.Plan.Show.LenNear(-mm) + " over the cut; room"
	}
	return s.Plan.Show.LenNear(mm) + " are left"
}

// askew is a slant at which a maker who does not think of it looks at a mark: common practice, no source.
const askew = 15 * math.Pi / 180

// inspectSight says where a slanted look takes more than half of the room a piece has to spare.
func (s *Sheet) inspectSight(k *EmbedSheet) {
	show, slant := s.Plan.Show, shape.Parallax(s.Plan.rimMM(), askew)
	for _, p := range k.Pieces {
		if p.spoiled() || !p.ClearMM.Known {
			continue
		}
		b := p.Budget
		spare := p.ClearMM.V - b.Placing - b.Wander - b.HalfKerf
		if slant > spare/2 {
			s.warn(warning("embed-sight", embedPlace(k.Name), fmt.Sprintf("%s: seen 15° askew, a mark %s over the soap is %s off, and bar %d has %s to spare", k.Name,
				show.LenNear(s.Plan.rimMM()), show.LenNear(slant), p.Bar, show.LenNear(max(spare, 0))), "bring your head over each mark, sight over both rims, or lay the rule on the soap"))
			return
		}
	}
}

// inspectDepth says whether a piece is held, and whether there is soap below it.
func (s *Sheet) inspectDepth(i int) {
	k := &s.Embeds[i]
	show, deep := s.Plan.Show, k.HeightMM-k.OutMM
	if s.onIcing(i) {
		s.warn(warning("embed-high", embedPlace(k.Name), k.Name+": it sits on the icing and nothing of it is in the base: only the icing holds it, how firmly is not reckoned",
			"press two thirds of it into the icing while that is soft (common practice), and touch it last when you cut"))
	} else if k.BuriedPercent.V < shape.EnoughBuried*100-noise && !k.Rod {
		hold := ""
		if k.HoldN.Known {
			hold = fmt.Sprintf("; a fresh loaf holds it by about %s N (an estimate)", show.Number(k.HoldN.V, 1))
		}
		s.warn(warning("embed-high", embedPlace(k.Name), fmt.Sprintf("%s: only %s of its %s are buried%s", k.Name, show.LenNear(max(min(deep, s.Plan.Mould.deepMM()), 0)), show.LenNear(k.HeightMM), hold),
			"set it deeper, two thirds at least, and roughen or undercut its sides (common practice)"))
	}
	floor := s.Base.stands(s.Plan.Mould.FillMM)
	if s.Plan.Mould.Shape == ShapeTube {
		floor = s.Plan.Mould.deepMM()
	}
	if deep > floor {
		s.warn(warning("embed-deep", embedPlace(k.Name), fmt.Sprintf("%s: it reaches %s down and the base is %s deep", k.Name, show.LenNear(deep), show.LenNear(floor)), "take a lower piece, let it stand out further, or fill the mould higher"))
	}
}

// inspectWalls says where a piece set as far off as hands may set it touches a wall.
func (s *Sheet) inspectWalls(k *EmbedSheet) {
	m, show := s.Plan.Mould, s.Plan.Show
	least, side := math.Inf(1), ""
	for _, p := range k.Pieces {
		if v := m.WidthMM/2 - math.Abs(p.AcrossMM) - k.AcrossMM/2; v < least {
			least, side = v, "a side"
		}
		if k.Rod || p.Bar == 0 {
			continue
		}
		bar := s.Cut.Bars[p.Bar-1] // its ends are walls where no cut is
		if v := p.CentreMM - bar.StartMM - k.ExtentMM/2; !p.ClearAMM.Known && v < least {
			least, side = v, "an end"
		}
		if v := bar.EndMM - p.CentreMM - k.ExtentMM/2; !p.ClearBMM.Known && v < least {
			least, side = v, "an end"
		}
	}
	if least < s.Plan.Cut.PlaceMM-noise {
		s.warn(warning("embed-wall", embedPlace(k.Name), fmt.Sprintf("%s: %s of the mould is %s away, and it is set within %s", k.Name, side, s.away(least), show.LenNear(s.Plan.Cut.PlaceMM)), "move it in, or take a smaller piece"))
	}
}

// away words a distance that may be less than none.
func (s *Sheet) away(mm float64) string {
	if mm < 0 {
		return s.Plan.Show.LenNear(-mm) + " inside it, not"
	}
	return s.Plan.Show.LenNear(mm)
}

// inspectAge says whether a piece is hard enough when it is set, and too hard for the wire.
func (s *Sheet) inspectAge(k *EmbedSheet, e *Embed) {
	if k.MadeDays < k.HardDays {
		s.warn(warning("embed-late", embedPlace(k.Name), fmt.Sprintf("%s: made %s before the pour, and it needs %s to harden", k.Name, days(k.MadeDays), days(k.HardDays)), "make it earlier, or pour later"))
	}
	if e.hard() {
		what := "a wire that meets it goes round it and the bar is no longer even"
		if k.Rod {
			what = "every wire has to go through it"
		}
		s.warn(warning("embed-hard", embedPlace(k.Name), fmt.Sprintf("%s: it is harder than the loaf: %s", k.Name, what), "take a piece as young as the loaf or softer, or keep it well clear of the cuts"))
	}
}

// days words a number of days.
func days(d float64) string {
	switch d {
	case 1:
		return "1 day"
	case 0:
		return "no time"
	}
	return strings.TrimSuffix(fixed(d, 1), ".0") + " days"
}

// inspectTouching says which kinds of pieces may touch each other, once for each two kinds.
func (s *Sheet) inspectTouching() {
	room := s.Plan.Cut.PlaceMM
	for a := range s.Embeds {
		for b := a; b < len(s.Embeds); b++ {
			if gap := s.leastGap(a, b, room); gap < room-noise {
				with := "the next of its kind"
				if a != b {
					with = s.Embeds[b].Name
				}
				s.warn(warning("embed-touch", embedPlace(s.Embeds[a].Name), fmt.Sprintf("%s: %s is %s away, and each is set within %s", s.Embeds[a].Name, with, s.away(gap), s.Plan.Show.LenNear(room)),
					"move them apart, take fewer or smaller ones"))
			}
		}
	}
}

// leastGap is the least room between pieces of two kinds, mm, as far as it is below some room; pieces further apart are not measured.
func (s *Sheet) leastGap(a, b int, room float64) float64 {
	ka, kb := &s.Embeds[a], &s.Embeds[b]
	reach := max((ka.Outline.Enclosing()+kb.Outline.Enclosing())/2, (ka.ExtentMM+kb.ExtentMM)/2) + room
	least := math.Inf(1)
	seen := map[shape.Point]bool{} // most pieces stand as far from their neighbours as the ones before
	for i, p := range ka.Pieces {
		others := kb.Pieces
		if a == b {
			others = kb.Pieces[i+1:]
		}
		for _, q := range others {
			apart := shape.Point{X: q.CentreMM - p.CentreMM, Y: q.AcrossMM - p.AcrossMM}
			if math.Hypot(apart.X, apart.Y) >= reach {
				continue
			}
			if key := (shape.Point{X: round3(apart.X), Y: round3(apart.Y)}); !seen[key] {
				seen[key] = true
				least = min(least, s.gap(a, b, apart))
			}
		}
	}
	return least
}

// gap is the room between two pieces so far apart; one that may lie any way round counts as the circle around it.
func (s *Sheet) gap(a, b int, apart shape.Point) float64 {
	of := func(i int) (shape.Outline, float64) {
		k := &s.Embeds[i]
		if s.Plan.Top.Embeds[i].AnyTurn {
			return shape.RoundOutline(k.ExtentMM), 0
		}
		return k.Outline, k.TurnRad
	}
	oa, ta := of(a)
	ob, tb := of(b)
	return shape.Gap(oa, ta, ob, tb, apart)
}

// squeezed is from which squeeze on a gang of wires is worth a word where embeds stand in the top: half a percent, some wires; derived, an estimate.
const squeezed = 0.005

// usualWireMM is the thickness of a wire where nothing is said of what it takes: common practice, no source.
const usualWireMM = 0.5

// inspectSqueeze says what all wires at once do to a loaf with embeds.
func (s *Sheet) inspectSqueeze() {
	m, show := s.Plan.Mould, s.Plan.Show
	if s.Plan.Cut.By != CutGang || len(s.Embeds) == 0 {
		return
	}
	wire, n := s.Plan.Cut.KerfMM, len(s.Cut.CutsMM)
	if wire == 0 {
		wire = usualWireMM
	}
	if part := shape.GangSqueeze(n, wire, m.AlongMM()); part >= squeezed {
		s.warn(warning("embed-squeeze", "cut", fmt.Sprintf("%d wires of %s at once want %s of the loaf, %s of its length, first at the top, where the embeds stand", n,
			show.LenNear(wire), show.LenNear(shape.GangGrowth(n, wire)), show.Percent(part*100, 1)), "cut one by one from one end, the loaf on its side, or let it grow: no stops behind it"))
	}
}

// inspectCrowd says where there are more embeds than fit.
func (s *Sheet) inspectCrowd() {
	m := s.Plan.Mould
	whole := m.AreaMM2() * m.FillMM
	part := s.displaced() / whole
	for _, k := range s.Embeds {
		if len(k.Pieces) >= mostPieces {
			s.warn(warning("embed-crowd", embedPlace(k.Name), fmt.Sprintf("%s: more than %d pieces", k.Name, mostPieces-1), "set fewer of them"))
			return
		}
	}
	if part >= mostDisplaced-noise {
		s.warn(warning("embed-crowd", "mould", fmt.Sprintf("embeds would take %s of the loaf or more", s.Plan.Show.Percent(part*100, 0)), "take fewer or smaller ones"))
	}
}

// softensC is about where melt-and-pour soap begins to soften, °C (memory).
const softensC = 50

// warnMelts says where the loaf gets warm enough to soften a melt-and-pour embed.
func (t *timer) warnMelts() {
	s := t.sheet
	for _, k := range s.Embeds {
		if mid := s.Gel.MiddleC.Mid; k.Material == EmbedMelt && mid.Known && mid.V >= softensC {
			s.warn(warning("embed-melts", embedPlace(k.Name), fmt.Sprintf("%s: the loaf's middle comes to about %s, and melt-and-pour soap begins to soften near %s (memory)", k.Name, s.Plan.Show.Temp(mid.V), s.Plan.Show.Temp(softensC)),
				"keep the loaf cool, or take cold-process pieces"))
		}
	}
}
