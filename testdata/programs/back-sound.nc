%
O0111 (back cone, nose compensated by hand)
(= part back.toml)
(t = 1/8, R0.4: forgotten it gouges 2Rt[1 + tan[a/2]]; tan[a/2] = [sqrt[1 + 1/64] - 1]*8 = 0.0622577)
(2*0.4*0.125*1.0622577 = 0.1062258 on diameter; along Z that is 0.1062258*4 = 0.4249)
(collar ends at Z-20 - 0.425, the neck begins at Z-60 - 0.425)
(= verdict good)
(= front face: in z 0.0000)
(= collar: in diameter 0.0000)
(= cone: in diameter 0.0000 half 0.000000)
(= neck: in diameter 0.0000)
G21 G40 G99
G97 S800
T0202
M4
G0 X56. Z2.
X48.
G1 Z-20.425 F0.1
X38. Z-60.425
Z-76.
G1 X56.
G0 X200. Z150.
M5
M30
%
