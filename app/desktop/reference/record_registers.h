// SPDX-License-Identifier: Apache-2.0
// Orders, parts with their zone plans, and castings, as registers of the reference workplace.
#pragma once

#include "reference/register.h"

namespace app {

Register orderRegister();
/// A change of the zones adds the next revision of the plan; castings stay on theirs.
Register partRegister();
Register castingRegister();

}  // namespace app
