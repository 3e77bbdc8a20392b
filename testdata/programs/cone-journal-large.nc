%
O0123 (journal 0.05 above its size)
(= part cone.toml)
(= verdict wrong)
(= cone: in diameter 0.0000 half 0.000000)
(= shoulder: in z 0.0000)
(= journal: out diameter 0.0500 left 0.0500 gouge 0.0000)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
X37.722
G1 X44.922 Z-70. F0.1
X50.05
Z-112. (~ error metal-left)
G1 X56.
G0 X200. Z150.
M5
M30
%
