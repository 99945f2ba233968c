// SPDX-License-Identifier: Apache-2.0
#include "bench/columns.h"

#include <algorithm>

namespace app {

std::string wordTyped(const Words& words, const QString& typed) {
    const QString wanted = typed.trimmed();
    if (wanted.isEmpty()) return {};
    std::string found;
    int beginnings = 0;
    for (const auto& [word, shown] : words) {
        if (shown.compare(wanted, Qt::CaseInsensitive) == 0) return word;
        if (shown.startsWith(wanted, Qt::CaseInsensitive)) {
            found = word;
            ++beginnings;
        }
    }
    return beginnings == 1 ? found : typed.toStdString();
}

QString wordShown(const Words& words, const QString& text) {
    const auto found = std::ranges::find(words, text.toStdString(), &Words::value_type::first);
    return found == words.end() ? text : found->second;
}

}  // namespace app
