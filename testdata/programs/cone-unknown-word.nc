%
O0163 (a word that nobody knows stands before the cut)
(= part cone.toml)
(= verdict cannot-judge)
G21 G40 G99
G97 S800
T0101
M4
G0 X56. Z2.
G187 P2 (~ error unknown-word)
X37.722
G1 X44.922 Z-70. F0.1
X50.
Z-112.
G1 X56.
G0 X200. Z150.
M5
M30
%
