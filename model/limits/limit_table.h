// SPDX-License-Identifier: Apache-2.0
// A limit table: one edition's limits as data, with a source for each of them. Nothing here knows
// a standard; judge/ applies whatever a table says.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/rational.h"
#include "quantity/quantities.h"
#include "surface/frame.h"

namespace model {

enum class Method { Magnetic, Penetrant, Ultrasonic };
enum class Material { CastSteel, SpheroidalGraphiteIron, GreyIron };

/// How sure a value is: read in the published text, in two places, partly, or from memory.
enum class Grade { Read, ReadTwice, Partly, Memory };

/// Where a value comes from: clause or table row, and how sure it is.
struct Source {
    std::string locator;
    Grade grade = Grade::Memory;
};

/// What an indication can be. Values are the contract's words, see words.h.
enum class Kind {
    Crack,
    HotTear,
    ColdShut,
    Shrinkage,
    Porosity,
    Inclusion,
    Chaplet,
    Insert,
    Clustered,
    Unknown,
    Volumetric,  // this and the two below: of ultrasonic indications only
    Planar,
    Dross
};

/// Whether the kind is one of ultrasonic indications; the others are of MT and PT indications.
constexpr bool isUltrasonic(Kind kind) {
    return kind == Kind::Volumetric || kind == Kind::Planar || kind == Kind::Dross;
}

/// The classes that rules speak of. NonLinear is split into Isolated and Clustered by tables that
/// order those two; Aligned exists in tables whose rows or joins become aligned. Ultrasonic
/// indications are Planar or Dross by their kind; volumetric ones Rim or Core by their depth.
enum class IndicationClass {
    NonLinear,
    Isolated,
    Clustered,
    Linear,
    Aligned,
    Rim,
    Core,
    Planar,
    Dross
};
inline constexpr std::size_t kIndicationClasses = 9;
/// Whether a single indication of this class is non-linear, split or not.
constexpr bool isNonLinear(IndicationClass classified) {
    return classified == IndicationClass::NonLinear || classified == IndicationClass::Isolated ||
           classified == IndicationClass::Clustered;
}

/// A definition or a cell that the standard gives, does not have, or that could not be had.
enum class Known { Given, Absent, Unknown };

/// A comparison as the standard states it.
enum class Comparison { Less, AtMost, AtLeast, More };
/// Whether `value` `comparison` `bound` is true, e.g. holds(3, Comparison::AtMost, 3).
bool holds(Rational value, Comparison comparison, Rational bound);

/// Linear when length `comparison` factor x width (AtLeast or More).
struct ClassRatio {
    Known known = Known::Unknown;
    Rational factor{3};
    Comparison comparison = Comparison::AtLeast;
    Source source;
};

/// Rows of non-linear indications.
struct RowRule {
    Known known = Known::Unknown;
    int members = 3;  ///< at least this many
    Length gap;       ///< each gap `comparison` this
    Comparison comparison = Comparison::Less;
    enum class Becomes {
        Aligned,
        NonLinear,
        LineOnly  ///< the row forms no group; only the line rule looks at it
    } becomes = Becomes::Aligned;
    bool membersStay = true;  ///< false: the row replaces its members in every check
    Source source;
};

/// Joins of neighbouring indications.
struct JoinRule {
    Known known = Known::Unknown;
    enum class Who { Linear, All } who = Who::Linear;
    enum class Reach {
        LongestMember,  ///< gap < the longest single member of either set
        SmallerSet,     ///< gap < the smaller of the two sets' lengths
        Constant        ///< gap `comparison` `gap`
    } reach = Reach::LongestMember;
    Comparison comparison = Comparison::Less;
    Length gap;
    enum class Becomes {
        Aligned,
        Own  ///< linear if any member is, else non-linear
    } becomes = Becomes::Aligned;
    Source source;
};

/// A rule's frame at a level: given, absent (the whole surface counts), or unknown.
struct FrameRule {
    Known known = Known::Unknown;
    FrameShape shape;
    Source source;
};

/// One limit or threshold.
struct Cell {
    enum class Type {
        Number,  ///< `number`, in the rule's unit (millionths; a count: whole x million)
        FractionOfThickness,  ///< `fraction` of the zone's thickness
        FractionOfArea,       ///< `fraction` of the zone's area
        None,                 ///< the standard sets no limit here: the check is left out
        Unknown,              ///< not to be had: never guessed
        Agreed                ///< until the order gives it
    } type = Type::Unknown;
    std::int64_t number = 0;
    Rational fraction;
    Source source;
    std::string note;     ///< printed with the check that it decided; empty for none
    std::string written;  ///< with its unit, as in the file: "0.8 in2"; empty: mm, mm2, ...
};

/// A thickness band, mm; each end with its own comparison (lower: More or AtLeast; upper: Less or
/// AtMost). An end without a value is open.
struct Band {
    std::optional<Length> lower;
    Comparison lowerComparison = Comparison::More;
    std::optional<Length> upper;
    Comparison upperComparison = Comparison::AtMost;

    [[nodiscard]] bool contains(Length thickness) const;
};

/// What recording limits and the conditions of rules look at in an ultrasonic indication. Values
/// are in millionths of a mm or dB; LengthToWidth is the plain ratio.
enum class ReflectorMeasure { Fbh, IndicationLength, LengthToWidth, OverReference, BackWallLoss };

/// Of a wall, the outer part on each side; the rest is the core.
struct RimZone {
    Known known = Known::Unknown;
    Rational share{1, 3};          ///< of the wall, on each side
    std::optional<Length> atMost;  ///< none: the share alone
    Source source;
};

/// An ultrasonic indication is considered where any of a table's recording limits holds; a measure
/// that is absent leaves open whether it is. A table without any considers every indication.
struct RecordingLimit {
    ReflectorMeasure of = ReflectorMeasure::Fbh;
    Comparison comparison = Comparison::AtLeast;
    std::optional<bool> measurable;  ///< only for those with (without) a measurable extent
    struct Row {
        Band band;  ///< of the wall
        Cell cell;  ///< Number, None or Unknown
        int line = 0;
    };
    std::vector<Row> rows;
};

/// What a dimension counts as that moved the probe by no more than the beam's width. Empty: the
/// checks that need it are not judged.
struct NotMeasurableRule {
    std::optional<Length> throughWall;  ///< > 0
    std::optional<Area> area;           ///< > 0
    Source source;
    std::string written;  ///< both, as in the file: "area 0.15 in2"
};

/// Clusters: two or more ultrasonic indications within a cube. Their areas may add up to a limit of
/// class Clustered only where they spread over at least `spread`.
struct ClusterRule {
    Known known = Known::Absent;
    Length cube;                 ///< edge
    std::optional<Area> spread;  ///< none: anywhere
    Source source;
    std::string written;  ///< both, as in the file: "cube 1 in spread 36 in2"
};

/// A rule looks only at the indications for which all its conditions hold. Where an absent measure
/// leaves that open, it can pass an indication but not fail it.
struct Condition {
    ReflectorMeasure of = ReflectorMeasure::IndicationLength;
    Comparison comparison = Comparison::AtMost;
    Rational value;
    Source source;
};

/// What a testability rule measures: the smallest flat-bottomed hole, mm, or its signal to noise,
/// dB.
enum class TestabilityMeasure { SmallestFbh, SignalToNoise };

/// The rules the engine knows (names in words.h are the contract's).
enum class RuleKind {
    IndividualLength,
    CumulativeLength,
    TotalArea,
    IndividualArea,
    AreaShare,
    Count,
    CountAtMaximum,
    LineOfIndications,
    Spacing,
    EquivalentReflector,
    ThroughWallExtent,
    BackWallLoss,
    ForbiddenKind,
    Testability
};

/// One row of a rule: the cell for a level and a thickness band.
struct RuleRow {
    std::string level;
    Band band;
    Cell limit;
    Cell margin;   ///< CountAtMaximum only: counted when longer than the maximum minus this
    int line = 0;  ///< in the file
    std::string notMonotone;  ///< why it is stricter than a stricter level's; empty: it is not
};

struct Rule {
    RuleKind kind = RuleKind::IndividualLength;
    std::string key;                          ///< the level key that this rule's levels belong to
    std::vector<IndicationClass> classes;     ///< what it looks at; empty: every class
    Comparison passes = Comparison::AtMost;   ///< passes when measured `passes` limit
    std::map<std::string, FrameRule> frames;  ///< by level; a level without entry has the table's
    bool framed = false;                      ///< false: no frame, the whole surface (or each item)
    std::vector<Condition> conditions;        ///< UT
    TestabilityMeasure testability = TestabilityMeasure::SmallestFbh;  ///< of a testability rule
    std::vector<RuleRow> rows;
    int line = 0;  ///< in the file
};

/// A key of a sheet's "levels", with its levels, strictest first.
struct LevelKey {
    std::string name;
    std::vector<std::string> levels;
    std::vector<IndicationClass> classes;  ///< the classes whose level this key orders
    int line = 0;                          ///< in the file
};

/// The relevance threshold for a key at a level.
struct ThresholdRow {
    std::string key;
    std::string level;
    Cell cell;  ///< None: everything counts
    int line = 0;
    std::string notMonotone;  ///< why it is smaller than a stricter level's; empty: it is not
};

struct Threshold {
    Known known = Known::Unknown;  ///< Unknown or Absent: everything is considered
    bool afterGrouping = true;
    Comparison comparison = Comparison::AtLeast;  ///< considered when length `comparison` cell
    std::vector<ThresholdRow> rows;
    Source source;
};

struct LimitTable {
    std::string id;  ///< as ordered, e.g. "EN 1369:2012"
    std::string standard;
    std::string edition;
    int revision = 1;
    std::string digest;                ///< SHA-256 of the file's bytes, hexadecimal
    std::string file;                  ///< where it was read
    std::vector<std::string> remarks;  ///< printed with the table: scope, doubts
    Method method = Method::Magnetic;
    std::vector<Material> materials;
    std::vector<LevelKey> keys;
    ClassRatio ratio;
    Threshold threshold;
    RowRule rows;
    JoinRule joins;
    FrameRule frame;              ///< for framed rules that state none of their own
    bool summedTogether = false;  ///< linear and aligned ordered at the same number are summed
    Source summedSource;
    std::vector<Kind> forbiddenKinds;
    Source forbiddenSource;
    std::vector<Rule> rules;
    // Of tables for ultrasonic testing only.
    RimZone rim;
    std::vector<RecordingLimit> recording;
    Source recordingSource;  ///< of there being none
    NotMeasurableRule notMeasurable;
    ClusterRule clusters;

    [[nodiscard]] const LevelKey* key(std::string_view name) const;
    /// The key whose level judges a class; null where no key does.
    [[nodiscard]] const LevelKey* keyOf(IndicationClass indicationClass) const;
};

/// The number in a level's name, "LM 4" -> "4", "SM 01" -> "01": levels of two keys are ordered at
/// the same number when these agree.
std::string_view levelNumber(std::string_view level);

}  // namespace model
