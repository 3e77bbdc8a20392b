%
O0143 (chamfer and fillet programmed to the drawing)
(= part step.toml)
(fillet: nose centre on R3, so R3.4 is left; chamfer 0.4686 left on diameter: width 2 - 0.2343 = 1.7657)
(the classes for R3 and for width 2 are both +-0.2)
(= verdict wrong)
(= front face: in z 0.0000)
(= nose chamfer: out width 1.7657)
(= pin: in diameter 0.0000)
(= root fillet: out radius 3.40)
(the arc of 3.4 runs 0.2 beyond the zone of the largest fillet allowed: the face takes 0.0001 of it)
(= collar face: in z 0.0001)
(= collar: in diameter 0.0000)
(= slip nose-forgotten)
G21 G40 G99
G97 S800
T0202
M4
G0 X56. Z2.
Z0.
G1 X-0.8 F0.1
G0 Z2.
X24.
G1 Z1.
X30. Z-2. (~ error wrong-edge)
Z-22.
G2 X36. Z-25. R3. (~ error metal-left)
G1 X44.
Z-46.
G1 X56.
G0 X200. Z150.
M5
M30
%
