// SPDX-License-Identifier: Apache-2.0
// Values as a certificate prints them. Numbers come from their exact form, never from a double.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "certificate/document.h"
#include "judge/sheet.h"
#include "judge/verdict.h"

namespace reports {

/// `phrase` with %1, %2 ... replaced; a value is never searched for further placeholders.
std::string filled(std::string_view phrase, const std::vector<std::string>& values);

std::string joined(const std::vector<std::string>& texts, std::string_view separator);
/// "a, b, c", or the first `most` and how many more.
std::string shortList(const std::vector<std::string>& texts, std::size_t most,
                      std::string_view separator = ", ");
/// `text`, or "not recorded" where it is blank.
std::string orNotRecorded(const std::string& text);

/// Hexadecimal digits in groups that an eye can follow and a line can break between.
std::string grouped(const std::string& digits);

Mark markOf(model::Word word);
std::string lowerWord(model::Word word);
std::string upperWord(model::Word word);

std::string stageWord(model::Stage stage);
std::string methodName(model::Method method);
std::string kindsText(const std::vector<model::Kind>& kinds);
/// `text` with no-break spaces.
std::string unbroken(const std::string& text);
/// The key of a table that has one level for every class.
inline constexpr std::string_view kAllClasses = "all";

/// "linear LM 4", of all classes "level 3" or "P 2"; kept on one line.
std::string levelText(const std::string& key, const std::string& level);
/// "linear LM 4, non-linear SM 2".
std::string levelsText(const std::map<std::string, std::string>& levels);

/// "19.5 mm"; a dash where there is no measured value.
std::string measuredText(const model::Check& check);
/// "<= 18 mm" with the sign of the comparison; a dash where there is no limit.
std::string limitText(const model::Check& check);
/// "108.4 %" of the limit, rounded up to 0.1; empty where a share has no meaning.
std::string shareText(const model::Check& check);
/// "individual length, linear, LM 4".
std::string ruleText(const model::Check& check);

/// Whether an indication was counted, or why not.
std::string whetherCounted(model::Relevance relevance, const std::string& reason, bool considered);

/// A coordinate or angle of a computed figure, to 0.01 (0.1 for an angle).
std::string placeText(double millimetres);
std::string angleText(double degrees);

}  // namespace reports
