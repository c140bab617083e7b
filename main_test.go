package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pourbench": main})
}

// home gives a script folders of its own.
func home(env *testscript.Env) error {
	env.Setenv("HOME", env.WorkDir)
	env.Setenv("XDG_CONFIG_HOME", env.WorkDir+"/config")
	env.Setenv("XDG_STATE_HOME", env.WorkDir+"/state")
	env.Setenv("XDG_DATA_HOME", env.WorkDir+"/data")
	if err := os.MkdirAll(env.WorkDir+"/state", 0o755); err != nil {
		return err
	}
	return os.MkdirAll(env.WorkDir+"/config/pourbench", 0o755)
}

func TestCommandsKeepTheirContract(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", Setup: home})
}
