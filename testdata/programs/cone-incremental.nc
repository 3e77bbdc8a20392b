%
O0105 (the sound cone again, in U and W)
(= part cone.toml)
(44.922 - 37.722 = 7.2 over 72; 50 - 44.922 = 5.078; 112 - 70 = 42)
(= twin cone-sound.nc)
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
U-18.278
G1 U7.2 W-72. F0.1
U5.078
W-42.
G1 U6.
G0 X200. Z150.
M5
M30
%
