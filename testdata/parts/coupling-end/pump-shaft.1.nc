%
(part: Pump shaft, coupling end)
(drawing: WW-0217)
(digest of the values read: b6f3253fd3b8b598)
(set-up: 1 of 1)
(material: steel, 0.45 ? C)
(stock: diameter 65.000 mm, length 366.000 mm, on the)
(  front face 1.500 mm)
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
(cuts: up to X 69.500 mm, down to Z -131.500 mm)
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
(  0.250 mm to 0.345 mm, after roughing 0.250 mm to 0.497)
(  mm)
(note: roughness forecast f2/8R: 3.1 um, R 0.400 mm, feed)
(  0.100 mm/rev)
(note: face: at most 3000 rev/min, capped at 3000)
(note: rough: at most 1593 rev/min, capped at 3000)
(note: semi-finish: at most 2430 rev/min, capped at 3000)
(note: finish: at most 3000 rev/min, capped at 3000)
(rounding: coupling cone: half angle +0.74 sec, words can)
(  make 1.65 sec, diameter at the gauge plane +0.00016 mm)
(rounding: too small for the words: 1 arc written as a)
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
(digest of the blocks below: edc5e2bd975467c4)
(tool 1, face: 180 m/min, at most 3000 rev/min)
N10 G21 G18 G40 G80 G99
N20 G0 X200.000
N30 G0 Z150.000
N40 T0101
N50 G50 S3000
N60 G96 S180 M4
(face, z 0.250 mm)
N70 G0 X200.000 Z2.250
N80 X69.500 Z2.250
N90 G1 X69.500 Z0.250 F0.250
N100 X-1.600 Z0.250
N110 X-1.600 Z1.250
N120 G0 X69.500 Z1.250
N130 X69.500 Z150.000
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
(level, diameter 60.500 mm)
N230 G0 X200.000 Z2.500
N240 X60.500 Z2.500
N250 G1 X60.500 Z-131.500 F0.250
N260 X65.000 Z-131.500
N270 X66.000 Z-131.000
(level, diameter 55.505 mm)
N280 G0 X66.000 Z2.500
N290 X55.505 Z2.500
N300 G1 X55.505 Z-109.751 F0.250
N310 G3 X56.885 Z-110.058 I-0.053 K-1.048
N320 G1 X59.885 Z-111.558
N330 G3 X60.500 Z-112.300 I-0.741 K-0.742
N340 G1 X61.500 Z-111.800
(level, diameter 50.510 mm)
N350 G0 X61.500 Z2.500
N360 X50.510 Z2.500
N370 G1 X50.510 Z-109.200 F0.250
N380 G2 X51.610 Z-109.750 I0.550 K0.000
N390 G1 X55.400 Z-109.750
N400 X55.505 Z-109.751
N410 X56.505 Z-109.251
(level, diameter 45.663 mm)
N420 G0 X56.505 Z2.500
N430 X45.663 Z2.500
N440 G1 X45.663 Z-69.750 F0.250
N450 X47.960 Z-69.750
N460 G3 X49.445 Z-70.058 I0.000 K-1.049
N470 G1 X49.895 Z-70.283
N480 G3 X50.510 Z-71.025 I-0.741 K-0.742
N490 G1 X51.510 Z-70.525
(level, diameter 40.817 mm)
N500 G0 X51.510 Z2.500
N510 X40.817 Z2.500
N520 G1 X40.817 Z-24.071 F0.250
N530 X45.388 Z-69.750
N540 X45.663 Z-69.750
N550 X46.663 Z-69.250
(level, diameter 35.970 mm)
N560 G0 X46.663 Z2.500
N570 X35.970 Z2.500
N580 G1 X35.970 Z-0.058 F0.250
N590 X37.970 Z-1.058
N600 G3 X38.583 Z-1.748 I-0.740 K-0.742
N610 G1 X40.817 Z-24.071
N620 X41.817 Z-23.571
N630 G0 X69.500 Z-23.571
N640 X69.500 Z150.000
N650 X200.000 Z150.000
(tool 1 done)
N660 M5
N670 M1
(tool 3, semi-finish: 220 m/min, at most 3000 rev/min)
N680 G21 G18 G40 G80 G99
N690 G0 X200.000
N700 G0 Z150.000
N710 T0303
N720 G50 S3000
N730 G96 S220 M4
(even skin 0.250 mm)
N740 G0 X200.000 Z3.750
N750 X28.824 Z3.750
N760 G1 X36.205 Z0.060 F0.100
(chamfer 1)
N770 X38.205 Z-0.940
N780 G3 X38.584 Z-1.368 I-0.461 K-0.460
(coupling cone)
N790 G1 X45.427 Z-69.750
(shoulder 1)
N800 X48.760 Z-69.750
N810 G3 X49.679 Z-69.940 I0.000 K-0.651
(edge 1)
N820 G1 X50.129 Z-70.165
N830 G3 X50.510 Z-70.625 I-0.460 K-0.460
(front journal)
N840 G1 X50.510 Z-108.800
(fillet 1)
N850 G2 X52.410 Z-109.750 I0.950 K0.000
(shoulder 2)
N860 G1 X56.200 Z-109.750
N870 G3 X57.119 Z-109.940 I0.000 K-0.651
(chamfer 2)
N880 G1 X60.119 Z-111.440
N890 G3 X60.500 Z-111.900 I-0.460 K-0.460
(collar)
N900 G1 X60.500 Z-130.400
(clear)
N910 X60.500 Z-130.900
N920 X62.500 Z-129.900
N930 G0 X69.500 Z-129.900
N940 X69.500 Z150.000
N950 X200.000 Z150.000
(tool 3 done)
N960 M5
N970 M1
(tool 3, finish: 220 m/min, at most 3000 rev/min)
N980 G21 G18 G40 G80 G99
N990 G0 X200.000
N1000 G0 Z150.000
N1010 T0303
N1020 G50 S3000
N1030 G96 S220 M4
(front face)
N1040 G0 X200.000 Z2.000
N1050 X41.085 Z2.000
N1060 G1 X41.085 Z0.000 F0.100
N1070 X-0.800 Z0.000
(clear)
N1080 X-0.800 Z1.000
(contour)
N1090 G0 X69.500 Z1.000
N1100 X69.500 Z3.750
N1110 X28.117 Z3.750
N1120 G1 X35.851 Z-0.117 F0.100
(chamfer 1)
N1130 X37.851 Z-1.117
N1140 G3 X38.084 Z-1.380 I-0.284 K-0.283
(coupling cone)
N1150 G1 X44.952 Z-70.000
(shoulder 1)
N1160 X48.760 Z-70.000
N1170 G3 X49.326 Z-70.117 I0.000 K-0.401
(edge 1)
N1180 G1 X49.776 Z-70.342
N1190 G3 X50.010 Z-70.625 I-0.284 K-0.283
(front journal)
N1200 G1 X50.010 Z-108.800
(fillet 1)
N1210 G2 X52.410 Z-110.000 I1.200 K0.000
(shoulder 2)
N1220 G1 X56.200 Z-110.000
N1230 G3 X56.766 Z-110.117 I0.000 K-0.401
(chamfer 2)
N1240 G1 X59.766 Z-111.617
N1250 G3 X60.000 Z-111.900 I-0.284 K-0.283
(collar)
N1260 G1 X60.000 Z-130.400
(clear)
N1270 X60.000 Z-130.900
N1280 X62.000 Z-129.900
N1290 G0 X69.500 Z-129.900
N1300 X69.500 Z150.000
N1310 X200.000 Z150.000
(tool 3 done)
N1320 M5
N1330 M30
%
