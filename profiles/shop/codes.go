package shop

import "embed"

// Pages holds one page per code: codes/CODE.md.
//
//go:embed codes/*.md
var Pages embed.FS

const (
	codeColumn      = "unknown-column"
	codePurpose     = "unknown-purpose"
	codeWord        = "malformed-word"
	codeWordTwice   = "word-twice"
	codeHarmless    = "harmless-purpose"
	codeSize        = "size-range"
	codeMissing     = "key-missing"
	codeConflict    = "keys-conflict"
	codeTwice       = "tool-twice"
	codeInsert      = "insert-code"
	codeHolder      = "holder-code"
	codeSeat        = "insert-seat"
	codeContradicts = "code-contradicted"
	codeNose        = "nose-too-large"
	codeNoNose      = "nose-unknown"
	codeEdges       = "edge-angles"
	codeTip         = "tip-point"
)
