%
O0112 (back cone programmed to its sharp corners)
(= part back.toml)
(2*0.4*0.125*1.0622577 = 0.1062 gouged on diameter; the collar ends 0.425 early,)
(more than the 0.2 its length may be off, so its end is out too)
(1:4: the mate comes 0.1062258*4 = 0.4249 too far)
(= verdict wrong)
(= front face: in z 0.0000)
(= collar: out diameter 0.0000 gouge 0.1062)
(= cone: out diameter -0.1062 half 0.000000 standoff -0.425)
(= neck: in diameter 0.0000)
(= slip nose-forgotten)
G21 G40 G99
G97 S800
T0202
M4
G0 X56. Z2.
X48.
G1 Z-20. F0.1
X38. Z-60. (~ error gouge) (~ error gouge)
Z-76.
G1 X56.
G0 X200. Z150.
M5
M30
%
