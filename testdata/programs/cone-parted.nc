%
O0161 (after the sound cone a blade-like plunge through the axis takes the whole front off)
(= part cone.toml)
(= verdict wrong)
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
G0 Z-85.
G1 X-1.6 F0.05 (~ error parted)
G1 X56.
G0 X200. Z150.
M5
M30
%
