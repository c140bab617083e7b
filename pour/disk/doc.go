// Package disk writes files so that a killed program, a full disk or a second terminal never leaves half of one.
//
// [Ops.Save] writes a file whole or not at all, [Ops.Append] adds whole lines to one under a lock, [Ops.Hold] takes a name for as
// long as the process lives. Everything that changes the disk goes through one [Ops], so that a test sees the order of it and can let
// any part of it fail. Reading goes to package os as everywhere; [Read] and [Follow] are for those who are about to write.
package disk
