package command

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"pourbench/pour/disk"
	"pourbench/tui/keys"
)

// keysCommand prints the keys that are bound, and helps to bind others.
func (g *program) keysCommand() *cobra.Command {
	file, check := false, false
	cmd := &cobra.Command{
		Use: "keys", Short: "Print every key; --file prints a file to bind others, --check looks through yours", Args: cobra.NoArgs,
		Long: `Print every key. Yours are in it, from keys.toml in your folder of settings: begin it with

  pourbench keys --file > ` + filepath.Join("~", ".config", folderName, keys.FileName) + `

A file with faults stops nothing: the built-in keys stay, and the bench says so. --check tells every
fault with its line and how to mend it; exit 0 none, 2 some.`,
		RunE: func(*cobra.Command, []string) error {
			switch {
			case check:
				return g.checkKeys()
			case file:
				return g.print(keys.BuiltIn().Sample())
			}
			return g.print(g.bound().Markdown())
		},
	}
	cmd.Flags().BoolVar(&file, "file", false, "print a file of keys to begin with, in which nothing is changed yet")
	cmd.Flags().BoolVar(&check, "check", false, "look through your file of keys")
	cmd.MarkFlagsMutuallyExclusive("file", "check")
	return cmd
}

// keysPath is the maker's own file of keys.
func (g *program) keysPath() string { return filepath.Join(g.configDir(), keys.FileName) }

// keys is the keys that are bound: the maker's own, or the built-in ones where she has none or they have faults, which are told.
func (g *program) keys() (*keys.Map, error) {
	path := g.keysPath()
	if _, err := os.Lstat(path); err != nil {
		return keys.BuiltIn(), nil //nolint:nilerr // no keys of her own
	}
	f, _, err := disk.Given(path)
	if err != nil {
		return keys.BuiltIn(), fmt.Errorf("open your file of keys %s: %w", path, disk.Reason(err))
	}
	defer func() { _ = f.Close() }() // only read
	m, err := keys.Read(path, f)
	if err != nil {
		return keys.BuiltIn(), err
	}
	return m, nil
}

// bound is the keys that are bound, for what is printed; faults are told beside it.
func (g *program) bound() *keys.Map {
	m, err := g.keys()
	if err != nil {
		g.say("your file of keys has faults, the built-in keys stay:\n%v", err)
	}
	return m
}

// checkKeys says whether the maker's file of keys can be used.
func (g *program) checkKeys() error {
	path := g.keysPath()
	if _, err := os.Lstat(path); err != nil {
		return g.print("You have no keys of your own: there is no " + path + ".\n")
	}
	if _, err := g.keys(); err != nil {
		return err
	}
	return g.print("Every key in " + path + " can be bound.\n")
}
