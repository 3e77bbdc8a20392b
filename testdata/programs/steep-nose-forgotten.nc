%
O0132 (steep cone programmed to its sharp corners)
(= part steep.toml)
(0.2164 left on diameter; over 7:24 the mate stops 0.2164090*24/7 = 0.7420 short)
(= verdict wrong)
(= cone: out diameter 0.2164 half 0.000000 standoff 0.742)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
(= slip nose-forgotten)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z3.
X29.125
G1 X44. Z-48. F0.1 (~ error metal-left)
X50.
Z-70.
G1 X56.
G0 X200. Z150.
M5
M30
%
