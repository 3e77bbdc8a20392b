package shop

import (
	"os"
	"testing"

	"pgregory.net/rapid"

	"taperwright/profiles/finding"
	"taperwright/profiles/source"
)

func FuzzRead(f *testing.F) {
	f.Add(starter)
	for _, c := range wrong {
		f.Add([]byte(c.text))
	}
	for _, name := range []string{"shop.toml", "shop-inch.toml"} {
		if b, err := os.ReadFile("../../testdata/parts/" + name); err == nil {
			f.Add(b)
		}
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		var l finding.List
		text := finding.NewText("shop.toml", b)
		table, ok := source.Parse(text, &l)
		if !ok {
			return
		}
		s := Read(table, &l)
		for _, x := range l.Sorted() {
			if x.Span.Text != text || x.Span.Start < 0 || x.Span.End > len(b) || x.Span.Start > x.Span.End {
				t.Fatalf("%+v lies outside the text", x)
			}
			if _, ok := finding.Page(x.Code, Pages, source.Pages); !ok {
				t.Fatalf("%s has no page", x.Code)
			}
		}
		for _, tool := range s.Tools {
			sound(t, &tool, l.HasErrors())
		}
		for p, w := range s.Machine.Words {
			if q, ok := s.Machine.Meaning(w); !ok || !alike(p, q) {
				t.Fatalf("%s posts %s, which is read as %s", p, w, q)
			}
		}
	})
}

// sound fails when a tool that was let through cannot be a tool.
func sound(t interface{ Fatalf(string, ...any) }, tool *Tool, errors bool) {
	if tool.Kind != "turn" || errors {
		return
	}
	bad := !(tool.Nose > 0) || !(tool.CuttingAngle.Value > 0) || tool.Station < 1
	if !tool.MinorFree && !tool.Round {
		bad = bad || !(tool.MinorAngle() > -1e-5) || !(tool.Included.Value > 0)
	}
	if bad || !(tool.MainReach.Value >= 0) || !(tool.FeedRate.Value >= 0) {
		t.Fatalf("unsound tool let through: %+v", *tool)
	}
}

// Words as they are compared are a fixed point, and every spelling of a word
// comes to the same.
func TestWordIsAFixedPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, ok := Word(rapid.StringMatching(`[A-Za-z]0{0,2}[0-9]{1,3}(\.[0-9]{0,2}0{0,1})?`).Draw(t, "word"))
		if !ok {
			t.Skip("longer than a word")
		}
		if again, ok := Word(w); !ok || again != w {
			t.Fatalf("%s becomes %s", w, again)
		}
	})
}
