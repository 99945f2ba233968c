// SPDX-License-Identifier: Apache-2.0
// Texts that a certificate prints about conditions, people, repairs and files: the second part of
// phrases.h, by the same rules.
#pragma once

namespace reports::phrases {

// Who may validate each type (EN 10204:2004)
inline constexpr const char* kValidatedByManufacturer = "Validated by the manufacturer.";
inline constexpr const char* kValidatedIndependently =
    "Validated by the manufacturer's authorised inspection representative, who is independent of "
    "the manufacturing department.";
inline constexpr const char* kValidatedByBoth =
    "Validated by the manufacturer's authorised inspection representative, who is independent of "
    "the manufacturing department, and by the purchaser's authorised representative or the "
    "inspector named by official regulations.";
inline constexpr const char* kIndependentManagerBox =
    "QA manager, who releases for the manufacturer, independent of manufacturing";

// Outcome
inline constexpr const char* kConforms =
    "Conforms to the order's requirements on the tests named here.";
inline constexpr const char* kConformsAfterRepair =
    "Conforms after repair %1 to the order's requirements on the tests named here.";
inline constexpr const char* kUnderConcession =
    "Under concession no. %1: beyond the limits, and accepted by the purchaser in writing.";
inline constexpr const char* kDoesNotConform =
    "Does not conform to the order's requirements on the tests named here.";
inline constexpr const char* kNoConformity = "No statement of conformity is made.";
inline constexpr const char* kDoesNotConformUpper = "DOES NOT CONFORM";
inline constexpr const char* kAcceptableButOpen =
    "The examinations that count are acceptable. What is open: see \"Repairs and scope\".";
inline constexpr const char* kRepairNumber = "R%1";
inline constexpr const char* kRepairOf = "%1 (%2)";
inline constexpr const char* kConcessionReference = "%1 (purchaser's %2)";

// Casting and order
inline constexpr const char* kManufacturersMark = "Manufacturer's mark";
inline constexpr const char* kEstablishedBy = "Document made by";
inline constexpr const char* kProductMarking = "CE or other marking data";
inline constexpr const char* kFurtherData = "Further data of casting and order";
inline constexpr const char* kReceiver = "Receiver";
inline constexpr const char* kContact = "Contact";
inline constexpr const char* kOrderWithItem = "%1, item %2";
inline constexpr const char* kGradeNotRecorded = "%1, grade not recorded";
inline constexpr const char* kMaterialToStandard = "%1, to %2";
inline constexpr const char* kExtraRequirements = "Additional requirements";
inline constexpr const char* kDeliveryConditions = "Delivery conditions";
inline constexpr const char* kPattern = "Pattern number";
inline constexpr const char* kMarking = "Marking";
inline constexpr const char* kMarkingFound = "%1 (ordered: %2)";
inline constexpr const char* kMarkingOrdered = "ordered: %1";
inline constexpr const char* kMass = "Mass as stated";
inline constexpr const char* kCondition = "Condition on receipt";
inline constexpr const char* kCastings = "%1 castings: %2";
inline constexpr const char* kOfDelivered = "%1; %2 delivered";
inline constexpr const char* kSampling = "Sampling";
inline constexpr const char* kSamplingShare = "%1 % of the pieces";

// Scope
inline constexpr const char* kOrderedTests = "Ordered beside the zone plan or in its place: %1.";
inline constexpr const char* kOrderedBecause = "%1 (agreed by %2)";
inline constexpr const char* kOrderUnreadable = "The order's own tests cannot be read: %1.";
inline constexpr const char* kOtherTestOf = "%1 %2 test";
inline constexpr const char* kConditionsNotStatedFor = "Test conditions not stated: %1.";
inline constexpr const char* kConditionsAgainst = "Test conditions not kept: %1.";
inline constexpr const char* kConditionsReasoned =
    "Test conditions that called for a reason (see \"Examinations\"): %1.";
inline constexpr const char* kScopeOfSeries =
    "These results are for the castings named here and no others. Of a series, only the pieces "
    "named as tested were tested.";

// Repairs
inline constexpr const char* kRepairs = "Nonconformances and repairs";
inline constexpr const char* kNonconformance = "Nonconformance";
inline constexpr const char* kFound = "Found";
inline constexpr const char* kDecided = "Decision and work";
inline constexpr const char* kExaminedAgain = "Examined again";
inline constexpr const char* kState = "State";
inline constexpr const char* kFoundIn = "%1 %2: %3";
inline constexpr const char* kFoundIndications = "indication %1";
inline constexpr const char* kNotDecided = "not decided";
inline constexpr const char* kAgreement = "purchaser's agreement %1";
inline constexpr const char* kWork = "excavation %1";
inline constexpr const char* kWeld = "weld repair %1";
inline constexpr const char* kHeatTreatmentNumber = "heat treatment %1";
inline constexpr const char* kConcessionNumber = "concession %1";
inline constexpr const char* kResultOf = "%1: %2";
inline constexpr const char* kMoreRepairs = "%1 more: see \"Nonconformances and repairs\"";
inline constexpr const char* kStillOpen = "Still to be done: %1";
inline constexpr const char* kLooseEnd = "Not accounted for by any nonconformance: %1";
inline constexpr const char* kExcavationName = "Excavation %1";
inline constexpr const char* kWeldName = "Weld repair %1";
inline constexpr const char* kHeatTreatmentName = "Heat treatment %1";
inline constexpr const char* kConcessionName = "Concession %1";
inline constexpr const char* kDecisionName = "Decision %1";
inline constexpr const char* kSeverity = "Repair: %1";
inline constexpr const char* kCelsius = " °C";
inline constexpr const char* kFactOf = "%1 %2";

// Test conditions of an examination
inline constexpr const char* kConditionsNotStated = "Test conditions not stated";
inline constexpr const char* kConditionsAsFor = "Test conditions: as for %1.";
inline constexpr const char* kPurpose = "Purpose";
inline constexpr const char* kPlace = "Place of test";
inline constexpr const char* kTestStandard = "Test standard";
inline constexpr const char* kDeliveryState = "Heat-treatment state";
inline constexpr const char* kTime = "Time";
inline constexpr const char* kFromTo = "%1 to %2";
inline constexpr const char* kTechniqueSheet = "Technique sheet";
inline constexpr const char* kDeviations = "Deviations, exclusions";
inline constexpr const char* kNoDeviations = "none recorded";
inline constexpr const char* kAgreedBy = "%1; agreed: %2";
inline constexpr const char* kSurfacePreparation = "Surface preparation";
inline constexpr const char* kSurfaceFinish = "Surface finish";
inline constexpr const char* kCoating = "Coating";
inline constexpr const char* kMicrometres = "%1 µm";
inline constexpr const char* kMagnetisation = "Magnetisation";
inline constexpr const char* kResidualField = "Residual field";
inline constexpr const char* kResidualLimit = "; ordered: at most %1 kA/m";
inline constexpr const char* kAtPlace = "%1, at %2";
inline constexpr const char* kEquipmentNumbers = "Equipment";
inline constexpr const char* kConsumableNumbers = "Consumables";
inline constexpr const char* kPiecesTested = "Pieces tested";
inline constexpr const char* kAfterNonconformance = "Examined again after";
inline constexpr const char* kFirstRecord = "%1; first record %2";
inline constexpr const char* kWitnessed = "Witnessed by";
inline constexpr const char* kFindings = "What is to be said of the test conditions";
inline constexpr const char* kFinding = "%1: %2";
inline constexpr const char* kFindingSource = "%1 (%2, %3)";
inline constexpr const char* kFindingReason = "%1. Reason for going on, by %2: %3";
inline constexpr const char* kFindingStands = "%1. Not settled.";

// People
inline constexpr const char* kLevelOfPerson = "Level %1, %2, certificate %3, until %4";
inline constexpr const char* kLevelShort = "Level %1";
inline constexpr const char* kLevelNotRecorded = "level not recorded";
inline constexpr const char* kEvaluatedBy = "evaluated by %1";
inline constexpr const char* kEvaluatedToo = "who also evaluated";
inline constexpr const char* kEvaluatorNotRecorded = "evaluator not recorded";
inline constexpr const char* kWitnessPoints = "Witness and hold points";
inline constexpr const char* kWitnessKind = "Kind";
inline constexpr const char* kWho = "Who";
inline constexpr const char* kWhen = "When";
inline constexpr const char* kWitnessResult = "Result";
inline constexpr const char* kAttendedOn = "attended on %1";
inline constexpr const char* kWaivedBy = "waived by %1";
inline constexpr const char* kCalledOn = "called on %1, not attended";
inline constexpr const char* kNotCalled = "not called";
inline constexpr const char* kGuardBand = "Guard band of the order";

// Equipment and consumables
inline constexpr const char* kEquipment = "Equipment and consumables";
inline constexpr const char* kWhat = "What";
inline constexpr const char* kSerialOrBatch = "Serial or batch";
inline constexpr const char* kHoldsUntil = "Calibration, expiry";
inline constexpr const char* kSerialOf = "serial %1";
inline constexpr const char* kBatchOf = "batch %1";
inline constexpr const char* kCalibrated = "calibrated %1";
inline constexpr const char* kDue = "due %1";
inline constexpr const char* kCalibrationCertificate = "certificate %1";
inline constexpr const char* kExpires = "expires %1";
inline constexpr const char* kBatchCertificate = "batch certificate %1";
inline constexpr const char* kSensitivityLevel = "level %1";
inline constexpr const char* kNotInRegister = "not in the register";

// Other tests, files and photos
inline constexpr const char* kOtherTests = "Other tests";
inline constexpr const char* kOtherTestsMeaning =
    "These results are as their reports state them; this program did not judge them.";
inline constexpr const char* kStandardAndCriteria = "Standard, criteria";
inline constexpr const char* kPerformed = "Performed by, on";
inline constexpr const char* kReport = "Report";
inline constexpr const char* kWholeCasting = "whole casting";
inline constexpr const char* kOutsideLaboratory = "result of an outside laboratory";
inline constexpr const char* kCustomerSupplied = "supplied by the customer";
inline constexpr const char* kOfCavity = "of a cavity";
inline constexpr const char* kReplaced = "replaced by a later result";
inline constexpr const char* kAttachments = "Attachments";
inline constexpr const char* kTitle = "Title";
inline constexpr const char* kRevisionShort = "Rev.";
inline constexpr const char* kFile = "File";
inline constexpr const char* kSha256 = "SHA-256 of the file";
inline constexpr const char* kReportOf = "report of the %1 test";
inline constexpr const char* kConcessionFile = "purchaser's concession %1";
inline constexpr const char* kAttachmentPlace = "attachment %1";
inline constexpr const char* kPhotos = "Photos and sketches";
inline constexpr const char* kPhotoCaption = "%1: %2";
inline constexpr const char* kPhotoRevision = "%1 revision %2";
inline constexpr const char* kShows = "Shows";
inline constexpr const char* kShowsZone = "zone %1";
inline constexpr const char* kShowsIndication = "indication %1";
inline constexpr const char* kPhotoScale = "Scale, in the picture";
inline constexpr const char* kPhotoDatum = "Datum and direction";
inline constexpr const char* kPhotoFile = "SHA-256 of the file";
inline constexpr const char* kGivenByCustomer =
    "Order, drawing, material and requirements are as the customer gave them.";

}  // namespace reports::phrases
