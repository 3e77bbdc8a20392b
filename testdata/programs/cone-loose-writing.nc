%
o0110 (lower case, blanks inside, leading zeros, signs)
(= part cone.toml)
(= twin cone-sound.nc)
(= verdict good)
(= front face: in z 0.0000)
(= cone: in diameter 0.0000 half 0.000000 standoff 0.0000)
(= shoulder: in z 0.0000)
(= journal: in diameter 0.0000)
n10g21g40 g99
n20 g97s800
n30t0101
m04
n50 g00x+056. z 2.
x37.7 22 (~ warning blank-in-number)
g01 x4 4.922z-070.f.1 (~ warning blank-in-number)
/ x50.
z-112.
g01x56.
g00x200.z150.
m05
m30
%
