// SPDX-License-Identifier: Apache-2.0
#include "limits/by_method.h"

#include <algorithm>
#include <initializer_list>

namespace model {

bool isOf(TablesOf tables, Method method) {
    return tables == TablesOf::EveryMethod ||
           (tables == TablesOf::Ultrasonic) == (method == Method::Ultrasonic);
}

bool isLevelKey(Method method, std::string_view name) {
    const auto among = [&](std::initializer_list<std::string_view> names) {
        return std::ranges::find(names, name) != names.end();
    };
    switch (method) {
        case Method::Magnetic:
            return among({"all", "non-linear", "linear", "aligned"});
        case Method::Penetrant:
            return among({"all", "isolated", "clustered", "linear", "aligned"});
        case Method::Ultrasonic:
            return among({"all", "rim", "core", "planar", "dross"});
    }
    return false;
}

bool isClassOf(Method method, IndicationClass asked) {
    switch (asked) {
        case IndicationClass::Rim:
        case IndicationClass::Core:
        case IndicationClass::Planar:
        case IndicationClass::Dross:
            return method == Method::Ultrasonic;
        case IndicationClass::Clustered:
            return method != Method::Magnetic;
        case IndicationClass::NonLinear:
        case IndicationClass::Isolated:
        case IndicationClass::Linear:
        case IndicationClass::Aligned:
            break;
    }
    return method != Method::Ultrasonic;
}

}  // namespace model
