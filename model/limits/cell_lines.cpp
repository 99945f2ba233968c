// SPDX-License-Identifier: Apache-2.0
#include "limits/cell_lines.h"

#include "base/decimal.h"
#include "limits/words.h"

namespace model {
namespace {

std::string inWords(Comparison comparison) {
    switch (comparison) {
        case Comparison::Less:
            return "below";
        case Comparison::AtMost:
            return "at most";
        case Comparison::AtLeast:
            return "at least";
        case Comparison::More:
            return "above";
    }
    return "";
}

/// A fraction without a unit: "3", "1/3".
std::string plain(Rational value) {
    if (value.isWhole()) return std::to_string(value.numerator / value.denominator);
    return std::to_string(value.numerator) + "/" + std::to_string(value.denominator);
}

std::string unitOf(RuleKind rule) {
    switch (rule) {
        case RuleKind::IndividualLength:
        case RuleKind::CumulativeLength:
        case RuleKind::LineOfIndications:
        case RuleKind::Spacing:
        case RuleKind::EquivalentReflector:
        case RuleKind::ThroughWallExtent:
            return " mm";
        case RuleKind::TotalArea:
        case RuleKind::IndividualArea:
            return " mm2";
        case RuleKind::AreaShare:
            return " %";
        case RuleKind::BackWallLoss:
            return " dB";
        case RuleKind::Count:
        case RuleKind::CountAtMaximum:
        case RuleKind::ForbiddenKind:
        case RuleKind::Testability:
            break;
    }
    return "";
}

std::string bareValue(const Cell& cell, const std::string& unit) {
    switch (cell.type) {
        case Cell::Type::Number:
            return formatMillionths(cell.number) + unit;
        case Cell::Type::FractionOfThickness:
            return plain(cell.fraction) + " of the thickness";
        case Cell::Type::FractionOfArea:
            return plain(cell.fraction) + " of the zone's area";
        case Cell::Type::None:
            return "none";
        case Cell::Type::Unknown:
            return "unknown";
        case Cell::Type::Agreed:
            return "as agreed";
    }
    return "";
}

/// With the table's own remark on the cell.
std::string withNote(const std::string& value, const Cell& cell) {
    return cell.note.empty() ? value : value + " (" + cell.note + ")";
}

/// A number stands behind its comparison; "none", "unknown" and "as agreed" have none.
std::string limitText(const Cell& cell, Comparison comparison, const std::string& unit) {
    const bool isLimit = cell.type == Cell::Type::Number ||
                         cell.type == Cell::Type::FractionOfThickness ||
                         cell.type == Cell::Type::FractionOfArea;
    const std::string text = bareValue(cell, unit);
    return withNote(isLimit ? inWords(comparison) + " " + text : text, cell);
}

std::string bandText(const Band& band) {
    std::string text;
    if (band.lower) text = std::string(word(band.lowerComparison)) + " " + toText(*band.lower);
    if (band.upper)
        text += (text.empty() ? "" : ", ") + std::string(word(band.upperComparison)) + " " +
                toText(*band.upper);
    return text;
}

std::string frameText(const FrameShape& shape) {
    if (shape.circle) return "circle of " + toText(shape.width) + " mm";
    return toText(shape.width) + " x " + toText(shape.height) + " mm";
}

class Lines {
public:
    explicit Lines(const LimitTable& table) : table_(table) {}

    std::vector<CellLine> take() {
        addMaterials();
        addRatio();
        addThresholds();
        addRows();
        addJoins();
        define("frame", table_.frame.known, frameText(table_.frame.shape), table_.frame.source);
        if (!table_.summedSource.locator.empty())
            define("sums", Known::Given,
                   table_.summedTogether
                       ? "linear and aligned together when ordered at the same number"
                       : "linear and aligned each alone",
                   table_.summedSource);
        addForbiddenKinds();
        for (const Rule& rule : table_.rules) addRule(rule);
        return std::move(lines_);
    }

private:
    void add(CellLine line, const Source& source, bool known) {
        line.locator = source.locator;
        if (known) line.grade = source.grade;
        lines_.push_back(std::move(line));
    }

    void define(const char* what, Known known, const std::string& value, const Source& source) {
        const char* text = known == Known::Unknown ? "unknown" : "the standard has none";
        add({what, "", "", "", known == Known::Given ? value : text, "", std::nullopt}, source,
            known != Known::Unknown);
    }

    void addMaterials() {
        std::string text;
        for (const Material material : table_.materials)
            text += (text.empty() ? "" : ", ") + std::string(word(material));
        lines_.push_back({"materials", "", "", "", text, "", std::nullopt});
    }

    void addRatio() {
        define("ratio", table_.ratio.known,
               "linear when the length is " + inWords(table_.ratio.comparison) + " " +
                   plain(table_.ratio.factor) + " x the width",
               table_.ratio.source);
    }

    void addThresholds() {
        const Threshold& threshold = table_.threshold;
        define("threshold", threshold.known,
               std::string(threshold.afterGrouping ? "after" : "before") + " grouping",
               threshold.source);
        for (const ThresholdRow& row : threshold.rows)
            add({"threshold", row.key, row.level, "",
                 limitText(row.cell, threshold.comparison, " mm"), "", std::nullopt},
                row.cell.source, row.cell.type != Cell::Type::Unknown);
    }

    void addRows() {
        const RowRule& rows = table_.rows;
        const char* becomes = rows.becomes == RowRule::Becomes::Aligned     ? "aligned"
                              : rows.becomes == RowRule::Becomes::NonLinear ? "non-linear"
                                                                            : "a line only";
        define("rows", rows.known,
               "at least " + std::to_string(rows.members) + " with gaps " +
                   inWords(rows.comparison) + " " + toText(rows.gap) + " mm; become " + becomes +
                   (rows.membersStay ? "; members stay" : "; members are replaced"),
               rows.source);
    }

    void addJoins() {
        const JoinRule& joins = table_.joins;
        const std::string reach =
            joins.reach == JoinRule::Reach::LongestMember ? "the longest single member of either"
            : joins.reach == JoinRule::Reach::SmallerSet  ? "the smaller of the two"
                                                          : toText(joins.gap) + " mm";
        define("joins", joins.known,
               std::string(joins.who == JoinRule::Who::Linear ? "linear" : "all") + " with a gap " +
                   inWords(joins.comparison) + " " + reach + "; become " +
                   (joins.becomes == JoinRule::Becomes::Aligned ? "aligned" : "their own class"),
               joins.source);
    }

    void addForbiddenKinds() {
        if (table_.forbiddenSource.locator.empty()) return;
        std::string text = table_.forbiddenKinds.empty() ? "none" : "";
        for (const Kind kind : table_.forbiddenKinds)
            text += (text.empty() ? "" : ", ") + std::string(word(kind));
        define("forbidden kinds", Known::Given, text, table_.forbiddenSource);
    }

    void addRule(const Rule& rule) {
        std::string what(word(rule.kind));
        std::string classes;
        for (const IndicationClass each : rule.classes)
            classes += (classes.empty() ? "" : ", ") + std::string(word(each));
        if (!classes.empty()) what += " (" + classes + ")";
        if (rule.framed) what += ", within the frame";
        for (const auto& [level, frame] : rule.frames) {
            const bool known = frame.known != Known::Unknown;
            const std::string text = frame.known == Known::Given    ? frameText(frame.shape)
                                     : frame.known == Known::Absent ? "the whole surface"
                                                                    : "unknown";
            add({what + ": frame", rule.key, level, "", text, "", std::nullopt}, frame.source,
                known);
        }
        for (const RuleRow& row : rule.rows) {
            add({what, rule.key, row.level, bandText(row.band),
                 limitText(row.limit, rule.passes, unitOf(rule.kind)), "", std::nullopt},
                row.limit.source, row.limit.type != Cell::Type::Unknown);
            if (rule.kind == RuleKind::CountAtMaximum)
                add({what + ": margin", rule.key, row.level, bandText(row.band),
                     withNote(bareValue(row.margin, " mm"), row.margin), "", std::nullopt},
                    row.margin.source, row.margin.type != Cell::Type::Unknown);
        }
    }

    const LimitTable& table_;
    std::vector<CellLine> lines_;
};

}  // namespace

std::vector<CellLine> cellsOf(const LimitTable& table) {
    return Lines(table).take();
}

}  // namespace model
