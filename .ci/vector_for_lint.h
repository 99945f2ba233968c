// SPDX-License-Identifier: Apache-2.0
// Included by .ci/lint before every source. clang 14 instantiates a constexpr destructor as soon as
// it is named, which libqpdf's JSON.hh, with a std::vector of a class that is not complete yet,
// does not survive as C++20. Without constexpr members std::vector behaves as in C++17.
#include <memory>
#include <string>

#pragma push_macro("_GLIBCXX20_CONSTEXPR")
#undef _GLIBCXX20_CONSTEXPR
#define _GLIBCXX20_CONSTEXPR
// Declared as constexpr by then; never called here.
#define __fill_a1 fillBitsOfVector
#include <vector>
#undef __fill_a1
#pragma pop_macro("_GLIBCXX20_CONSTEXPR")
