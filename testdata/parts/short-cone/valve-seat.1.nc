%
(part: Foot valve seat)
(drawing: WW-0246)
(digest of the values read: 2f46ad4d808b9d7f)
(set-up: 1 of 1)
(material: bronze)
(stock: diameter 40.000 mm, length 90.000 mm, on the)
(  front face 0.800 mm)
(Z0: finished front face, Z rises away from the chuck)
(words: X is a diameter, lengths in mm, I K R as radii in)
(  mm, speed in m/min, feed per revolution)
(tool: station 1, offset 1, nose radius 0.800 mm,)
(  programmed point: X- Z- of the nose: face, rough)
(tool: station 3, offset 3, nose radius 0.400 mm,)
(  programmed point: X- Z- of the nose: semi-finish, finish)
(hold: not given: taken as held at the back end of the)
(  stock)
(nose: compensated in the path, no control compensation)
(change point: X 200.000 mm, Z 150.000 mm)
(cuts: up to X 44.500 mm, down to Z -21.500 mm)
(assumed: general_tolerance = medium ?ISO 2768-1?)
(assumed: stock.oversize = 0.5000 mm on diameter, for)
(  clearances)
(assumed: edges.inside_at_most = 0.4000 mm, the finish)
(  nose radius)
(assumed: setup = one, front face outward, held at the)
(  back end of the stock)
(note: path of the programmed point, nose radius worked)
(  in: no G41 G42, and another nose radius makes another)
(  part)
(note: skin before finishing, normal to the contour:)
(  0.250 mm to 0.346 mm, after roughing 0.250 mm to 0.501)
(  mm)
(note: roughness forecast f2/8R: 3.1 um, R 0.400 mm, feed)
(  0.100 mm/rev)
(note: face: at most 3000 rev/min, capped at 3000)
(note: rough: at most 1986 rev/min, capped at 3000)
(note: semi-finish: at most 2452 rev/min, capped at 3000)
(note: finish: at most 3000 rev/min, capped at 3000)
(rounding: seat: half angle -1.53 sec, words can make)
(  19.87 sec, diameter at the gauge plane -0.00032 mm)
(coolant: no word is posted: switch it by hand)
(caution: chuck and jaws are not checked against the)
(  path: check the grip and the lowest z by hand)
(caution: this plan is arithmetic, not permission: the)
(  person at the machine decides)
(caution: the manual of the machine and local rules come)
(  first)
(caution: guards and doors shut, chuck key out, no)
(  gloves, rags, rings, loose sleeves)
(caution: hold to the lowest speed that chuck, work and)
(  balance allow, set at the machine too)
(caution: bar behind the spindle: cut short, or supported)
(  over its full length)
(caution: turn by hand first: grip, jaws, turret and)
(  centre clear of each other)
(caution: first run without work, rapids low, then single)
(  block, first cut above size)
(caution: enter at the top of a tool block only, with the)
(  tool clear of the work)
(caution: no emery by hand, stop the spindle to measure)
(  and to clear chips, with a brush)
(digest of the blocks below: 0e833c1434b9c9b5)
(tool 1, face: 180 m/min, at most 3000 rev/min)
N10 G21 G18 G40 G80 G99
N20 G0 X200.000
N30 G0 Z150.000
N40 T0101
N50 G50 S3000
N60 G96 S180 M4
(face, z 0.250 mm)
N70 G0 X200.000 Z2.250
N80 X44.500 Z2.250
N90 G1 X44.500 Z0.250 F0.250
N100 X-1.600 Z0.250
N110 X-1.600 Z1.250
N120 G0 X44.500 Z1.250
N130 X44.500 Z150.000
N140 X200.000 Z150.000
(tool 1 done)
N150 M5
N160 M1
(tool 1, rough: 180 m/min, at most 3000 rev/min)
N170 G21 G18 G40 G80 G99
N180 G0 X200.000
N190 G0 Z150.000
N200 T0101
N210 G50 S3000
N220 G96 S180 M4
(level, diameter 36.469 mm)
N230 G0 X200.000 Z2.500
N240 X36.469 Z2.500
N250 G1 X36.469 Z-21.500 F0.250
N260 X40.000 Z-21.500
N270 X41.000 Z-21.000
(level, diameter 32.659 mm)
N280 G0 X41.000 Z2.500
N290 X32.659 Z2.500
N300 G1 X32.659 Z-5.750 F0.250
N310 X34.369 Z-5.750
N320 G3 X36.469 Z-6.800 I0.000 K-1.050
N330 G1 X37.469 Z-6.300
(level, diameter 28.848 mm)
N340 G0 X37.469 Z2.500
N350 X28.848 Z2.500
N360 G1 X28.848 Z-0.756 F0.250
N370 X29.264 Z-5.750
N380 X32.659 Z-5.750
N390 X33.659 Z-5.250
N400 G0 X44.500 Z-5.250
N410 X44.500 Z150.000
N420 X200.000 Z150.000
(tool 1 done)
N430 M5
N440 M1
(tool 3, semi-finish: 220 m/min, at most 3000 rev/min)
N450 G21 G18 G40 G80 G99
N460 G0 X200.000
N470 G0 Z150.000
N480 T0303
N490 G50 S3000
N500 G96 S220 M4
(even skin 0.250 mm)
N510 G0 X200.000 Z3.050
N520 X28.564 Z3.050
N530 G1 X28.849 Z-0.373 F0.100
(seat)
N540 X29.297 Z-5.750
(shoulder 1)
N550 X35.169 Z-5.750
N560 G3 X36.469 Z-6.400 I0.000 K-0.650
(rim)
N570 G1 X36.469 Z-20.400
(clear)
N580 X36.469 Z-20.900
N590 X38.469 Z-19.900
N600 G0 X44.500 Z-19.900
N610 X44.500 Z150.000
N620 X200.000 Z150.000
(tool 3 done)
N630 M5
N640 M1
(tool 3, finish: 220 m/min, at most 3000 rev/min)
N650 G21 G18 G40 G80 G99
N660 G0 X200.000
N670 G0 Z150.000
N680 T0303
N690 G50 S3000
N700 G96 S220 M4
(front face)
N710 G0 X200.000 Z2.000
N720 X33.350 Z2.000
N730 G1 X33.350 Z0.000 F0.100
N740 X-0.800 Z0.000
(clear)
N750 X-0.800 Z1.000
(contour)
N760 G0 X44.500 Z1.000
N770 X44.500 Z3.050
N780 X28.063 Z3.050
N790 G1 X28.349 Z-0.383 F0.100
(seat)
N800 X28.817 Z-6.000
(shoulder 1)
N810 X35.169 Z-6.000
N820 G3 X35.969 Z-6.400 I0.000 K-0.400
(rim)
N830 G1 X35.969 Z-20.400
(clear)
N840 X35.969 Z-20.900
N850 X37.969 Z-19.900
N860 G0 X44.500 Z-19.900
N870 X44.500 Z150.000
N880 X200.000 Z150.000
(tool 3 done)
N890 M5
N900 M30
%
