%
O0102 (front cone programmed to its sharp corners)
(= part cone.toml)
(2*0.8*0.05*[1 - 0.0249844] = 0.0780 left on diameter, over 1:10 the mate stops 0.780 short)
(= verdict wrong)
(= front face: in z 0.0000)
(= cone: out diameter 0.0780 half 0.000000 standoff 0.7800)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
(= slip nose-forgotten)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
X37.8
G1 X45. Z-70. F0.1 (~ error metal-left)
X50.
Z-112.
G1 X56.
G0 X200. Z150.
M5
M30
%
