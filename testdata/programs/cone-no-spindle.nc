%
O0117 (the spindle never turns)
(= part cone.toml)
(= verdict wrong)
(= front face: in z 0.0000)
(= cone: in diameter 0.0000 half 0.000000 standoff 0.0000)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
G21 G40 G99
G97 S800
T0101
G0 X56. Z2.
X37.722
G1 X44.922 Z-70. F0.1 (~ error no-spindle)
X50.
Z-112.
G1 X56.
G0 X200. Z150.
M5
M30
%
