// SPDX-License-Identifier: Apache-2.0
// What demo-db/EXPECTED.md says of every examination, typed from there by hand. Its source is the
// standards' rules and values worked on paper, never the program.
#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "judge/verdict.h"

/// A rule with what was worked out for it; an empty text was not worked out and is not compared.
struct ExpectedRule {
    std::string rule;      ///< "cumulative length"
    std::string measured;  ///< "13"
    std::string limit;     ///< "10"
};

struct ExpectedExamination {
    std::string serial;
    std::string zone;
    std::string method;
    int repairCycle = 0;
    bool superseded = false;
    model::Word word = model::Word::NotJudged;
    std::vector<ExpectedRule> failing;  ///< exactly these
    std::vector<ExpectedRule> passing;  ///< these at least
};

/// How GoogleTest and ctest name it.
inline void PrintTo(const ExpectedExamination& examination, std::ostream* out) {
    *out << examination.serial << ' ' << examination.zone << ' ' << examination.method;
    if (examination.repairCycle != 0) *out << " cycle " << examination.repairCycle;
}

const std::vector<ExpectedExamination>& expectedExaminations();

struct ExpectedCasting {
    std::string serial;
    model::Word word;
};

const std::vector<ExpectedCasting>& expectedCastings();
