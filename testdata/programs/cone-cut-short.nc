%
O0162 (the file ends in the middle of the cone)
(= part cone.toml)
(= verdict cannot-judge)
G21 G40 G99
G97 S800
T0101
M4
F0.1
G0 X56. Z2.
X37.722
G1 X44.922 Z-7 (~ error no-end-word)