%
(part: Float valve lever)
(drawing: WW-0250)
(digest of the values read: 6bf6b7f917beb197)
(set-up: 1 of 1)
(material: bronze)
(stock: diameter 32.000 mm, length 120.000 mm, on the)
(  front face 1.000 mm)
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
(cuts: up to X 36.500 mm, down to Z -70.500 mm)
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
(  0.250 mm to 0.343 mm, after roughing 0.250 mm to 0.492)
(  mm)
(note: roughness forecast f2/8R: 3.1 um, R 0.400 mm, feed)
(  0.100 mm/rev)
(note: face: at most 3000 rev/min, capped at 3000)
(note: rough: at most 3000 rev/min, capped at 3000)
(note: semi-finish: at most 3000 rev/min, capped at 3000)
(note: finish: at most 3000 rev/min, capped at 3000)
(rounding: clamp cone: half angle +2.18 sec, words can)
(  make 4.90 sec, diameter at the gauge plane +0.00027 mm)
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
(digest of the blocks below: d421120242090b26)
(tool 1, face: 180 m/min, at most 3000 rev/min)
N10 G21 G18 G40 G80 G99
N20 G0 X200.000
N30 G0 Z150.000
N40 T0101
N50 G50 S3000
N60 G96 S180 M4
(face, z 0.250 mm)
N70 G0 X200.000 Z2.250
N80 X36.500 Z2.250
N90 G1 X36.500 Z0.250 F0.250
N100 X-1.600 Z0.250
N110 X-1.600 Z1.250
N120 G0 X36.500 Z1.250
N130 X36.500 Z150.000
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
(level, diameter 30.500 mm)
N230 G0 X200.000 Z2.500
N240 X30.500 Z2.500
N250 G1 X30.500 Z-70.500 F0.250
N260 X32.000 Z-70.500
N270 X33.000 Z-70.000
(level, diameter 27.500 mm)
N280 G0 X33.000 Z2.500
N290 X27.500 Z2.500
N300 G1 X27.500 Z-53.750 F0.250
N310 X28.400 Z-53.750
N320 G3 X30.500 Z-54.800 I0.000 K-1.050
N330 G1 X31.500 Z-54.300
(level, diameter 24.500 mm)
N340 G0 X31.500 Z2.500
N350 X24.500 Z2.500
N360 G1 X24.500 Z-30.767 F0.250
N370 X27.373 Z-53.750
N380 X27.500 Z-53.750
N390 X28.500 Z-53.250
(level, diameter 20.150 mm)
N400 G0 X28.500 Z2.500
N410 X20.150 Z2.500
N420 G1 X20.150 Z-5.586 F0.250
N430 G3 X24.500 Z-12.800 I-10.876 K-7.214
N440 G1 X25.500 Z-12.300
(level, diameter 15.800 mm)
N450 G0 X25.500 Z2.500
N460 X15.800 Z2.500
N470 G1 X15.800 Z-3.073 F0.250
N480 G3 X20.150 Z-5.586 I-8.702 K-9.729
N490 G1 X21.150 Z-5.086
(level, diameter 11.450 mm)
N500 G0 X21.150 Z2.500
N510 X11.450 Z2.500
N520 G1 X11.450 Z-1.498 F0.250
N530 G3 X15.800 Z-3.073 I-6.528 K-11.303
N540 G1 X16.800 Z-2.573
(level, diameter 7.100 mm)
N550 G0 X16.800 Z2.500
N560 X7.100 Z2.500
N570 G1 X7.100 Z-0.496 F0.250
N580 G3 X11.450 Z-1.498 I-4.352 K-12.306
N590 G1 X12.450 Z-0.998
(level, diameter 2.750 mm)
N600 G0 X12.450 Z2.500
N610 X2.750 Z2.500
N620 G1 X2.750 Z0.067 F0.250
N630 G3 X7.100 Z-0.496 I-2.170 K-12.866
N640 G1 X8.100 Z0.004
(level, diameter -1.600 mm)
N650 G0 X8.100 Z2.500
N660 X-1.600 Z2.500
N670 G1 X-1.600 Z0.250 F0.250
N680 G3 X2.750 Z0.067 I-0.002 K-13.048
N690 G1 X3.750 Z0.567
N700 G0 X36.500 Z0.567
N710 X36.500 Z150.000
N720 X200.000 Z150.000
(tool 1 done)
N730 M5
N740 M1
(tool 3, semi-finish: 220 m/min, at most 3000 rev/min)
N750 G21 G18 G40 G80 G99
N760 G0 X200.000
N770 G0 Z150.000
N780 T0303
N790 G50 S3000
N800 G96 S220 M4
(even skin 0.250 mm)
N810 G0 X200.000 Z3.250
N820 X-1.200 Z3.250
N830 G1 X-1.200 Z0.250 F0.100
N840 X-0.800 Z0.250
(ball)
N850 G3 X24.500 Z-12.400 I0.000 K-12.650
(stem)
N860 G1 X24.500 Z-30.380
(clamp cone)
N870 X27.421 Z-53.750
(shoulder 1)
N880 X29.200 Z-53.750
N890 G3 X30.500 Z-54.400 I0.000 K-0.650
(hub)
N900 G1 X30.500 Z-69.400
(clear)
N910 X30.500 Z-69.900
N920 X32.500 Z-68.900
N930 G0 X36.500 Z-68.900
N940 X36.500 Z150.000
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
N1050 X5.000 Z2.000
N1060 G1 X5.000 Z0.000 F0.100
N1070 X-0.800 Z0.000
N1080 X-0.800 Z1.000
(contour)
N1090 G0 X36.500 Z1.000
N1100 X36.500 Z3.250
N1110 X-1.200 Z3.250
N1120 G1 X-1.200 Z0.000 F0.100
N1130 X-0.800 Z0.000
(ball)
N1140 G3 X24.000 Z-12.400 I0.000 K-12.400
(stem)
N1150 G1 X24.000 Z-30.388
(clamp cone)
N1160 X26.952 Z-54.000
(shoulder 1)
N1170 X29.200 Z-54.000
N1180 G3 X30.000 Z-54.400 I0.000 K-0.400
(hub)
N1190 G1 X30.000 Z-69.400
(clear)
N1200 X30.000 Z-69.900
N1210 X32.000 Z-68.900
N1220 G0 X36.500 Z-68.900
N1230 X36.500 Z150.000
N1240 X200.000 Z150.000
(tool 3 done)
N1250 M5
N1260 M30
%
