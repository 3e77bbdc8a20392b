%
O0118 (the approach cuts across the bar at rapid; no nearer the axis than X45 at Z-30, cone there 41; the way out drags the 95 degree edge along the wall)
(= part cone.toml)
(= verdict wrong)
(= front face: in z 0.0000)
(= cone: in diameter 0.0000 half 0.000000 standoff 0.0000)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
X45. Z-30. (~ error rapid-in-metal)
X56. (~ error rapid-in-metal)
Z2.
X37.722
G1 X44.922 Z-70. F0.1
X50.
Z-112.
G1 X56.
G0 X200. Z150.
M5
M30
%
