// SPDX-License-Identifier: Apache-2.0
// Every text that a certificate prints of its own accord, in English. Nothing else in this folder
// holds words, so that a translation replaces this list; %1, %2 ... stand for values.
#pragma once

namespace reports::phrases {

// The document itself
inline constexpr const char* kLanguage = "en";
inline constexpr const char* kProgram = "Fettlemark %1";
inline constexpr const char* kInspectionCertificate = "Inspection certificate %1";
inline constexpr const char* kTestReport = "Test report %1";
inline constexpr const char* kDeclaration = "Declaration of compliance %1";
inline constexpr const char* kInspectionDocument = "Inspection document";
inline constexpr const char* kTypeAsOrdered = "Type %1 of EN 10204:2004 as ordered.";
inline constexpr const char* kTypeNotOrdered = "The order names no type of EN 10204.";
inline constexpr const char* kTypeUnknown = "Ordered as \"%1\", which is no type of EN 10204:2004.";
inline constexpr const char* kNotReleasedYet = "Not released.";
inline constexpr const char* kSubject = "Non-destructive testing of casting %1, part %2";
inline constexpr const char* kIdentityNumbered = "Certificate %1, casting %2";
inline constexpr const char* kIdentityUnnumbered = "Certificate without number, casting %1";
inline constexpr const char* kPageOf = "Page %1 of %2";
inline constexpr const char* kContinued = "continued";
inline constexpr const char* kEndMark = "End of certificate";
inline constexpr const char* kNotReleased = "NOT RELEASED";
inline constexpr const char* kDemonstration = "Demonstration";

// Status
inline constexpr const char* kNotReleasedMeaning =
    "Nobody has released or signed this document. It shows what is recorded so far, is no "
    "inspection document in the sense of EN 10204 and must not accompany a delivery.";
inline constexpr const char* kValidWhenSigned = "VALID ONLY WHEN SIGNED";
inline constexpr const char* kValidWhenSignedMeaning =
    "This document is released when every field under \"Signatures\" on its last page is signed. "
    "While one of them is empty it is no inspection document in the sense of EN 10204 and must not "
    "accompany a delivery. The signatures are in the file; a print shows them and cannot prove "
    "them.";
inline constexpr const char* kSupersedes =
    "This certificate supersedes certificate %1, which is no longer valid.";
inline constexpr const char* kDemonstrationMeaning =
    "Made from a demonstration archive: works, people, castings and results are invented.";
inline constexpr const char* kOtherLanguageOrdered =
    "The order asks for the language \"%1\"; this document is in English.";

// Names of facts
inline constexpr const char* kCertificateNumber = "Certificate number";
inline constexpr const char* kIssueDate = "Date of issue";
inline constexpr const char* kIssuedBySignature =
    "that of the signature for release; prepared on %1";
inline constexpr const char* kCustomer = "Customer";
inline constexpr const char* kCustomerOrder = "Customer's order";
inline constexpr const char* kWorksOrder = "Works order";
inline constexpr const char* kPartNumber = "Part number";
inline constexpr const char* kDrawing = "Drawing and revision";
inline constexpr const char* kDrawingRevision = "%1, revision %2";
inline constexpr const char* kProduct = "Product";
inline constexpr const char* kMaterial = "Material";
inline constexpr const char* kMaterialWithGrade = "%1, %2";
inline constexpr const char* kSerial = "Serial number";
inline constexpr const char* kHeat = "Heat number";
inline constexpr const char* kQuantity = "Quantity";
inline constexpr const char* kOnePiece = "1 casting";
inline constexpr const char* kNotRecorded = "not recorded";
inline constexpr const char* kNoNumber = "none given";
inline constexpr const char* kOrderRemarks = "Remarks of the order";
inline constexpr const char* kForbiddenByOrder = "Never accepted by order";
inline constexpr const char* kNone = "none";

// Result
inline constexpr const char* kResult = "Result";
inline constexpr const char* kAcceptableUpper = "ACCEPTABLE";
inline constexpr const char* kNotAcceptableUpper = "NOT ACCEPTABLE";
inline constexpr const char* kNotJudgedUpper = "NOT JUDGED";
inline constexpr const char* kAcceptable = "acceptable";
inline constexpr const char* kNotAcceptable = "not acceptable";
inline constexpr const char* kNotJudged = "not judged";
inline constexpr const char* kCounts =
    "Examinations that count: %1. Acceptable: %2, not acceptable: %3, not judged: %4.";
inline constexpr const char* kNothingExamined = "No examination is recorded.";
inline constexpr const char* kBetterThanRequired =
    "The examinations made are acceptable, but they do not cover what the zone plan requires: see "
    "\"Repairs and scope\". The casting as a whole is therefore not judged.";
inline constexpr const char* kRequirementsMissing =
    "The examinations made do not cover what the zone plan requires: see \"Repairs and "
    "scope\".";
inline constexpr const char* kWhyFailed = "%1: %2, measured %3, limit %4";
inline constexpr const char* kWhyFailedKind = "%1: %2, indication %3";
inline constexpr const char* kWhyNotMade = "%1: %2 could not be checked: %3";
inline constexpr const char* kWhyReason = "%1: %2";
inline constexpr const char* kWhyRejected = "%1: rejected by %2: %3";
inline constexpr const char* kMoreFurtherOn = "and %1 more: see \"Examinations\"";
inline constexpr const char* kAttestationMissing = "LIMITS NOT ATTESTED";
inline constexpr const char* kAttestationMissingMeaning =
    "Nobody has declared that these limit tables agree with the company's own copy of the "
    "standard: %1. No certificate can be released under them.";

// Casting, criteria, scope
inline constexpr const char* kCasting = "Casting and order";
inline constexpr const char* kCriteria = "Criteria";
inline constexpr const char* kScope = "Repairs and scope";
inline constexpr const char* kMethod = "Method";
inline constexpr const char* kLimitTable = "Limit table";
inline constexpr const char* kLevels = "Levels";
inline constexpr const char* kZones = "Zones";
inline constexpr const char* kRevisionOf = "%1, revision %2";
inline constexpr const char* kLevelOf = "%1 %2";
inline constexpr const char* kBareLevel = "level %1";
inline constexpr const char* kNoLevels = "no level ordered";
inline constexpr const char* kCriteriaMore = "%1 further criteria: see \"Zones\"";
inline constexpr const char* kListMore = "%1 and %2 more";
inline constexpr const char* kMagnetic = "Magnetic particle (MT)";
inline constexpr const char* kPenetrant = "Penetrant (PT)";
inline constexpr const char* kUltrasonic = "Ultrasonic (UT)";
inline constexpr const char* kAsCast = "as cast";
inline constexpr const char* kHeatTreated = "heat treated";
inline constexpr const char* kRoughMachined = "rough machined";
inline constexpr const char* kFinishMachined = "finish machined";
inline constexpr const char* kAfterRepair = "after repair %1";
inline constexpr const char* kRepeat = "repeat %1";
inline constexpr const char* kRepairsExamined = "Examined again after repair: %1.";
inline constexpr const char* kNoRepairs = "No examination after a repair is recorded.";
inline constexpr const char* kRepeated =
    "Examined a second time without repair: %1. The worse "
    "result counts, and both are printed.";
inline constexpr const char* kDeclaredInvalidList =
    "Declared invalid by a Level 3 and printed all the same: %1.";
inline constexpr const char* kPlanCovered =
    "Zone plan revision %1 of part %2 requires %3 tests; %4 of them were made as required.";
inline constexpr const char* kPlanWithoutTests =
    "Zone plan revision %1 of part %2 requires no tests: whether everything was examined that the "
    "order asks for cannot be seen from it.";
inline constexpr const char* kMissingTests = "Required and not made: %1.";
inline constexpr const char* kOtherCriteria =
    "Made by another limit table or level than required: "
    "%1.";
inline constexpr const char* kZonesWithout = "Zones of the plan without any examination: %1.";
inline constexpr const char* kZonesOutside = "Examined, but not in the zone plan: %1.";
inline constexpr const char* kPartlyExamined = "Areas not examined: %1.";

// Zones
inline constexpr const char* kZone = "Zone";
inline constexpr const char* kWhere = "What and where";
inline constexpr const char* kTest = "Test";
inline constexpr const char* kWall = "Wall mm";
inline constexpr const char* kLimitAndLevels = "Limit table and levels";
inline constexpr const char* kVerdict = "Verdict";
inline constexpr const char* kNotExamined = "not examined";
inline constexpr const char* kNoTestRequired = "no test required, none made";
inline constexpr const char* kNotInPlan = "not in the zone plan";
inline constexpr const char* kRequiredInstead = "required: %1";
inline constexpr const char* kSupersededShort = "does not count";
inline constexpr const char* kNoZones = "The zone plan has no zones and nothing was examined.";

// Examinations
inline constexpr const char* kExaminations = "Examinations";
inline constexpr const char* kExaminationOf = "%1 %2, %3";
inline constexpr const char* kSuperseded =
    "A later repair cycle or a worse repeat counts instead of this examination. It is printed "
    "because nothing recorded is left out.";
inline constexpr const char* kRejected = "REJECTED";
inline constexpr const char* kRejectedMeaning =
    "Rejected by %1 on %2, whatever the limits allow, because: %3";
inline constexpr const char* kDeclaredInvalid = "DECLARED INVALID";
inline constexpr const char* kDeclaredInvalidMeaning =
    "Declared invalid by %1 on %2 because: %3\nIt does not count. It is printed because nothing "
    "recorded is left out.";
inline constexpr const char* kNoChecks = "No check was made.";
inline constexpr const char* kExaminedBy = "Examined by";
inline constexpr const char* kExaminedOn = "Examined on";
inline constexpr const char* kProcedure = "Procedure";
inline constexpr const char* kRecordedBy = "Recorded and signed";
inline constexpr const char* kSignedOn = "%1, %2";
inline constexpr const char* kWallThickness = "Smallest wall";
inline constexpr const char* kWallDiffers = "%1 mm (the zone plan has %2 mm)";
inline constexpr const char* kMillimetres = "%1 mm";
inline constexpr const char* kZoneSize = "Size of the zone";
inline constexpr const char* kSize = "%1 × %2 mm";
inline constexpr const char* kCracksAsPlanar =
    "; an echo does not tell them: any planar indication";
inline constexpr const char* kSurface = "Surface";
inline constexpr const char* kSurfacePlace = "%1: datum at (%2, %3) mm, turned %4°";
inline constexpr const char* kSurfacePeriod = ", closes after %1 mm";
inline constexpr const char* kNoSurface = "none: judged alone";
inline constexpr const char* kForbidden = "Forbidden kinds";
inline constexpr const char* kBestLevels = "Strictest levels that would pass";
inline constexpr const char* kBestLevelNone = "%1: none";
inline constexpr const char* kNoBestLevel = "none";
inline constexpr const char* kBestNotKnown = "not known: a class is not known";
inline constexpr const char* kBestUnknown = "not known for %1";
inline constexpr const char* kExaminationRemarks = "Remarks";
inline constexpr const char* kReasons = "Why it is not judged";
inline constexpr const char* kNotes = "Notes";
inline constexpr const char* kAreaNotExamined = "%1 mm² not examined: %2; agreed: %3";
inline constexpr const char* kNotAgreed = "no agreement recorded";
inline constexpr const char* kNoReason = "no reason recorded";
inline constexpr const char* kNoIndications =
    "No indications found: stated by the person who examined.";
inline constexpr const char* kNothingStated =
    "No indications are entered, and nobody states that none were found.";

// Checks
inline constexpr const char* kChecks = "Checks";
inline constexpr const char* kRule = "Rule";
inline constexpr const char* kMeasured = "Measured";
inline constexpr const char* kLimit = "Limit";
inline constexpr const char* kUsed = "Used";
inline constexpr const char* kOutcome = "Outcome";
inline constexpr const char* kSource = "Source, grade";
inline constexpr const char* kCounted = "Counted, remarks";
inline constexpr const char* kPasses = "passes";
inline constexpr const char* kNothingCounted = "nothing counted";
inline constexpr const char* kFails = "fails";
inline constexpr const char* kCouldNotBeMade = "not made";
inline constexpr const char* kSourceGrade = "%1 (%2)";
inline constexpr const char* kOrderSource = "order";
inline constexpr const char* kFramePlace = "frame %1 centred at (%2, %3) mm, turned %4°";
inline constexpr const char* kFramePlaceUndrawn = "frame centred at (%1, %2) mm, turned %3°";
inline constexpr const char* kDash = "–";
inline constexpr const char* kFarOver = "> 999 %";
inline constexpr const char* kUsedMeaning =
    "\"Used\" is the share of the limit that the measured value takes up, rounded up; for a lower "
    "limit it is the limit as a share of the measured value. \"Source\" is where the standard "
    "states the limit; the letter says how sure the value is (see \"Limit tables\").";

// Indications and groups
inline constexpr const char* kIndications = "Indications";
inline constexpr const char* kIndicationUnits =
    "Centre x, y from the zone's datum, length and width in mm; angle in degrees counter-clockwise "
    "from the x axis; area in mm². Values entered in inch stand below as typed.";
inline constexpr const char* kId = "No.";
inline constexpr const char* kX = "x";
inline constexpr const char* kY = "y";
inline constexpr const char* kLength = "Length";
inline constexpr const char* kWidth = "Width";
inline constexpr const char* kAngle = "Angle";
inline constexpr const char* kArea = "Area";
inline constexpr const char* kClass = "Class";
inline constexpr const char* kKind = "Kind";
inline constexpr const char* kGroup = "Group";
inline constexpr const char* kConsidered = "Counted, or why not";
inline constexpr const char* kInInch = "%1 in";
inline constexpr const char* kHairline = "hairline";
inline constexpr const char* kNotMeasured = "–";
inline constexpr const char* kKindNotStated = "not stated";
inline constexpr const char* kNotClassified = "not known";
inline constexpr const char* kCountedYes = "counted";
inline constexpr const char* kUnderThreshold = "not counted: below the limit table's threshold";
inline constexpr const char* kNonRelevant = "not counted: non-relevant, %1";
inline constexpr const char* kFalse = "not counted: false indication, %1";
inline constexpr const char* kStatedLinear = "stated linear";
inline constexpr const char* kStatedNonLinear = "stated non-linear";
inline constexpr const char* kRemoved = "machining takes off %1 mm";
inline constexpr const char* kGroups = "Groups: indications that count as one";
inline constexpr const char* kMembers = "Members";

// Ultrasonic examinations
inline constexpr const char* kUltrasonicTest = "Sensitivity and testability";
inline constexpr const char* kZoneArea = "Examined area";
inline constexpr const char* kSquareMillimetres = "%1 mm²";
inline constexpr const char* kSmallestFbh = "Smallest flat-bottomed hole that shows";
inline constexpr const char* kSignalToNoise = "Its signal to noise";
inline constexpr const char* kDecibels = "%1 dB";
inline constexpr const char* kDeadZone = "Dead zone";
inline constexpr const char* kDirections = "Scanned";
inline constexpr const char* kSetting = "Setting %1";
inline constexpr const char* kProbe = "Probe";
inline constexpr const char* kElement = "Element";
inline constexpr const char* kRoundElement = "round, diameter %1";
inline constexpr const char* kRectangularElement = "rectangular, %1 × %2";
inline constexpr const char* kBeam = "Beam";
inline constexpr const char* kStraightBeam = "straight, %1 MHz";
inline constexpr const char* kTwinCrystal = "twin crystal, %1 MHz";
inline constexpr const char* kAngleBeam = "%2° in the casting, %1 MHz";
inline constexpr const char* kIndexToFront = ", index point to front %1";
inline constexpr const char* kSound = "Sound in the casting";
inline constexpr const char* kVelocity = "%1 m/s";
inline constexpr const char* kAttenuation = ", attenuation %1 dB/m one way";
inline constexpr const char* kNoAttenuation = ", no attenuation taken into account";
inline constexpr const char* kScannedWall = "Wall and scanned surface";
inline constexpr const char* kFlat = "%1, flat";
inline constexpr const char* kOuter = "%1, outside of radius %2";
inline constexpr const char* kInner = "%1, inside of radius %2";
inline constexpr const char* kReference = "Reference";
inline constexpr const char* kOnCasting = "%1 of the casting";
inline constexpr const char* kInBlock = "%1 of block %2";
inline constexpr const char* kReferenceDiameter = ", diameter %1";
inline constexpr const char* kReferenceSound = ", sound in the block %1 m/s";
inline constexpr const char* kSensitivity = "Sensitivity";
inline constexpr const char* kEchoAt = "%1 dB for %2 % of the screen at %3 of sound path";
inline constexpr const char* kTransfer = "Transfer correction";
inline constexpr const char* kNoTransfer = "none: the reference is on the casting";
inline constexpr const char* kMeasuredOnCasting = "Measured on the casting";
inline constexpr const char* kVelocityMeasured = "a wall of %1 showed as %2 at %3 m/s";
inline constexpr const char* kEchoesMeasured = "back-wall echo %1 at %2 dB, echo %3 at %4 dB";
inline constexpr const char* kReflectorUnits =
    "Place x, y from the zone's datum, depth below the scanned surface, sizes in mm; area in mm²; "
    "FBH: equivalent flat-bottomed hole; over the reference line and back-wall loss in dB. A "
    "dash: not measured; where no area was measured, pi/4 × length × width counts. \"In beam\": "
    "not "
    "measurable, the probe moved by no more than the beam's width. An equivalent size is that of "
    "the ideal reflector with the same echo: the true one may be larger.";
inline constexpr const char* kDepth = "Depth";
inline constexpr const char* kFbh = "FBH";
inline constexpr const char* kThroughWall = "Through wall";
inline constexpr const char* kOverReference = "Over ref. dB";
inline constexpr const char* kBackWallLoss = "Loss dB";
inline constexpr const char* kClassAndKind = "Class, kind";
inline constexpr const char* kInBeam = "in beam";
inline constexpr const char* kAtAngle = "at %1°";
inline constexpr const char* kInGroup = "group %1";
inline constexpr const char* kLossExplained = "back-wall loss explained by %1";
inline constexpr const char* kWallHere = "wall here %1 mm";
inline constexpr const char* kReadings = "Readings";
inline constexpr const char* kOfSetting = "Setting";
inline constexpr const char* kSoundPath = "Path";
inline constexpr const char* kGain = "Gain dB";
inline constexpr const char* kScreen = "Screen %";
inline constexpr const char* kEcho = "Against reference dB";
inline constexpr const char* kLeg = "Leg";
inline constexpr const char* kMovement = "Probe movement";
inline constexpr const char* kMovementOf = "%1 dB drop: %2 along, %3 across";
inline constexpr const char* kComputedFbh = "Equivalent FBH, mm";
inline constexpr const char* kByDistanceGainSize = "%1 (distance-gain-size)";
inline constexpr const char* kByFarField = "%1 (far field)";
inline constexpr const char* kSizeNotes = "Limits of the sizing";
inline constexpr const char* kNoteOf = "%1: %2";

// Figures
inline constexpr const char* kFigureOf = "Zone %1 as examined";
inline constexpr const char* kDetailOf = "Zone %1, detail at frame %2";
inline constexpr const char* kScaleReduced = "Scale 1 : %1, printed at 100 %";
inline constexpr const char* kScaleEnlarged = "Scale %1 : 1, printed at 100 %";
inline constexpr const char* kDatum = "datum";
inline constexpr const char* kZoneLabel = "zone %1";
inline constexpr const char* kFrameLabel = "frame %1";
inline constexpr const char* kLegendFailing = "Filled dark: indication in a check that fails.";
inline constexpr const char* kLegendCounted = "White: counted.";
inline constexpr const char* kLegendNotCounted =
    "Thin outline and number in brackets: listed, not counted.";
inline constexpr const char* kLegendNeighbour =
    "Filled grey: of a neighbouring zone, or drawn again across the seam of a round surface.";
inline constexpr const char* kLegendFrame = "Dashes: evaluation frame of the check that decided.";
inline constexpr const char* kLegendGroup = "Thin line around: group.";
inline constexpr const char* kLegendSmall =
    "Very small indications are drawn with a least line width.";
inline constexpr const char* kBracketed = "(%1)";
inline constexpr const char* kLabelsLeftOut =
    "%1 labels that would cover others are left out; the list has every indication.";

// Limit tables
inline constexpr const char* kLimitTables = "Limit tables";
inline constexpr const char* kStandard = "Standard";
inline constexpr const char* kEdition = "Edition";
inline constexpr const char* kRevision = "Revision of the table";
inline constexpr const char* kFingerprint = "Fingerprint";
inline constexpr const char* kDigest = "SHA-256 of the table";
inline constexpr const char* kFrame = "Evaluation frame";
inline constexpr const char* kFrameCircle = "circle of %1 mm diameter";
inline constexpr const char* kFrameAbsent = "none: the whole surface counts";
inline constexpr const char* kFrameUnknown = "not known";
inline constexpr const char* kFrameAtLevel = "%1: %2";
inline constexpr const char* kSourced = "%1, source %2 (%3)";
inline constexpr const char* kAttestation = "Attestation";
inline constexpr const char* kAttested =
    "attested: a QA manager has declared that its values agree with the company's own copy of the "
    "standard";
inline constexpr const char* kNotAttested =
    "not attested: nobody has declared that its values agree with the company's own copy of the "
    "standard";
inline constexpr const char* kTableRemarks = "Remarks of the table";
inline constexpr const char* kGradeLegend =
    "Grades of the values: R read in the published text; R2 read in two places; P partly read, the "
    "rest rebuilt; M from memory, not read.";

// Rules
inline constexpr const char* kRules = "Rules of decision";
inline constexpr const char* kDecisionRule = "Decision rule of the order";
inline constexpr const char* kRoundingRule = "Rounding rule of the order";
inline constexpr const char* kNotStatedInOrder = "the order states none";
inline constexpr const char* kArithmetic =
    "Values are compared exactly as entered, without rounding. Where the program computes the size "
    "of a reading, a group's length or an area, it rounds once, half up, to 0.001; a gap between "
    "indications is rounded down to 0.001 mm.";
inline constexpr const char* kFrameRule =
    "How a frame is laid: every position and every angle is searched, and an indication or group "
    "counts in full as soon as any point of it lies in or on the frame. Limits are not scaled "
    "where "
    "a zone is smaller than the frame. This is the program's own reading, chosen on the safe side. "
    "It is not a clause of a standard. The search may find a frame up to 0.01 mm too large on each "
    "side; this acts only against acceptance.";

// People
inline constexpr const char* kPeople = "People";
inline constexpr const char* kExamination = "Examination";
inline constexpr const char* kRecordSignedBy = "Record signed by";
inline constexpr const char* kNotSigned = "not signed";
inline constexpr const char* kReleasedBy = "Released by";
inline constexpr const char* kNobodyReleased = "nobody: not released";
inline constexpr const char* kReleasedBySignature =
    "the QA manager who signed in the field \"Release\"; see \"Signatures\"";
inline constexpr const char* kPresentedBy = "Presented by";

// Signatures
inline constexpr const char* kSignatures = "Signatures";
inline constexpr const char* kSignaturesProve =
    "A signature shows whether this file was changed after it was signed, and whose key signed it. "
    "Signatures help to detect changes; they do not replace the qualification of the people who "
    "sign, and do not make a finding right.";
inline constexpr const char* kSignaturesEnd =
    "The time in a signature is that of the signer's own clock. A signature without the time stamp "
    "of an independent service (PAdES baseline B-B) proves little once the signer's certificate "
    "has "
    "ended. Each field says whether it was time-stamped. An empty field: not released.";
inline constexpr const char* kInspectorBox = "Inspector, who presents the results";
inline constexpr const char* kThirdPartyBox = "Purchaser's or official inspector, for type 3.2";
inline constexpr const char* kManagerBox = "QA manager, who releases for the manufacturer";

// Closing
inline constexpr const char* kMeaning = "What this document says, and what it does not";
inline constexpr const char* kScopeStatement =
    "These results are for the casting named here and no other.";
inline constexpr const char* kNotOnDraft =
    "Not recorded here and needed before release: place of test, method standard, surface "
    "preparation, equipment with its calibration, consumables, test conditions, qualification of "
    "the people, and signatures.";
inline constexpr const char* kNotOnDocument =
    "Not recorded in this document: place of test, method standard, surface preparation, equipment "
    "with its calibration, consumables, test conditions, and qualification of the people. The "
    "works' own records have to show them.";
inline constexpr const char* kAssists =
    "The program assists qualified people and does not replace them. The limits are the company's "
    "to attest against its own copies of the standards. Local codes, the order and licensed "
    "practice decide.";
inline constexpr const char* kHistoryHead =
    "Head of the archive's history when this document was made: %1. A history that no longer "
    "contains this value was rolled back or altered.";
inline constexpr const char* kMadeWith = "Made with %1.";

}  // namespace reports::phrases
