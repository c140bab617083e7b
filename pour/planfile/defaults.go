package planfile

import "pourbench/pour"

// The figures a plan gets where its file says nothing: common practice, no source, but for the purities, which are
// 100 % because guessing low makes lye-heavy soap.
const (
	defaultStepG           = 0.1
	defaultShape           = pour.ShapeLoaf
	defaultMouldLoss       = 1.5
	defaultRoomC           = 21
	defaultTechnique       = "layers"
	defaultCutH            = 20
	defaultCureDays        = 28
	defaultSuperfat        = 5
	defaultConcentration   = 33
	defaultPurity          = 100
	defaultBatchC          = 35
	defaultSplitMin        = 2
	defaultFinalMoisture   = 10
	defaultHandMin         = 0.5 // to split, to stir in colour, to stir in scent: each jug
	defaultPourMin         = 1
	defaultChangeMin       = 0.1
	defaultIntoPotMin      = 0.5
	defaultTurnMin         = 0.25
	defaultPourOutMin      = 1.5
	defaultWireMin         = 1
	defaultCombMin         = 1
	defaultSpoonMin        = 3
	defaultLevelMin        = 0.25
	defaultPipeMin         = 2
	defaultBedMin          = 2
	defaultBaseSize        = pour.SizeMould
	defaultIcingSize       = pour.SizeBar
	defaultCarrier         = pour.CarrierExtra
	defaultKeep            = pour.BedBare
	defaultMass            = pour.MassGram
	defaultTemperatureUnit = pour.DegreesC
	defaultLengthUnit      = pour.LengthMM
)

// blankPlan is what a file that says nothing would mean.
func blankPlan() pour.Plan {
	return pour.Plan{
		Show: pour.Show{
			Mass: defaultMass, Temperature: defaultTemperatureUnit, Length: defaultLengthUnit,
			ScaleStepG: defaultStepG, LyeStepG: defaultStepG,
		},
		Mould: pour.Mould{Shape: defaultShape, LossPercent: defaultMouldLoss},
		Room:  pour.Room{TemperatureC: defaultRoomC},
		Swirl: pour.Swirl{Technique: defaultTechnique},
		Bed:   pour.Bed{Keep: defaultKeep, CutAfterH: defaultCutH, CureDays: defaultCureDays},
		Run: pour.RunPlan{
			SplitMin: defaultHandMin, StirMin: defaultHandMin, ScentMin: defaultHandMin,
			PourMin: defaultPourMin, ChangeMin: defaultChangeMin, IntoPotMin: defaultIntoPotMin, TurnMin: defaultTurnMin,
			PourOutMin: defaultPourOutMin, WireMin: defaultWireMin, CombMin: defaultCombMin, SpoonMin: defaultSpoonMin,
			LevelMin: defaultLevelMin, PipeMin: defaultPipeMin, BedMin: defaultBedMin,
		},
		Base: blankBatch(defaultBaseSize),
	}
}

func blankBatch(size string) pour.Batch {
	return pour.Batch{
		Size: size, SuperfatPercent: defaultSuperfat, LyeConcentrationPercent: defaultConcentration,
		NaOHPurityPercent: defaultPurity, KOHPurityPercent: defaultPurity,
		OilsC: defaultBatchC, LyeC: defaultBatchC, SplitAtMin: defaultSplitMin,
		FinalMoisturePercent: defaultFinalMoisture, Carrier: defaultCarrier,
	}
}
