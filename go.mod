module pourbench

go 1.26.0

require (
	charm.land/bubbles/v2 v2.2.1
	charm.land/bubbletea/v2 v2.1.1
	charm.land/lipgloss/v2 v2.0.6
	codeberg.org/go-pdf/fpdf v0.12.0
	github.com/BurntSushi/toml v1.6.0
	github.com/adrg/xdg v0.5.3
	github.com/agnivade/levenshtein v1.2.2
	github.com/arran4/golang-ical v0.3.4
	github.com/charmbracelet/colorprofile v0.4.3
	github.com/charmbracelet/ultraviolet v0.0.0-20261008173134-6b8d4baf91b4
	github.com/charmbracelet/x/ansi v0.11.9
	github.com/charmbracelet/x/exp/golden v0.1.0
	github.com/charmbracelet/x/term v0.2.2
	github.com/clipperhouse/displaywidth v0.11.0
	github.com/emersion/go-ical v0.0.0-20250329121855-f41e73efc392
	github.com/google/go-cmp v0.7.0
	github.com/google/uuid v1.6.0
	github.com/lucasb-eyer/go-colorful v1.4.1
	github.com/mattn/go-isatty v0.0.24
	github.com/mattn/go-runewidth v0.0.30
	github.com/rogpeppe/go-internal v1.16.0
	github.com/shopspring/decimal v1.6.0
	github.com/spf13/cobra v1.10.2
	golang.org/x/image v0.40.0
	golang.org/x/sys v0.49.0
	gonum.org/v1/plot v0.17.0
	pgregory.net/rapid v1.3.0
)

require (
	codeberg.org/go-fonts/liberation v0.5.0 // indirect
	codeberg.org/go-latex/latex v0.2.0 // indirect
	git.sr.ht/~sbinet/gg v0.7.0 // indirect
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b // indirect
	github.com/atotto/clipboard v0.1.4 // indirect
	github.com/aymanbagabas/go-udiff v0.4.1 // indirect
	github.com/charmbracelet/x/termios v0.1.1 // indirect
	github.com/charmbracelet/x/windows v0.2.2 // indirect
	github.com/clipperhouse/uax29/v2 v2.7.0 // indirect
	github.com/golang/freetype v0.0.0-20170609003504-e2365dfdc4a0 // indirect
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	github.com/muesli/cancelreader v0.2.2 // indirect
	github.com/rivo/uniseg v0.4.7 // indirect
	github.com/spf13/pflag v1.0.9 // indirect
	github.com/teambition/rrule-go v1.8.2 // indirect
	github.com/xo/terminfo v1.0.0 // indirect
	golang.org/x/sync v0.24.0 // indirect
	golang.org/x/text v0.37.0 // indirect
	golang.org/x/tools v0.52.0 // indirect
)
