%
O0108 (the sound cone again, in inch words of four decimals)
(= part cone.toml)
(1.4850 in = 37.7190 mm at Z0.08 = 2.032 mm, 1.7686 in = 44.92244 mm at Z-2.7559 = -69.99986 mm)
(slope on diameter 7.20344/72.03186 = 0.1000035; gauge plane 37.7190 + 62.032*0.1000035 + 0.0780 = 44.0004)
(half angle 1.76e-6/1.0025 rad = 0.000101 deg; shoulder +0.00014; journal 1.9685 in = 49.9999)
(= verdict good)
(= cone: in diameter 0.0004 half 0.000101)
(= shoulder: in z 0.0001)
(= journal: in diameter -0.0001)
G20 G40 G99
G97 S800
T0101
M4
G0 X2.2 Z0.08
X1.4850
G1 X1.7686 Z-2.7559 F0.004
X1.9685
Z-4.41
G1 X2.2
G0 X8. Z6.
M5
M30
%
