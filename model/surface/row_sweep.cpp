// SPDX-License-Identifier: Apache-2.0
#include "surface/row_sweep.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace model {
namespace {

constexpr double kMeets = 1e-6;  // mm: how far from a capsule a line still meets it
constexpr double kFullTurn = 2 * std::numbers::pi;

struct Vec {
    double x;
    double y;
};

/// The ends of a capsule's segment; once for a round spot.
std::vector<Vec> endsOf(const Capsule& c) {
    const Vec a{static_cast<double>(c.x + c.half * c.along.x),
                static_cast<double>(c.y + c.half * c.along.y)};
    const Vec b{static_cast<double>(c.x - c.half * c.along.x),
                static_cast<double>(c.y - c.half * c.along.y)};
    if (c.half == 0) return {a};
    return {a, b};
}

/// The capsule's extent along the unit normal at `angle`: lowest and highest.
std::pair<double, double> extentAlong(const Capsule& c, double angle) {
    const double nx = std::cos(angle);
    const double ny = std::sin(angle);
    const double centre = static_cast<double>(c.x) * nx + static_cast<double>(c.y) * ny;
    const double half =
        static_cast<double>(c.half) *
            std::fabs(static_cast<double>(c.along.x) * nx + static_cast<double>(c.along.y) * ny) +
        static_cast<double>(c.radius);
    return {centre - half, centre + half};
}

double normalised(double angle) {
    const double turn = std::fmod(angle, kFullTurn);
    return turn < 0 ? turn + kFullTurn : turn;
}

/// The two angles at which (x, y) . normal equals `level`, if there are any.
void addRoots(Vec v, double level, std::vector<double>& angles) {
    const double length = std::hypot(v.x, v.y);
    if (length == 0 || std::fabs(level) > length) return;
    const double towards = std::atan2(v.y, v.x);
    const double aside = std::acos(level / length);
    angles.push_back(normalised(towards + aside));
    angles.push_back(normalised(towards - aside));
}

}  // namespace

bool CandidateRow::isBetterThan(const CandidateRow& other) const {
    if (nodes.empty() || other.nodes.empty()) return !nodes.empty();
    if (length != other.length) return length > other.length;
    if (members.size() != other.members.size()) return members.size() > other.members.size();
    return members < other.members;
}

RowField::RowField(std::vector<RowNode> nodes, std::vector<std::vector<std::size_t>> links,
                   std::size_t leastMembers, bool closes, Length period)
    : nodes_(std::move(nodes)),
      links_(std::move(links)),
      linked_(nodes_.size(), std::vector<bool>(nodes_.size(), false)),
      reaches_(nodes_.size(), std::vector<std::int64_t>(nodes_.size(), -1)),
      leastMembers_(leastMembers),
      closes_(closes),
      period_(period) {
    for (std::size_t a = 0; a < links_.size(); ++a)
        for (const std::size_t b : links_[a]) linked_[a][b] = true;
}

std::int64_t RowField::reachNm(std::size_t a, std::size_t b) {
    std::int64_t& known = reaches_[std::min(a, b)][std::max(a, b)];
    if (known < 0) known = roundedLength(reach(nodes_[a].capsule, nodes_[b].capsule)).millionths();
    return known;
}

bool RowField::isMet(std::size_t pivot, std::size_t other, double angle) const {
    const double line = extentAlong(nodes_[pivot].capsule, angle).second;
    const auto [low, high] = extentAlong(nodes_[other].capsule, angle);
    return low - kMeets <= line && line <= high + kMeets;
}

void RowField::collectEvents(std::size_t pivot, std::size_t other, std::vector<Event>& events,
                             std::vector<std::size_t>& metAtZero) const {
    // Between two neighbouring angles of this list nothing changes: it holds every angle at which
    // the tangent, resting on one end of the pivot, touches an end of the other on either side,
    // and those at which the ends swap their roles.
    std::vector<double> angles;
    const Capsule& p = nodes_[pivot].capsule;
    const Capsule& o = nodes_[other].capsule;
    const auto pr = static_cast<double>(p.radius);
    const double widened = static_cast<double>(o.radius) + kMeets;
    for (const Vec a : endsOf(p))
        for (const Vec b : endsOf(o)) {
            addRoots({b.x - a.x, b.y - a.y}, pr - widened, angles);
            addRoots({b.x - a.x, b.y - a.y}, pr + widened, angles);
        }
    for (const Capsule* c : {&p, &o})
        if (c->half > 0)
            addRoots({static_cast<double>(c->along.x), static_cast<double>(c->along.y)}, 0, angles);
    std::sort(angles.begin(), angles.end());
    if (angles.empty()) {
        if (isMet(pivot, other, 0)) metAtZero.push_back(other);
        return;
    }
    const double wrapped = normalised((angles.back() + angles.front() + kFullTurn) / 2);
    const bool zeroMet = isMet(pivot, other, wrapped);
    if (zeroMet) metAtZero.push_back(other);
    bool met = zeroMet;
    for (std::size_t i = 0; i < angles.size(); ++i) {
        const bool last = i + 1 == angles.size();
        const bool next = last ? zeroMet : isMet(pivot, other, (angles[i] + angles[i + 1]) / 2);
        if (next != met) events.push_back({angles[i], next, other});
        met = next;
    }
}

void RowField::sortAlong(std::vector<std::size_t>& order, double angle) const {
    const double ux = -std::sin(angle);
    const double uy = std::cos(angle);
    std::vector<std::pair<double, std::size_t>> keyed;
    keyed.reserve(order.size());
    for (const std::size_t node : order) {
        const Capsule& c = nodes_[node].capsule;
        keyed.emplace_back(static_cast<double>(c.x) * ux + static_cast<double>(c.y) * uy, node);
    }
    std::sort(keyed.begin(), keyed.end());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = keyed[i].second;
}

/// Tries the rows of one set of met nodes while the tangent turns: once, or once for each order of
/// the centres that occurs on the way. A set that only shrank and kept its order offers nothing
/// new.
void RowField::advance(std::vector<std::size_t>& order, double from, double to, bool grown,
                       CandidateRow& best) {
    if (order.size() < leastMembers_) return;
    const std::vector<std::size_t> before = order;
    sortAlong(order, from);
    std::vector<std::size_t> later = order;
    sortAlong(later, to);
    if (later == order) {
        if (grown || order != before) tryOrder(order, best);
        return;
    }
    std::vector<double> turns{from, to};
    for (std::size_t i = 0; i < order.size(); ++i)
        for (std::size_t j = i + 1; j < order.size(); ++j) {
            const Capsule& a = nodes_[order[i]].capsule;
            const Capsule& b = nodes_[order[j]].capsule;
            // Centres change their order where the line's normal runs from one to the other.
            std::vector<double> swaps;
            addRoots({static_cast<double>(a.y - b.y), static_cast<double>(b.x - a.x)}, 0, swaps);
            for (const double swap : swaps)
                if (swap > from && swap < to) turns.push_back(swap);
        }
    std::sort(turns.begin(), turns.end());
    for (std::size_t i = 0; i + 1 < turns.size(); ++i) {
        sortAlong(order, (turns[i] + turns[i + 1]) / 2);
        tryOrder(order, best);
    }
}

CandidateRow RowField::longestRowAt(std::size_t pivot, const std::vector<bool>& alive) {
    std::vector<Event> events;
    std::vector<std::size_t> met{pivot};
    for (std::size_t other = 0; other < nodes_.size(); ++other)
        if (other != pivot && alive[nodes_[other].index]) collectEvents(pivot, other, events, met);
    // At one angle what begins to be met comes before what ceases, so that both count there.
    std::sort(events.begin(), events.end(), [](const Event& a, const Event& b) {
        if (a.angle != b.angle) return a.angle < b.angle;
        if (a.enters != b.enters) return a.enters;
        return a.node < b.node;
    });
    CandidateRow best;
    double from = 0;
    bool grown = true;
    for (const Event& event : events) {
        if (event.angle > from) {
            advance(met, from, event.angle, grown, best);
            grown = false;
        }
        if (event.enters) {
            met.push_back(event.node);
            grown = true;
        } else {
            met.erase(std::find(met.begin(), met.end(), event.node));
        }
        from = event.angle;
    }
    advance(met, from, kFullTurn, grown, best);
    return best;
}

/// All paths of the graph at once: for each pair (a, b) that a path connects, the number of members
/// of the longest row through both decides whether their reach counts.
void RowField::tryOrder(const std::vector<std::size_t>& order, CandidateRow& best) {
    const std::size_t count = order.size();
    ending_.assign(count, 1);
    starting_.assign(count, 1);
    for (std::size_t b = 0; b < count; ++b)
        for (std::size_t a = 0; a < b; ++a)
            if (linked_[order[a]][order[b]]) ending_[b] = std::max(ending_[b], ending_[a] + 1);
    for (std::size_t a = count; a-- > 0;)
        for (std::size_t b = a + 1; b < count; ++b)
            if (linked_[order[a]][order[b]])
                starting_[a] = std::max(starting_[a], starting_[b] + 1);
    if (*std::max_element(ending_.begin(), ending_.end()) < static_cast<int>(leastMembers_)) return;

    for (std::size_t a = 0; a < count; ++a) {
        path_.assign(count, 0);
        path_[a] = 1;
        for (std::size_t b = a; b < count; ++b) {
            if (path_[b] == 0) continue;
            for (std::size_t next = b + 1; next < count; ++next)
                if (linked_[order[b]][order[next]])
                    path_[next] = std::max(path_[next], path_[b] + 1);
            const int members = ending_[a] + path_[b] + starting_[b] - 2;
            if (members < static_cast<int>(leastMembers_)) continue;
            const std::int64_t nm = reachNm(order[a], order[b]);
            const std::int64_t bestNm = best.length.millionths();
            if (!best.nodes.empty() &&
                (nm < bestNm ||
                 (nm == bestNm && members < static_cast<int>(best.members.size()))) &&
                !closes_)
                continue;
            CandidateRow row = rowThrough(order, a, b);
            if (row.members.size() >= leastMembers_ && row.isBetterThan(best))
                best = std::move(row);
        }
    }
}

/// A row with the most members through order[from] and order[to].
CandidateRow RowField::rowThrough(const std::vector<std::size_t>& order, std::size_t from,
                                  std::size_t to) const {
    const std::size_t count = order.size();
    // most[x]: members of the longest path that ends at x, having passed `from` once beyond it and
    // being able to reach `to` before it.
    std::vector<int> most(count, 0);
    std::vector<std::size_t> before(count, count);
    std::size_t last = count;
    for (std::size_t x = 0; x < count; ++x) {
        const bool free = x <= from;
        if (free) most[x] = 1;
        for (std::size_t y = 0; y < x; ++y) {
            // A path may not step over `from` or `to`.
            if ((y < from && x > from) || (y < to && x > to)) continue;
            if (most[y] == 0 || !linked_[order[y]][order[x]]) continue;
            if (most[y] + 1 > most[x]) {
                most[x] = most[y] + 1;
                before[x] = y;
            }
        }
        if (x >= to && most[x] > 0 && (last == count || most[x] > most[last])) last = x;
    }
    CandidateRow row;
    if (last == count) return row;
    for (std::size_t x = last; x != count; x = before[x]) row.nodes.push_back(order[x]);
    std::reverse(row.nodes.begin(), row.nodes.end());

    // On a round surface the chain may come back to where it began: the row is then the ring.
    bool ring = false;
    for (std::size_t i = 0; closes_ && !ring && i < row.nodes.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (nodes_[row.nodes[i]].index == nodes_[row.nodes[j]].index) {
                row.nodes = {row.nodes.begin() + static_cast<std::ptrdiff_t>(j),
                             row.nodes.begin() + static_cast<std::ptrdiff_t>(i)};
                ring = true;
                break;
            }
    std::vector<Capsule> capsules;
    for (const std::size_t node : row.nodes) {
        capsules.push_back(nodes_[node].capsule);
        row.members.push_back(nodes_[node].index);
    }
    std::sort(row.members.begin(), row.members.end());
    row.length = greatestExtent(capsules);
    if (ring) row.length = std::max(row.length, period_);
    return row;
}

}  // namespace model
