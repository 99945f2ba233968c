// SPDX-License-Identifier: Apache-2.0
// The classes of an ultrasonic indication: by its kind planar or dross, else rim or core by depth.
//
// What is not known leaves several. Where the depth leaves rim or core open, the indication is
// judged as both and the worse counts. Where the kind is open, it passes only if it passes as each
// kind, and fails only if it fails as each.
#pragma once

#include <bitset>
#include <optional>
#include <string>
#include <vector>

#include "judge/sheet.h"

namespace model {

/// Whether something is so: not, perhaps, or for certain.
enum class Certainty { No, Open, Yes };

using ClassSet = std::bitset<kIndicationClasses>;

/// The set of the classes that a rule names; of one that names none, every class.
ClassSet setOf(const std::vector<IndicationClass>& classes);

/// What an indication is judged as.
struct ClassChoices {
    struct AsKind {
        Kind kind = Kind::Volumetric;
        ClassSet classes;  ///< all of them count
    };
    std::vector<AsKind> kinds;  ///< one, or each that is possible

    /// The class where there is only one.
    [[nodiscard]] std::optional<IndicationClass> only() const;
    /// Every class that is possible, in order.
    [[nodiscard]] std::vector<IndicationClass> all() const;
    /// Whether it belongs to a set of classes: as every kind that it can be, or as some.
    [[nodiscard]] Certainty within(const ClassSet& set) const;
};

/// The classes of a reflector in a wall. Without a rim in the table both rim and core count.
ClassChoices classChoices(const LimitTable& table, const Reflector& reflector, Length wall);

/// "rim or core": classes with "or" between them.
std::string orText(const std::vector<IndicationClass>& classes);

}  // namespace model
