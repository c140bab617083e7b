package pour

import "pourbench/pour/label"

// Label is what the plan says of its label. What is empty or 0 is as the market or the maker has it.
type Label struct {
	Market       string  // id of a market on the shelf; empty: no label is asked for
	List         string  // label.AsAdded or label.AsSalts; empty: as salts
	Names        string  // NamesINCI or NamesEnglish; empty: NamesINCI
	System       string  // SystemMinimum or SystemAverage; empty: SystemMinimum
	Report       string  // id of the assessor's report it is held against; empty: none
	Title        string  // what the bar is called on its label; empty: the plan's name
	Says         string  // her own words on it, looked through for claims
	Cautions     string  // her own, beside those the design asks for
	LikeFood     string  // one of the LikeFood… words; empty: LikeFoodJudged
	BestBeforeMo float64 // months after it was made; 0: none
	OpenMo       float64 // months after opening; 0: none
	WideMM       float64 // of the label; 0: 80
	HighMM       float64 // 0: 55
	LetterMM     float64 // height of its letters; 0: as large as fits, not under the market's least
	ScaleErrorG  float64 // by which the scale may be wrong
}

// The words of a label.
const (
	NamesINCI      = "inci"
	NamesEnglish   = "english"
	SystemMinimum  = "minimum" // no bar is lighter than its label
	SystemAverage  = "average" // the bars of a batch are not lighter than it on average, and few by much
	LikeFoodJudged = "judged"  // by the design
	LikeFoodYes    = "yes"
	LikeFoodNo     = "no"
)

func labelFields(l *Label) []Field {
	return []Field{
		{Key: "market", Label: "market", Need: Quiet, Takes: TakesMarket, At: &l.Market, Means: "where the bars are sold: the id of a market on the shelf"},
		{Key: "list", Label: "list", Need: Quiet, Takes: TakesWord, Words: string(label.AsSalts) + " " + string(label.AsAdded), At: &l.List, Means: "ingredients as what alkali made of them, or as they were added; empty: as_salts"},
		{Key: "names", Label: "names", Need: Quiet, Takes: TakesWord, Words: NamesINCI + " " + NamesEnglish, At: &l.Names, Means: "of ingredients, where the market allows both; empty: inci"},
		{Key: "system", Label: "weight by", Need: Quiet, Takes: TakesWord, Words: SystemMinimum + " " + SystemAverage, At: &l.System, Means: "minimum: no bar is lighter than its label; average: the batch is not, on average, and few bars by much"},
		{Key: "report", Label: "report", Need: Quiet, High: 40, At: &l.Report, Means: "the assessor's report the design is held against, by its id in your label file"},
		{Key: "title", Label: "title", Need: Quiet, High: 60, At: &l.Title, Means: "what the bar is called on its label; empty: as the plan"},
		{Key: "says", Label: "it says", Need: Quiet, Takes: TakesProse, High: 500, At: &l.Says, Means: "your own words on the label, looked through for claims"},
		{Key: "cautions", Label: "cautions", Need: Quiet, Takes: TakesProse, High: 500, At: &l.Cautions, Means: "your own cautions on it"},
		{Key: "like_food", Label: "looks like food", Need: Quiet, Takes: TakesWord, Words: LikeFoodJudged + " " + LikeFoodYes + " " + LikeFoodNo, At: &l.LikeFood, Means: "whether it could be taken for food; judged: from icing, name, scents, extras, toppings and embeds"},
		{Key: "best_before_months", Label: "best before", Need: Quiet, High: 120, Step: 1, At: &l.BestBeforeMo, Means: "months after it was made; 0: none is printed"},
		{Key: "open_months", Label: "after opening", Need: Quiet, High: 60, Step: 1, At: &l.OpenMo, Means: "months it is good for once opened; 0: none is printed"},
		{Key: "wide_mm", Label: "label wide", Need: Quiet, Unit: UnitMM, High: 400, Step: 1, At: &l.WideMM, Means: "0: 80"},
		{Key: "high_mm", Label: "label high", Need: Quiet, Unit: UnitMM, High: 400, Step: 1, At: &l.HighMM, Means: "0: 55"},
		{Key: "letter_mm", Label: "letters", Need: Quiet, Unit: UnitMM, High: 20, Step: 0.1, At: &l.LetterMM, Means: "height of a small x; 0: as large as fits"},
		{Key: "scale_error_g", Label: "scale may err by", Need: Quiet, Unit: UnitGram, High: 50, Step: 0.1, At: &l.ScaleErrorG, Means: "taken off what the bars weigh before the label is chosen"},
	}
}
