package finding

// Item is a finding as JSON: a promise to users' scripts.
type Item struct {
	Code      string      `json:"code"`
	Severity  string      `json:"severity"`
	File      *string     `json:"file"`
	Line      *int        `json:"line"`
	Column    *int        `json:"column"`
	EndLine   *int        `json:"end_line"`
	EndColumn *int        `json:"end_column"`
	Message   string      `json:"message"`
	Help      string      `json:"help"`
	Notes     []PlaceItem `json:"notes"`
}

// PlaceItem is a second place of a finding as JSON.
type PlaceItem struct {
	File    *string `json:"file"`
	Line    *int    `json:"line"`
	Column  *int    `json:"column"`
	Message string  `json:"message"`
}

// Items returns findings as JSON prints them: never nil, null for places that
// are nowhere.
func Items(found []Finding) []Item {
	out := make([]Item, 0, len(found))
	for _, f := range found {
		it := Item{Code: f.Code, Severity: f.Severity.String(), Message: f.Message, Help: f.Help, Notes: []PlaceItem{}}
		if f.Span.Valid() {
			from, to := f.Span.From(), f.Span.To()
			it.File, it.Line, it.Column, it.EndLine, it.EndColumn = &f.Span.Text.Name, &from.Line, &from.Column, &to.Line, &to.Column
		}
		for _, p := range f.Places {
			pi := PlaceItem{Message: p.Message}
			if p.Span.Valid() {
				at := p.Span.From()
				pi.File, pi.Line, pi.Column = &p.Span.Text.Name, &at.Line, &at.Column
			}
			it.Notes = append(it.Notes, pi)
		}
		out = append(out, it)
	}
	return out
}
