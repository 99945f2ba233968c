// SPDX-License-Identifier: Apache-2.0
#include "whole_number.h"

#include <charconv>
#include <limits>

namespace app {

model::Result<std::int64_t> wholeNumber(const Arguments& arguments, std::string_view option) {
    const std::string& text = *arguments.value(option);
    std::int64_t number = 0;
    const char* const end = text.data() + text.size();
    const auto [stop, code] = std::from_chars(text.data(), end, number);
    if (code != std::errc{} || stop != end || number < 1 ||
        number == std::numeric_limits<std::int64_t>::max())
        return model::inputError(std::string(option), "\"%1\" is not a number such as 17", {text});
    return number;
}

}  // namespace app
