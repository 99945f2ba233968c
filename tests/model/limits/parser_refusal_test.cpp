// SPDX-License-Identifier: Apache-2.0
// Every refusal of the parser: data/broken_NAME.table is data/good.table with one thing wrong.
#include <gmock/gmock.h>
#include <string>

#include "limits/parser.h"
#include "limits/table_lines.h"
#include "read_data.h"

namespace model {
namespace {

using testing::HasSubstr;

struct Broken {
    const char* name;
    int line;
    const char* reason;
};

constexpr Broken kBroken[] = {
    {"not_utf8", 5, "is not UTF-8"},
    {"overlong_utf8", 5, "is not UTF-8"},
    {"surrogate_utf8", 5, "is not UTF-8"},
    {"nul", 5, "holds a control character"},
    {"control_character", 5, "holds a control character"},
    {"byte_order_mark", 1, "holds a byte-order mark"},
    {"line_too_long", 5, "the line is longer than 2000 bytes"},
    {"open_quotation", 5, "quotation mark that is not closed"},
    {"quotation_inside_word", 5, "quotation mark inside a word"},
    {"no_space_after_quotation", 5, "no space after a quotation mark"},
    {"begins_quoted", 5, "begins with a quoted text"},
    {"other_format", 2, "reads the format fettlemark-table 1 only"},
    {"no_format", 2, "the first statement must be: fettlemark-table 1"},
    {"empty", 1, "the statement \"fettlemark-table\" is missing"},
    {"unknown_statement", 5, "\"editoin\" is not a statement of a limit table"},
    {"no_id", 49, "the statement \"id\" is missing"},
    {"no_standard", 49, "the statement \"standard\" is missing"},
    {"no_edition", 49, "the statement \"edition\" is missing"},
    {"no_revision", 49, "the statement \"revision\" is missing"},
    {"no_materials", 49, "the statement \"materials\" is missing"},
    {"no_linear", 49, "the statement \"linear\" is missing"},
    {"no_rows", 49, "the statement \"rows\" is missing"},
    {"no_joins", 49, "the statement \"joins\" is missing"},
    {"no_frame", 49, "the statement \"frame\" is missing"},
    {"no_summed", 49, "the statement \"summed\" is missing"},
    {"no_forbidden", 49, "the statement \"forbidden\" is missing"},
    {"no_method", 8, "\"method\" must stand above \"levels\""},
    {"no_levels", 15, "\"levels\" must stand above \"threshold\""},
    {"no_threshold", 44, "the statement \"threshold\" is missing"},
    {"no_rule", 23, "the table has no rule"},
    {"edition_twice", 6, "\"edition\" is already stated in line 5"},
    {"threshold_columns_twice", 19, "\"columns\" is already stated for the threshold"},
    {"text_not_quoted", 5,
     "the edition is missing: expected a text in quotation marks instead of \"2000\""},
    {"text_empty", 5, "the edition is empty"},
    {"text_missing", 5, "the edition is missing"},
    {"words_left", 5, "\"2001\" was not expected here"},
    {"revision_zero", 6, "the revision \"0\" is not a whole number from 1 up"},
    {"revision_fraction", 6, "the revision \"1.5\" is not a whole number from 1 up"},
    {"unknown_method", 7, "\"RT\" is not a known method"},
    {"unknown_material", 8, "\"cast bronze\" is not a known material"},
    {"material_twice", 8, "the material cast steel is named twice"},
    {"unknown_key", 10, "\"sideways\" is not a level key of MT"},
    {"key_of_other_method", 10, "\"isolated\" is not a level key of MT"},
    {"key_twice", 11, "the key \"aligned\" already has its levels"},
    {"all_beside_keys", 11, "a table with the key \"all\" has no other key"},
    {"key_without_classes", 10, "the classes that \"aligned\" orders are missing"},
    {"unknown_class_in_levels", 10, "\"round\" is not a known class"},
    {"class_ordered_twice", 10, "the class linear is ordered twice"},
    {"non_linear_beside_isolated", 11, "non-linear includes isolated and clustered"},
    {"level_named_twice", 10, "the level \"AM 1\" is named twice"},
    {"too_many_levels", 10, "a key has at most 32 levels"},
    {"ratio_below", 11, "the comparison < has no meaning here"},
    {"ratio_fraction", 11, "the ratio \"2.5\" is not a whole number from 1 up"},
    {"ratio_without_locator", 11, "expected \"at\" at the end of the line"},
    {"definition_without_grade", 11, "the grade is missing"},
    {"unknown_without_source", 11, "expected \"at\" at the end of the line"},
    {"rows_of_one", 12, "the number of members \"1\" is not a whole number from 2 up"},
    {"rows_without_comparison", 12, "\"2\" is not a known comparison"},
    {"rows_gap_zero", 12, "the gap must be above 0"},
    {"rows_become_other", 12, "rows become one of: aligned, non-linear, line only"},
    {"rows_without_members", 12, "expected \"members\" instead of \"at\""},
    {"rows_become_unordered_class", 12, "rows become aligned, but no key orders that class"},
    {"joins_become_unordered_class", 13, "joins become aligned, but no key orders that class"},
    {"summed_without_classes", 15, "summed together, but no key orders both classes"},
    {"joins_of_other", 13, "expected \"linear\" instead of \"non-linear\""},
    {"joins_without_unit", 13, "expected \"mm\" instead of \"become\""},
    {"frame_without_height", 14, "expected \"x\" instead of \"mm\""},
    {"frame_zero", 14, "the frame's size must be above 0"},
    {"frame_other_shape", 14, "expected \"rectangle\" instead of \"ellipse\""},
    {"summed_other", 15, "expected \"apart\" instead of \"sometimes\""},
    {"unknown_kind", 16, "\"scratch\" is not a known kind"},
    {"kind_unknown_forbidden", 16, "\"unknown\" is not a kind to forbid"},
    {"kind_twice", 16, "the kind crack is named twice"},
    {"forbidden_without_source", 16, "the locator is missing"},
    {"threshold_at_most", 17, "the comparison <= has no meaning here"},
    {"threshold_without_order", 17, "expected \"before\" instead of \"at\""},
    {"threshold_without_columns", 18, "\"columns\" must stand above the rows"},
    {"threshold_level_missing", 17, "there is no row for the level \"AM 2\" of aligned"},
    {"threshold_unknown_key", 22, "the key \"rim\" has no levels in this table"},
    {"threshold_unknown_level", 22, "\"AM 3\" is not a level of aligned"},
    {"threshold_level_twice", 22, "line 21 already gives this level's cell"},
    {"threshold_shrinks", 22, "stricter than the one of the stricter level \"AM 1\" in line 21"},
    {"threshold_of_area", 22, "a threshold is a length"},
    {"threshold_without_locator", 22, "the locator is missing"},
    {"threshold_without_grade", 22, "the grade is missing"},
    {"unknown_rule", 23, "\"individual weight\" is not a known rule"},
    {"rule_forbidden_kind", 23, "by the table's statement \"forbidden\""},
    {"unknown_rule_statement", 24, "\"edition\" is not a statement of a rule"},
    {"rule_without_key", 24, "the first statement of a rule must be \"key\""},
    {"rule_without_classes", 23, "the rule lacks the statement \"classes\""},
    {"rule_without_passes", 23, "the rule lacks the statement \"passes\""},
    {"rule_without_framed", 23, "the rule lacks the statement \"framed\""},
    {"rule_without_columns", 28, "\"columns\" must stand above the rows"},
    {"rule_without_rows", 23, "the rule lacks the statement \"row\""},
    {"rule_passes_twice", 27, "\"passes\" is already stated in this rule"},
    {"rule_undeclared_key", 24, "the key \"aligned-ish\" has no levels in this table"},
    {"rule_unknown_class", 25, "\"round\" is not a known class"},
    {"rule_class_twice", 25, "the class linear is named twice"},
    {"rule_unordered_class", 23, "no key orders the class non-linear"},
    {"rule_passes_other", 26, "expected one of: at most, less than, at least, more than"},
    {"rule_framed_other", 27, "expected \"no\" instead of \"maybe\""},
    {"rule_columns_lack_grade", 28, "expected \"grade\" at the end of the line"},
    {"rule_columns_lack_to", 28, "expected \"limit\" instead of \"from\""},
    {"frame_in_unframed_rule", 23, "the rule has a frame, but says framed no"},
    {"margin_elsewhere", 23, "only a count at the maximum has a margin"},
    {"frame_level_twice", 29, "the level \"LM 1\" already has a frame"},
    {"frame_of_unknown_level", 28, "\"LM 9\" is not a level of linear"},
    {"band_without_comparison", 30, "the lower end of the band \"16\" has no comparison"},
    {"upper_end_without_comparison", 29, "the upper end of the band \"16\" has no comparison"},
    {"upper_end_wrong_way", 29, "the upper end of the band \">16\" has no comparison"},
    {"band_end_negative", 29, "the lower end of the band \">=-1\" is negative"},
    {"band_end_no_number", 29, "the upper end of the band \"<=sixteen\" is not a decimal number"},
    {"band_empty", 29, "the band contains no thickness"},
    {"band_gap", 30, "there is a gap between this band and the one in line 29"},
    {"band_gap_at_a_point", 30, "neither contains 16 mm"},
    {"band_overlap", 30, "the band overlaps the one in line 29"},
    {"band_overlap_at_a_point", 30, "both contain 16 mm"},
    {"band_below_the_last", 30, "does not stand above it"},
    {"level_row_twice", 41, "already gives this level's cell"},
    {"too_many_bands", 61, "a level has more than 32 bands"},
    {"level_without_row", 23, "there is no row for the level \"LM 2\" of linear"},
    {"row_unknown_level", 31, "\"LM 3\" is not a level of linear"},
    {"row_level_of_other_key", 31, "\"AM 2\" is not a level of linear"},
    {"row_level_not_quoted", 31, "the level is missing: expected a text in quotation marks"},
    {"row_without_locator", 31, "the locator is missing"},
    {"row_blank_locator", 31, "the locator is empty"},
    {"row_without_grade", 31, "the grade is missing"},
    {"row_unknown_grade", 31, "\"R3\" is not a known grade"},
    {"row_without_cell", 31, "the cell is missing"},
    {"row_without_band", 31, "the lower end of the band \"4\" has no comparison"},
    {"cell_no_number", 31, "the cell \"4mm\" is neither a number"},
    {"cell_comma", 31, "the cell \"4,5\" is neither a number"},
    {"cell_negative", 31, "the cell \"-4\" is negative"},
    {"cell_too_fine", 31, "has more than 6 decimals"},
    {"cell_too_large", 31, "is larger than 1000000"},
    {"cell_divided_by_zero", 31, "\"t/0\" is not t divided by a whole number"},
    {"cell_over_whole", 31, "\"101\" is not a percentage of the thickness"},
    {"cell_zero_percent", 31, "\"0\" is not a percentage of the thickness"},
    {"cell_percent_too_fine", 31, "the percentage \"0.00001\" has too many decimals"},
    {"length_of_area", 31, "a rule \"individual length\" does not measure an area"},
    {"stricter_at_milder_level", 31,
     "stricter than the one of the stricter level \"LM 1\" in line 29"},
    {"stricter_where_bands_overlap", 32,
     "stricter than the one of the stricter level \"LM 1\" in line 30"},
    {"stricter_minimum_at_milder_level", 31,
     "stricter than the one of the stricter level \"LM 1\" in line 29"},
    {"not_monotone_without_reason", 31, "the reason why the row is not monotone is missing"},
    {"not_monotone_without_need", 31,
     "the row says \"not monotone\", but its value is not stricter"},
    {"note_without_text", 31, "the note is missing"},
    {"count_not_whole", 41, "the limit of a rule \"count at the maximum\" is a whole number"},
    {"count_of_thickness", 41, "does not measure a length"},
    {"count_without_margin", 33, "there is no margin for the level \"LM 1\""},
    {"margin_none", 38, "a margin is a length in mm, unknown or agreed"},
    {"margin_twice", 39, "the level \"LM 2\" already has a margin"},
    {"margin_not_monotone", 38, "a margin is not compared between levels"},
    {"count_without_maximum", 23, "needs a rule \"individual length\" of the same key and classes"},
    {"rule_twice", 50, "line 33 already gives this rule for this key and these classes"},
    {"table_statement_below_rules", 33, "\"edition\" is not a statement of a rule"},
    {"no_end", 49, "the file stops before the statement \"end\""},
    {"cut_between_rules", 41, "the file stops before the statement \"end\""},
    {"statement_after_end", 51, "nothing follows the statement \"end\""},
    {"end_with_words", 50, "\"of\" was not expected here"},
    {"class_without_rule", 10, "no rule of aligned looks at the class aligned"},
};

TEST(ParserRefusal, TheUnbrokenTableIsTaken) {
    const auto table = parseTable(readData("good.table"), "good.table");
    ASSERT_TRUE(table.ok()) << table.error().message();
}

TEST(ParserRefusal, NamesFileLineAndReasonOfEveryBrokenTable) {
    for (const Broken& broken : kBroken) {
        const std::string file = std::string("broken_") + broken.name + ".table";
        SCOPED_TRACE(file);
        const auto table = parseTable(readData(file), file);
        EXPECT_FALSE(table.ok());
        if (table.ok()) continue;
        EXPECT_EQ(table.error().kind, ErrorKind::Input);
        EXPECT_EQ(table.error().place, file + ":" + std::to_string(broken.line));
        EXPECT_THAT(table.error().message(), HasSubstr(broken.reason));
    }
}

TEST(ParserRefusal, EveryBrokenTableIsInTheList) {
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator("data"))
        files += entry.path().filename().string().starts_with("broken_") ? 1 : 0;
    EXPECT_EQ(files, std::size(kBroken));
}

TEST(ParserRefusal, RefusesAFileAboveItsSize) {
    const std::string good = readData("good.table");
    const std::string filler = "# " + std::string(98, 'x') + "\n";
    std::string text = good;
    while (text.size() + filler.size() <= kLargestTableFile) text += filler;
    text += "#" + std::string(kLargestTableFile - text.size() - 1, ' ');
    ASSERT_EQ(text.size(), kLargestTableFile);
    EXPECT_TRUE(parseTable(text, "t").ok());
    const auto larger = parseTable(text + "\n", "t");
    ASSERT_FALSE(larger.ok());
    EXPECT_EQ(larger.error().message(), "t:1: the file is larger than 1000000 bytes");
}

TEST(ParserRefusal, TakesALineOfTheGreatestLength) {
    const std::string comment = "#" + std::string(kLongestTableLine - 1, 'x');
    EXPECT_TRUE(parseTable(comment + "\n" + readData("good.table"), "t").ok());
    EXPECT_FALSE(parseTable(comment + "x\n" + readData("good.table"), "t").ok());
}

TEST(ParserRefusal, ShowsLittleOfALongTextAndCutsNoCharacterInTwo) {
    std::string text = "fettlemark-table 1\n";
    for (int i = 0; i < 500; ++i) text += "\xC3\xA9";
    const auto table = parseTable(text, "t");
    ASSERT_FALSE(table.ok());
    const std::string message = table.error().message();
    EXPECT_LT(message.size(), 150U);
    EXPECT_THAT(message, HasSubstr("\xC3\xA9...\" is not a statement of a limit table"));
}

}  // namespace
}  // namespace model
