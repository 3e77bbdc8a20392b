package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func cone(t *testing.T, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(append([]string{"cone"}, args...), strings.NewReader(""), &o, &e)
	return code, o.String(), e.String()
}

// Figures by hand: t = 1/20; 38 + 70/10 = 45; set-over 300 t/sqrt(1+t²) =
// 15/1.00124922 = 14.981285 mm = 0.589814 in; half angle atan 0.05 = 2.8624052 deg.
func TestConePage(t *testing.T) {
	code, out, errs := cone(t, "--ratio", "1:10", "--small", "38", "--length", "70", "--gauge-diameter", "44", "--from-small", "60", "--between-centres", "300")
	require.Equal(t, 0, code, errs)
	assert.Empty(t, errs)
	assert.Equal(t, `cone 1:10 on diameter

  large diameter                   45.0000 mm         1.77165 in
  small diameter                   38.0000 mm         1.49606 in
  length along the axis            70.0000 mm         2.75591 in
  gauge diameter                   44.0000 mm         1.73228 in
  gauge plane                      60.0000 mm         from the small end
                                   10.0000 mm         from the large end

  half angle                       2.862405°          2°51'44.7"   compound rest, from the axis
  included angle                   5.724810°          5°43'29.3"
  taper on diameter                1.20000 in/ft      0.100000 in/in
                                   10.0000 mm/100 mm  0.100000 mm/mm
  attachment, rise on radius       0.050000 mm/mm     1.2500 mm/25 mm   0.050000 in/in
  attachment, rise on diameter     0.100000 mm/mm     2.5000 mm/25 mm   0.100000 in/in
  set-over, L sin a                14.9813 mm         0.58981 in   L = 300.0000 mm between the centre points
  set-over, handbook t L           15.0000 mm         0.59055 in
  stand-off per 0.01 mm diameter   0.1000 mm
  stand-off per 0.001 in diameter  0.0100 in

  nearest published taper          half angle         this cone less that one, half angle
  1:10                             2.862405°          0.000000°
  1:12                             2.385944°          +0.476461°
  1:8                              3.576334°          -0.713929°
`, out)
	code, again, _ := cone(t, "--ratio", "1:10", "--small", "38", "--length", "70", "--gauge-diameter", "44", "--from-small", "60", "--between-centres", "300")
	assert.Equal(t, 0, code)
	assert.Equal(t, out, again)
}

// The keys, their order and their decimals are a promise.
func TestConeJSON(t *testing.T) {
	code, out, _ := cone(t, "--series", "morse 3", "--large", "0.938", "--length", "3.1875", "--unit", "inch", "--between-centres", "12", "--format", "json")
	require.Equal(t, 0, code)
	// n = 19.922: t = 0.0250979, 12/n = 0.6023492; d = (0.938 - 3.1875/n) 25.4
	// = 19.761221; L sin a = 304.8 t/sqrt(1+t²) = 7.647419, tL = 7.649834
	assert.Equal(t, `{
  "format": 1,
  "large_diameter_mm": 23.8252,
  "small_diameter_mm": 19.7612,
  "length_mm": 80.9625,
  "ratio_1_to": 19.922,
  "half_angle_deg": 1.437701,
  "included_angle_deg": 2.875402,
  "taper_per_foot_in": 0.6023492,
  "taper_per_inch_in": 0.0501958,
  "rise_on_radius_per_mm": 0.0250979,
  "setover_mm": 7.6474,
  "setover_handbook_mm": 7.6498,
  "standoff_per_0_01_mm": 0.1992,
  "nearest": [
    {
      "series": "Morse 3",
      "ratio_1_to": 19.922,
      "half_angle_deg": 1.437701,
      "difference_deg": 0
    },
    {
      "series": "Metric 1:20",
      "ratio_1_to": 20,
      "half_angle_deg": 1.432096,
      "difference_deg": 0.005605
    },
    {
      "series": "1:20",
      "ratio_1_to": 20,
      "half_angle_deg": 1.432096,
      "difference_deg": 0.005605
    }
  ],
  "findings": []
}
`, out)
}

// What is not known is null; a contradiction leaves every figure null, says so
// in findings whose file is the flag, and exits 2.
func TestConeContradiction(t *testing.T) {
	args := []string{"--ratio", "1:10", "--half-angle", "5.7248"}
	code, out, errs := cone(t, append(args, "--format", "json")...)
	require.Equal(t, 2, code)
	assert.Empty(t, errs)
	var got map[string]any
	require.NoError(t, json.Unmarshal([]byte(out), &got))
	for _, key := range []string{"large_diameter_mm", "ratio_1_to", "half_angle_deg", "setover_mm", "standoff_per_0_01_mm"} {
		v, there := got[key]
		assert.True(t, there, key)
		assert.Nil(t, v, key)
	}
	f := got["findings"].([]any)[0].(map[string]any)
	assert.Equal(t, "over-defined", f["code"])
	assert.Equal(t, "--half-angle", f["file"])
	assert.Equal(t, 1.0, f["line"])
	assert.Equal(t, 1.0, f["column"])
	assert.Equal(t, 7.0, f["end_column"])
	assert.Contains(t, f["help"], "included angle")

	code, out, errs = cone(t, args...)
	require.Equal(t, 2, code)
	assert.Empty(t, errs)
	assert.Contains(t, out, "--half-angle:1:1: error: ")
	assert.Contains(t, out, "      | ^^^^^^\n")

	code, out, _ = cone(t, append(args, "--format", "sarif")...)
	require.Equal(t, 2, code)
	assert.Contains(t, out, `"ruleId": "over-defined"`)
}

func TestConeExitCodes(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{nil, 3, "taperwright cone --ratio 1:10 --small 38 --length 70"},
		{[]string{"--ratio", "1:10"}, 0, ""},
		{[]string{"--half-angle", `1°26'16"`}, 0, ""},
		{[]string{"--series", "MT3"}, 0, ""},
		{[]string{"--large", "20", "--length", "50"}, 2, "under-defined"},
		{[]string{"--large", "38", "--small", "45", "--length", "70"}, 2, "no-cone"},
		{[]string{"--series", "1:10", "--gauge-diameter", "series", "--from-large", "0"}, 2, "no-series-diameter"},
		{[]string{"--ratio", "1:1,0"}, 3, "--ratio:1:4: error"},
		{[]string{"--ratio", ""}, 3, "--ratio"},
		{[]string{"--ratio", "10"}, 3, "--ratio:1:3: error"},
		{[]string{"--half-angle", "1 26"}, 3, "--half-angle:1:3: error"},
		{[]string{"--half-angle", "-1"}, 3, "--half-angle:1:1: error"},
		{[]string{"--series", "mosre 3"}, 3, `did you mean "Morse 3"?`},
		{[]string{"--large", "4x"}, 3, "want a number like 44.5"},
		{[]string{"--large", "nan"}, 3, "want a number"},
		{[]string{"--large", "0x10"}, 3, "want a number"},
		{[]string{"--large", "-45"}, 3, "want a number"},
		{[]string{"--large", "1e3"}, 3, "want a number"},
		{[]string{"--large", "1000000"}, 3, "no more than"},
		{[]string{"--large", "0", "--ratio", "1:10"}, 3, "above 0"},
		{[]string{"--large", "45", "--angle", "3"}, 3, "--angle"},
		{[]string{"--gauge-diameter", "44", "--ratio", "1:10"}, 3, "--from-small or --from-large"},
		{[]string{"--from-small", "6", "--ratio", "1:10"}, 3, "--gauge-diameter"},
		{[]string{"--gauge-diameter", "44", "--ratio", "1:10", "--from-small", "6", "--from-large", "4"}, 3, "from-"},
		{[]string{"--ratio", "1:10", "--between-centres", "0"}, 3, "--between-centres"},
		{[]string{"--ratio", "1:10", "--unit", "cm"}, 3, "mm"},
		{[]string{"--ratio", "1:10", "extra"}, 3, "extra"},
	} {
		code, out, errs := cone(t, c.args...)
		assert.Equal(t, c.code, code, "%q: %s%s", c.args, out, errs)
		assert.Contains(t, out+errs, c.says, "%q", c.args)
		if c.code == 3 {
			assert.Empty(t, out, "%q", c.args)
		} else {
			assert.Empty(t, errs, "%q", c.args)
		}
	}
}

// What the flag says cannot act on the terminal.
func TestConeEscapes(t *testing.T) {
	code, out, errs := cone(t, "--series", "morse\x1b[2J 3")
	assert.Equal(t, 3, code)
	assert.NotContains(t, out+errs, "\x1b")
	assert.Contains(t, errs, `\u{1b}`)
}
