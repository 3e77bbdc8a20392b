%
O0107 (the sound cone again, on a lathe whose X is a radius)
(= part cone.toml)
(= arguments --assume x=radius)
(37.722/2 = 18.861, 44.922/2 = 22.461)
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
G0 X28. Z2.
X18.861
G1 X22.461 Z-70. F0.1
X25.
Z-112.
G1 X28.
G0 X100. Z150.
M5
M30
%
