package presets_test

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// laid lays a maker's file over the shelf, which must take it.
func laid(t *testing.T, text string) pour.Shelf {
	t.Helper()
	s, err := overlay(t, text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

const walnut = "[[oil]]\nid = \"walnut\"\nname = \"walnut oil\"\nsap_koh_mg_g = 191\ndensity_g_ml = 0.92\n"

func TestFreeAcidNotStatedIsUnknown(t *testing.T) {
	for _, c := range []struct {
		what, in string
		want     pour.Figure
	}{
		{"not stated", "", pour.Figure{}},
		{"none", "free_acid_percent = 0\n", pour.Know(0)},
		{"stated", "free_acid_percent = 1.5\n", pour.Know(1.5)},
		{"a free acid", "kind = \"free acid\"\n", pour.Know(100)},
		{"a free acid that says less", "kind = \"free acid\"\nfree_acid_percent = 30\n", pour.Know(30)},
	} {
		o, _ := laid(t, walnut+c.in).Oil("walnut")
		if o.FreeAcidPercent != c.want {
			t.Errorf("%s: %+v, want %+v", c.what, o.FreeAcidPercent, c.want)
		}
		if (o.FreeAcidSource.Text != "") != c.want.Known {
			t.Errorf("%s: source %+v", c.what, o.FreeAcidSource)
		}
	}
}

func TestFreeAcidStatedByAMakerIsTheMakersOwn(t *testing.T) {
	s := laid(t, walnut+"free_acid_percent = 0.4\n")
	if o, _ := s.Oil("walnut"); o.FreeAcidSource.Confidence != "own" {
		t.Errorf("source %+v, want the maker's own", o.FreeAcidSource)
	}
	s = laid(t, walnut+"free_acid_percent = 0.4\nfree_acid_source = { text = \"certificate of lot 3\", confidence = \"read\" }\n")
	if o, _ := s.Oil("walnut"); o.FreeAcidSource.Text != "certificate of lot 3" {
		t.Errorf("source %+v, want the certificate", o.FreeAcidSource)
	}
}

func TestAnAcidTurnedIntoAFatNoLongerIsAllAcid(t *testing.T) {
	s := laid(t, "[[oil]]\nid = \"stearic-acid\"\nkind = \"triglyceride\"\n")
	if o, _ := s.Oil("stearic-acid"); o.FreeAcidPercent.Known || o.FreeAcidSource.Text != "" {
		t.Errorf("%+v from %+v, want unknown", o.FreeAcidPercent, o.FreeAcidSource)
	}
}

func TestExtrasSayTheirFatAndTheDoseOfTheirClock(t *testing.T) {
	const whey = "[[extra]]\nid = \"whey\"\nname = \"whey\"\ndose_low_percent = 2\ndose_high_percent = 8\n"
	x, _ := laid(t, whey+"fat_percent = 3.5\nfat_sap_koh_mg_g = 230\nclock_at_percent = 7\n").Extra("whey")
	if x.FatPercent != 3.5 || x.FatSapKOHMgG != 230 || x.ClockAtPercent != 7 || x.ClockDosePercent() != 7 {
		t.Errorf("whey = %+v", x)
	}
	x, _ = laid(t, whey).Extra("whey")
	if x.FatPercent != 0 || x.ClockAtPercent != 0 || x.ClockDosePercent() != 5 {
		t.Errorf("whey without = %+v, clock at %g, want the middle of 2 and 8", x, x.ClockDosePercent())
	}
}

func TestExtrasSayWhenTheyJoinTheLyeAndWhetherTheyDust(t *testing.T) {
	x, _ := laid(t, "[[extra]]\nid = \"salt\"\nlye_when = \"hot\"\ndust = true\n").Extra("salt")
	if x.LyeWhen != pour.LyeHot || !x.Dust {
		t.Errorf("salt = %+v", x)
	}
	x, _ = laid(t, "[[extra]]\nid = \"loam\"\nname = \"loam\"\nkind = \"clay\"\n").Extra("loam")
	if x.LyeWhen != pour.LyeCooled || !x.Dust {
		t.Errorf("a clay that says nothing = %+v, want one that dusts", x)
	}
	if x, _ = laid(t, "[[extra]]\nid = \"whey\"\nname = \"whey\"\n").Extra("whey"); x.Dust {
		t.Error("whey dusts")
	}
	if _, err := overlay(t, "[[extra]]\nid = \"salt\"\nlye_when = \"after\"\n"); err == nil || !strings.Contains(err.Error(), "before, hot, cooled") {
		t.Errorf("lye_when = after: %v", err)
	}
}

func TestAScentSaysTheAlkaliItTakes(t *testing.T) {
	sc, _ := laid(t, "[[scent]]\nid = \"meadow-hay\"\nalkali_koh_mg_g = 270\n").Scent("meadow-hay")
	if sc.AlkaliKOHMgG != 270 || sc.Source.Confidence != "own" {
		t.Errorf("meadow hay = %+v", sc)
	}
}

func TestImpossibleUptakeIsRefused(t *testing.T) {
	const olive, sugar, hay = "[[oil]]\nid = \"olive\"\n", "[[extra]]\nid = \"sugar\"\n", "[[scent]]\nid = \"meadow-hay\"\n"
	for in, want := range map[string]string{
		olive + "free_acid_percent = 101\n":                                      "free_acid_percent = 101: is outside what can be; write a number from 0 to 100",
		olive + "free_acid_percent = -0.1\n":                                     "free_acid_percent = -0.1: is outside what can be",
		olive + "free_acid_percent = nan\n":                                      "free_acid_percent = NaN: is not a number that can be",
		olive + "free_acid_percent = \"2\"\n":                                    "free_acid_percent = \"2\": a number is wanted, but this is text; write 2",
		sugar + "fat_percent = 101\nfat_sap_koh_mg_g = 200\n":                    "fat_percent = 101: is outside what can be",
		sugar + "fat_percent = -1\n":                                             "fat_percent = -1: is outside what can be",
		sugar + "fat_percent = 5\n":                                              "fat_percent = 5: stands without fat_sap_koh_mg_g",
		sugar + "fat_percent = 5\nfat_sap_koh_mg_g = 0\n":                        "fat_sap_koh_mg_g = 0: is outside what can be",
		sugar + "fat_sap_koh_mg_g = 900\n":                                       "fat_sap_koh_mg_g = 900: is outside what can be",
		sugar + "water_percent = 90\nfat_percent = 20\nfat_sap_koh_mg_g = 230\n": "fat_percent = 20: makes more than 100 with water_percent = 90",
		sugar + "clock_at_percent = 0\n":                                         "clock_at_percent = 0: is outside what can be",
		sugar + "clock_at_percent = 51\n":                                        "clock_at_percent = 51: is outside what can be",
		hay + "alkali_koh_mg_g = -1\n":                                           "alkali_koh_mg_g = -1: is outside what can be",
		hay + "alkali_koh_mg_g = 601\n":                                          "alkali_koh_mg_g = 601: is outside what can be; write a number from 0 to 600",
		olive + "free_acids_percent = 1\n":                                       `free_acids_percent: is no key of a shelf file; did you mean free_acid_percent?`,
		olive + "free_acid_source = { text = \"a sheet\" }\n":                    "free_acid_source: needs text and confidence",
	} {
		if _, err := overlay(t, in); !strings.Contains(toldIn(t, err), want) {
			t.Errorf("%q: error\n%v\nwant\n%s", in, err, want)
		}
	}
}
