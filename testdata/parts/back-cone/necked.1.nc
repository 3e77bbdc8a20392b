%
(part: Gland follower)
(drawing: WW-0244)
(digest of the values read: 9403d713476dc9fd)
(set-up: 1 of 1)
(material: bronze)
(stock: diameter 50.000 mm, length 120.000 mm, on the)
(  front face 1.000 mm)
(Z0: finished front face, Z rises away from the chuck)
(words: X is a diameter, lengths in mm, I K R as radii in)
(  mm, speed in m/min, feed per revolution)
(tool: station 1, offset 1, nose radius 0.800 mm,)
(  programmed point: X- Z- of the nose: face, rough)
(tool: station 3, offset 3, nose radius 0.400 mm,)
(  programmed point: X- Z- of the nose: rough, finish)
(hold: not given: taken as held at the back end of the)
(  stock)
(nose: compensated in the path, no control compensation)
(change point: X 200.000 mm, Z 150.000 mm)
(cuts: up to X 54.500 mm, down to Z -64.500 mm)
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
(  0.250 mm to 0.354 mm, after roughing 0.250 mm to 0.354)
(  mm)
(note: roughness forecast f2/8R: 3.1 um, R 0.400 mm, feed)
(  0.100 mm/rev)
(note: face: at most 3000 rev/min, capped at 3000)
(note: rough: at most 1345 rev/min, capped at 3000)
(note: rough: at most 1775 rev/min, capped at 3000)
(note: finish: at most 3000 rev/min, capped at 3000)
(rounding: back cone: half angle -0.37 sec, words can)
(  make 6.91 sec, diameter at the gauge plane +0.00006 mm)
(rounding: too small for the words: 2 arcs written as a)
(  line, 0 arcs and 0 lines left out)
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
(digest of the blocks below: 71b3baa683306b19)
(tool 1, face: 180 m/min, at most 3000 rev/min)
N10 G21 G18 G40 G80 G99
N20 G0 X200.000
N30 G0 Z150.000
N40 T0101
N50 G50 S3000
N60 G96 S180 M4
(face, z 0.250 mm)
N70 G0 X200.000 Z2.250
N80 X54.500 Z2.250
N90 G1 X54.500 Z0.250 F0.250
N100 X-1.600 Z0.250
N110 X-1.600 Z1.250
N120 G0 X54.500 Z1.250
N130 X54.500 Z150.000
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
(level, diameter 48.500 mm)
N230 G0 X200.000 Z2.500
N240 X48.500 Z2.500
N250 G1 X48.500 Z-64.500 F0.250
N260 X50.000 Z-64.500
N270 X51.000 Z-64.000
(level, diameter 46.469 mm)
N280 G0 X51.000 Z2.500
N290 X46.469 Z2.500
N300 G1 X46.469 Z-52.751 F0.250
N310 G3 X48.500 Z-53.800 I-0.034 K-1.049
N320 G1 X49.500 Z-53.300
(level, diameter 42.608 mm)
N330 G0 X49.500 Z-15.888
N340 X47.469 Z-15.888
N350 G1 X46.469 Z-15.888 F0.125
N360 X46.466 Z-15.943 F0.250
N370 X42.608 Z-52.750
N380 X46.400 Z-52.750
N390 X46.469 Z-52.751
N400 X47.469 Z-52.251
N410 G0 X54.500 Z-52.251
N420 X54.500 Z150.000
N430 X200.000 Z150.000
(tool 1 done)
N440 M5
N450 M1
(tool 3, rough: 220 m/min, at most 3000 rev/min)
N460 G21 G18 G40 G80 G99
N470 G0 X200.000
N480 G0 Z150.000
N490 T0303
N500 G50 S3000
N510 G96 S220 M4
(level, diameter 46.482 mm)
N520 G0 X200.000 Z-51.750
N530 X49.241 Z-51.750
N540 G1 X46.482 Z-51.750 F0.050
N550 X46.482 Z-52.750 F0.100
N560 X47.200 Z-52.750
N570 G3 X48.241 Z-53.011 I0.001 K-0.648
N580 G1 X49.241 Z-52.511
(level, diameter 44.723 mm)
N590 G0 X54.500 Z-52.511
N600 X54.500 Z-15.488
N610 X47.482 Z-15.488
N620 G1 X46.469 Z-15.488 F0.050
N630 G3 X46.449 Z-15.601 I-0.652 K0.001 F0.100
N640 G1 X44.723 Z-20.495
N650 X44.723 Z-33.158
N660 X45.723 Z-32.658
(level, diameter 44.723 mm)
N670 G0 X54.500 Z-32.658
N680 X54.500 Z-51.750
N690 X47.482 Z-51.750
N700 G1 X44.723 Z-51.750 F0.050
N710 X44.723 Z-52.750 F0.100
N720 X46.482 Z-52.750
N730 X47.482 Z-52.250
(level, diameter 42.965 mm)
N740 G0 X54.500 Z-52.250
N750 X54.500 Z-20.495
N760 X45.723 Z-20.495
N770 G1 X44.723 Z-20.495 F0.050
N780 X42.965 Z-25.482 F0.100
N790 X42.965 Z-49.939
N800 X43.965 Z-49.439
(level, diameter 42.965 mm)
N810 G0 X54.500 Z-49.439
N820 X54.500 Z-51.683
N830 X45.723 Z-51.683
N840 G1 X42.965 Z-51.683 F0.050
N850 X42.965 Z-52.750 F0.100
N860 X44.723 Z-52.750
N870 X45.723 Z-52.250
(level, diameter 41.206 mm)
N880 G0 X54.500 Z-52.250
N890 X54.500 Z-25.482
N900 X43.965 Z-25.482
N910 G1 X42.965 Z-25.482 F0.050
N920 X41.206 Z-30.469 F0.100
N930 X41.206 Z-52.750
N940 X42.965 Z-52.750
N950 X43.965 Z-52.250
(level, diameter 39.447 mm)
N960 G0 X54.500 Z-52.250
N970 X54.500 Z-30.469
N980 X42.206 Z-30.469
N990 G1 X41.206 Z-30.469 F0.050
N1000 X39.447 Z-35.457 F0.100
N1010 X39.447 Z-52.750
N1020 X41.206 Z-52.750
N1030 X42.206 Z-52.250
N1040 G0 X54.500 Z-52.250
N1050 X54.500 Z150.000
N1060 X200.000 Z150.000
(tool 3 done)
N1070 M5
N1080 M1
(tool 3, finish: 220 m/min, at most 3000 rev/min)
N1090 G21 G18 G40 G80 G99
N1100 G0 X200.000
N1110 G0 Z150.000
N1120 T0303
N1130 G50 S3000
N1140 G96 S220 M4
(front face)
N1150 G0 X200.000 Z2.000
N1160 X50.969 Z2.000
N1170 G1 X50.969 Z0.000 F0.100
N1180 X-0.800 Z0.000
(clear)
N1190 X-0.800 Z1.000
(contour)
N1200 G0 X54.500 Z1.000
N1210 X54.500 Z3.250
N1220 X45.969 Z3.250
N1230 G1 X45.969 Z-0.400 F0.100
(collar)
N1240 X45.969 Z-15.488
N1250 G3 X45.957 Z-15.557 I-0.400 K0.000
(back cone)
N1260 G1 X38.947 Z-35.435
(neck)
N1270 X38.947 Z-53.000
(shoulder 1)
N1280 X47.200 Z-53.000
N1290 G3 X48.000 Z-53.400 I0.000 K-0.400
(flange)
N1300 G1 X48.000 Z-63.400
(clear)
N1310 X48.000 Z-63.900
N1320 X50.000 Z-62.900
N1330 G0 X54.500 Z-62.900
N1340 X54.500 Z150.000
N1350 X200.000 Z150.000
(tool 3 done)
N1360 M5
N1370 M30
%
