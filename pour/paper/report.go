package paper

// Number is a figure in the JSON report at full precision; nil is written as null: it could not be worked out.
type Number *float64

// Report is every figure of a sheet under the names scripts rely on. The unit ends the name; percent is 0 to 100.
type Report struct {
	Plan        string            `json:"plan"`
	ScaleStepG  Number            `json:"scale_step_g"`
	LyeStepG    Number            `json:"lye_step_g"`
	LossPercent Number            `json:"loss_percent"`
	Base        BatchReport       `json:"base"`
	Icing       *IcingReport      `json:"icing"`
	Piping      *PipingReport     `json:"piping"`
	Run         []TaskReport      `json:"run"`
	CutRun      []TaskReport      `json:"cut_run"` // minutes from when the cut begins
	Neighbours  []NeighbourReport `json:"neighbours"`
	Bars        BarsReport        `json:"bars"`
	Cut         *CutReport        `json:"cut"` // null: no bar could be cut
	Embeds      []EmbedReport     `json:"embeds"`
	EmbedKinds  []EmbedKindReport `json:"embed_kinds"`
	Toppings    []ToppingReport   `json:"toppings"`
	Cure        *CureReport       `json:"cure"`            // null: it could not be worked out
	Cost        *CostReport       `json:"cost"`            // null: nothing has a price
	Label       *LabelReport      `json:"label,omitempty"` // absent: no label is asked for
	Warnings    []WarningReport   `json:"warnings"`
}

// BatchReport is every figure of one batch.
type BatchReport struct {
	OilsG                    Number        `json:"oils_g"`
	NaOHPureG                Number        `json:"naoh_pure_g"`
	KOHPureG                 Number        `json:"koh_pure_g"`
	NaOHPurityPercent        Number        `json:"naoh_purity_percent"`
	KOHPurityPercent         Number        `json:"koh_purity_percent"`
	NaOHWeighedG             Number        `json:"naoh_weighed_g"`
	KOHWeighedG              Number        `json:"koh_weighed_g"`
	StockLyeG                Number        `json:"stock_lye_g"`
	StockLyePercent          Number        `json:"stock_lye_percent"`
	WaterToAddG              Number        `json:"water_to_add_g"`
	ExtrasG                  Number        `json:"extras_g"`
	WaterInExtrasG           Number        `json:"water_in_extras_g"`
	LyeConcentrationPercent  Number        `json:"lye_concentration_percent"`
	LyeAsMixedPercent        Number        `json:"lye_as_mixed_percent"`
	BatterG                  Number        `json:"batter_g"`
	BatterML                 Number        `json:"batter_ml"`
	SuperfatPercent          Number        `json:"superfat_percent"`
	SuperfatAsWeighedPercent Number        `json:"superfat_as_weighed_percent"`
	SuperfatLowPercent       Number        `json:"superfat_low_percent"`
	SuperfatHighPercent      Number        `json:"superfat_high_percent"`
	LyeRiseK                 Number        `json:"lye_rise_k"`
	LyeInAtMin               Number        `json:"lye_in_at_min"`
	Oils                     []OilReport   `json:"oils"`
	Extras                   []ExtraReport `json:"extras"`
	Jugs                     []JugReport   `json:"jugs"`
}

// IcingReport is every figure of the icing: those of a batch, one unit of its shape and all that is made of it.
type IcingReport struct {
	BatchReport
	ShapeG Number `json:"shape_g"`
	MadeG  Number `json:"made_g"`
}

// PipingReport is how the icing is piped; the plan states its shape.
type PipingReport struct {
	Units         *int   `json:"units"`
	UnitML        Number `json:"unit_ml"`
	DensityGML    Number `json:"density_g_ml"`
	NetG          Number `json:"net_g"`
	NeedG         Number `json:"need_g"`
	LeftG         Number `json:"left_g"`
	RestG         Number `json:"rest_g"`
	Bags          *int   `json:"bags"`
	Fills         *int   `json:"fills"`
	WidthMM       Number `json:"across_mm"`
	HighMM        Number `json:"high_mm"`
	MeanMM        Number `json:"mean_mm"`
	GapMM         Number `json:"gap_mm"`
	LaneMM        Number `json:"lane_mm"`
	PeakMM        Number `json:"peak_needed_mm"`
	PipeMin       Number `json:"pipe_min"`
	WindowFromMin Number `json:"window_from_min"`
	WindowToMin   Number `json:"window_to_min"`
}

// OilReport is one oil; saponification values in mg KOH per g.
type OilReport struct {
	Name          string `json:"name"`
	G             Number `json:"g"`
	SapKOHMgG     Number `json:"sap_koh_mg_g"`
	SapLowKOHMgG  Number `json:"sap_low_koh_mg_g"`
	SapHighKOHMgG Number `json:"sap_high_koh_mg_g"`
}

// ExtraReport is one extra.
type ExtraReport struct {
	Name         string `json:"name"`
	G            Number `json:"g"`
	WaterPercent Number `json:"water_percent"`
}

// JugReport is one jug.
type JugReport struct {
	Name               string            `json:"name"`
	SharePercent       Number            `json:"share_percent"`
	BatterG            Number            `json:"batter_g"`
	BatterWeighG       Number            `json:"batter_weigh_g"`
	TotalG             Number            `json:"total_g"`
	SuperfatPercent    Number            `json:"superfat_percent"`
	SuperfatLowPercent Number            `json:"superfat_low_percent"`
	Colourants         []ColourantReport `json:"colourants"`
	Scents             []ScentReport     `json:"scents"`
	ScentLoadPercent   Number            `json:"scent_load_percent"`
	StageMin           StagesReport      `json:"stage_min"`
	PourAtMin          Number            `json:"pour_at_min"`
	LateChancePercent  Number            `json:"late_chance_percent"`
}

// StagesReport holds low, middle and high minutes to each stage, from the lye-in of the jug's own batch.
type StagesReport struct {
	Emulsion [3]Number `json:"emulsion"`
	Light    [3]Number `json:"light"`
	Medium   [3]Number `json:"medium"`
	Thick    [3]Number `json:"thick"`
	Stiff    [3]Number `json:"stiff"`
}

// ColourantReport is one colourant in one jug.
type ColourantReport struct {
	Name     string `json:"name"`
	PigmentG Number `json:"pigment_g"`
	CarrierG Number `json:"carrier_g"`
}

// ScentReport is one scent in one jug.
type ScentReport struct {
	Name string `json:"name"`
	G    Number `json:"g"`
}

// TaskReport is one task on the run clock, min. Jug is null for what is done to the whole batch.
type TaskReport struct {
	Task      string  `json:"task"`
	Batch     *string `json:"batch"` // null where it is done to the loaf
	Jug       *string `json:"jug"`
	Item      *string `json:"item"`  // which embed, topping, cut or piece; null: none
	Part      Number  `json:"part"`  // of the jug or, poured out, of the pot: above 0 to 1; null where the task uses none
	Round     Number  `json:"round"` // from 1; null where it is not done in rounds
	StartMin  Number  `json:"start_min"`
	LengthMin Number  `json:"length_min"`
}

// NeighbourReport is two jugs of the base that touch on the faces: their part of all boundary, the parts of all pairs summing to 100,
// and how muddy they go where they blend, 0 clean to 1.
type NeighbourReport struct {
	A              string `json:"a"`
	B              string `json:"b"`
	ContactPercent Number `json:"contact_percent"`
	Mud            Number `json:"mud"`
}

// BarsReport is what comes off the cutter.
type BarsReport struct {
	BarCount             *int   `json:"bar_count"`
	ThicknessMM          Number `json:"thickness_mm"`
	CutG                 Number `json:"cut_g"`
	CuredG               Number `json:"cured_g"`
	FinalMoisturePercent Number `json:"final_moisture_percent"`
	IcingPerBarG         Number `json:"icing_per_bar_g"`
	StandsMM             Number `json:"stands_mm"`
	OverRimMM            Number `json:"over_rim_mm"`
}

// WarningReport is one warning.
type WarningReport struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Where    string `json:"where"`
	Text     string `json:"text"`
}
