// SPDX-License-Identifier: Apache-2.0
#include "limits/cell_lines.h"

#include <algorithm>

#include "base/decimal.h"
#include "limits/cell_texts.h"
#include "limits/words.h"

namespace model {
namespace {

class Lines {
public:
    explicit Lines(const LimitTable& table) : table_(table) {}

    std::vector<CellLine> take() {
        addMaterials();
        if (table_.method == Method::Ultrasonic) {
            addUltrasonic();
        } else {
            addRatio();
            addThresholds();
            addRows();
        }
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
                   plainText(table_.ratio.factor) + " x the width",
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

    void addUltrasonic() {
        define("rim", table_.rim.known, rimText(table_.rim), table_.rim.source);
        if (table_.recording.empty())
            define("recording limit", Known::Absent, "", table_.recordingSource);
        for (const RecordingLimit& limit : table_.recording) {
            std::string what = "recording limit, " + measureText(limit.of);
            if (limit.measurable)
                what += *limit.measurable ? ", extent measurable" : ", extent not measurable";
            for (const RecordingLimit::Row& row : limit.rows)
                add({what, "", "", bandText(row.band),
                     limitText(row.cell, limit.comparison, unitOf(limit.of)), "", std::nullopt},
                    row.cell.source, row.cell.type != Cell::Type::Unknown);
        }
        const NotMeasurableRule& notMeasurable = table_.notMeasurable;
        const bool known = notMeasurable.throughWall || notMeasurable.area;
        define("not measurable counts as", known ? Known::Given : Known::Unknown,
               notMeasurable.written, notMeasurable.source);
        define("clusters", table_.clusters.known, table_.clusters.written, table_.clusters.source);
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

    static std::string nameOf(const Rule& rule) {
        std::string name(word(rule.kind));
        if (rule.kind == RuleKind::Testability)
            name += rule.testability == TestabilityMeasure::SmallestFbh
                        ? ", smallest flat-bottomed hole"
                        : ", signal to noise";
        std::string classes;
        for (const IndicationClass each : rule.classes)
            classes += (classes.empty() ? "" : ", ") + std::string(word(each));
        if (!classes.empty()) name += " (" + classes + ")";
        if (rule.framed) name += ", within the frame";
        for (const Condition& each : rule.conditions) name += ", " + conditionText(each);
        return name;
    }

    void addRule(const Rule& rule) {
        const std::string what = nameOf(rule);
        for (const Condition& each : rule.conditions)
            add({what + ": condition", rule.key, "", "", conditionText(each), "", std::nullopt},
                each.source, true);
        for (const auto& [level, frame] : rule.frames) {
            const bool known = frame.known != Known::Unknown;
            const std::string text = frame.known == Known::Given    ? frameText(frame.shape)
                                     : frame.known == Known::Absent ? "the whole surface"
                                                                    : "unknown";
            add({what + ": frame", rule.key, level, "", text, "", std::nullopt}, frame.source,
                known);
        }
        for (auto row = rule.rows.begin(); row != rule.rows.end(); ++row) {
            // A row of the file for every level is one line.
            const auto next = std::find_if(row, rule.rows.end(), [&](const RuleRow& other) {
                return other.line != row->line;
            });
            addRow(rule, what, *row, next - row > 1 ? "" : row->level);
            row = next - 1;
        }
    }

    void addRow(const Rule& rule, const std::string& what, const RuleRow& row,
                const std::string& level) {
        add({what, rule.key, level, bandText(row.band),
             limitText(row.limit, rule.passes, unitOf(rule)), "", std::nullopt},
            row.limit.source, row.limit.type != Cell::Type::Unknown);
        if (rule.kind == RuleKind::CountAtMaximum)
            add({what + ": margin", rule.key, level, bandText(row.band),
                 withNote(bareValue(row.margin, " mm"), row.margin), "", std::nullopt},
                row.margin.source, row.margin.type != Cell::Type::Unknown);
    }

    const LimitTable& table_;
    std::vector<CellLine> lines_;
};

}  // namespace

std::vector<CellLine> cellsOf(const LimitTable& table) {
    return Lines(table).take();
}

}  // namespace model
