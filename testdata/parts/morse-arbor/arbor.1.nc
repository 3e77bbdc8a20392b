%
(part: Drill press arbor)
(drawing: WW-0230)
(digest of the values read: e63a2e33465a4abc)
(set-up: 1 of 1)
(material: steel, 0.45 ? C)
(stock: diameter 1.2500 in, length 6.0000 in, on the)
(  front face 0.0500 in)
(Z0: finished front face, Z rises away from the chuck)
(words: X is a diameter, lengths in inch, I K R as radii)
(  in inch, speed in ft/min, feed per revolution)
(tool: station 1, offset 1, nose radius 0.0315 in,)
(  programmed point: X- Z- of the nose: face, rough)
(tool: station 3, offset 3, nose radius 0.0157 in,)
(  programmed point: X- Z- of the nose: semi-finish, finish)
(hold: not given: taken as held at the back end of the)
(  stock)
(nose: compensated in the path, no control compensation)
(change point: X 8.0000 in, Z 6.0000 in)
(cuts: up to X 1.4272 in, down to Z -3.7466 in)
(assumed: general_tolerance = medium ?ISO 2768-1?)
(assumed: stock.oversize = 0.0197 in on diameter, for)
(  clearances)
(assumed: edges.inside_at_most = 0.0157 in, the finish)
(  nose radius)
(assumed: setup = one, front face outward, held at the)
(  back end of the stock)
(note: path of the programmed point, nose radius worked)
(  in: no G41 G42, and another nose radius makes another)
(  part)
(note: skin before finishing, normal to the contour:)
(  0.0098 in to 0.0137 in, after roughing 0.0098 in to)
(  0.0200 in)
(note: roughness forecast f2/8R: 3.2 um, R 0.0157 in,)
(  feed 0.0040 in/rev)
(note: face: at most 3000 rev/min, capped at 3000)
(note: rough: at most 3000 rev/min, capped at 3000)
(note: semi-finish: at most 3000 rev/min, capped at 3000)
(note: finish: at most 3000 rev/min, capped at 3000)
(rounding: shank: half angle -0.47 sec, words can make)
(  3.48 sec, diameter at the gauge plane -0.00049 mm)
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
(digest of the blocks below: e974a98fb27a197c)
(tool 1, face: 590 ft/min, at most 3000 rev/min)
N10 G20 G18 G40 G80 G99
N20 G0 X8.0000
N30 G0 Z6.0000
N40 T0101
N50 G50 S3000
N60 G96 S590 M4
(face, z 0.0098 in)
N70 G0 X8.0000 Z0.0886
N80 X1.4272 Z0.0886
N90 G1 X1.4272 Z0.0098 F0.0100
N100 X-0.0630 Z0.0098
N110 X-0.0630 Z0.0492
N120 G0 X1.4272 Z0.0492
N130 X1.4272 Z6.0000
N140 X8.0000 Z6.0000
(tool 1 done)
N150 M5
N160 M1
(tool 1, rough: 590 ft/min, at most 3000 rev/min)
N170 G20 G18 G40 G80 G99
N180 G0 X8.0000
N190 G0 Z6.0000
N200 T0101
N210 G50 S3000
N220 G96 S590 M4
(level, diameter 1.1447 in)
N230 G0 X8.0000 Z0.0984
N240 X1.1447 Z0.0984
N250 G1 X1.1447 Z-3.7466 F0.0100
N260 X1.2500 Z-3.7466
N270 X1.2894 Z-3.7269
(level, diameter 0.9820 in)
N280 G0 X1.2894 Z0.0984
N290 X0.9820 Z0.0984
N300 G1 X0.9820 Z-3.1777 F0.0100
N310 X1.0620 Z-3.1777
N320 G3 X1.1447 Z-3.2190 I0.0000 K-0.0414
N330 G1 X1.1841 Z-3.1993
(level, diameter 0.8192 in)
N340 G0 X1.1841 Z0.0984
N350 X0.8192 Z0.0984
N360 G1 X0.8192 Z-0.4599 F0.0100
N370 X0.9556 Z-3.1777
N380 X0.9820 Z-3.1777
N390 X1.0213 Z-3.1580
(level, diameter 0.6565 in)
N400 G0 X1.0213 Z0.0984
N410 X0.6565 Z0.0984
N420 G1 X0.6565 Z-0.0023 F0.0100
N430 X0.7765 Z-0.0623
N440 G3 X0.8007 Z-0.0905 I-0.0291 K-0.0292
N450 G1 X0.8192 Z-0.4599
N460 X0.8586 Z-0.4402
N470 G0 X1.4272 Z-0.4402
N480 X1.4272 Z6.0000
N490 X8.0000 Z6.0000
(tool 1 done)
N500 M5
N510 M1
(tool 3, semi-finish: 720 ft/min, at most 3000 rev/min)
N520 G20 G18 G40 G80 G99
N530 G0 X8.0000
N540 G0 Z6.0000
N550 T0303
N560 G50 S3000
N570 G96 S720 M4
(even skin 0.0098 in)
N580 G0 X8.0000 Z0.1386
N590 X0.3932 Z0.1386
N600 G1 X0.6657 Z0.0023 F0.0040
(chamfer 1)
N610 X0.7857 Z-0.0577
N620 G3 X0.8007 Z-0.0751 I-0.0181 K-0.0181
(shank)
N630 G1 X0.9564 Z-3.1777
(shoulder 1)
N640 X1.0935 Z-3.1777
N650 G3 X1.1447 Z-3.2032 I0.0001 K-0.0255
(body)
N660 G1 X1.1447 Z-3.7032
(clear)
N670 X1.1447 Z-3.7229
N680 X1.2234 Z-3.6836
N690 G0 X1.4272 Z-3.6836
N700 X1.4272 Z6.0000
N710 X8.0000 Z6.0000
(tool 3 done)
N720 M5
N730 M1
(tool 3, finish: 720 ft/min, at most 3000 rev/min)
N740 G20 G18 G40 G80 G99
N750 G0 X8.0000
N760 G0 Z6.0000
N770 T0303
N780 G50 S3000
N790 G96 S720 M4
(front face)
N800 G0 X8.0000 Z0.0787
N810 X0.8579 Z0.0787
N820 G1 X0.8579 Z0.0000 F0.0040
N830 X-0.0315 Z0.0000
(clear)
N840 X-0.0315 Z0.0394
(contour)
N850 G0 X1.4272 Z0.0394
N860 X1.4272 Z0.1386
N870 X0.3654 Z0.1386
N880 G1 X0.6518 Z-0.0046 F0.0040
(chamfer 1)
N890 X0.7718 Z-0.0646
N900 G3 X0.7810 Z-0.0754 I-0.0113 K-0.0112
(shank)
N910 G1 X0.9372 Z-3.1875
(shoulder 1)
N920 X1.0935 Z-3.1875
N930 G3 X1.1250 Z-3.2032 I0.0000 K-0.0158
(body)
N940 G1 X1.1250 Z-3.7032
(clear)
N950 X1.1250 Z-3.7229
N960 X1.2037 Z-3.6836
N970 G0 X1.4272 Z-3.6836
N980 X1.4272 Z6.0000
N990 X8.0000 Z6.0000
(tool 3 done)
N1000 M5
N1010 M30
%
