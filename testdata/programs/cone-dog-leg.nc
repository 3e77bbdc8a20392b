%
O0119 (a rapid that is clear when straight and grazes the shoulder when the slides run equally fast)
(= part cone.toml)
(from X46 Z-69.5 to X120 Z-70.6: straight, at X50 the tip is at Z-69.56; dog-leg, at 45 degrees it is at Z-70.6 when X is 48.2)
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
G0 Z-69.5
X46.
X120. Z-70.6 (~ warning dog-leg-in-metal)
X200. Z150.
M5
M30
%
