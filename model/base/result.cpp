// SPDX-License-Identifier: Apache-2.0
#include "base/result.h"

namespace model {

std::string Error::message() const {
    std::string text;
    for (std::size_t i = 0; i < reason.size(); ++i) {
        const bool marker = reason[i] == '%' && i + 1 < reason.size() && reason[i + 1] >= '1' &&
                            reason[i + 1] <= '9';
        const auto index = marker ? static_cast<std::size_t>(reason[i + 1] - '1') : 0;
        if (marker && index < arguments.size()) {
            text += arguments[index];
            ++i;
        } else {
            text += reason[i];
        }
    }
    if (!place.empty()) text = place + ": " + text;
    // A file name or a quoted value may hold anything; the message stays one line.
    for (char& c : text)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
    return text;
}

}  // namespace model
