// SPDX-License-Identifier: Apache-2.0
// What can hurt somebody or spoil a casting at a method, in a few words each.
#pragma once

#include <QStringList>

#include "limits/limit_table.h"

namespace app {

QStringList cautionsFor(model::Method method);

}  // namespace app
