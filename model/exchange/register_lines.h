// SPDX-License-Identifier: Apache-2.0
// Orders, parts, zone plans, castings and people as lines of fields, so that they are read from
// files, written and listed as every register is. A line is text throughout; the functions below
// make values of lines and lines of values. An order's ordered tests and witness points, and a
// plan's zones with their tests, take several lines: what belongs to the whole stands on the first
// and is empty, or the same, on the others.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "record/records.h"
#include "registers/field.h"

namespace model {

struct PartLine {
    static constexpr std::string_view kRegister = "part";
    static std::span<const Field<PartLine>> fields();

    std::string number;
    std::string description;
    std::string drawing;
    std::string drawingRevision;
    std::string material;
    std::string materialGrade;
    std::string pattern;
    std::string mass;

    friend bool operator==(const PartLine&, const PartLine&) = default;
};

struct CastingLine {
    static constexpr std::string_view kRegister = "casting";
    static std::span<const Field<CastingLine>> fields();

    std::string serial;
    std::string heat;
    std::string order;
    std::string part;
    std::string zonePlanRevision;
    std::string series;
    std::string marking;
    std::string conditionOnReceipt;

    friend bool operator==(const CastingLine&, const CastingLine&) = default;
};

/// With the terms of the order, and at most one ordered test and one witness point a line.
struct OrderLine : OrderTerms {
    static constexpr std::string_view kRegister = "order";
    static std::span<const Field<OrderLine>> fields();
    /// Whether a field belongs to one line alone: "test_..." and "witness_...".
    static bool isOfLine(std::string_view key);

    std::string number;
    std::string customer;
    std::string customerOrder;
    std::string certificateType;
    std::string language;
    std::string forbiddenKinds;
    std::string decisionRule;
    std::string roundingRule;
    std::string remarks;
    std::string testZone;
    std::string testMethod;
    std::string testStage;
    std::string testTable;
    std::string testLevels;
    std::string testReason;
    std::string witnessWhat;
    std::string witnessKind;
    std::string witnessWho;
    std::string witnessCalledOn;
    std::string witnessAttendedOn;
    std::string witnessWaived;
    std::string witnessResult;

    friend bool operator==(const OrderLine&, const OrderLine&) = default;
};

/// A zone of a plan, with at most one of its tests.
struct ZonePlanLine {
    static constexpr std::string_view kRegister = "zone plan";
    static std::span<const Field<ZonePlanLine>> fields();
    /// Whether a field belongs to one line alone: what is required of the zone by one test.
    static bool isOfLine(std::string_view key);

    std::string part;
    std::string revision;
    std::string zone;
    std::string description;
    std::string width;
    std::string height;
    std::string thickness;
    std::string surface;
    std::string surfaceX;
    std::string surfaceY;
    std::string surfaceAngle;
    std::string surfaceWidth;
    std::string surfaceHeight;
    std::string surfacePeriod;
    std::string drawingMinimum;
    std::string otherTests;
    std::string method;
    std::string stage;
    std::string table;
    std::string levels;

    friend bool operator==(const ZonePlanLine&, const ZonePlanLine&) = default;
};

struct PersonLine {
    static constexpr std::string_view kRegister = "person";
    static std::span<const Field<PersonLine>> fields();

    std::string id;
    std::string name;
    std::string roles;
    std::string levels;
    std::string manufacturing;
    std::string body;
    std::string active;

    friend bool operator==(const PersonLine&, const PersonLine&) = default;
};

/// What stands against a line, beside wrongFields().
struct LineError {
    std::size_t line = 0;  ///< position among the lines that were given
    FieldError error;
};

// A value of lines without wrong fields. All errors are added to `errors`; the value is of no use
// then. Of an order all lines have the same number, of a plan the same part and revision.
Part partFrom(const PartLine& line, std::vector<LineError>& errors);
Casting castingFrom(const CastingLine& line, std::vector<LineError>& errors);
Order orderFrom(std::span<const OrderLine> lines, std::vector<LineError>& errors);
ZonePlan zonePlanFrom(std::span<const ZonePlanLine> lines, std::vector<LineError>& errors);

PartLine lineOf(const Part& part);
CastingLine lineOf(const Casting& casting);
std::vector<OrderLine> linesOf(const Order& order);
std::vector<ZonePlanLine> linesOf(const ZonePlan& plan);

}  // namespace model
