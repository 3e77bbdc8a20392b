package main

// exitCode is the error a command returns when it has already said all there
// is to say and only the exit code is left.
type exitCode int

// The exit codes, everywhere.
const (
	exitGood     exitCode = 0 // good; warnings alone are good
	exitWrong    exitCode = 1 // judged, and wrong
	exitCannot   exitCode = 2 // the user's text cannot be read, planned or judged
	exitTheWorld exitCode = 3 // arguments, missing file, disk, edited target
)

func (e exitCode) Error() string {
	switch e {
	case exitGood:
		return "good"
	case exitWrong:
		return "judged and wrong"
	case exitCannot:
		return "cannot be read, planned or judged"
	}
	return "could not run"
}
