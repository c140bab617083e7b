package planfile

import (
	"time"

	"pourbench/pour"
)

// need says what a key that is not in the file means, and whether it is written when it says nothing new.
type need int

const (
	required need = iota // must stand in the file
	standing             // has a default that is not zero; always written, so that a later default changes no old plan
	quiet                // its default is zero or empty; left out while it is
)

// field ties one key of the file to one place in a plan. Reading and writing both go by these lists, so a key cannot be read and then forgotten.
type field struct {
	key  string
	need need
	at   any // *float64, *int, *int64, *bool, *string, *prose, *[]string, *time.Time, measured or list
}

// prose is text of many lines.
type prose string

// measured is a number that counts as measured when it stands in the file.
type measured struct {
	v     *float64
	known *bool
}

// list is an array of tables.
type list struct {
	inline bool // written as [ { … } ] among the keys rather than as [[ … ]] after them
	size   func() int
	grow   func(n int)
	item   func(i int) []field
	blank  func() []field // of an item that belongs to no plan: for the keys alone
}

func listOf[T any](s *[]T, fields func(*T) []field) list {
	return list{
		size: func() int { return len(*s) },
		grow: func(n int) {
			if n > 0 {
				*s = make([]T, n)
			}
		},
		item:  func(i int) []field { return fields(&(*s)[i]) },
		blank: func() []field { return fields(new(T)) },
	}
}

// section is a [table] at the top of the file.
type section struct {
	key    string
	fields []field
}

func topFields(p *pour.Plan) []field {
	return []field{
		{"name", required, &p.Name},
		{"notes", quiet, (*prose)(&p.Notes)},
		{"pour_at", quiet, &p.PourAt},
		{"trial", quiet, &p.Trial},
	}
}

// sections lists the tables of a plan in the order of the file.
func sections(p *pour.Plan) []section {
	out := []section{
		{"show", []field{
			{"mass", standing, &p.Show.Mass},
			{"temperature", standing, &p.Show.Temperature},
			{"length", standing, &p.Show.Length},
			{"scale_step_g", standing, &p.Show.ScaleStepG},
			{"lye_step_g", standing, &p.Show.LyeStepG},
		}},
		{"mould", mouldFields(&p.Mould)},
		{"room", []field{{"temperature_c", standing, &p.Room.TemperatureC}}},
		{"swirl", []field{
			{"technique", standing, &p.Swirl.Technique},
			{"seed", quiet, &p.Swirl.Seed},
			{"passes", quiet, &p.Swirl.Passes},
			{"turns", quiet, &p.Swirl.Turns},
			{"height_mm", quiet, &p.Swirl.HeightMM},
			{"first", quiet, &p.Swirl.First},
			{"last", quiet, &p.Swirl.Last},
			{"pot_between", quiet, &p.Swirl.PotBetween},
		}},
		{"bed", []field{
			{"keep", standing, &p.Bed.Keep},
			{"cut_after_h", standing, &p.Bed.CutAfterH},
			{"cure_days", standing, &p.Bed.CureDays},
		}},
		{"run", runFields(&p.Run)},
		{string(pour.Base), batchFields(&p.Base)},
	}
	if p.Icing != nil {
		out = append(out, section{string(pour.Icing), append([]field{{"bags", quiet, &p.Icing.Bags}}, batchFields(p.Icing)...)})
	}
	return out
}

func mouldFields(m *pour.Mould) []field {
	return []field{
		{"shape", standing, &m.Shape},
		{"length_mm", required, &m.LengthMM},
		{"width_mm", required, &m.WidthMM},
		{"height_mm", required, &m.HeightMM},
		{"fill_mm", required, &m.FillMM},
		{"bar_mm", required, &m.BarMM},
		{"bar_width_mm", quiet, &m.BarWidthMM},
		{"loss_percent", standing, &m.LossPercent},
	}
}

func runFields(r *pour.RunPlan) []field {
	return []field{
		{"cool_lye_min", quiet, &r.CoolLyeMin},
		{"split_min", standing, &r.SplitMin},
		{"stir_min", standing, &r.StirMin},
		{"scent_min", standing, &r.ScentMin},
		{"pour_min", standing, &r.PourMin},
		{"change_min", standing, &r.ChangeMin},
		{"into_pot_min", standing, &r.IntoPotMin},
		{"turn_min", standing, &r.TurnMin},
		{"pour_out_min", standing, &r.PourOutMin},
		{"wire_min", standing, &r.WireMin},
		{"comb_min", standing, &r.CombMin},
		{"spoon_min", standing, &r.SpoonMin},
		{"level_min", standing, &r.LevelMin},
		{"pipe_min", standing, &r.PipeMin},
		{"bed_min", standing, &r.BedMin},
		{"order", quiet, &r.Order},
	}
}

func batchFields(b *pour.Batch) []field {
	return []field{
		{"size", standing, &b.Size},
		{"oils_g", quiet, &b.OilsG},
		{"per_bar_g", quiet, &b.PerBarG},
		{"layer_mm", quiet, &b.LayerMM},
		{"loss_percent", quiet, &b.LossPercent},
		{"superfat_percent", standing, &b.SuperfatPercent},
		{"lye_concentration_percent", standing, &b.LyeConcentrationPercent},
		{"koh_share_percent", quiet, &b.KOHSharePercent},
		{"koh_share_by", quiet, &b.KOHShareBy},
		{"naoh_purity_percent", standing, &b.NaOHPurityPercent},
		{"koh_purity_percent", standing, &b.KOHPurityPercent},
		{"stock_lye_percent", quiet, &b.StockLyePercent},
		{"oils_c", standing, &b.OilsC},
		{"lye_c", standing, &b.LyeC},
		{"batter_c", quiet, measured{&b.BatterC, &b.BatterMeasured}},
		{"blend", quiet, burstList(&b.Blend)},
		{"split_at_min", standing, &b.SplitAtMin},
		{"start_at_min", quiet, &b.StartAtMin},
		{"final_moisture_percent", standing, &b.FinalMoisturePercent},
		{"carrier", standing, &b.Carrier},
		{"carrier_oil", quiet, &b.CarrierOil},
		{"ready_blend", quiet, &b.ReadyBlend},
		{"oil", quiet, listOf(&b.Oils, oilFields)},
		{"extra", quiet, listOf(&b.Extras, extraFields)},
		{"jug", quiet, listOf(&b.Jugs, jugFields)},
		{"scent", quiet, listOf(&b.Scents, scentFields)},
	}
}

func burstList(s *[]pour.Burst) list {
	l := listOf(s, func(b *pour.Burst) []field {
		return []field{{"at_min", required, &b.AtMin}, {"s", required, &b.S}}
	})
	l.inline = true
	return l
}

func oilFields(o *pour.OilPart) []field {
	return []field{{"oil", required, &o.Oil}, {"percent", required, &o.Percent}}
}

func extraFields(x *pour.ExtraPart) []field {
	return []field{
		{"extra", required, &x.Extra},
		{"percent_of_oils", required, &x.PercentOfOils},
		{"in", quiet, &x.In},
	}
}

func jugFields(j *pour.Jug) []field {
	return []field{
		{"name", required, &j.Name},
		{"share_percent", required, &j.SharePercent},
		{"held", quiet, &j.Held},
		{"capacity_ml", quiet, &j.CapacityML},
		{"batter_colour", quiet, &j.BatterColour},
		{"colourant", quiet, listOf(&j.Colourants, doseFields)},
	}
}

func doseFields(d *pour.Dose) []field {
	return []field{
		{"colourant", required, &d.Colourant},
		{"dose_percent", required, &d.DosePercent},
		{"carrier_parts", quiet, &d.CarrierParts},
		{"carrier", quiet, &d.Carrier},
	}
}

func scentFields(s *pour.ScentPart) []field {
	return []field{
		{"scent", required, &s.Scent},
		{"percent_of_oils", required, &s.PercentOfOils},
		{"into", quiet, &s.Into},
		{"at_min", quiet, &s.AtMin},
	}
}

// zero reports whether a place in a plan holds nothing worth writing.
func zero(at any) bool {
	switch at := at.(type) {
	case *float64:
		return *at == 0
	case *int:
		return *at == 0
	case *int64:
		return *at == 0
	case *bool:
		return !*at
	case *string:
		return *at == ""
	case *prose:
		return *at == ""
	case *[]string:
		return len(*at) == 0
	case *time.Time:
		return at.IsZero()
	case measured:
		return !*at.known
	case list:
		return at.size() == 0
	}
	return true
}
