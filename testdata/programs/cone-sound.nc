%
O0101 (front cone, nose compensated by hand)
(= part cone.toml)
(t = 1/20. R0.8 tip-programmed leaves 2Rt[1 - tan[a/2]] too much when forgotten:)
(tan[a/2] = [sqrt[1 + t^2] - 1]/t = 0.0249844, 2*0.8*0.05*0.9750156 = 0.0780012 mm on diameter)
(at Z2:   38 - 2/10 - 0.0780 = 37.7220; at Z-70: 38 + 70/10 - 0.0780 = 44.9220)
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
X37.722
G1 X44.922 Z-70. F0.1
X50.
Z-112.
G1 X56.
G0 X200. Z150.
M5
M30
%
