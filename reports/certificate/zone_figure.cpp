// SPDX-License-Identifier: Apache-2.0
#include "certificate/zone_figure.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "certificate/figure_geometry.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"

namespace reports {

namespace {

constexpr double kDetailBelow = 0.25;  // a zone printed smaller than this gets details
constexpr double kDetailGain = 1.5;    // what a detail must at least enlarge
constexpr std::size_t kMostDetails = 4;
constexpr double kMarginShare = 0.04;  // of the larger side of the window
constexpr double kDetailMarginShare = 0.1;

/// An indication of any method, labelled with its number.
struct Drawn {
    FigureCapsule capsule;
    bool considered = false;
};

std::vector<Drawn> drawnOf(const Examined& examined) {
    std::vector<Drawn> all;
    const auto add = [&all](const auto& ones) {
        for (const auto& one : ones)
            all.push_back({capsuleOf(one.read, one.read.id), one.judged->considered});
    };
    add(examined.indications);
    add(examined.reflectors);
    return all;
}

FigureFrame frameOf(const model::CheckFrame& frame, const std::string& label, bool failing) {
    return {label,
            frame.x,
            frame.y,
            frame.shape.width.approximately(),
            frame.shape.height.approximately(),
            frame.angleDegrees,
            frame.shape.circle,
            failing};
}

bool sameFrame(const model::CheckFrame& a, const model::CheckFrame& b) {
    return a.shape == b.shape && a.x == b.x && a.y == b.y && a.angleDegrees == b.angleDegrees;
}

bool fails(const model::Check& check) {
    return check.passes.has_value() && !*check.passes;
}

/// measured / limit of a check with an upper limit; 0 where that has no meaning.
double roughShare(const model::Check& check) {
    if (!check.measured || !check.limit || check.limit->numerator <= 0) return 0;
    return static_cast<double>(*check.measured) * static_cast<double>(check.limit->denominator) /
           static_cast<double>(check.limit->numerator);
}

/// Indices of the checks whose frames are drawn.
std::vector<std::size_t> framedChecks(const std::vector<model::Check>& checks) {
    std::vector<std::size_t> failing;
    std::optional<std::size_t> greatest;
    for (std::size_t i = 0; i < checks.size(); ++i) {
        if (!checks[i].frame || checks[i].members.empty()) continue;
        if (fails(checks[i])) failing.push_back(i);
        if (!greatest || roughShare(checks[i]) > roughShare(checks[*greatest])) greatest = i;
    }
    if (failing.empty() && greatest) failing.push_back(*greatest);
    return failing;
}

/// What is drawn of one examination, before a window is laid around it.
class Drawing {
public:
    Drawing(const Examined& examined, const std::vector<Examined>& all)
        : examined_(examined), all_(all), place_(examined.draft->header.surface) {
        addFrames();
        addOwn();
        for (const std::size_t check : framedChecks(examined.verdict->checks)) addOthersOf(check);
        addGroups();
    }

    ZoneFigures figures() {
        ZoneFigures result;
        result.frameOfCheck = frameOfCheck_;
        Window whole;
        const Figure zone = outline();
        if (zone.zoneWidth) {
            whole.include({0, 0}, 0, 0);
            whole.include({*zone.zoneWidth, *zone.zoneHeight}, 0, 0);
        }
        for (const FigureCapsule& capsule : capsules_) whole.include(capsule);
        for (const FigureFrame& frame : frames_) whole.include(frame);
        whole.widen(kMarginShare);
        Figure figure = seen(whole, zone);
        figure.caption = filled(phrases::kFigureOf, {examined_.draft->header.zone});
        const bool details = figure.scale < kDetailBelow;
        result.figures.push_back(std::move(figure));
        if (!details) return result;
        for (std::size_t i = 0; i < std::min(frames_.size(), kMostDetails); ++i) {
            if (!frames_[i].failing) continue;
            Window around;
            around.include(frames_[i]);
            around.widen(kDetailMarginShare);
            Figure detail = seen(around, zone);
            if (detail.scale < kDetailGain * result.figures.front().scale) continue;
            detail.caption = filled(phrases::kDetailOf,
                                    {examined_.draft->header.zone, "F" + std::to_string(i + 1)});
            detail.legend.clear();  // the zone's own figure explains
            result.figures.push_back(std::move(detail));
        }
        return result;
    }

private:
    void addFrames() {
        const std::vector<model::Check>& checks = examined_.verdict->checks;
        std::vector<const model::CheckFrame*> drawn;
        for (const std::size_t index : framedChecks(checks)) {
            const model::CheckFrame& frame = *checks[index].frame;
            const auto same = std::ranges::find_if(drawn, [&frame](const model::CheckFrame* other) {
                return sameFrame(*other, frame);
            });
            const auto number = static_cast<std::size_t>(same - drawn.begin());
            frameOfCheck_[index] = "F" + std::to_string(number + 1);
            if (same == drawn.end()) {
                drawn.push_back(&frame);
                frames_.push_back(frameOf(frame,
                                          filled(phrases::kFrameLabel, {frameOfCheck_[index]}),
                                          fails(checks[index])));
            }
        }
    }

    void addOwn() {
        std::set<std::string> failing;
        for (const model::Check& check : examined_.verdict->checks)
            if (fails(check))
                for (const std::string& member : expanded(check.members)) failing.insert(member);
        for (const Drawn& one : drawnOf(examined_)) {
            FigureCapsule capsule = one.capsule;
            const std::string id = capsule.label;
            if (failing.contains(id))
                capsule.role = FigureCapsule::Role::Failing;
            else if (!one.considered) {
                capsule.role = FigureCapsule::Role::NotCounted;
                capsule.label = filled(phrases::kBracketed, {id});
            }
            indexOf_[id] = capsules_.size();
            capsules_.push_back(std::move(capsule));
        }
    }

    /// What a drawn check counts beyond this zone's edge or across the seam of a round surface.
    void addOthersOf(std::size_t check) {
        if (!place_) return;
        const model::CheckFrame& frame = *examined_.verdict->checks[check].frame;
        for (const std::string& member : expanded(examined_.verdict->checks[check].members))
            addOther(member, {frame.x, frame.y});
    }

    void addOther(const std::string& member, Point near) {
        const auto own = indexOf_.find(member);
        if (own != indexOf_.end()) {
            const FigureCapsule& capsule = capsules_[own->second];
            FigureCapsule copy = nearestCopy(capsule, *place_, near);
            if (std::hypot(copy.x - capsule.x, copy.y - capsule.y) < 1) return;
            copy.role = FigureCapsule::Role::Neighbour;
            capsules_.push_back(std::move(copy));
            return;
        }
        std::optional<FigureCapsule> neighbour = neighbourOf(member);
        if (!neighbour) return;
        indexOf_[member] = capsules_.size();
        capsules_.push_back(nearestCopy(std::move(*neighbour), *place_, near));
    }

    [[nodiscard]] std::optional<FigureCapsule> neighbourOf(const std::string& member) const {
        const model::Examination& header = examined_.draft->header;
        for (const Examined& other : all_) {
            const model::Examination& theirs = other.draft->header;
            if (!theirs.surface || theirs.surface->id != place_->id ||
                theirs.method != header.method || theirs.stage != header.stage ||
                theirs.repairCycle != header.repairCycle || theirs.zone == header.zone)
                continue;
            for (Drawn& one : drawnOf(other)) {
                if (member != theirs.zone + "/" + one.capsule.label) continue;
                one.capsule.label = member;
                FigureCapsule capsule = movedBetween(std::move(one.capsule),
                                                     theirs.surface->placement, place_->placement);
                capsule.role = FigureCapsule::Role::Neighbour;
                return capsule;
            }
        }
        return std::nullopt;
    }

    void addGroups() {
        for (const model::JudgedGroup& group : examined_.verdict->groups) {
            if (place_ && !capsules_.empty())
                for (const std::string& member : group.members)
                    if (!indexOf_.contains(member)) addOther(member, nearMembers(group));
            FigureGroup drawn{group.id, {}};
            for (const std::string& member : group.members) {
                const auto found = indexOf_.find(member);
                if (found != indexOf_.end()) drawn.members.push_back(found->second);
            }
            if (!drawn.members.empty()) groups_.push_back(std::move(drawn));
        }
    }

    [[nodiscard]] Point nearMembers(const model::JudgedGroup& group) const {
        for (const std::string& member : group.members) {
            const auto found = indexOf_.find(member);
            if (found != indexOf_.end())
                return {capsules_[found->second].x, capsules_[found->second].y};
        }
        return {};
    }

    /// Members with groups replaced by theirs.
    [[nodiscard]] std::vector<std::string> expanded(const std::vector<std::string>& members) const {
        std::vector<std::string> result;
        for (const std::string& member : members) {
            const auto group =
                std::ranges::find(examined_.verdict->groups, member, &model::JudgedGroup::id);
            if (group == examined_.verdict->groups.end())
                result.push_back(member);
            else
                result.insert(result.end(), group->members.begin(), group->members.end());
        }
        return result;
    }

    [[nodiscard]] Figure outline() const {
        Figure figure;
        if (place_) {
            figure.zoneWidth = place_->width.approximately();
            figure.zoneHeight = place_->height.approximately();
        } else if (examined_.planned != nullptr && examined_.planned->width > model::Length() &&
                   examined_.planned->height > model::Length()) {
            figure.zoneWidth = examined_.planned->width.approximately();
            figure.zoneHeight = examined_.planned->height.approximately();
        }
        figure.zoneLabel = filled(phrases::kZoneLabel, {examined_.draft->header.zone});
        figure.xAxis = phrases::kX;
        figure.yAxis = phrases::kY;
        figure.datum = phrases::kDatum;
        figure.labelsLeftOut = phrases::kLabelsLeftOut;
        return figure;
    }

    /// The part of the drawing inside a window.
    [[nodiscard]] Figure seen(const Window& window, Figure figure) const {
        lookThrough(window, figure);
        std::map<std::size_t, std::size_t> kept;
        for (std::size_t i = 0; i < capsules_.size(); ++i) {
            if (!window.touches(capsules_[i])) continue;
            kept[i] = figure.capsules.size();
            figure.capsules.push_back(capsules_[i]);
        }
        for (const FigureGroup& group : groups_) {
            FigureGroup inside{group.label, {}};
            for (const std::size_t member : group.members)
                if (kept.contains(member)) inside.members.push_back(kept[member]);
            if (inside.members.size() == group.members.size()) figure.groups.push_back(inside);
        }
        figure.frames = frames_;
        figure.legend = legendOf(figure);
        return figure;
    }

    /// Explains the ways of drawing that the figure uses.
    static std::string legendOf(const Figure& figure) {
        const auto has = [&figure](FigureCapsule::Role role) {
            return std::ranges::find(figure.capsules, role, &FigureCapsule::role) !=
                   figure.capsules.end();
        };
        std::vector<std::string> texts;
        if (has(FigureCapsule::Role::Failing)) texts.emplace_back(phrases::kLegendFailing);
        if (has(FigureCapsule::Role::Counted)) texts.emplace_back(phrases::kLegendCounted);
        if (has(FigureCapsule::Role::NotCounted)) texts.emplace_back(phrases::kLegendNotCounted);
        if (has(FigureCapsule::Role::Neighbour)) texts.emplace_back(phrases::kLegendNeighbour);
        if (!figure.groups.empty()) texts.emplace_back(phrases::kLegendGroup);
        if (!figure.frames.empty()) texts.emplace_back(phrases::kLegendFrame);
        texts.emplace_back(phrases::kLegendSmall);
        return joined(texts, " ");
    }

    const Examined& examined_;
    const std::vector<Examined>& all_;
    const std::optional<model::SurfacePlace>& place_;
    std::vector<FigureCapsule> capsules_;
    std::vector<FigureFrame> frames_;
    std::vector<FigureGroup> groups_;
    std::map<std::size_t, std::string> frameOfCheck_;
    std::map<std::string, std::size_t> indexOf_;
};

}  // namespace

ZoneFigures figuresOf(const Examined& examined, const std::vector<Examined>& all) {
    if (examined.indications.empty() && examined.reflectors.empty()) return {};
    return Drawing(examined, all).figures();
}

}  // namespace reports
