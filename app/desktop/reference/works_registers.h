// SPDX-License-Identifier: Apache-2.0
// What tests are made with, by whom and by which procedure, as registers of the reference
// workplace.
#pragma once

#include "reference/register.h"

namespace app {

Register equipmentRegister();
Register checkRegister();
Register consumableRegister();
Register procedureRegister();
Register qualificationRegister();
Register eyeTestRegister();
Register authorisationRegister();

}  // namespace app
