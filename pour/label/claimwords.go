package label

import "strings"

// stem is how a word of a claim begins, in small letters. One that ends in a blank is the whole word; a hyphen in it may be there or not.
type stem struct{ text, class, clause string }

// Where it stands what such words do, and how far it was checked.
const (
	readOfSoap  = "21 CFR 701.20(a) and the agencies' pages on soap; read"
	soapOnly    = "21 CFR 701.20(a), read; that this word is one is memory"
	readOfDrugs = "the agencies' pages on soap, read; medicines law elsewhere, memory"
	drugs       = "FD&C Act s. 201(g), and medicines law elsewhere; which words is memory"
	readOfProof = "Cosmetic Regulations, C.R.C. c. 869, s. 21; read"
	proof       = "Cosmetic Regulations, C.R.C. c. 869, s. 21, Regulation (EU) 655/2013; which words is memory"
)

// stems are the words that are looked for. Those of the constants that are read were named there; the others are such words from memory.
func stems() []stem {
	out := make([]stem, 0, 128)
	for _, w := range []stem{
		{"kills ,kill ,killing ,germ ,germs ,treats ,treating ,treatment ", ClaimDrug, readOfDrugs},
		{
			"anti-bac,anti-microb,anti-sept,anti-fung,anti-vir,anti-itch,anti-inflam,anti-biotic,bacteri,fungal,fungus ,fungi ,virus,viral ,infection,disinfect,germicid,steriliz,sterilis," +
				"eczema,psoriasis,acne,rosacea,dermatitis,arthrit,dandruff,pimple,heals ,heal ,healing ,cures skin,cures acne,therap,inflammat,itch ,itching ,itchy ,rash ,rashes ," +
				"sunscreen,sun-protect,spf ,medicat,medicin,pain ,wound,lice ,insect-repel,repels ,detox,cellulite,circulation ,stimulates ,stimulating ,regenerat,prevents ", ClaimDrug, drugs,
		},
		{"moisturi,deodor,sooth", ClaimCosmetic, readOfSoap},
		{
			"hydrat,soften,nourish,rejuven,anti-ag,anti-wrinkle,wrinkle,exfoliat,brighten,whiten,lighten,conditions your,conditions the,conditions skin,conditioning ,conditioner,calms ,calming ,refreshes,refreshing,tones your,tones the,tones skin,toning ,tighten," +
				"beautif,youth,firming ,perfumes your,perfumes the,smell ,smells ,smelling ,scents your skin,dry-skin,oily-skin,sensitive-skin,skin-care,complexion,gentle on ,kind to ,purif,pamper,protects ", ClaimCosmetic, soapOnly,
		},
		{"cannot harm,harmless", ClaimProof, readOfProof},
		{
			"hypo-allerg,non-toxic,chemical-free,toxin-free,dermatolog,clinical,proven ,proved ,safe for ,safe on ,100% natural,100 % natural,all-natural,non-comedo,ph-balanced,suitable for babies", ClaimProof, proof,
		},
	} {
		for text := range strings.SplitSeq(w.text, ",") {
			out = append(out, stem{text, w.class, w.clause})
		}
	}
	return out
}
