// Command taperwright plans, writes and checks the turning of tapers.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"taperwright/profiles/finding"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is the whole program: arguments and streams in, exit code out.
func run(args []string, in io.Reader, out, errw io.Writer) int {
	root := newRoot()
	if args == nil {
		args = []string{} // cobra would read os.Args for nil
	}
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errw)
	err := root.Execute()
	var code exitCode
	switch {
	case err == nil:
		return int(exitGood)
	case errors.As(err, &code):
		return int(code)
	}
	message := strings.Split(err.Error(), "\n")
	for i, line := range message {
		message[i] = finding.Clean(line)
	}
	fmt.Fprintf(errw, "taperwright: %s\n", strings.Join(message, "\n"))
	return int(exitTheWorld)
}
