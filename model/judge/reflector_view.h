// SPDX-License-Identifier: Apache-2.0
// One zone's ultrasonic indications as its rules see them.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "judge/counted.h"
#include "judge/level_orders.h"
#include "judge/reflector_items.h"
#include "judge/rule_limit.h"

namespace model {

/// A trial: one indication alone, taken as one of the kinds that it can be.
struct KindTrial {
    std::size_t finding = 0;
    Kind kind = Kind::Volumetric;
};

/// How many members of each group belong to a set of classes, counted once: a trial of a member
/// changes what that one counts as, and a group can have thousands.
class GroupTallies {
public:
    struct Tally {
        std::size_t certain = 0;
        std::size_t perhaps = 0;
    };
    /// Of the group whose item it is.
    [[nodiscard]] const Tally& of(const ReflectorItems& items, const ClassSet& classes,
                                  const ReflectorItem& group);

private:
    std::map<unsigned long, std::vector<Tally>> known_;  ///< by the set's bits; by group
};

struct ReflectorView {
    const ZoneView* zone = nullptr;
    const ReflectorItems* items = nullptr;
    std::set<std::size_t> failsAsEach;  ///< findings whose open kind acquits them of nothing
    std::optional<KindTrial> trial;
    GroupTallies* tallies = nullptr;  ///< with a trial, never null; outlives the view

    [[nodiscard]] const LimitTable& table() const { return *zone->bundle->table; }
    [[nodiscard]] const Examination& examination() const { return zone->examination(); }
    [[nodiscard]] const Reflector& reflector(const ReflectorItem& single) const {
        return *zone->bundle->findings[single.findings.front()].reflector;
    }
    /// Indices of the items to look at: all, or those of the trial.
    [[nodiscard]] std::vector<std::size_t> lookedAt() const;
    /// Whether it, or a member of it, lies in the zone.
    [[nodiscard]] bool isOwn(const ReflectorItem& item) const;
    /// "7", "Z2/7", or a group's "J1".
    [[nodiscard]] std::string nameOf(const ReflectorItem& item) const;
    /// Whether a rule looks at it: considered, of one of the classes, all conditions met. One whose
    /// consideration is open is looked at, but is counted only perhaps.
    [[nodiscard]] Certainty takes(const Rule& rule, const ClassSet& classes,
                                  const ReflectorItem& item) const;
    /// The area that was examined: the zone's without what was not.
    [[nodiscard]] std::optional<Area> examinedArea() const;
    [[nodiscard]] std::optional<Rational> limitIn(const Cell& cell, Length wall) const {
        return limitOf(cell, wall, examinedArea());
    }

private:
    [[nodiscard]] Certainty within(const ClassSet& classes, const ReflectorItem& item) const;
    /// The group that the tried one is in.
    [[nodiscard]] Certainty triedWithin(const ClassSet& classes, const ReflectorItem& group) const;
};

/// How bad an outcome is: passed, open, failed.
int severityOf(const std::optional<bool>& passes);

/// Whether a measure passes, fails, or leaves open; `taken` open can pass but not fail.
std::optional<bool> passesAs(Certainty taken, Extent measured, Comparison comparison,
                             Rational limit);

}  // namespace model
