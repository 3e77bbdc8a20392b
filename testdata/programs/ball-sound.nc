%
O0151 (ball end R10: nose centre on R10.4 about Z-10, tip from X-0.8 Z0 to X20 Z-10.4)
(= part ball.toml)
(the centre of the tip's arc is X-0.8 Z-10.4: I 0, K -10.4)
(= verdict good)
(= ball: in radius 10.0000)
(= stem: in diameter 0.0000)
G21 G40 G99
G97 S800
T0202
M4
G0 X32. Z2.
X-0.8
G1 Z0. F0.05
G3 X20. Z-10.4 I0. K-10.4
G1 Z-31.
G1 X32.
G0 X200. Z150.
M5
M30
%
