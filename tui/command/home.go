package command

import (
	"os"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"
)

// folderName is the program's own folder in each of the maker's homes for settings, state and data.
const folderName = "pourbench"

// env is a variable of the environment; of several the last counts, as the operating system has it.
func (g *program) env(key string) string {
	value := ""
	for _, pair := range g.Environ {
		if v, ok := strings.CutPrefix(pair, key+"="); ok {
			value = v
		}
	}
	return value
}

// home is the folder an XDG variable names, or the system's own. A relative one is passed over, as their specification asks: pours
// would land wherever the program happened to be started.
func (g *program) home(key, system string) string {
	named := g.env(key)
	if named == "" {
		return system
	}
	if !filepath.IsAbs(named) {
		return system
	}
	return named
}

// configDir holds the maker's shelf. It is under ~/.config on macOS too, where terminal users look for it.
func (g *program) configDir() string {
	system := xdg.ConfigHome
	if xdg.Home != "" && os.PathSeparator == '/' {
		system = filepath.Join(xdg.Home, ".config")
	}
	return filepath.Join(g.home("XDG_CONFIG_HOME", system), folderName)
}

// stateDir holds recovery journals and the list of plans.
func (g *program) stateDir() string {
	return filepath.Join(g.home("XDG_STATE_HOME", xdg.StateHome), folderName)
}

// dataDir holds what the maker made: her pours, and what stands beside them.
func (g *program) dataDir() string {
	return filepath.Join(g.home("XDG_DATA_HOME", xdg.DataHome), folderName)
}

// bookDir holds the maker's pours.
func (g *program) bookDir() string { return filepath.Join(g.dataDir(), "pours") }
