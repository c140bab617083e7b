package label

// Net is the weight a label may declare.
type Net struct {
	System  string
	G       float64 // whole grams; 0: not known
	Ounces  string  // beside the grams where the market wants it: "3.4 oz"
	Text    string  // as it is printed
	From    string  // what it rests on: "forecast", "weighed"
	Bars    int     // how many were weighed
	Average float64 // g, and the lightest of them
	Least   float64
	Why     string // why there is none, or why it fails; empty: it holds
}

// State is how a line of a market's list stands.
type State string

// The states.
const (
	Ticked  State = "ticked"  // the design answers it, or the maker ticked it
	Open    State = "open"    // the design says it is not met, or it is to be done
	Unknown State = "unknown" // nothing here can tell
)

// Check is a line of a market's list for one design or batch.
type Check struct {
	Row   Row
	State State
	Why   string // what it rests on
	Stale bool   // its row was looked up over twelve months ago
}
