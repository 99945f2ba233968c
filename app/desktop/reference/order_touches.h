// SPDX-License-Identifier: Apache-2.0
// What a change of an order touches: castings and their examinations that inherit it.
#pragma once

#include "reference/register.h"

namespace app {

/// The order as it would be against the order as it is; one line each, empty: nothing is touched.
model::Result<std::vector<QString>> orderTouches(const model::Archive& archive,
                                                 const Entry& changed);

}  // namespace app
