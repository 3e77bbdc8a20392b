%
O0124 (roughed in four passes, 0.25 left on radius, then finished)
(= part cone.toml)
(= verdict good)
(= front face: in z 0.0000)
(= cone: in diameter 0.0000 half 0.000000 standoff 0.0000)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
X50.5
G1 Z-112. F0.25
X52.5
G0 Z2.
X46.5
G1 Z-69.75
X51.
G0 Z2.
X43.5
G1 Z-50.
X46.5 Z-69.5
G0 X52.5
Z2.
X40.5
G1 Z-20.
X43.5 Z-50.
G0 X52.5
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
