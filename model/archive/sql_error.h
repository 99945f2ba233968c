// SPDX-License-Identifier: Apache-2.0
// What the database reports, as an error that says what the person can do.
#pragma once

#include <string>

#include "base/result.h"

class QSqlError;

namespace model {

/// `place` is the database's file.
Error sqlError(const QSqlError& error, const std::string& place);

}  // namespace model
