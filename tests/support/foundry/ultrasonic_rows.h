// SPDX-License-Identifier: Apache-2.0
// A setting and a row of an ultrasonic examination with text in every field, no two alike where
// that can be; they need not fit each other.
#pragma once

#include "record/typed_reflector.h"

namespace foundry {

model::TypedSetting filledSetting();
model::TypedReflector filledReflector();

}  // namespace foundry
