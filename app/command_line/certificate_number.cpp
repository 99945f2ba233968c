// SPDX-License-Identifier: Apache-2.0
#include "certificate_number.h"

#include <charconv>
#include <limits>

namespace app {

model::Result<std::int64_t> certificateNumber(const Arguments& arguments) {
    const std::string& text = *arguments.value("--number");
    std::int64_t number = 0;
    const char* const end = text.data() + text.size();
    const auto [stop, code] = std::from_chars(text.data(), end, number);
    if (code != std::errc{} || stop != end || number < 1 ||
        number == std::numeric_limits<std::int64_t>::max())
        return model::inputError("--number", "\"%1\" is not a certificate's number, such as 17",
                                 {text});
    return number;
}

}  // namespace app
