%
O0113 (feed per minute, dwell, reference return, offset cancel, work offset)
(= part cone.toml)
(= twin cone-sound.nc)
(= verdict good)
(= front face: in z 0.0000)
(= cone: in diameter 0.0000 half 0.000000 standoff 0.0000)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
G21 G40 G54
G28 U0 W0
G97 S800
T0101
M4
G98
G0 X56. Z2.
X37.722
G1 X44.922 Z-70. F80.
X50.
G4 P500
Z-112.
G99
G1 X56. F0.1
G0 X200. Z150. T0100
G28 U0 W0
M5
M30
%
