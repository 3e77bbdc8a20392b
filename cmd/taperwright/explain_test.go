package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func explainPage(t *testing.T, code string) string {
	t.Helper()
	var out, errw bytes.Buffer
	require.Equal(t, 0, run([]string{"explain", code}, strings.NewReader(""), &out, &errw), errw.String())
	return out.String()
}

func TestExplain(t *testing.T) {
	assert.True(t, strings.HasPrefix(explainPage(t, "gouge"), "# gouge: "))
	var out, errw bytes.Buffer
	assert.Equal(t, 3, run([]string{"explain", "gouqe"}, strings.NewReader(""), &out, &errw))
	assert.Contains(t, errw.String(), `did you mean "gouge"?`)
	out.Reset()
	require.Equal(t, 0, run([]string{"explain"}, strings.NewReader(""), &out, &errw))
	assert.Equal(t, len(codes()), strings.Count(out.String(), "\n"))
}
