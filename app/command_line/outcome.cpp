// SPDX-License-Identifier: Apache-2.0
#include "outcome.h"

namespace app {

ExitCode exitCodeFor(const model::Error& error) {
    return error.kind == model::ErrorKind::Input ? ExitCode::WrongInput : ExitCode::Refused;
}

}  // namespace app
