%
O0104 (1:10 read as per side)
(= part wide.toml)
(per side the flank falls 1 in 10: t = 0.1 for 0.05; allowance 2*0.8*0.1*[1 - 0.0498756] = 0.1520)
(Z2: 38 - 0.4 - 0.152 = 37.448, Z-30: 38 + 6 - 0.152 = 43.848; gauge plane 38 + 0.2*20 = 42 for 40)
(half angle 5.710593 for 2.862405: +2.848188)
(= verdict wrong)
(= cone: out diameter 2.0000 half 2.848188)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
(= slip per-side)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
X37.448
G1 X43.848 Z-30. F0.1 (~ error metal-left)
X50.
Z-52.
G1 X56.
G0 X200. Z150.
M5
M30
%
