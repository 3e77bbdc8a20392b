package toolpath

import (
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"taperwright/profiles/finding"
)

func TestPump(t *testing.T) {
	p := plan(t, pump())
	t.Log("\n" + p.String())
	for _, n := range p.Notes {
		t.Log(n)
	}
}

func TestShowOne(t *testing.T) {
	s := os.Getenv("SHOW")
	if s == "" {
		t.Skip()
	}
	k, _ := strconv.Atoi(s)
	p, what := randomPart(rand.New(rand.NewPCG(5, uint64(k))))
	var l finding.List
	got := New(p, 0, &l)
	for _, f := range l.Sorted() {
		t.Log(f.Code, f.Message)
	}
	c, _ := p.Contour(0)
	t.Log(what, "\n", c)
	if got != nil {
		t.Log("\n" + got.String())
	}
}
