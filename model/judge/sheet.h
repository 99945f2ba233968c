// SPDX-License-Identifier: Apache-2.0
// What is judged: a casting's examinations, as the contract's fettlemark-sheet/1 has them.
// Values are exact; what was not given is an empty optional, never zero.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "limits/limit_table.h"
#include "quantity/quantities.h"
#include "surface/capsule.h"

namespace model {

enum class Stage { AsCast, HeatTreated, RoughMachined, FinishMachined };
enum class Relevance { Relevant, NonRelevant, False };
/// What a person states about an indication's class; only linear or non-linear can be stated.
enum class StatedClass { Linear, NonLinear };

struct SheetCasting {
    std::string serial;
    std::string heat;
    std::string part;
    std::string drawing;
    Material material = Material::CastSteel;
};

/// Where a zone, a rectangle from its datum along its axes, lies on a shared developed surface.
struct SurfacePlace {
    std::string id;
    Placement placement;
    Length width;                  ///< > 0
    Length height;                 ///< > 0
    std::optional<Length> period;  ///< in surface x; > 0
};

struct NotExamined {
    Area area;  ///< > 0
    std::string reason;
    std::string agreed;  ///< number of the agreement; empty: none
};

/// One finding, in zone coordinates.
struct Indication {
    std::string id;
    Length x;
    Length y;
    Length length;                ///< > 0
    std::optional<Length> width;  ///< > 0, <= length; none: a hairline, stated linear
    Angle angle;
    std::optional<Area> area;  ///< > 0
    std::optional<Kind> kind;
    std::optional<StatedClass> stated;
    std::optional<Length> removed;  ///< what machining will take off, > 0
    Relevance relevance = Relevance::Relevant;
    std::string reason;  ///< not empty unless relevant
};

/// An ultrasonic indication, in zone coordinates. An absent dimension was not measured; one that is
/// not measurable moved the probe by no more than the beam's width. Neither is ever zero.
struct Reflector {
    std::string id;
    Length x;
    Length y;
    std::optional<Length> depth;        ///< below the scanned surface, >= 0
    std::optional<Length> fbh;          ///< equivalent flat-bottomed hole, > 0
    std::optional<Length> length;       ///< > 0
    std::optional<Length> width;        ///< > 0, <= length
    std::optional<Length> throughWall;  ///< > 0
    Angle angle;
    std::optional<Area> area;               ///< > 0
    std::optional<GainStep> backWallLoss;   ///< >= 0
    std::string backWallLossExplained;      ///< by what; empty: by nothing
    std::optional<GainStep> overReference;  ///< against the reference line
    std::optional<Length> wall;             ///< here, > 0; none: the zone's thickness
    bool lengthNotMeasurable = false;       ///< then `length` is empty; likewise below
    bool widthNotMeasurable = false;
    bool throughWallNotMeasurable = false;
    std::optional<Kind> kind;  ///< volumetric, planar or dross
    Relevance relevance = Relevance::Relevant;
    std::string reason;  ///< not empty unless relevant
};

/// Whether the casting lets a reflector be seen at all.
struct Testability {
    std::optional<Length> smallestFbh;      ///< smallest flat-bottomed hole that shows, > 0
    std::optional<GainStep> signalToNoise;  ///< of it, at the end of the range
};

/// What is stated for an ultrasonic examination as a whole.
struct UltrasonicTest {
    std::optional<Area> zoneArea;  ///< examined, > 0
    std::optional<Testability> testability;
    std::optional<Length> deadZone;       ///< below the scanned surface, >= 0
    std::vector<std::string> directions;  ///< from where and how it was scanned
};

/// What a person states against an examination.
struct Objection {
    std::string by;      ///< name
    std::string reason;  ///< not empty

    friend bool operator==(const Objection&, const Objection&) = default;
};

struct Examination {
    std::string zone;
    Method method = Method::Magnetic;
    Stage stage = Stage::AsCast;
    int repairCycle = 0;
    int repeat = 0;
    Length thickness;  ///< smallest wall in the zone, > 0
    std::optional<SurfacePlace> surface;
    std::string table;                          ///< id of the limit table
    std::map<std::string, std::string> levels;  ///< level key -> level
    std::vector<Kind> forbiddenKinds;           ///< the order's, beside the table's
    bool noIndications = false;                 ///< "nothing found", stated
    std::vector<NotExamined> notExamined;
    std::optional<Objection> rejected;    ///< by a qualified person: then it is never acceptable
    std::optional<Objection> invalid;     ///< declared so: it stays listed but does not count
    std::vector<Indication> indications;  ///< MT and PT
    UltrasonicTest ultrasonic;            ///< UT
    std::vector<Reflector> reflectors;    ///< UT
};

struct Sheet {
    SheetCasting casting;
    std::vector<Examination> examinations;
};

}  // namespace model
