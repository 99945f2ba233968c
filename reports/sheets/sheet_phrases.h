// SPDX-License-Identifier: Apache-2.0
// Every text that the papers of the workshop print of their own accord, in English; %1, %2 ...
// stand for values. What they share with the certificate is in certificate/phrases.h.
#pragma once

namespace reports::sheet_phrases {

// Both
inline constexpr const char* kPrintedOn = "Printed on";
inline constexpr const char* kEndMark = "End of sheet";
inline constexpr const char* kSubject = "%1 of casting %2, part %3";
inline constexpr const char* kIdentity = "%1, casting %2, printed on %3";
inline constexpr const char* kCasting = "Casting";
inline constexpr const char* kHeat = "Heat";
inline constexpr const char* kPart = "Part";
inline constexpr const char* kPartText = "%1, %2";
inline constexpr const char* kDrawing = "Drawing";
inline constexpr const char* kMaterial = "Material";
inline constexpr const char* kOrder = "Works order";
inline constexpr const char* kMarking = "Marking";
inline constexpr const char* kZone = "Zone %1";
inline constexpr const char* kZoneDescription = "Place and datum";
inline constexpr const char* kPlannedWall = "Smallest wall";
inline constexpr const char* kDrawingMinimum = "Drawing minimum";
inline constexpr const char* kNotInPlan = "not in the zone plan: no outline, no datum described";
inline constexpr const char* kNoMinimum = "not recorded";
inline constexpr const char* kNotMeasured = "not measured";
inline constexpr const char* kPlace = "x %1, y %2 mm";
inline constexpr const char* kSize = "%1 × %2 × %3 mm";
inline constexpr const char* kDegrees = "%1°";
inline constexpr const char* kDegreesCelsius = "%1\u00a0°C";
inline constexpr const char* kMinutes = "%1\u00a0min";

// Marking-out sheet
inline constexpr const char* kMarkingOut = "Marking-out sheet";
inline constexpr const char* kMarkingOutFor =
    "For whoever takes metal out. It is no inspection document and certifies nothing.";
inline constexpr const char* kCaution = "CAUTION";
inline constexpr const char* kCautionText =
    "Silica dust and vibration: extraction and mask on, eye protection on, trigger time short. The "
    "surface may be hot: measure before touching. Support the casting before reaching into it; "
    "never work beneath one that hangs.";
inline constexpr const char* kUndecided = "NOT DECIDED";
inline constexpr const char* kUndecidedText =
    "What becomes of %1 is not decided. Take nothing out there before a QA manager has decided.";
inline constexpr const char* kAtMost = "Without welding, at most";
inline constexpr const char* kAtMostText = "%1 mm deep in a wall of %2 mm";
inline constexpr const char* kNothingToGrind = "nothing: the wall is at the drawing's minimum";
inline constexpr const char* kAskFirst = "not known: ask before grinding";
inline constexpr const char* kDecisions = "What is decided";
inline constexpr const char* kFindings = "What lies where";
inline constexpr const char* kFindingsMeaning =
    "Coordinates are mm from the datum along the zone's axes to the middle of the indication; the "
    "angle of its length is counted from x towards y.";
inline constexpr const char* kToFillIn = "To be filled in at the casting";
inline constexpr const char* kToFillInMeaning =
    "Take out until the finding is gone, not below the drawing minimum unless it will be welded. "
    "MT or PT of the cavity comes before blending or welding; what is not welded is blended.";
inline constexpr const char* kNumber = "No.";
inline constexpr const char* kFoundBy = "Found by";
inline constexpr const char* kKind = "Kind";
inline constexpr const char* kLength = "Length";
inline constexpr const char* kWidth = "Width";
inline constexpr const char* kAngle = "Angle";
inline constexpr const char* kDepth = "Depth";
inline constexpr const char* kAtSurface = "surface";
inline constexpr const char* kTodo = "To do";
inline constexpr const char* kTakeOut = "take out: %1 (%2)";
inline constexpr const char* kLeaveUndecided = "leave: not decided";
inline constexpr const char* kLeaveOther = "leave: %1 (%2)";
inline constexpr const char* kWallBefore = "Wall before";
inline constexpr const char* kWallLeft = "Wall left";
inline constexpr const char* kInstrument = "Instrument";
inline constexpr const char* kCavityTest = "Cavity test, record";
inline constexpr const char* kDoneByOn = "Done by, on";
inline constexpr const char* kLegendTakeOut = "Filled: to be taken out.";
inline constexpr const char* kLegendUndecided = "Thick outline: not acceptable, to be left so far.";
inline constexpr const char* kLegendStays = "Thin outline, number in brackets: stays.";
inline constexpr const char* kLegendExcavated = "Grey: taken out already.";
inline constexpr const char* kLegendSmall =
    "What would be thinner than 0.4 mm is drawn 0.4 mm wide.";
inline constexpr const char* kWithoutPlace = "Findings without coordinates";
inline constexpr const char* kNonconformance = "Nonconformance";
inline constexpr const char* kMethod = "Method";
inline constexpr const char* kFinding = "Finding";
inline constexpr const char* kDecision = "Decision";
inline constexpr const char* kDecidedBy = "%1, %2 on %3";
inline constexpr const char* kNoDecision = "nothing decided";
inline constexpr const char* kState = "State";

// Weld map
inline constexpr const char* kWeldMap = "Weld map";
inline constexpr const char* kWeldMapFor =
    "Excavations and welds of the casting. It is no inspection document and certifies nothing.";
inline constexpr const char* kOutcomeMeaning =
    "The casting as recorded and judged when this sheet was printed.";
inline constexpr const char* kLooseEnds = "LOOSE ENDS";
inline constexpr const char* kLegendGround = "White: ground, not welded.";
inline constexpr const char* kLegendWelded = "Grey: welded.";
inline constexpr const char* kLegendOpen = "Filled red: its nonconformance is open.";
inline constexpr const char* kExcavations = "Excavations";
inline constexpr const char* kWelds = "Welds";
inline constexpr const char* kExcavation = "Excavation";
inline constexpr const char* kFor = "For";
inline constexpr const char* kPlaceHeading = "Place";
inline constexpr const char* kSizeHeading = "Size";
inline constexpr const char* kWallHeading = "Wall before / left";
inline constexpr const char* kWallText = "%1 / %2";
inline constexpr const char* kHow = "How, by, on";
inline constexpr const char* kHowText = "%1, %2, %3";
inline constexpr const char* kPreheated = "preheat %1\u00a0°C";
inline constexpr const char* kCavity = "Cavity test";
inline constexpr const char* kCavityText = "%1, %2: %3";
inline constexpr const char* kNotTested = "not tested";
inline constexpr const char* kSeverity = "Minor or major";
inline constexpr const char* kThen = "Then";
inline constexpr const char* kWeldedBy = "weld %1";
inline constexpr const char* kBlended = "blended";
inline constexpr const char* kNotBlended = "open";
inline constexpr const char* kProcedure = "Procedure, approval";
inline constexpr const char* kWelder = "Welder, approval";
inline constexpr const char* kUntil = "%1 until %2";
inline constexpr const char* kFiller = "Filler, batch";
inline constexpr const char* kHeats = "Preheat / interpass";
inline constexpr const char* kWeldedOn = "Welded on";
inline constexpr const char* kHeatTreatment = "Heat treatment";
inline constexpr const char* kHeatTreatments = "Heat treatments";
inline constexpr const char* kAfter = "After";
inline constexpr const char* kHolding = "Holding";
inline constexpr const char* kChart = "Chart";
inline constexpr const char* kFurnace = "Furnace, thermocouples";
inline constexpr const char* kOn = "On";
inline constexpr const char* kExaminedAgain = "Examined again";
inline constexpr const char* kCaseHeading = "Nonconformance %1";
inline constexpr const char* kFoundText = "%1, indications %2";
inline constexpr const char* kFoundOther = "%1 (%2)";
inline constexpr const char* kRuleBroken = "Rule broken";
inline constexpr const char* kOpened = "Opened";
inline constexpr const char* kOpenedText = "by %1 on %2";
inline constexpr const char* kDecisionText = "%1, by %2 on %3";
inline constexpr const char* kAgreement = "agreement %1";
inline constexpr const char* kConcession = "Concession";
inline constexpr const char* kConcessionText = "%1 (%2) of %3, accepts %4";
inline constexpr const char* kUntilDay = "until %1";
inline constexpr const char* kCarriedOnBy = "Carried on by";
inline constexpr const char* kRepairCycle = "Repair cycle";
inline constexpr const char* kResult = "%1 on %2: %3";
inline constexpr const char* kNone = "none";
inline constexpr const char* kOpen = "open: %1";

}  // namespace reports::sheet_phrases
