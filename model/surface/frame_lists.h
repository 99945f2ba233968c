// SPDX-License-Identifier: Apache-2.0
// The lists of parts of all boxes at hand, one upon the other.
#pragma once

#include <algorithm>
#include <cstdint>
#include <memory>
#include <span>

namespace model {

/// A stack of part indices. What is not yet written is not cleared either: a search of a few
/// hundred indications would spend a tenth of its time on that.
class FrameLists {
public:
    /// Where the next list begins.
    [[nodiscard]] std::size_t end() const { return end_; }
    void setEnd(std::size_t end) { end_ = end; }

    /// Room for `room` indices from `first`, which is at most end(). All lists may move: fetch them
    /// anew after this.
    std::uint32_t* at(std::size_t first, std::size_t room) {
        if (room_ < first + room) {
            const std::size_t larger = std::max({first + room, 2 * room_, kLeastRoom});
            auto entries = std::make_unique_for_overwrite<std::uint32_t[]>(larger);
            std::copy_n(entries_.get(), std::min(end_, room_), entries.get());
            entries_ = std::move(entries);
            room_ = larger;
        }
        return entries_.get() + first;
    }
    [[nodiscard]] const std::uint32_t* from(std::size_t first) const {
        return entries_.get() + first;
    }
    [[nodiscard]] std::span<const std::uint32_t> list(std::size_t first, std::size_t count) const {
        return {entries_.get() + first, count};
    }
    [[nodiscard]] std::size_t bytes() const { return room_ * sizeof(std::uint32_t); }

private:
    static constexpr std::size_t kLeastRoom = 65'536;  // in virtual memory; used as it is written

    std::unique_ptr<std::uint32_t[]> entries_;
    std::size_t room_ = 0;
    std::size_t end_ = 0;
};

}  // namespace model
