%
O0103 (half of the half angle used: the included angle of the drawing taken for the half angle and halved)
(= part cone.toml)
(tan[2.862405/2 deg] = 0.0249844; own nose allowance 2*0.8*0.0249844*0.98751 = 0.03948)
(Z2: 38 - 4*0.0249844 - 0.0395 = 37.861, Z-70: 38 + 140*0.0249844 - 0.0395 = 41.458)
(words give t = [41.458 - 37.861]/144 = 0.0249792; at the gauge plane 37.861 + 62*0.0499583 + 0.0394676 = 40.9978843: -3.0021)
(half angle atan 0.0249792 = 1.430903, wanted 2.862405: -1.431502)
(= verdict wrong)
(= cone: out diameter -3.0021 half -1.431502)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
(= slip half-for-included)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
X37.861
G1 X41.458 Z-70. F0.1 (~ error gouge)
X50.
Z-112.
G1 X56.
G0 X200. Z150.
M5
M30
%
