// SPDX-License-Identifier: Apache-2.0
// What can be chosen beside typing in a line: shown while typing, all of it by the down key or the
// arrow at the line's end.
#pragma once

#include <functional>

#include "fields/field_form.h"

namespace app {

/// Replaces what was suggested before. `list`: the line takes several, parted by commas. `chosen`
/// is called when one was put into the line.
void suggest(QLineEdit& line, const Choices& choices, bool list, std::function<void()> chosen);

}  // namespace app
