%
O0131 (steep cone, compensated by hand)
(= part steep.toml)
(t = 7/48; tan[a/2] = [sqrt[1 + t^2] - 1]/t = 0.0725330; 2*0.8*t*0.9274670 = 0.2164090)
(Z3: 30 - 3*7/24 - 0.2164 = 28.9086, Z-48: 30 + 14 - 0.2164 = 43.7836)
(= verdict good)
(the words give 28.909 - 28.9086 = 0.0004)
(= cone: in diameter 0.0004)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z3.
X28.909
G1 X43.784 Z-48. F0.1
X50.
Z-70.
G1 X56.
G0 X200. Z150.
M5
M30
%
