// SPDX-License-Identifier: Apache-2.0
#include "measure/frame_measurements.h"

#include <array>
#include <cmath>

#include "measure/axis_sweep.h"
#include "measure/random_indications.h"
#include "measure/stopwatch.h"
#include "surface/frame_descent.h"
#include "surface/frame_search.h"
#include "surface/frame_tracker.h"

namespace app {
namespace {

constexpr model::FrameShape kCard{model::millimetres(105), model::millimetres(148), false};
constexpr double kMegabyte = 1e6;

struct Set {
    std::string name;
    std::size_t count;
    double widthMm;
    double heightMm;
    int runs;
    int draws;  ///< how many such sets are drawn and searched
};

const std::array<Set, 3>& sets() {
    static const std::array<Set, 3> kSets{Set{"spread", 10'000, 8000, 3000, 15, 1},
                                          Set{"zone", 300, 600, 600, 20, 20},
                                          Set{"dense", 2'000, 300, 300, 9, 1}};
    return kSets;
}

RandomIndications indicationsOf(const Set& set, int draw = 0) {
    constexpr std::uint64_t kSeed = 2024;
    return {set.count, set.widthMm, set.heightMm, kSeed + static_cast<std::uint64_t>(draw)};
}

std::string millimetresOf(std::int64_t nanometres) {
    return model::toText(model::nanometres(nanometres)) + " mm";
}

/// One drawn set: the search and the sweep over the same indications, timed in the same way.
struct SearchTimes {
    double search = 0;  ///< the shortest of the runs, ms
    double sweep = 0;
    std::int64_t atAllAngles = 0;
    std::int64_t squareToEdges = 0;
    std::size_t partBytes = 0;
    std::size_t workspaceBytes = 0;
};

model::Result<SearchTimes> timeSearch(const Set& set, int draw) {
    const RandomIndications indications = indicationsOf(set, draw);
    const std::vector<model::FrameItem> items = indications.items();
    SearchTimes times;
    double swept = 0;
    times.sweep = shortestMilliseconds(set.runs, [&] { swept = axisSweep(items, kCard); });
    std::optional<model::FoundFrame> found;
    times.search = shortestMilliseconds(set.runs, [&] { found = model::worstFrame(items, kCard); });

    const std::vector<model::FramePart> parts = model::flattened(items);
    model::FrameDescent descent(parts, model::FrameSize(kCard), std::nullopt);
    const auto again = descent.above(-1, false);
    if (!found || !again || again->value != found->value)
        return model::inputError("frame-" + set.name, "two searches of the worst frame disagree");
    times.atAllAngles = found->value;
    times.squareToEdges = std::llround(swept);
    times.partBytes = parts.size() * sizeof(model::FramePart);
    times.workspaceBytes = descent.workspaceBytes();
    return times;
}

// How hard a set is depends on where chance puts its indications: the search of one takes up to six
// times as long as that of another of the same size, the sweep always the same. So several sets of
// the size are drawn. Of each, search and sweep are run equally often over the same indications and
// the shortest run of each counts; value and yardstick are the means over the sets, so that their
// ratio is that of the whole time spent. Runs of one set follow each other, which lets the
// processor learn the sweep's few branches by heart: a sweep over indications not seen just before
// takes two to three times as long, a search a tenth longer.
model::Result<std::vector<Measurement>> measureSearch(const Set& set) {
    Measurement line;
    line.name = "frame-" + set.name;
    line.size = set.count;
    line.yardstick = 0;
    SearchTimes times;
    std::size_t peak = 0;
    double leastRatio = std::numeric_limits<double>::infinity();
    double greatestRatio = 0;
    for (int draw = 0; draw < set.draws; ++draw) {
        auto timed = timeSearch(set, draw);
        if (!timed) return timed.error();
        times = *timed;
        line.value += times.search / set.draws;
        *line.yardstick += times.sweep / set.draws;
        leastRatio = std::min(leastRatio, times.search / times.sweep);
        greatestRatio = std::max(greatestRatio, times.search / times.sweep);
        peak = std::max(peak, times.partBytes + times.workspaceBytes);
    }
    line.peakMb = static_cast<double>(peak) / kMegabyte;
    if (set.draws == 1)
        line.note = "at all angles " + millimetresOf(times.atAllAngles) + ", square to the edges " +
                    millimetresOf(times.squareToEdges);
    else
        line.note = "mean of " + std::to_string(set.draws) + " random sets, ratios from " +
                    std::to_string(std::lround(leastRatio)) + " to " +
                    std::to_string(std::lround(greatestRatio));
    line.note += "; " + std::to_string(times.partBytes / set.count) +
                 " bytes an indication beside the workspace";
    return std::vector{line};
}

/// One change of one indication.
struct Edit {
    enum class Kind { Add, Move, Remove } kind;
    std::size_t item;  ///< to move or remove
    RandomIndication to;

    void apply(model::FrameTracker& tracker) const {
        const std::span<const model::Capsule> parts(&to.capsule, 1);
        switch (kind) {
            case Kind::Add:
                tracker.add(parts, to.lengthNm);
                break;
            case Kind::Move:
                tracker.replace(item, parts, to.lengthNm);
                break;
            case Kind::Remove:
                tracker.remove(item);
                break;
        }
    }
};

// Half of the edits are anywhere, half at the worst frame, where they change the answer.
std::vector<Edit> editsOf(const Set& set, const model::FoundFrame& worst) {
    constexpr int kEach = 4;
    SteadyRandom random(7);
    std::vector<Edit> edits;
    for (int number = 0; number < kEach; ++number)
        for (const auto kind : {Edit::Kind::Add, Edit::Kind::Move, Edit::Kind::Remove}) {
            const bool atWorst = number % 2 == 1;
            Edit edit{kind, 0, randomIndication(random, set.widthMm, set.heightMm)};
            const double pick = random.between(0, 1);
            edit.item = static_cast<std::size_t>(pick * static_cast<double>(set.count));
            if (atWorst) {
                edit.item = worst.counted[static_cast<std::size_t>(
                    pick * static_cast<double>(worst.counted.size()))];
                if (kind == Edit::Kind::Add) {
                    edit.to.capsule.x = worst.x;
                    edit.to.capsule.y = worst.y;
                }
            }
            edits.push_back(edit);
        }
    return edits;
}

struct EditTimes {
    double peakMb = 0;    ///< of the parts and of what is kept between edits
    double decision = 0;  ///< the longest, ms
    double exact = 0;
    std::string limit;  ///< at which the longest decision was taken
};

EditTimes timeEdits(const Set& set) {
    const RandomIndications indications = indicationsOf(set);
    model::FrameTracker settled(kCard);
    for (const RandomIndication& indication : indications.all())
        settled.add({&indication.capsule, 1}, indication.lengthNm);
    const model::FoundFrame worst = *settled.worst();
    const auto times = [&](double factor) {
        return static_cast<std::int64_t>(factor * static_cast<double>(worst.value));
    };
    const std::array<std::pair<const char*, std::int64_t>, 5> limits{
        std::pair{"70 mm", 70'000'000},
        {"0.9 times the worst", times(0.9)},
        {"0.98 times the worst", times(0.98)},
        {"the worst", worst.value},
        {"1.02 times the worst", times(1.02)}};
    // The edit and what is asked after it; the copy before it is not part of the work.
    const auto afterEdit = [&](const Edit& edit, auto ask) {
        constexpr int kRuns = 3;
        double shortest = std::numeric_limits<double>::infinity();
        for (int run = 0; run < kRuns; ++run) {
            model::FrameTracker tracker = settled;
            shortest = std::min(shortest, millisecondsOf([&] {
                                    edit.apply(tracker);
                                    ask(tracker);
                                }));
        }
        return shortest;
    };
    EditTimes longest;
    longest.peakMb = static_cast<double>(settled.partBytes() + settled.keptBytes()) / kMegabyte;
    for (const Edit& edit : editsOf(set, worst)) {
        for (const auto& [name, limit] : limits) {
            const double taken = afterEdit(
                edit, [at = limit](model::FrameTracker& tracker) { tracker.exceeds(at); });
            if (taken <= longest.decision) continue;
            longest.decision = taken;
            longest.limit = name;
        }
        longest.exact = std::max(
            longest.exact, afterEdit(edit, [](model::FrameTracker& tracker) { tracker.worst(); }));
    }
    return longest;
}

}  // namespace

model::Result<std::vector<Measurement>> measureFrameSpread() {
    return measureSearch(sets()[0]);
}
model::Result<std::vector<Measurement>> measureFrameZone() {
    return measureSearch(sets()[1]);
}
model::Result<std::vector<Measurement>> measureFrameDense() {
    return measureSearch(sets()[2]);
}

model::Result<std::vector<Measurement>> measureFrameEdit() {
    std::vector<Measurement> lines(1);
    for (const Set& set : sets()) {
        const EditTimes times = timeEdits(set);
        Measurement decision;
        decision.name = "frame-edit-" + set.name;
        decision.size = set.count;
        decision.value = times.decision;
        decision.peakMb = times.peakMb;
        decision.note =
            "longest decision of 12 edits, half of them at the worst frame, against 70 mm and 0.9, "
            "0.98, 1 and 1.02 times the worst; longest at " +
            times.limit;
        Measurement exact = decision;
        exact.name = "frame-edit-exact-" + set.name;
        exact.value = times.exact;
        exact.note = "longest time to the worst frame itself after the same edits";
        if (decision.value > lines.front().value) lines.front() = decision;
        lines.push_back(decision);
        lines.push_back(exact);
    }
    lines.front().name = "frame-edit";
    return lines;
}

}  // namespace app
