package pour

// batchFields are the rows of a batch. The defaults are common practice, no source, but for the purities, which are 100 %
// because guessing low makes lye-heavy soap.
func batchFields(n BatchName, b *Batch) []Field {
	sizes := SizeMould + " " + SizeOils
	if n == Icing {
		sizes = SizeBar + " " + SizeLayer + " " + SizeOils + " " + SizeShape
	}
	out := []Field{
		{Key: "bags", Label: "jugs in bags", Need: Quiet, Takes: TakesWord, Words: BagEach + " " + BagOne, At: &b.Bags, Means: "a bag for each jug, or the jugs side by side in one: striped"},
		{Key: "size", Label: "sized by", Need: Standing, Takes: TakesWord, Words: sizes, At: &b.Size, Means: "what says how much is mixed: the mould's fill_mm, or per_bar_g, layer_mm, oils_g here, or the shape in [piping]"},
		{Key: "oils_g", Label: "oils", Need: Quiet, Unit: UnitGram, High: 100000, Step: 10, At: &b.OilsG, Means: "all oils, where size is oils"},
		{Key: "per_bar_g", Label: "icing on each bar", Need: Quiet, Unit: UnitGram, High: 5000, Step: 1, At: &b.PerBarG, Means: "icing on each bar, where size is bar"},
		{Key: "layer_mm", Label: "mean icing height", Need: Quiet, Unit: UnitMM, High: 500, Step: 1, At: &b.LayerMM, Means: "mean height of the icing over the bar, where size is layer"},
		{Key: "loss_percent", Label: "stays in the bag", Need: Quiet, Unit: UnitPercent, High: 50, Step: 0.5, At: &b.LossPercent, Means: "icing: stays in the bag and bowl; the base's loss is the mould's"},
		{Key: "superfat_percent", Label: "superfat", Need: Standing, Unit: UnitPercent, Default: 5, Low: -5, High: 40, Step: 0.5, At: &b.SuperfatPercent, Means: "lye discount: this much less alkali than all oils ask for"},
		{Key: "lye_concentration_percent", Label: "lye concentration", Need: Standing, Unit: UnitPercent, Default: 33, Low: 10, High: 60, Step: 0.5, At: &b.LyeConcentrationPercent, Means: "alkali as weighed of alkali and all its water"},
		{Key: "koh_share_percent", Label: b.shareLabel(), Need: Quiet, Unit: UnitPercent, High: 100, Step: 1, At: &b.KOHSharePercent, Means: "KOH in the pure alkali; the rest is NaOH"},
		{Key: "koh_share_by", Label: "KOH share by", Need: Quiet, Takes: TakesWord, Words: ShareMoles + " " + ShareMass, At: &b.KOHShareBy, Means: "what koh_share_percent is a share of"},
		{Key: "naoh_purity_percent", Label: "NaOH purity", Need: Standing, Unit: UnitPercent, Default: 100, Low: 50, High: 100, Step: 0.5, At: &b.NaOHPurityPercent, Means: "as its label says"},
		{Key: "koh_purity_percent", Label: "KOH purity", Need: Standing, Unit: UnitPercent, Default: 100, Low: 50, High: 100, Step: 0.5, At: &b.KOHPurityPercent, Means: "as its label says"},
		{Key: "stock_lye_percent", Label: "stock lye (0: dry)", Need: Quiet, Unit: UnitPercent, High: 52, Step: 0.5, At: &b.StockLyePercent, Means: "pure NaOH in a ready solution, 10 to 52; 0: dry alkali is weighed"},
		{Key: "oils_c", Label: "oils at", Need: Standing, Unit: UnitCelsius, Default: 35, High: 120, Step: 1, At: &b.OilsC, Means: "planned temperature of the melted oils"},
		{Key: "lye_c", Label: "lye at", Need: Standing, Unit: UnitCelsius, Default: 35, High: 120, Step: 1, At: &b.LyeC, Means: "planned temperature of the lye"},
		{Key: "batter_c", Label: "batter measured", Need: Quiet, Unit: UnitCelsius, High: 120, Step: 1, At: &b.BatterC, Known: &b.BatterMeasured, Means: "batter as measured; without it the temperature is worked out"},
		{Key: "blend", Label: "blend", Need: Quiet, High: mostBursts, Inline: true, At: &b.Blend, Means: "runs of the stick blender; none: stirred by hand"},
		{Key: "split_at_min", Label: "split at", Need: Standing, Unit: UnitMinute, Default: 2, High: 600, Step: 0.25, At: &b.SplitAtMin, Means: "after this batch's lye-in"},
		{Key: "start_at_min", Label: "lye meets oils at", Need: Quiet, Unit: UnitMinute, Low: -600, High: 1440, Step: 1, At: &b.StartAtMin, Means: "icing: its lye-in on the run clock; the base starts at 0"},
		{Key: "final_moisture_percent", Label: "moisture after cure", Need: Standing, Unit: UnitPercent, Default: 10, High: 30, Step: 0.5, At: &b.FinalMoisturePercent, Means: "water left in the cured bar"},
		{Key: "carrier", Label: "carrier oil is", Need: Standing, Takes: TakesWord, Words: CarrierExtra + " " + CarrierBatch, At: &b.Carrier, Means: "oil that wets colourants comes on top, or is taken out of the batch before mixing"},
		{Key: "carrier_oil", Label: "carrier oil", Need: Quiet, Takes: TakesOil, At: &b.CarrierOil, Means: "oil for oil-borne colourants; none: the blend's largest"},
		{Key: "ready_blend", Label: "ready-mixed blend", Need: Quiet, At: &b.ReadyBlend, Means: "name of a ready-mixed oil blend, weighed at once; none: oil by oil"},
		{Key: "oil", Label: "oils", Need: Quiet, High: maxParts, At: &b.Oils, Means: "the blend; its percentages sum to 100"},
		{Key: "extra", Label: "extras", Need: Quiet, High: maxParts, At: &b.Extras, Means: "goes into the whole batch before the split"},
		{Key: "jug", Label: "jugs", Need: Quiet, High: maxParts, At: &b.Jugs, Means: "coloured portions, the first is the pot; their shares sum to 100"},
		{Key: "scent", Label: "scents", Need: Quiet, High: maxParts, At: &b.Scents, Means: "fragrance and essential oils, each with its jugs"},
	}
	if n == Base {
		return out[1:] // the base is in no bag
	}
	return out
}

// shareLabel says what the KOH share is a share of.
func (b *Batch) shareLabel() string {
	if b.KOHShareBy == ShareMass {
		return "KOH share (pure mass)"
	}
	return "KOH share (moles)"
}

// Fields are the rows of the list, pointing into the item.
func (b *Burst) Fields() []Field {
	return []Field{
		{Key: "at_min", Label: "at", Need: Required, Unit: UnitMinute, High: 600, Step: 0.5, At: &b.AtMin, Means: "after this batch's lye-in"},
		{Key: "s", Label: "for", Need: Required, Unit: UnitSecond, High: 3600, Step: 5, At: &b.S, Means: "length of the burst"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (o *OilPart) Fields() []Field {
	return []Field{
		{Key: "oil", Label: "oil", Need: Required, Takes: TakesOil, At: &o.Oil, Means: "what it is"},
		{Key: "percent", Label: "part", Need: Required, Unit: UnitPercent, High: 100, Step: 1, At: &o.Percent, Means: "of all oils by mass"},
		{Key: "held", Label: "held", Need: Quiet, At: &o.Held, Means: "keeps its part when another changes; with one held, the parts may sum to another figure than 100 while the blend is not finished"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (x *ExtraPart) Fields() []Field {
	return []Field{
		{Key: "extra", Label: "extra", Need: Required, Takes: TakesExtra, At: &x.Extra, Means: "what it is"},
		{Key: "percent_of_oils", Label: "part", Need: Required, Unit: UnitPercent, High: 50, Step: 0.1, At: &x.PercentOfOils, Means: "of the batch's oils by mass"},
		{Key: "in", Label: "goes into", Need: Quiet, Takes: TakesWord, Words: InOils + " " + InLye + " " + InWater, At: &x.In, Means: "where it goes in, lye_water as the lye's own water; left out: where the shelf says"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (j *Jug) Fields() []Field {
	return []Field{
		{Key: "name", Label: "name", Need: Required, Takes: TakesName, High: 24, At: &j.Name, Means: "what the jug is called"},
		{Key: "share_percent", Label: "share", Need: Required, Unit: UnitPercent, High: 100, Step: 1, At: &j.SharePercent, Means: "of the batter by mass"},
		{Key: "held", Label: "held", Need: Quiet, At: &j.Held, Means: "keeps its share when another changes"},
		{Key: "capacity_ml", Label: "size", Need: Quiet, Unit: UnitML, High: 100000, Step: 50, At: &j.CapacityML, Means: "what the vessel holds; 0: not stated"},
		{Key: "batter_colour", Label: "colour", Need: Quiet, Takes: TakesColour, At: &j.BatterColour, Means: "colour of the finished batter; left out: estimated"},
		{Key: "colourant", Label: "colourants", Need: Quiet, High: maxParts, At: &j.Colourants, Means: "what colours the jug"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (d *Dose) Fields() []Field {
	return []Field{
		{Key: "colourant", Label: "colourant", Need: Required, Takes: TakesColourant, At: &d.Colourant, Means: "what it is"},
		{Key: "dose_percent", Label: "dose", Need: Required, Unit: UnitPercent, High: 20, Step: 0.05, At: &d.DosePercent, Means: "of the jug's batter by mass"},
		{Key: "carrier_parts", Label: "carrier", Need: Quiet, Unit: UnitParts, High: 20, Step: 0.5, At: &d.CarrierParts, Means: "grams of carrier for a gram of pigment; 0: as the shelf says"},
		{Key: "carrier", Label: "carrier", Need: Quiet, Takes: TakesWord, Words: CarryOil + " " + CarryWater + " " + CarryGlycerin + " " + CarryNone, At: &d.Carrier, Means: "what wets it; left out: as the colourant disperses"},
	}
}

// Fields are the rows of the list, pointing into the item.
func (s *ScentPart) Fields() []Field {
	return []Field{
		{Key: "scent", Label: "scent", Need: Required, Takes: TakesScent, At: &s.Scent, Means: "what it is"},
		{Key: "percent_of_oils", Label: "load", Need: Required, Unit: UnitPercent, High: 20, Step: 0.1, At: &s.PercentOfOils, Means: "of the batch's oils by mass, as makers say it"},
		{Key: "into", Label: "into", Need: Quiet, Takes: TakesJug, At: &s.Into, Means: "jugs it goes to; left out: every jug"},
		{Key: "at_min", Label: "at", Need: Quiet, Unit: UnitMinute, High: 600, Step: 0.5, At: &s.AtMin, Means: "earliest minute after this batch's lye-in"},
	}
}
