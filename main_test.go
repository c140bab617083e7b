package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pourbench": main})
}

func TestCommandsKeepTheirContract(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(env *testscript.Env) error {
			env.Setenv("HOME", env.WorkDir)
			env.Setenv("XDG_CONFIG_HOME", env.WorkDir+"/config")
			env.Setenv("XDG_STATE_HOME", env.WorkDir+"/state")
			return os.MkdirAll(env.WorkDir+"/config/pourbench", 0o755)
		},
	})
}
