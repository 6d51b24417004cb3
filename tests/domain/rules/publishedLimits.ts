/** Both sides of each published limit; the numbers are of the documents named, as read. */
export const PUBLISHED = [
  // 49 CFR 571.210 S4.3.1.1: "not less than 30 degrees and not more than 75 degrees".
  { id: 'us-210-lap-fixed-seat', kept: [30, 75], broken: [29.99, 75.01] },
  { id: 'us-210-lap-adjustable-seat', kept: [30, 75], broken: [29.99, 75.01] },
  // 49 CFR 571.210 S4.3.1.4: "at least 165 mm apart laterally".
  { id: 'us-210-lap-spacing', kept: [165, 400], broken: [164.9] },
  // 49 CFR 571.209 S4.2(a): webbing width ≥ 46 mm.
  { id: 'us-209-webbing-width', kept: [46, 75], broken: [45.9] },
  // 571.209 S4.1(c): "without shifting the pelvic restraint into the abdominal region".
  { id: 'us-209-lap-low', kept: [0], broken: [0.1] },
  // MIL-S-58095A 3.11.7.3: at most 0.5 in, 12.7 mm, printed there as 13 mm.
  { id: 'military-guide-width', kept: [13], broken: [13.1] },
  // US road law and FIA App. J as advice of the workshop: "at least 165 mm apart laterally", "20 divergent or convergent".
  { id: 'workshop-lap-spacing', kept: [165, 400], broken: [164.9] },
  { id: 'workshop-shoulder-plan', kept: [-20, 20], broken: [-20.01, 20.01] },
  // No source: webbing that is wider than its slot does not lie flat in it.
  { id: 'workshop-slot-takes-webbing', kept: [0], broken: [-0.1] },
  // Formula SAE Rules 2026 V1 T.2.6: "between 10° above the horizontal and 20° below".
  { id: 'student-shoulder-drop', kept: [-10, 20], broken: [-10.01, 20.01] },
  // T.2.6: "between 175 mm and 235 mm".
  { id: 'student-shoulder-spacing', kept: [175, 235], broken: [174.9, 235.1] },
  // T.2.5: "between 45° and 65° to the horizontal"; "between 60° and 80°".
  { id: 'student-lap-angle-upright', kept: [45, 65], broken: [44.99, 65.01] },
  { id: 'student-lap-angle-reclined', kept: [60, 80], broken: [59.99, 80.01] },
  // T.2.7: "no more than 20°" forward of the chest line; "up to 20° rearwards"; "approximately 100 mm apart".
  { id: 'student-sub-five-point', kept: [-20, 0], broken: [-20.01, 0.01] },
  { id: 'student-sub-six-point', kept: [0, 20], broken: [-0.01, 20.01] },
  // T.2.7 option b, "at or near the lap anchorages"; the 125 mm are those of F.7, our reading.
  { id: 'student-sub-at-lap', kept: [0, 125], broken: [125.1] },
  { id: 'student-sub-spacing', kept: [100], broken: [80, 120] },
  // T.2.4 tab thickness ≥ 1.6 mm; F.3 size B: ≥ 25 mm, ≥ 1.2 mm, ≥ 114 mm², ≥ 8 509 mm⁴.
  { id: 'student-tab-thickness', kept: [1.6], broken: [1.59] },
  { id: 'student-bar-diameter', kept: [25], broken: [24.99] },
  { id: 'student-bar-wall', kept: [1.2], broken: [1.19] },
  { id: 'student-bar-area', kept: [114], broken: [113.9] },
  // The document's own example 25.4 × 1.6 mm has π/64·(25.4⁴ − 22.2⁴) = 8 508.8 mm⁴ and must pass.
  {
    id: 'student-bar-second-moment',
    kept: [8509, (Math.PI / 64) * (25.4 ** 4 - 22.2 ** 4)],
    broken: [8508.4],
  },
  // Common practice, no source: lap wedge 45–60°, square ± our 5°, about 10° ± our 5° with a restraint, 90° − our 5°.
  { id: 'workshop-lap-angle', kept: [45, 60], broken: [44.99, 60.01] },
  { id: 'workshop-shoulder-square', kept: [-5, 0, 5], broken: [-5.01, 5.01] },
  { id: 'workshop-shoulder-with-restraint', kept: [5, 10, 15], broken: [4.99, 15.01] },
  { id: 'workshop-wrap-square', kept: [85, 90], broken: [84.99] },
  { id: 'workshop-lap-below-hip-bones', kept: [-20, 0], broken: [0.01] },
  { id: 'workshop-five-points', kept: [5, 7], broken: [4] },
  { id: 'workshop-three-points', kept: [4], broken: [3] },
  { id: 'workshop-adjuster-clear', kept: [0, 40], broken: [-0.1] },
  // Our judgement, nobody else says it.
  { id: 'workshop-clear-of-person', kept: [0, 120], broken: [-0.1] },
  { id: 'workshop-tab-at-tube', kept: [0, 150], broken: [-0.1, 150.1] },
  { id: 'workshop-eye-at-tube', kept: [0, 150], broken: [-0.1, 150.1] },
  { id: 'workshop-shoulder-pair-alike', kept: [0, 10], broken: [10.1] },
  { id: 'workshop-lap-pair-alike', kept: [0, 10], broken: [10.1] },
  { id: 'workshop-sub-pair-alike', kept: [0, 10], broken: [10.1] },
  { id: 'workshop-clear-of-tubes', kept: [0, 120], broken: [-0.1] },
  // T.2.5 and T.2.7: straight, "touching no seat hole or other structure"; the 0 mm is our reading.
  { id: 'student-lap-clear', kept: [0, 50], broken: [-0.1] },
  { id: 'student-sub-clear', kept: [0, 50], broken: [-0.1] },
  // NZ Speedway 2010, an eye bolt in line with the webbing, ± our 5°.
  { id: 'workshop-eye-in-line', kept: [0, 5], broken: [5.01] },
  { id: 'speedway-shoulder-eye-in-line', kept: [0, 5], broken: [5.01] },
  { id: 'speedway-lap-eye-in-line', kept: [0, 5], broken: [5.01] },
  { id: 'speedway-sub-eye-in-line', kept: [0, 5], broken: [5.01] },
  // Schedule I §2: "at least 150mm behind the wearer's neck".
  { id: 'australia-junction', kept: [150], broken: [149.9] },
  // Formula SAE Rules 2026 V1 T.2.4: "7/16-20 or larger"; 7/16 in is 11.1125 mm.
  { id: 'student-eye-thread', kept: [11.1, 11.1125, 12], broken: [11.05] },
  // Trade figures above; from here on documents as read or quoted. FIA App. J 253-6.2: "more than 45", "should not exceed 10", "20 divergent or convergent".
  { id: 'fia-shoulder-rim-drop', kept: [0, 45], broken: [-0.01, 45.01] },
  { id: 'fia-shoulder-rim-drop-recommended', kept: [-5, 10], broken: [10.01] },
  { id: 'fia-shoulder-rim-drop-bar', kept: [10, 45], broken: [9.99, 45.01] }, // from memory
  { id: 'fia-shoulder-plan', kept: [-20, 20], broken: [-20.01, 20.01] },
  // From memory: bars of 38 × 2.5 mm or 40 × 2 mm.
  { id: 'fia-bar-diameter', kept: [38], broken: [37.9] },
  { id: 'fia-bar-wall', kept: [2], broken: [1.9] },
  // π/64·(40⁴ − 36⁴) = 43 215.7 mm⁴ and π/64·(38⁴ − 33⁴) = 44 140 mm⁴ pass; 38 × 2 mm has 36 573 mm⁴.
  {
    id: 'fia-bar-second-moment',
    kept: [(Math.PI / 64) * (40 ** 4 - 36 ** 4), (Math.PI / 64) * (38 ** 4 - 33 ** 4)],
    broken: [(Math.PI / 64) * (38 ** 4 - 34 ** 4)],
  },
  // FIA 8853/98, quoted second-hand: shoulder ≥ 70 mm, lap and crotch ≥ 44 mm.
  { id: 'fia-shoulder-webbing', kept: [70], broken: [69.9] },
  { id: 'fia-lap-webbing', kept: [44], broken: [43.9] },
  { id: 'fia-sub-webbing', kept: [44], broken: [43.9] },
  // Rally America H.1 (second-hand): "between horizontal and 10° below"; perpendicular ± our 5°.
  { id: 'rally-america-shoulder-drop', kept: [0, 10], broken: [-0.01, 10.01] },
  { id: 'rally-america-square', kept: [-5, 5], broken: [-5.01, 5.01] },
  // US Pro Rally 1998 (second-hand): "not be more than 40 degrees"; not above the shoulder; "between vertical and 45 degrees from vertical".
  { id: 'pro-rally-shoulder-drop', kept: [0, 40], broken: [-0.01, 40.01] },
  // The wedge ends square to the seat back.
  { id: 'pro-rally-shoulder-wedge', kept: [0, -20], broken: [0.01] },
  { id: 'pro-rally-shoulder-height', kept: [0, 300], broken: [-0.1] },
  { id: 'pro-rally-lap-angle', kept: [45, 90], broken: [44.99, 90.01] },
  { id: 'pro-rally-sub', kept: [0, 30], broken: [-0.01] },
  // NASA 3.6.2.5 (second-hand): 45°, 10° recommended, 20° in plan.
  { id: 'club-racing-rim-drop', kept: [45, -3], broken: [45.01] },
  { id: 'club-racing-rim-drop-recommended', kept: [10], broken: [10.01] },
  { id: 'club-racing-plan', kept: [-20, 20], broken: [-20.01, 20.01] },
  // SCCA GCR 2007 (second-hand): 4 in to 6 in = 101.6 mm to 152.4 mm.
  { id: 'gcr-shoulder-spacing', kept: [101.6, 152.4], broken: [101.5, 152.5] },
  { id: 'gcr-lap-webbing', kept: [75, 76.2], broken: [74.9] },
  { id: 'gcr-shoulder-webbing', kept: [75], broken: [74.9] },
  { id: 'gcr-sub-webbing', kept: [50], broken: [49.9] },
  { id: 'gcr-reclined-points', kept: [6, 7], broken: [5] },
  // Marque club: "at most 40 degrees down from horizontal". Schedule I: "greater than 45° to the horizontal".
  { id: 'track-day-shoulder-drop', kept: [40], broken: [40.01] },
  { id: 'australia-shoulder-drop', kept: [45], broken: [45.01] },
  { id: 'uk-scrutineers-shoulder-drop', kept: [0, 10], broken: [-0.01, 10.01] },
  // NZ Speedway 2010: "between 1 (one) degree and 10 (ten) degrees", "no more than 150mm apart", "within 250mm", "25mm minimum".
  { id: 'speedway-shoulder-drop', kept: [1, 10], broken: [0.99, 0, 10.01] },
  { id: 'speedway-shoulder-spacing', kept: [150], broken: [150.1] },
  { id: 'speedway-behind-seat', kept: [250], broken: [250.1] },
  { id: 'speedway-lap-below-hip-bones', kept: [0], broken: [0.1] },
  { id: 'speedway-shoulder-wrap-square', kept: [85, 90], broken: [84.99] },
  { id: 'speedway-lap-wrap-square', kept: [85, 90], broken: [84.99] },
  { id: 'speedway-sub-wrap-square', kept: [85, 90], broken: [84.99] },
  // "direct pull", ± our 3°.
  { id: 'speedway-direct-pull', kept: [0, 3], broken: [3.01] },
  { id: 'speedway-wrap-bar', kept: [25], broken: [24.9] },
  { id: 'quarter-midget-lap', kept: [0], broken: [0.1] },
  // From memory: 4 in = 101.6 mm below the shoulder at most, never above it.
  { id: 'nhra-shoulder-height', kept: [0, 101.6], broken: [-0.1, 101.7] },
  { id: 'student-off-road-shoulder-height', kept: [0, 101.6], broken: [-0.1, 101.7] },
  // N.J. Adm. Code 13:62-3.7(c): at least 5-point.
  { id: 'new-jersey-points', kept: [5], broken: [4] },
  // Formula SAE 2014: −10° to 20°, 178–229 mm, reclined 60–80°. Derivative 2025: 180–230 mm, 45–65° and 60–80°, 0–20°, 50 and 75 mm.
  { id: 'student-2014-shoulder-drop', kept: [-10, 20], broken: [-10.01, 20.01] },
  { id: 'student-2014-shoulder-spacing', kept: [178, 229], broken: [177.9, 229.1] },
  { id: 'student-2014-lap-reclined', kept: [60, 80], broken: [59.99, 80.01] },
  { id: 'student-derivative-shoulder-drop', kept: [-10, 20], broken: [-10.01, 20.01] },
  { id: 'student-derivative-shoulder-spacing', kept: [180, 230], broken: [179.9, 230.1] },
  { id: 'student-derivative-lap-upright', kept: [45, 65], broken: [44.99, 65.01] },
  { id: 'student-derivative-lap-reclined', kept: [60, 80], broken: [59.99, 80.01] },
  { id: 'student-derivative-sub-angle', kept: [0, 20], broken: [-0.01, 20.01] },
  { id: 'student-derivative-sub-spacing', kept: [100], broken: [80, 120] },
  { id: 'student-derivative-lap-webbing', kept: [50], broken: [49.9] },
  { id: 'student-derivative-sub-webbing', kept: [50], broken: [49.9] },
  { id: 'student-derivative-shoulder-webbing', kept: [75], broken: [74.9] },
  // 1991 letter: "not less than 20 and not more than 75". School-bus seats: 520 mm, 330 mm.
  { id: 'us-210-1991-lap', kept: [20, 75], broken: [19.99, 75.01] },
  { id: 'us-school-bus-torso', kept: [520], broken: [519.9] },
  { id: 'us-school-bus-lap-spacing', kept: [330], broken: [329.9] },
  // 76/115/EEC: C 450 mm above R, behind R, behind FK, 350 mm, 120 mm; 60 ± 10°, 20–80°, 45–90°.
  ...['light-goods', 'rear', 'bus'].flatMap((key) => [
    { id: `eu-${key}-upper-height`, kept: [450], broken: [449.9] },
    { id: `eu-${key}-upper-behind`, kept: [0], broken: [-0.1] },
    { id: `eu-${key}-upper-plane`, kept: [0], broken: [-0.1] },
    { id: `eu-${key}-lap-spacing`, kept: [350], broken: [349.9] },
    { id: `eu-${key}-lap-off-centre`, kept: [120], broken: [119.9] },
  ]),
  { id: 'eu-light-goods-lap', kept: [50, 70], broken: [49.99, 70.01] },
  { id: 'eu-rear-lap', kept: [20, 80], broken: [19.99, 80.01] },
  { id: 'eu-bus-lap', kept: [45, 90], broken: [44.99, 90.01] },
  // "outward angle of 10° and an inward angle of 20°".
  { id: 'eu-light-vehicle-wedge', kept: [-10, 20], broken: [-10.01, 20.01] },
  { id: 'un-r14-lap', kept: [30, 80], broken: [29.99, 80.01] }, // from memory
  { id: 'un-r14-buckle-side-left', kept: [45, 80], broken: [44.99, 80.01] }, // from memory
  { id: 'un-r14-buckle-side-right', kept: [45, 80], broken: [44.99, 80.01] },
  { id: 'uk-iva-upper-height', kept: [450], broken: [449.9] },
  // AC 21-34 (second-hand): 30° up to 5° down; the leaflet: about 55°, ± our 5°.
  { id: 'aviation-shoulder-drop', kept: [-30, 5], broken: [-30.01, 5.01] },
  { id: 'aviation-lap-angle', kept: [50, 60], broken: [49.99, 60.01] },
  // The rest of the first sets.
  { id: 'student-lap-straight', kept: [0, 1], broken: [1.01] },
  { id: 'student-lap-below-hip-bones', kept: [0], broken: [0.1] },
  { id: 'student-sub-straight', kept: [1], broken: [1.01] },
  { id: 'student-reclined-points', kept: [6], broken: [5] },
  { id: 'student-lap-webbing', kept: [50], broken: [49.9] },
  { id: 'student-shoulder-webbing', kept: [75], broken: [74.9] },
  { id: 'student-shoulder-webbing-with-restraint', kept: [50], broken: [49.9] },
  { id: 'student-sub-webbing', kept: [50], broken: [49.9] },
  { id: 'workshop-lap-straight', kept: [3], broken: [3.01] },
  { id: 'workshop-thigh-straps-behind', kept: [0], broken: [-0.01] },
  { id: 'workshop-centre-strap-in-line', kept: [-10, 10], broken: [-10.01, 10.01] },
  { id: 'workshop-tab-in-line', kept: [5], broken: [5.01] },
  { id: 'workshop-six-points', kept: [6], broken: [5] },
  { id: 'workshop-wrap-bar', kept: [25], broken: [24.9] },
]
