package finding

import (
	"io/fs"
	"strings"
)

// Page returns the page of a code from the page folders given: the text of
// codes/CODE.md in the first that has one.
func Page(code string, pages ...fs.FS) (string, bool) {
	if code == "" || strings.ContainsAny(code, "./\\") {
		return "", false
	}
	for _, p := range pages {
		if b, err := fs.ReadFile(p, "codes/"+code+".md"); err == nil {
			return string(b), true
		}
	}
	return "", false
}
