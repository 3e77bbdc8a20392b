%
(part: Boring head nose)
(drawing: WW-0241)
(digest of the values read: 4d34c7410dbf1118)
(set-up: 1 of 1)
(material: steel, 0.45 ? C)
(stock: diameter 60.000 mm, length 160.000 mm, on the)
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
(cuts: up to X 64.500 mm, down to Z -73.500 mm)
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
(  0.250 mm to 0.331 mm, after roughing 0.250 mm to 0.459)
(  mm)
(note: roughness forecast f2/8R: 3.1 um, R 0.400 mm, feed)
(  0.100 mm/rev)
(note: face: at most 3000 rev/min, capped at 3000)
(note: rough: at most 2166 rev/min, capped at 3000)
(note: semi-finish: at most 3000 rev/min, capped at 3000)
(note: finish: at most 3000 rev/min, capped at 3000)
(rounding: steep cone: half angle +0.64 sec, words can)
(  make 2.22 sec, diameter at the gauge plane +0.00020 mm)
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
(digest of the blocks below: d0fecda130d508d1)
(tool 1, face: 180 m/min, at most 3000 rev/min)
N10 G21 G18 G40 G80 G99
N20 G0 X200.000
N30 G0 Z150.000
N40 T0101
N50 G50 S3000
N60 G96 S180 M4
(face, z 0.250 mm)
N70 G0 X200.000 Z2.250
N80 X64.500 Z2.250
N90 G1 X64.500 Z0.250 F0.250
N100 X-1.600 Z0.250
N110 X-1.600 Z1.250
N120 G0 X64.500 Z1.250
N130 X64.500 Z150.000
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
(level, diameter 56.477 mm)
N230 G0 X200.000 Z2.500
N240 X56.477 Z2.500
N250 G1 X56.477 Z-73.500 F0.250
N260 X60.000 Z-73.500
N270 X61.000 Z-73.000
(level, diameter 52.188 mm)
N280 G0 X61.000 Z2.500
N290 X52.188 Z2.500
N300 G1 X52.188 Z-59.750 F0.250
N310 X53.927 Z-59.750
N320 G3 X55.412 Z-60.058 I0.000 K-1.049
N330 G1 X55.862 Z-60.283
N340 G3 X56.477 Z-61.025 I-0.741 K-0.742
N350 G1 X57.477 Z-60.525
(level, diameter 47.898 mm)
N360 G0 X57.477 Z2.500
N370 X47.898 Z2.500
N380 G1 X47.898 Z-59.750 F0.250
N390 X52.188 Z-59.750
N400 X53.188 Z-59.250
(level, diameter 43.609 mm)
N410 G0 X53.188 Z2.500
N420 X43.609 Z2.500
N430 G1 X43.609 Z-56.124 F0.250
N440 X44.666 Z-59.750
N450 X47.898 Z-59.750
N460 X48.898 Z-59.250
(level, diameter 39.319 mm)
N470 G0 X48.898 Z2.500
N480 X39.319 Z2.500
N490 G1 X39.319 Z-41.418 F0.250
N500 X43.609 Z-56.124
N510 X44.609 Z-55.624
(level, diameter 35.030 mm)
N520 G0 X44.609 Z2.500
N530 X35.030 Z2.500
N540 G1 X35.030 Z-26.711 F0.250
N550 X39.319 Z-41.418
N560 X40.319 Z-40.918
(level, diameter 30.740 mm)
N570 G0 X40.319 Z2.500
N580 X30.740 Z2.500
N590 G1 X30.740 Z-12.004 F0.250
N600 X35.030 Z-26.711
N610 X36.030 Z-26.211
(level, diameter 26.451 mm)
N620 G0 X36.030 Z2.500
N630 X26.451 Z2.500
N640 G1 X26.451 Z-0.058 F0.250
N650 X26.901 Z-0.283
N660 G3 X27.494 Z-0.873 I-0.743 K-0.743
N670 G1 X30.740 Z-12.004
N680 X31.740 Z-11.504
N690 G0 X64.500 Z-11.504
N700 X64.500 Z150.000
N710 X200.000 Z150.000
(tool 1 done)
N720 M5
N730 M1
(tool 3, semi-finish: 220 m/min, at most 3000 rev/min)
N740 G21 G18 G40 G80 G99
N750 G0 X200.000
N760 G0 Z150.000
N770 T0303
N780 G50 S3000
N790 G96 S220 M4
(even skin 0.250 mm)
N800 G0 X200.000 Z3.250
N810 X20.304 Z3.250
N820 G1 X26.685 Z0.060 F0.100
(edge 1)
N830 X27.135 Z-0.165
N840 G3 X27.502 Z-0.531 I-0.461 K-0.460
(steep cone)
N850 G1 X44.774 Z-59.750
(shoulder 1)
N860 X54.727 Z-59.750
N870 G3 X55.646 Z-59.940 I0.000 K-0.651
(edge 2)
N880 G1 X56.096 Z-60.165
N890 G3 X56.477 Z-60.625 I-0.460 K-0.460
(flange)
N900 G1 X56.477 Z-72.400
(clear)
N910 X56.477 Z-72.900
N920 X58.477 Z-71.900
N930 G0 X64.500 Z-71.900
N940 X64.500 Z150.000
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
N1050 X31.566 Z2.000
N1060 G1 X31.566 Z0.000 F0.100
N1070 X-0.800 Z0.000
(clear)
N1080 X-0.800 Z1.000
(contour)
N1090 G0 X64.500 Z1.000
N1100 X64.500 Z3.250
N1110 X19.597 Z3.250
N1120 G1 X26.331 Z-0.117 F0.100
(edge 1)
N1130 X26.781 Z-0.342
N1140 G3 X27.007 Z-0.567 I-0.283 K-0.283
(steep cone)
N1150 G1 X44.342 Z-60.000
(shoulder 1)
N1160 X54.727 Z-60.000
N1170 G3 X55.293 Z-60.117 I0.000 K-0.401
(edge 2)
N1180 G1 X55.743 Z-60.342
N1190 G3 X55.977 Z-60.625 I-0.284 K-0.283
(flange)
N1200 G1 X55.977 Z-72.400
(clear)
N1210 X55.977 Z-72.900
N1220 X57.977 Z-71.900
N1230 G0 X64.500 Z-71.900
N1240 X64.500 Z150.000
N1250 X200.000 Z150.000
(tool 3 done)
N1260 M5
N1270 M30
%
