// SPDX-License-Identifier: Apache-2.0
// Two numbers reckoned with at once: one along the width of a frame, one along its height. Every
// amd64 processor does so in one step; the vector extension is that of GCC and Clang.
#pragma once

#include <bit>
#include <cstdint>

namespace model {

using Axes = double __attribute__((vector_size(16)));            ///< {along width, along height}
using AxesMask = std::int64_t __attribute__((vector_size(16)));  ///< all ones where true
using AxesSum = std::int64_t __attribute__((vector_size(16)));   ///< of weights

inline Axes both(double value) {
    return Axes{value, value};
}
inline Axes exchanged(Axes axes) {
    return __builtin_shufflevector(axes, axes, 1, 0);
}
inline Axes magnitude(Axes axes) {
    constexpr std::int64_t kAllButSign = 0x7FFF'FFFF'FFFF'FFFF;
    return std::bit_cast<Axes>(std::bit_cast<AxesMask>(axes) & kAllButSign);
}
inline Axes lesser(Axes a, Axes b) {
    return a < b ? a : b;
}
inline Axes greater(Axes a, Axes b) {
    return a > b ? a : b;
}
inline double sum(Axes axes) {
    return axes[0] + axes[1];
}

}  // namespace model
