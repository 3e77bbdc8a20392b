package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"path/filepath"

	"github.com/spf13/cobra"

	"taperwright/profiles/finding"
	"taperwright/profiles/geom"
	"taperwright/verify"
)

func newProgram() *cobra.Command {
	var folder, format, root string
	var replace bool
	cmd := &cobra.Command{
		Use:   "program PART",
		Short: "plan, write and check the programs of a part",
		Long: `Plans the cuts of a part file, writes a program for each set-up, reads the very
bytes back through the verifier, and keeps them only when the verdict is good.
Programs stand beside the part file, or in -o: <part file>.<set-up>.nc. One that
was edited by hand is not overwritten without --replace.

Exit code 0: good. 1: judged, and wrong (nothing is kept). 2: the part cannot be
read, planned or judged. 3: arguments, files or disk.`,
		Example: "  taperwright program shaft.toml",
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) != 1 {
				return needs("one part file", "taperwright program shaft.toml")
			}
			var found finding.List
			part, err := readPart(c, args[0], root, &found)
			if err != nil {
				return err
			}
			var made []product
			v := &verify.Verdict{State: verify.CannotJudge, PartName: filepath.ToSlash(args[0])}
			if part != nil && !found.HasErrors() {
				var judged *verify.Verdict
				if made, judged = produce(part, programNames(args[0], folder, len(part.Setups)), &found); judged != nil {
					v = judged
				} else {
					made = nil
				}
			}
			v.Findings = found.Sorted()
			var written []string
			if v.State == verify.Good {
				if written, err = keep(made, replace); err != nil {
					return err
				}
			}
			if err := writeProduct(c.OutOrStdout(), v, made, written, format); err != nil {
				return err
			}
			return exitOf(v.State)
		},
	}
	f := cmd.Flags()
	f.StringVarP(&folder, "output", "o", "", "keep the programs in this `FOLDER` instead of beside the part file")
	f.BoolVar(&replace, "replace", false, "overwrite programs that were edited by hand")
	f.StringVar(&root, "root", "", "files the part names must lie below this `FOLDER`")
	choiceFlag(cmd, &format, "format", "how to print", "text", "json", "sarif")
	return cmd
}

// writeProduct prints what was made and how it was judged.
func writeProduct(w io.Writer, v *verify.Verdict, made []product, written []string, format string) error {
	switch format {
	case "json":
		return productJSON(w, v, made)
	case "sarif":
		return finding.SARIF(w, v.Findings)
	}
	if len(made) == 0 {
		return finding.Write(w, v.Findings, finding.Window)
	}
	if err := v.Text(w); err != nil {
		return err
	}
	for _, p := range made {
		for _, cone := range p.program.Cones {
			if _, err := fmt.Fprintf(w, "rounding of the words: %s moves by at most %s\" of half angle and %s mm on diameter\n",
				finding.Clean(v.Part.Features[cone.Feature].Name), geom.Fixed(math.Abs(geom.Degrees(cone.HalfAngle)*3600), 2), geom.Fixed(math.Abs(cone.Diameter), 4)); err != nil {
				return err
			}
		}
	}
	state := map[bool]string{true: "written", false: "unchanged"}
	if v.State != verify.Good {
		_, err := fmt.Fprintln(w, "nothing was written")
		return err
	}
	for _, p := range made {
		name := filepath.ToSlash(p.path)
		is := false
		for _, x := range written {
			is = is || x == name
		}
		if _, err := fmt.Fprintf(w, "%s: %s\n", state[is], finding.Clean(name)); err != nil {
			return err
		}
	}
	return nil
}

type (
	operationItem struct {
		Tool    string       `json:"tool"`
		Purpose string       `json:"purpose"`
		Side    string       `json:"side"`
		Passes  int          `json:"passes"`
		Length  json.Number  `json:"cut_length_mm"`
		Time    *json.Number `json:"time_s"`
		Peak    json.Number  `json:"peak_rpm"`
	}
	setupItem struct {
		Name       string          `json:"name"`
		File       string          `json:"file"`
		Blocks     int             `json:"blocks"`
		Operations []operationItem `json:"operations"`
		Skin       struct {
			Least json.Number `json:"least"`
			Most  json.Number `json:"most"`
		} `json:"finish_skin_normal_mm"`
	}
	productItem struct {
		Format   int              `json:"format"`
		Part     string           `json:"part"`
		Verdict  verify.State     `json:"verdict"`
		Setups   []setupItem      `json:"setups"`
		Features []verify.RowItem `json:"features"`
		Findings []finding.Item   `json:"findings"`
	}
)

func number(x float64, decimals int) json.Number { return json.Number(geom.Fixed(x, decimals)) }

// productJSON prints programs and verdict as one object.
func productJSON(w io.Writer, v *verify.Verdict, made []product) error {
	out := productItem{Format: 1, Part: v.PartName, Verdict: v.State, Setups: []setupItem{}, Features: []verify.RowItem{}, Findings: finding.Items(v.Findings)}
	for _, p := range made {
		s := setupItem{Name: v.Part.Setups[p.setup].Name, File: filepath.ToSlash(p.path), Blocks: p.program.Blocks, Operations: []operationItem{}}
		s.Skin.Least, s.Skin.Most = number(p.plan.Skin.Least, 4), number(p.plan.Skin.Most, 4)
		for i := range p.plan.Operations {
			op := &p.plan.Operations[i]
			item := operationItem{Tool: op.Tool.Name, Purpose: op.Purpose, Side: "outside", Passes: len(op.Passes), Peak: number(op.PeakRPM, 0)}
			if op.Inside {
				item.Side = "inside"
			}
			length := 0.0
			for _, pass := range op.Passes {
				for _, m := range pass.Moves {
					if !m.Rapid {
						length += m.Path.Length()
					}
				}
			}
			item.Length = number(length, 4)
			s.Operations = append(s.Operations, item)
		}
		out.Setups = append(out.Setups, s)
	}
	if v.Part != nil {
		out.Features = v.Features()
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}
