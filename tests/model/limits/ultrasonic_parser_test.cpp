// SPDX-License-Identifier: Apache-2.0
// What tables for ultrasonic testing state, and how they are refused: each refused text is
// data/good_ultrasonic.table with one thing wrong.
#include <gmock/gmock.h>
#include <string>

#include "limits/parser.h"
#include "read_data.h"
#include "table_columns.h"

namespace model {
namespace {

using testing::HasSubstr;

LimitTable good() {
    auto table = parseTable(readData("good_ultrasonic.table"), "t");
    EXPECT_TRUE(table.ok()) << (table.ok() ? "" : table.error().message());
    return table.ok() ? std::move(table).value() : LimitTable{};
}

TEST(UltrasonicParser, ReadsRimAndClustersAndWhatIsNotMeasurable) {
    const LimitTable table = good();
    EXPECT_EQ(table.rim.known, Known::Given);
    EXPECT_EQ(table.rim.share, Rational(1, 3));
    EXPECT_EQ(table.rim.atMost, millimetres(30));
    EXPECT_EQ(table.rim.source.locator, "3.6");
    EXPECT_EQ(table.notMeasurable.throughWall, millimetres(3));
    EXPECT_EQ(table.notMeasurable.area, Area::fromMillionths(96'774'000));  // 0.15 x 645.16
    EXPECT_EQ(table.notMeasurable.written, "through-wall 3 mm area 0.15 in2");
    EXPECT_EQ(table.clusters.known, Known::Given);
    EXPECT_EQ(table.clusters.cube, millimetres(25));
    EXPECT_EQ(table.clusters.spread, squareMillimetres(23'200));
    EXPECT_EQ(table.clusters.written, "cube 25 mm spread 232 cm2");
    EXPECT_EQ(table.forbiddenKinds, std::vector{Kind::Planar});
}

TEST(UltrasonicParser, ReadsRecordingLimits) {
    const LimitTable table = good();
    ASSERT_EQ(table.recording.size(), 3U);
    const RecordingLimit& measurable = table.recording[0];
    EXPECT_EQ(measurable.of, ReflectorMeasure::Fbh);
    EXPECT_EQ(measurable.comparison, Comparison::AtLeast);
    EXPECT_EQ(measurable.measurable, true);
    ASSERT_EQ(measurable.rows.size(), 2U);
    EXPECT_FALSE(measurable.rows[0].band.lower);
    EXPECT_EQ(measurable.rows[0].band.upper, millimetres(300));
    EXPECT_EQ(textOf(measurable.rows[0].cell), "3");
    EXPECT_EQ(textOf(measurable.rows[1].cell), "6.35");  // a quarter of an inch
    EXPECT_EQ(measurable.rows[1].cell.written, "0.25 in");
    EXPECT_EQ(measurable.rows[1].line, 14);
    EXPECT_EQ(measurable.rows[1].cell.source.grade, Grade::Partly);
    EXPECT_EQ(table.recording[1].measurable, false);
    EXPECT_EQ(textOf(table.recording[1].rows[1].cell), "unknown");
    const RecordingLimit& echo = table.recording[2];
    EXPECT_EQ(echo.of, ReflectorMeasure::OverReference);
    EXPECT_EQ(echo.comparison, Comparison::More);
    EXPECT_EQ(echo.measurable, std::nullopt);
    EXPECT_EQ(textOf(echo.rows[0].cell), "-6.0206");
    EXPECT_EQ(echo.rows[0].cell.note, "half");
}

TEST(UltrasonicParser, ReadsConditionsAndTestability) {
    const LimitTable table = good();
    ASSERT_EQ(table.rules.size(), 5U);
    EXPECT_EQ(table.rules[0].testability, TestabilityMeasure::SmallestFbh);
    EXPECT_EQ(table.rules[1].testability, TestabilityMeasure::SignalToNoise);
    ASSERT_EQ(table.rules[0].rows.size(), 4U);  // each of both rows for each of both levels
    EXPECT_EQ(table.rules[0].rows[1].level, "2");
    EXPECT_EQ(table.rules[0].rows[1].line, table.rules[0].rows[0].line);
    const std::vector<Condition>& both = table.rules[2].conditions;
    ASSERT_EQ(both.size(), 2U);
    EXPECT_EQ(both[0].of, ReflectorMeasure::IndicationLength);
    EXPECT_EQ(both[0].comparison, Comparison::AtMost);
    EXPECT_EQ(both[0].value, Rational(10'000'000));
    EXPECT_EQ(both[0].source.grade, Grade::ReadTwice);
    EXPECT_EQ(both[1].of, ReflectorMeasure::LengthToWidth);
    EXPECT_EQ(both[1].comparison, Comparison::More);
    EXPECT_EQ(both[1].value, Rational(5, 2));
    ASSERT_EQ(table.rules[3].conditions.size(), 1U);
    EXPECT_EQ(table.rules[3].conditions[0].of, ReflectorMeasure::OverReference);
    EXPECT_EQ(table.rules[3].conditions[0].value, Rational(-6'000'000));
    EXPECT_EQ(textOf(table.rules[4].rows[0].limit), "516.128");
    EXPECT_EQ(table.rules[4].rows[0].limit.written, "0.8 in2");
    EXPECT_EQ(textOf(table.rules[4].rows[1].limit), "600");
}

TEST(UltrasonicParser, LeavesNothingUnknownThatOnlySurfaceTablesState) {
    const LimitTable table = good();
    EXPECT_EQ(table.ratio.known, Known::Absent);
    EXPECT_EQ(table.threshold.known, Known::Absent);
    EXPECT_EQ(table.rows.known, Known::Absent);
}

std::string replaced(const std::string& from, const std::string& to) {
    std::string text = readData("good_ultrasonic.table");
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

LimitTable with(const std::string& from, const std::string& to) {
    auto table = parseTable(replaced(from, to), "t");
    EXPECT_TRUE(table.ok()) << (table.ok() ? "" : table.error().message());
    return table.ok() ? std::move(table).value() : LimitTable{};
}

TEST(UltrasonicParser, ReadsWhatIsAbsentOrUnknown) {
    EXPECT_EQ(with("rim 1/3 of the wall at most 30 mm", "rim unknown").rim.known, Known::Unknown);
    EXPECT_EQ(with("rim 1/3 of the wall at most 30 mm", "rim absent").rim.known, Known::Absent);
    EXPECT_FALSE(with(" at most 30 mm", "").rim.atMost);
    EXPECT_EQ(with("cube 25 mm spread 232 cm2", "unknown").clusters.known, Known::Unknown);
    EXPECT_FALSE(with(" spread 232 cm2", "").clusters.spread);
    const NotMeasurableRule none = with("through-wall 3 mm area 0.15 in2", "unknown").notMeasurable;
    EXPECT_FALSE(none.throughWall);
    EXPECT_FALSE(none.area);
    EXPECT_EQ(none.source.locator, "note");
    EXPECT_FALSE(with("area 0.15 in2 ", "").notMeasurable.area);
    EXPECT_FALSE(with("through-wall 3 mm ", "").notMeasurable.throughWall);
    std::string text = readData("good_ultrasonic.table");
    const std::size_t from = text.find("recording fbh");
    text.replace(from, text.find("not-measurable") - from, "recording absent at \"4\" R\n");
    const auto table = parseTable(text, "t");
    ASSERT_TRUE(table.ok()) << table.error().message();
    EXPECT_TRUE(table->recording.empty());
    EXPECT_EQ(table->recordingSource.locator, "4");
}

struct Wrong {
    const char* from;
    const char* to;
    int line;
    const char* reason;
};

constexpr Wrong kWrong[] = {
    {"of rim core planar dross clustered are", "are", 9, "the classes that \"all\" orders are"},
    {"of rim", "of linear", 9, "UT has no class linear"},
    {"rim 1/3", "linear length >= 3 widths at \"a\" R\nrim 1/3", 10,
     "\"linear\" is not a statement of a table for UT"},
    {"frame unknown", "summed apart at \"a\" R\nframe unknown", 25,
     "\"summed\" is not a statement of a table for UT"},
    {"method UT", "method MT", 9, "MT has no class rim"},
    {"rim 1/3 of the wall at most 30 mm at \"3.6\" R\n", "", 70,
     "the statement \"rim\" is missing"},
    {"clusters cube 25 mm spread 232 cm2 at \"5.1\" R\n", "", 70,
     "the statement \"clusters\" is missing"},
    {"not-measurable through-wall 3 mm area 0.15 in2 at \"note\" R\n", "", 70,
     "the statement \"not-measurable\" is missing"},
    {"rim 1/3", "rim 2/3", 10, "leaves no core"},
    {"rim 1/3", "rim 3/3", 10, "\"3/3\" is not a fraction above 0 and below 1"},
    {"rim 1/3", "rim 0/3", 10, "\"0/3\" is not a fraction"},
    {"rim 1/3", "rim 33%", 10, "\"33%\" is not a fraction"},
    {"rim 1/3 of the wall", "rim 1/3", 10, "expected \"of\" instead of \"at\""},
    {"30 mm", "30", 10, "\"at\" is not a unit of the rim's greatest depth"},
    {"30 mm", "30 mm2", 10, "\"mm2\" is not a unit of the rim's greatest depth"},
    {"30 mm", "0 mm", 10, "must be above 0"},
    {"\"3.6\" R", "\"3.6\"", 10, "the grade is missing"},
    {"recording fbh >= limit measurable", "recording size >= limit measurable", 11,
     "\"size\" is not a known measure of an indication"},
    {"recording fbh >= limit measurable", "recording fbh <= limit measurable", 11,
     "the comparison <= has no meaning here"},
    {"recording fbh >= limit measurable", "recording fbh >= measurable", 11,
     "expected \"limit\" instead of \"measurable\""},
    {"recording fbh >= limit measurable", "recording length to width >= limit", 11,
     "a ratio of length to width is no recording limit"},
    {"limit not measurable", "limit measurable", 15, "this recording limit is already stated"},
    {"limit not measurable", "limit measured", 15, "\"measured\" was not expected here"},
    {"recording over reference", "recording absent at \"a\" R\nrecording over reference", 19,
     "has recording limits or states that they are absent"},
    {"recording fbh", "recording absent at \"a\" R\nrecording fbh", 12,
     "has recording limits or states that they are absent"},
    {"columns from to limit", "columns from limit", 12, "expected \"limit\" instead of \"from\""},
    {"  row open <=300 3 \"table 4\" P\n  row >300 <=600 0.25 in \"table 4\" P\n", "", 11,
     "the recording limit has no row"},
    {"  columns from to limit locator grade\n", "", 12, "\"columns\" must stand above the rows"},
    {"  row open <=300 3 \"table 4\"", "  row open <=200 3 \"table 4\"", 14,
     "there is a gap between this band and the one in line 13"},
    {"  row open <=300 3 \"table 4\"", "  row open <=400 3 \"table 4\"", 14,
     "the band overlaps the one in line 13"},
    {"<=300 3 \"table 4\"", "<=300 none \"table 4\"", 13, "is a number or unknown"},
    {"<=300 3 \"table 4\"", "<=300 10%t \"table 4\"", 13, "is a number or unknown"},
    {"<=300 3 \"table 4\"", "<=300 -3 \"table 4\"", 13, "the cell \"-3\" is negative"},
    {"<=300 3 \"table 4\"", "<=300 3 in2 \"table 4\"", 13, "\"in2\" is not a unit of what is"},
    {"<=300 3 \"table 4\" P", "<=300 3 \"table 4\" P not monotone \"a\"", 13,
     "a recording limit is not compared between levels"},
    {"-6.0206 \"4.2\"", "-6.0206 in \"4.2\"", 21, "\"in\" is not a unit of what is limited here"},
    {"recording fbh >= limit not measurable\n  columns from to limit locator grade\n"
     "  row open <=300 4 \"table 4\" P\n  row >300 <=600 unknown \"table 4\" P\n",
     "", 13, "for a measurable extent only; the one for the others is missing"},
    {"not-measurable through-wall 3 mm area 0.15 in2", "not-measurable length 3 mm", 22,
     "expected one of: through-wall, area, unknown"},
    {"0.15 in2", "0.15 in", 22, "\"in\" is not a unit of the area"},
    {"0.15 in2", "0.150001 in2", 22, "too many decimals to be exact in mm2"},
    {"0.15 in2", "2000 in2 at", 22, "\"2000 in2\" is larger than 1000000 mm2"},
    {"clusters cube", "clusters sphere", 23, "expected \"cube\" instead of \"sphere\""},
    {"clusters cube 25 mm spread 232 cm2", "clusters absent", 23,
     "clusters are absent, but a key orders the class clustered"},
    {"dross clustered are", "dross are", 23,
     "clusters are given, but no key orders the class clustered"},
    {"forbidden planar", "forbidden crack", 26, "crack is not a kind of indications that UT finds"},
    {"  measures smallest fbh\n", "", 33, "\"measures\" must stand above the rows"},
    {"smallest fbh", "largest fbh", 30, "\"largest fbh\" is not one of: smallest fbh"},
    {"smallest fbh\n  passes at most", "smallest fbh\n  passes at least", 27,
     "the smallest hole passes up to its limit"},
    {"noise\n  passes at least", "noise\n  passes at most", 36, "signal to noise from it"},
    {"classes all\n  measures smallest fbh", "classes rim\n  measures smallest fbh", 27,
     "testability is the casting's: classes all, framed no"},
    {"measures smallest fbh", "only fbh >= 3 mm at \"a\" R", 30, "it has no condition"},
    {"measures signal to noise", "measures smallest fbh", 36, "signal to noise from it"},
    {"  only length <= 10 mm at \"5.5\" R2", "  measures smallest fbh", 47,
     "a statement of a rule \"testability\" only"},
    {"only length <= 10 mm", "only length <= 10", 47, "\"at\" is not a unit of the length"},
    {"only length <= 10 mm", "only length 10 mm", 47, "\"10\" is not a known comparison"},
    {"only length to width > 2.5", "only length to width > 2.5 mm", 48,
     "expected \"at\" instead of \"mm\""},
    {"only length <= 10 mm at \"5.5\" R2", "only length <= 10 mm", 47,
     "expected \"at\" at the end of the line"},
    {"only over reference >= -6 dB", "only over reference >= -6", 57,
     "expected \"dB\" instead of \"at\""},
    {"only over reference >= -6 dB", "only over reference >= none dB", 57,
     "expected a number in dB"},
    {"  only over reference >= -6 dB at \"5.6\" M\n",
     "  only length to width > 2.5 at \"5.6\" M\n  only length <= 10 mm at \"5.6\" M\n", 54,
     "line 44 already gives this rule for this key and these classes"},
    {"  row \"1\" 10%t", "  row \"1\" 30%t", 53,
     "stricter than the one of the stricter level \"1\""},
    {"row every 6", "row all 6", 43, "the level is missing: expected a text in quotation marks"},
    {"row every 6 \"5.4\" R", "row every 6 \"5.4\" R\n  row \"2\" 6 \"5.4\" R", 44,
     "line 43 already gives this level's cell"},
    {"0.8 in2", "0.8 in", 69, "\"in\" is not a unit of what is limited here"},
    {"0.8 in2", "0.80001 in2", 69, "too many decimals to be exact in mm2"},
    {"0.8 in2", "1 in2", 70, "stricter than the one of the stricter level \"1\" in line 69"},
    {"rule individual area\n  key all\n  classes all",
     "rule individual area\n  key all\n  classes rim core planar clustered", 9,
     "no rule of all looks at the class dross"},
};

TEST(UltrasonicParser, RefusesWhatIsWrongWithItsLine) {
    for (const Wrong& wrong : kWrong) {
        SCOPED_TRACE(std::string(wrong.from) + " -> " + wrong.to);
        const auto table = parseTable(replaced(wrong.from, wrong.to), "t");
        ASSERT_FALSE(table.ok());
        EXPECT_EQ(table.error().kind, ErrorKind::Input);
        EXPECT_EQ(table.error().place, "t:" + std::to_string(wrong.line));
        EXPECT_THAT(table.error().message(), HasSubstr(wrong.reason));
    }
}

// Without a rim, a limit for the rim alone would be a limit for nothing.
TEST(UltrasonicParser, WithoutARimARuleLooksAtTheWholeWall) {
    std::string text = replaced("rim 1/3 of the wall at most 30 mm", "rim absent");
    ASSERT_TRUE(parseTable(text, "t").ok());
    const std::string classes = "classes rim core planar";
    text.replace(text.find(classes), classes.size(), "classes rim planar");
    const auto table = parseTable(text, "t");
    ASSERT_FALSE(table.ok());
    EXPECT_EQ(table.error().place, "t:44");
    EXPECT_THAT(table.error().message(), HasSubstr("looks at rim and core together"));
}

TEST(UltrasonicParser, SurfaceTablesStateNothingOfIt) {
    std::string text = readData("good.table");
    const std::string forbidden = "forbidden none";
    const std::size_t at = text.find(forbidden);
    ASSERT_NE(at, std::string::npos);
    std::string rim = text;
    rim.insert(at, "rim absent at \"a\" R\n");
    const auto withRim = parseTable(rim, "t");
    ASSERT_FALSE(withRim.ok());
    EXPECT_THAT(withRim.error().message(),
                HasSubstr("\"rim\" is not a statement of a table for MT"));
    const auto withKind = parseTable(text.replace(at, forbidden.size(), "forbidden dross"), "t");
    ASSERT_FALSE(withKind.ok());
    EXPECT_THAT(withKind.error().message(),
                HasSubstr("dross is not a kind of indications that MT"));
    std::string only = readData("good.table");
    only.insert(only.find("  passes"), "  only length > 1 mm at \"a\" R\n");
    const auto withCondition = parseTable(only, "t");
    ASSERT_FALSE(withCondition.ok());
    EXPECT_THAT(withCondition.error().message(),
                HasSubstr("only rules for ultrasonic indications"));
}

TEST(UltrasonicParser, EveryTruncationIsRefused) {
    const std::string text = readData("good_ultrasonic.table");
    for (std::size_t size = 0; size + 1 < text.size(); ++size) {
        const auto table = parseTable(std::string_view(text).substr(0, size), "t");
        ASSERT_FALSE(table.ok()) << size;
        EXPECT_TRUE(table.error().place.starts_with("t:")) << size;
    }
}

}  // namespace
}  // namespace model
