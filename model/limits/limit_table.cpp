// SPDX-License-Identifier: Apache-2.0
#include "limits/limit_table.h"

#include <algorithm>
#include <cassert>

namespace model {

bool holds(Rational value, Comparison comparison, Rational bound) {
    switch (comparison) {
        case Comparison::Less:
            return value < bound;
        case Comparison::AtMost:
            return value <= bound;
        case Comparison::AtLeast:
            return value >= bound;
        case Comparison::More:
            return value > bound;
    }
    assert(false && "a comparison that does not exist");
    return false;
}

bool Band::contains(Length thickness) const {
    const Rational value = thickness.millionths();
    return (!lower || holds(value, lowerComparison, lower->millionths())) &&
           (!upper || holds(value, upperComparison, upper->millionths()));
}

const LevelKey* LimitTable::key(std::string_view name) const {
    const auto found = std::ranges::find(keys, name, &LevelKey::name);
    return found == keys.end() ? nullptr : &*found;
}

const LevelKey* LimitTable::keyOf(IndicationClass indicationClass) const {
    const auto found = std::ranges::find_if(keys, [&](const LevelKey& key) {
        return std::ranges::find(key.classes, indicationClass) != key.classes.end();
    });
    return found == keys.end() ? nullptr : &*found;
}

std::string_view levelNumber(std::string_view level) {
    const std::size_t space = level.find_last_of(' ');
    return space == std::string_view::npos ? level : level.substr(space + 1);
}

}  // namespace model
