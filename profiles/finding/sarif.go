package finding

import (
	"encoding/json"
	"io"
	"net/url"
	"slices"
	"strings"
)

// The shapes of SARIF 2.1.0 (OASIS) that findings need.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool struct {
			Driver struct {
				Name  string      `json:"name"`
				Rules []sarifRule `json:"rules"`
			} `json:"driver"`
		} `json:"tool"`
		ColumnKind string        `json:"columnKind"`
		Results    []sarifResult `json:"results"`
	}
	sarifRule struct {
		ID string `json:"id"`
	}
	sarifResult struct {
		RuleID    string          `json:"ruleId"`
		RuleIndex int             `json:"ruleIndex"`
		Level     string          `json:"level"`
		Message   sarifMessage    `json:"message"`
		Locations []sarifLocation `json:"locations,omitempty"`
		Related   []sarifLocation `json:"relatedLocations,omitempty"`
	}
	sarifMessage struct {
		Text string `json:"text"`
	}
	sarifLocation struct {
		Physical sarifPhysical `json:"physicalLocation"`
		Message  *sarifMessage `json:"message,omitempty"`
	}
	sarifPhysical struct {
		Artifact struct {
			URI string `json:"uri"`
		} `json:"artifactLocation"`
		Region sarifRegion `json:"region"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
		EndLine     int `json:"endLine"`
		EndColumn   int `json:"endColumn"`
	}
)

// SARIF prints findings as one SARIF 2.1.0 log.
func SARIF(w io.Writer, found []Finding) error {
	run := sarifRun{ColumnKind: "unicodeCodePoints", Results: []sarifResult{}}
	run.Tool.Driver.Name, run.Tool.Driver.Rules = "taperwright", []sarifRule{}
	var codes []string
	for _, f := range found {
		codes = append(codes, f.Code)
	}
	slices.Sort(codes)
	codes = slices.Compact(codes)
	for _, c := range codes {
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRule{c})
	}
	for _, f := range found {
		text := f.Message
		if f.Help != "" {
			text += "; " + f.Help
		}
		r := sarifResult{RuleID: f.Code, RuleIndex: slices.Index(codes, f.Code), Level: f.Severity.String(), Message: sarifMessage{text}}
		if f.Span.Valid() {
			r.Locations = []sarifLocation{location(f.Span)}
		}
		for _, p := range f.Places {
			if p.Span.Valid() {
				l := location(p.Span)
				l.Message = &sarifMessage{p.Message}
				r.Related = append(r.Related, l)
			}
		}
		run.Results = append(run.Results, r)
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(sarifLog{"https://json.schemastore.org/sarif-2.1.0.json", "2.1.0", []sarifRun{run}})
}

func location(s Span) (l sarifLocation) {
	parts := strings.Split(s.Text.Name, "/")
	for i, p := range parts {
		parts[i] = url.PathEscape(p)
	}
	from, to := s.From(), s.To()
	l.Physical.Artifact.URI = strings.Join(parts, "/")
	l.Physical.Region = sarifRegion{from.Line, from.Column, to.Line, to.Column}
	return l
}
