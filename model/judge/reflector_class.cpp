// SPDX-License-Identifier: Apache-2.0
#include "judge/reflector_class.h"

#include <algorithm>

#include "judge/reflector_measures.h"
#include "limits/words.h"

namespace model {
namespace {

ClassSet only(IndicationClass classified) {
    return setOf({classified});
}

const ClassSet& rimAndCore() {
    static const ClassSet kBoth = setOf({IndicationClass::Rim, IndicationClass::Core});
    return kBoth;
}

/// Whether a depth lies within the rim on the scanned side, or on the far side. On the boundary is
/// in the rim.
struct Rim {
    Rim(const RimZone& zone, Length wall) : wall_(wall) {
        thickness_ = Rational(zone.share.numerator * wall.millionths(), zone.share.denominator);
        if (zone.atMost && Rational(zone.atMost->millionths()) < thickness_)
            thickness_ = Rational(zone.atMost->millionths());
    }
    [[nodiscard]] bool nearSide(Length depth) const {
        return Rational(depth.millionths()) <= thickness_;
    }
    [[nodiscard]] bool farSide(Length depth) const {
        return Rational((wall_ - depth).millionths()) <= thickness_;
    }

private:
    Length wall_;
    Rational thickness_;
};

ClassSet volumetric(const LimitTable& table, const Reflector& reflector, Length wall) {
    if (table.rim.known != Known::Given || !reflector.depth) return rimAndCore();
    const Rim rim(table.rim, wall);
    if (rim.nearSide(*reflector.depth) || rim.farSide(*reflector.depth))
        return only(IndicationClass::Rim);
    const std::optional<Length> extent = throughWallOf(table, reflector);
    if (!extent) return rimAndCore();
    return only(rim.farSide(*reflector.depth + *extent) ? IndicationClass::Rim
                                                        : IndicationClass::Core);
}

ClassSet asKind(const LimitTable& table, const Reflector& reflector, Length wall, Kind kind) {
    if (kind == Kind::Planar) return only(IndicationClass::Planar);
    if (kind == Kind::Dross) return only(IndicationClass::Dross);
    return volumetric(table, reflector, wall);
}

}  // namespace

ClassSet setOf(const std::vector<IndicationClass>& classes) {
    ClassSet set;
    if (classes.empty()) return set.set();
    for (const IndicationClass classified : classes) set.set(static_cast<std::size_t>(classified));
    return set;
}

std::vector<IndicationClass> ClassChoices::all() const {
    ClassSet possible;
    for (const AsKind& kind : kinds) possible |= kind.classes;
    std::vector<IndicationClass> classes;
    for (std::size_t i = 0; i < possible.size(); ++i)
        if (possible.test(i)) classes.push_back(static_cast<IndicationClass>(i));
    return classes;
}

std::optional<IndicationClass> ClassChoices::only() const {
    const std::vector<IndicationClass> classes = all();
    if (classes.size() != 1) return std::nullopt;
    return classes.front();
}

Certainty ClassChoices::within(const ClassSet& set) const {
    const auto isWithin = [&](const AsKind& kind) { return (kind.classes & set).any(); };
    if (std::ranges::all_of(kinds, isWithin)) return Certainty::Yes;
    return std::ranges::any_of(kinds, isWithin) ? Certainty::Open : Certainty::No;
}

ClassChoices classChoices(const LimitTable& table, const Reflector& reflector, Length wall) {
    ClassChoices choices;
    for (const Kind kind : {Kind::Volumetric, Kind::Planar, Kind::Dross})
        if (!reflector.kind || *reflector.kind == kind)
            choices.kinds.push_back({kind, asKind(table, reflector, wall, kind)});
    return choices;
}

std::string orText(const std::vector<IndicationClass>& classes) {
    std::string text;
    for (const IndicationClass classified : classes)
        text += (text.empty() ? "" : " or ") + std::string(word(classified));
    return text;
}

}  // namespace model
