// SPDX-License-Identifier: Apache-2.0
// What stands against one field of something typed.
#pragma once

#include <string>

#include "base/result.h"

namespace model {

/// `field` is its name in files, such as "length_mm".
struct FieldError {
    std::string field;
    Error error;
};

}  // namespace model
