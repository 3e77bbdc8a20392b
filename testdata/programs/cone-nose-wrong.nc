%
O0122 (compensated for a nose of 0.4, cut with 0.8)
(= part cone.toml)
(2*0.05*0.9750156*[0.8 - 0.4] = 0.0390 too large)
(= verdict wrong)
(= cone: out diameter 0.0390 half 0.000000 standoff 0.3900)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
(= slip nose-wrong)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
X37.761
G1 X44.961 Z-70. F0.1 (~ error metal-left)
X50.
Z-112.
G1 X56.
G0 X200. Z150.
M5
M30
%
