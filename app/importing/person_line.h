// SPDX-License-Identifier: Apache-2.0
// People as lines of fields.
#pragma once

#include <vector>

#include "archive/people.h"
#include "base/field_error.h"
#include "exchange/register_lines.h"

namespace app {

/// What is wrong is added to `errors`, by the line's field; the person is of no use then.
model::Person personFrom(const model::PersonLine& line, std::vector<model::FieldError>& errors);

model::PersonLine lineOf(const model::Person& person);

}  // namespace app
