%
O0142 (chamfer and fillet, centre by R)
(= part step.toml)
(facing to X-0.8 brings the centre of R0.4 to the axis)
(45 degrees: 2*0.4*1*[1 - tan 22.5] = 0.4686; Z1: 30 - 2*3 - 0.4686 = 23.5314; meets X30 at Z-2 - 0.2343; as words 0.0002 wider)
(fillet R3 about Z-22 X36: nose centre on R2.6, tip from X30 Z-22.4 to X35.2 Z-25, centre X35.2 Z-22.4)
(= twin step-ik.nc)
(= verdict good)
(= front face: in z 0.0000)
(= nose chamfer: in width 2.0002)
(= pin: in diameter 0.0000)
(= root fillet: in radius 3.0000)
(= collar face: in z 0.0000)
(= collar: in diameter 0.0000)
G21 G40 G99
G97 S800
T0202
M4
G0 X56. Z2.
Z0.
G1 X-0.8 F0.1
G0 Z2.
X23.531
G1 Z1.
X30. Z-2.2345
Z-22.4
G2 X35.2 Z-25. R2.6
G1 X44.
Z-46.
G1 X56.
G0 X200. Z150.
M5
M30
%
