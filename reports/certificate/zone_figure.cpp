// SPDX-License-Identifier: Apache-2.0
#include "certificate/zone_figure.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <set>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"

namespace reports {

namespace {

constexpr double kDetailBelow = 0.25;  // a zone printed smaller than this gets details
constexpr std::size_t kMostDetails = 4;
constexpr double kMarginShare = 0.04;  // of the larger side of the window
constexpr double kDetailMarginShare = 0.1;

double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

struct Point {
    double x = 0;
    double y = 0;
};

Point turned(Point p, double degrees) {
    const double c = std::cos(radians(degrees));
    const double s = std::sin(radians(degrees));
    return {c * p.x - s * p.y, s * p.x + c * p.y};
}

/// A window that grows around what must be seen.
struct Window {
    double left = 0, bottom = 0, right = 0, top = 0;
    bool empty = true;

    void include(Point p, double reachX, double reachY) {
        if (empty) {
            left = right = p.x;
            bottom = top = p.y;
            empty = false;
        }
        left = std::min(left, p.x - reachX);
        right = std::max(right, p.x + reachX);
        bottom = std::min(bottom, p.y - reachY);
        top = std::max(top, p.y + reachY);
    }
    void widen(double share) {
        const double margin = std::max({right - left, top - bottom, 1.0}) * share;
        left -= margin;
        right += margin;
        bottom -= margin;
        top += margin;
    }
};

void include(Window& window, const FigureCapsule& capsule) {
    const double half = (capsule.length - capsule.width) / 2;
    const double radius = capsule.width / 2;
    window.include({capsule.x, capsule.y},
                   half * std::abs(std::cos(radians(capsule.angleDegrees))) + radius,
                   half * std::abs(std::sin(radians(capsule.angleDegrees))) + radius);
}

void include(Window& window, const FigureFrame& frame) {
    const double c = std::abs(std::cos(radians(frame.angleDegrees)));
    const double s = std::abs(std::sin(radians(frame.angleDegrees)));
    const double reachX = frame.circle ? frame.width / 2 : (c * frame.width + s * frame.height) / 2;
    const double reachY = frame.circle ? frame.width / 2 : (s * frame.width + c * frame.height) / 2;
    window.include({frame.x, frame.y}, reachX, reachY);
}

bool touches(const FigureCapsule& capsule, const Window& window) {
    Window own;
    include(own, capsule);
    return own.right >= window.left && own.left <= window.right && own.top >= window.bottom &&
           own.bottom <= window.top;
}

FigureCapsule capsuleOf(const model::Indication& indication, const std::string& label) {
    return {label,
            indication.x.approximately(),
            indication.y.approximately(),
            indication.length.approximately(),
            indication.width ? indication.width->approximately() : 0,
            indication.angle.approximately(),
            FigureCapsule::Role::Counted};
}

/// `capsule`, given in the zone at `from`, in the coordinates of the zone at `to`.
FigureCapsule movedBetween(FigureCapsule capsule, const model::Placement& from,
                           const model::Placement& to) {
    const Point onSurface = turned({capsule.x, capsule.y}, from.angle.approximately());
    const Point local = turned({onSurface.x + from.x.approximately() - to.x.approximately(),
                                onSurface.y + from.y.approximately() - to.y.approximately()},
                               -to.angle.approximately());
    capsule.x = local.x;
    capsule.y = local.y;
    capsule.angleDegrees += from.angle.approximately() - to.angle.approximately();
    return capsule;
}

/// On a round surface: the copy of `capsule` that lies nearest to `near`.
FigureCapsule nearestCopy(FigureCapsule capsule, const model::SurfacePlace& zone, Point near) {
    if (!zone.period) return capsule;
    const Point step =
        turned({zone.period->approximately(), 0}, -zone.placement.angle.approximately());
    const double length = step.x * step.x + step.y * step.y;
    const double turns =
        std::round(((near.x - capsule.x) * step.x + (near.y - capsule.y) * step.y) / length);
    capsule.x += turns * step.x;
    capsule.y += turns * step.y;
    return capsule;
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
        for (const FigureCapsule& capsule : capsules_) include(whole, capsule);
        for (const FigureFrame& frame : frames_) include(whole, frame);
        whole.widen(kMarginShare);
        Figure figure = seen(whole, zone);
        figure.caption = filled(phrases::kFigureOf, {examined_.draft->header.zone});
        const bool details = figure.scale < kDetailBelow;
        result.figures.push_back(std::move(figure));
        if (!details) return result;
        for (std::size_t i = 0; i < std::min(frames_.size(), kMostDetails); ++i) {
            Window around;
            include(around, frames_[i]);
            around.widen(kDetailMarginShare);
            Figure detail = seen(around, zone);
            detail.caption =
                filled(phrases::kDetailOf, {examined_.draft->header.zone, frames_[i].label});
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
        for (const ExaminedIndication& one : examined_.indications) {
            FigureCapsule capsule = capsuleOf(one.read, one.read.id);
            if (failing.contains(one.read.id))
                capsule.role = FigureCapsule::Role::Failing;
            else if (!one.judged->considered)
                capsule.role = FigureCapsule::Role::NotCounted;
            indexOf_[one.read.id] = capsules_.size();
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
            for (const ExaminedIndication& one : other.indications) {
                if (member != theirs.zone + "/" + one.read.id) continue;
                FigureCapsule capsule = movedBetween(capsuleOf(one.read, member),
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
        figure.legend = phrases::kFigureLegend;
        figure.labelsLeftOut = phrases::kLabelsLeftOut;
        return figure;
    }

    /// The part of the drawing inside a window.
    [[nodiscard]] Figure seen(const Window& window, Figure figure) const {
        const PrintedScale scale =
            printedScale(window.right - window.left, window.top - window.bottom);
        figure.left = window.left;
        figure.right = window.right;
        figure.bottom = window.bottom;
        figure.top = window.top;
        figure.scale = scale.factor;
        figure.scaleText = scale.text;
        setBar(figure);
        std::map<std::size_t, std::size_t> kept;
        for (std::size_t i = 0; i < capsules_.size(); ++i) {
            if (!touches(capsules_[i], window)) continue;
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
        return figure;
    }

    /// A bar of 1, 2 or 5 x 10^n mm, about a fifth of the figure's greatest width on paper.
    static void setBar(Figure& figure) {
        const double most = kFigureWidthMm / 4 / figure.scale;
        double length = std::pow(10.0, std::floor(std::log10(most)));
        if (length * 5 <= most)
            length *= 5;
        else if (length * 2 <= most)
            length *= 2;
        figure.barLength = length;
        figure.barText = filled(phrases::kMillimetres, {placeText(length)});
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

PrintedScale printedScale(double widthMm, double heightMm) {
    const double most = std::min(kFigureWidthMm / widthMm, kFigureHeightMm / heightMm);
    if (most >= 2) return {2, filled(phrases::kScaleEnlarged, {"2"})};
    if (most >= 1) return {1, filled(phrases::kScaleReduced, {"1"})};
    constexpr std::array kSteps = {2.0, 2.5, 5.0, 10.0};
    for (double decade = 1;; decade *= 10)
        for (const double step : kSteps)
            if (1 / (decade * step) <= most)
                return {1 / (decade * step),
                        filled(phrases::kScaleReduced, {placeText(decade * step)})};
}

ZoneFigures figuresOf(const Examined& examined, const std::vector<Examined>& all) {
    if (examined.indications.empty()) return {};
    return Drawing(examined, all).figures();
}

}  // namespace reports
