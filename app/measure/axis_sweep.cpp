// SPDX-License-Identifier: Apache-2.0
#include "measure/axis_sweep.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace app {
namespace {

// Weights added over ranges of positions, and the greatest sum at any position.
class RangeSums {
public:
    explicit RangeSums(std::size_t positions) {
        while (size_ < positions) size_ *= 2;
        greatest_.assign(2 * size_, 0);
        added_.assign(2 * size_, 0);
    }
    void add(std::size_t first, std::size_t last, double weight) {
        add(first, last, weight, 1, 0, size_ - 1);
    }
    [[nodiscard]] double greatest() const { return greatest_[1]; }

private:
    void add(std::size_t first, std::size_t last, double weight, std::size_t node, std::size_t low,
             std::size_t high) {
        if (last < low || high < first) return;
        if (first <= low && high <= last) {
            added_[node] += weight;
            greatest_[node] += weight;
            return;
        }
        const std::size_t middle = (low + high) / 2;
        add(first, last, weight, 2 * node, low, middle);
        add(first, last, weight, 2 * node + 1, middle + 1, high);
        greatest_[node] = added_[node] + std::max(greatest_[2 * node], greatest_[2 * node + 1]);
    }

    std::size_t size_ = 1;
    std::vector<double> greatest_;
    std::vector<double> added_;
};

// While the frame's left edge lies from one event to the other, it can touch the item.
struct Event {
    double x;
    bool leaves;
    double bottom, top;  // where the frame's lower edge must then lie
    double weight;
};

}  // namespace

double axisSweep(std::span<const model::FrameItem> items, const model::FrameShape& shape) {
    const double width = shape.width.approximately();
    const double height = shape.height.approximately();
    std::vector<Event> events;
    std::vector<double> edges;
    events.reserve(2 * items.size());
    edges.reserve(2 * items.size());
    for (const model::FrameItem& item : items) {
        const model::Capsule& part = item.parts.front();
        const auto x = static_cast<double>(part.x);
        const auto y = static_cast<double>(part.y);
        const auto reachX = static_cast<double>(std::abs(part.along.x) * part.half + part.radius);
        const auto reachY = static_cast<double>(std::abs(part.along.y) * part.half + part.radius);
        const double bottom = y - reachY - height;
        const double top = y + reachY;
        const auto weight = static_cast<double>(item.weight);
        events.push_back({x - reachX - width, false, bottom, top, weight});
        events.push_back({x + reachX, true, bottom, top, weight});
        edges.push_back(bottom);
        edges.push_back(top);
    }
    std::sort(edges.begin(), edges.end());
    std::sort(events.begin(), events.end(), [](const Event& a, const Event& b) {
        return a.x < b.x || (a.x == b.x && a.leaves < b.leaves);
    });
    const auto position = [&](double edge) {
        return static_cast<std::size_t>(std::lower_bound(edges.begin(), edges.end(), edge) -
                                        edges.begin());
    };
    RangeSums sums(edges.size());
    double greatest = 0;
    for (const Event& event : events) {
        sums.add(position(event.bottom), position(event.top),
                 event.leaves ? -event.weight : event.weight);
        greatest = std::max(greatest, sums.greatest());
    }
    return greatest;
}

}  // namespace app
