// Package calendar writes what is due in the life of batches as an iCalendar file (RFC 5545), which the maker imports into a calendar of
// her own: a list of entries, each with hours on the wall of her room or with whole days and without any zone, names that stay from one
// export to the next, and sequence numbers that rise when a date moves.
//
// What was handed out the last time is kept in a small file, the [Register], so that a later export changes and cancels entries rather than
// adding others beside them.
package calendar
