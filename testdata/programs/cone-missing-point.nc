%
O0109 (the sound cone again, numbers without a point)
(= part cone.toml)
(= arguments --assume missing_point=increment)
(without a point a number counts thousandths: X37722 is 37.722 mm)
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
G0 X56000 Z2000
X37722
G1 X44922 Z-70000 F100
X50000
Z-112000
G1 X56000
G0 X200000 Z150000
M5
M30
%
