package calendar

import "github.com/google/uuid"

// site is the name in the space of domain names that the namespace of all entries is made of. It is in calendars by now: it never changes.
const site = "pourbench.example"

// UID is the name of an entry in every calendar, the same for ever: the UUID of version 5 (RFC 9562, 5.5) of "batch/kind" in a namespace of
// our own.
func UID(batch, kind string) string {
	own := uuid.NewSHA1(uuid.NameSpaceDNS, []byte(site))
	return uuid.NewSHA1(own, []byte(batch+"/"+kind)).String()
}
