// SPDX-License-Identifier: Apache-2.0
// What the archive keeps, as plain values: orders, parts, zone plans, castings, examinations.
// Texts are UTF-8 in NFC; dates are ISO 8601 (2026-11-25), times UTC (2026-11-25T09:30:00Z).
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "judge/sheet.h"
#include "record/order_terms.h"
#include "record/registers.h"
#include "record/test_conditions.h"
#include "record/typed_indication.h"
#include "record/typed_reflector.h"

namespace model {

/// What the buyer asked.
struct Order {
    std::string number;  ///< the works' own, unique
    std::string customer;
    std::string customerOrder;    ///< the customer's order number and item
    std::string certificateType;  ///< EN 10204:2004 type: "2.2", "3.1" or "3.2"
    std::string language;         ///< of the certificate: "en"
    std::vector<Kind> forbiddenKinds;
    std::string decisionRule;  ///< printed beside the verdict
    std::string roundingRule;
    std::string remarks;
    OrderTerms terms{};
};

/// A casting design.
struct Part {
    std::string number;  ///< unique
    std::string description;
    std::string drawing;
    std::string drawingRevision;
    Material material = Material::CastSteel;
    std::string materialGrade;  ///< as ordered, with its standard
    std::string pattern{};      ///< its number
    std::string mass{};         ///< as stated, with its unit
};

/// A test that a zone requires.
struct RequiredTest {
    Method method = Method::Magnetic;
    Stage stage = Stage::AsCast;
    std::string table;
    std::map<std::string, std::string> levels;
};

/// A named area of a part, a rectangle from its datum along its axes.
struct PlannedZone {
    std::string name;         ///< unique in the plan: "Z1"
    std::string description;  ///< where it is, and where its datum is
    Length width;
    Length height;
    Length thickness;  ///< smallest wall
    std::optional<SurfacePlace> surface;
    std::vector<RequiredTest> tests;
    std::optional<Length> drawingMinimum{};  ///< smallest wall that the drawing allows
    /// Tests by others that the zone requires, in the words of OtherResult::test: "radiographic".
    std::vector<std::string> otherTests{};
};

struct ZonePlan {
    std::string part;
    int revision = 1;
    std::vector<PlannedZone> zones;
};

/// One piece.
struct Casting {
    std::string serial;  ///< unique
    std::string heat;
    std::string order;  ///< number of an Order
    std::string part;   ///< number of a Part
    int zonePlanRevision = 1;
    std::string series{};   ///< serial numbers that it stands for, parted by commas; empty: one
    std::string marking{};  ///< as found on it
    std::string conditionOnReceipt{};
};

/// A draft examination as it stands at the bench; once signed (later) it becomes a record.
struct ExaminationDraft {
    std::int64_t id = 0;       ///< given by the archive; 0: not stored yet
    std::int64_t version = 0;  ///< rises with every save; a save on an older one is a conflict
    std::string casting;       ///< serial
    Examination header;        ///< all but `indications` and `reflectors`, which stay empty here
    std::vector<TypedIndication> rows;       ///< MT, PT: as typed, half-typed rows included
    std::vector<TypedSetting> settings;      ///< UT
    std::vector<TypedReflector> reflectors;  ///< UT: as typed, half-typed rows included
    std::string examinedBy;
    std::string examinedOn;  ///< date of the test
    std::string procedure;   ///< number and revision of the written procedure
    std::string remarks;
    TestConditions conditions{};
};

/// All that a certificate or a verdict on one casting is made from.
struct CastingFile {
    Casting casting;
    Part part;
    Order order;
    ZonePlan plan;
    std::vector<ExaminationDraft> examinations;
    Dossier dossier{};  ///< what the registers hold of this casting
    Holdings used{};    ///< what its examinations name, as it is now
};

/// The sheet to judge. Fails, naming examination, row and field, where a row cannot be read: an
/// unreadable row is never left out.
Result<Sheet> sheetOf(const CastingFile& file);

}  // namespace model
