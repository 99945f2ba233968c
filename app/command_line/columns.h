// SPDX-License-Identifier: Apache-2.0
// Lines of columns, for people and for other programs to cut apart.
#pragma once

#include <string>
#include <vector>

namespace app {

/// The columns with tabs between them and a line feed at the end. No column is empty ("-" stands
/// for nothing), and none holds a tab or a line end.
std::string lineOf(const std::vector<std::string>& columns);

}  // namespace app
