%
O0115 (surface speed without a cap: the smaller, the faster)
(= part cone.toml)
(= verdict good)
(= front face: in z 0.0000)
(= cone: in diameter 0.0000 half 0.000000 standoff 0.0000)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
G21 G40 G99
T0101
G96 S180 (~ warning no-speed-cap)
M4
G0 X56. Z2.
X37.722
G1 X44.922 Z-70. F0.1
X50.
Z-112.
G1 X56.
G97 S500
G0 X200. Z150.
M5
M30
%
