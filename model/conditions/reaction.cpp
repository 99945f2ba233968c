// SPDX-License-Identifier: Apache-2.0
#include "conditions/reaction.h"

#include <algorithm>

#include "base/word_table.h"

namespace model {
namespace {

constexpr WordEntry<Reaction> kReactions[] = {{Reaction::Log, "noted"},
                                              {Reaction::Warn, "needs a reason"},
                                              {Reaction::Block, "not to be signed"}};

}  // namespace

std::string_view word(Reaction reaction) {
    return wordIn(kReactions, reaction);
}

Reaction capped(Reaction reaction, Grade grade, bool attested) {
    const bool sure = attested || grade == Grade::Read || grade == Grade::ReadTwice;
    return sure ? reaction : std::min(reaction, Reaction::Warn);
}

}  // namespace model
