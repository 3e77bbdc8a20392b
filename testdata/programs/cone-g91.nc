%
O0106 (the sound cone again, with G90 and G91)
(= part cone.toml)
(= arguments --assume words=g77-turns)
(= twin cone-sound.nc)
(= verdict good)
(= front face: in z 0.0000)
(= cone: in diameter 0.0000 half 0.000000 standoff 0.0000)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
G21 G40 G95
G97 S800
T0101
M4
G90 G0 X56. Z2.
X37.722
G91 G1 X7.2 Z-72. F0.1
X5.078
Z-42.
G90 G1 X56.
G0 X200. Z150.
M5
M30
%
