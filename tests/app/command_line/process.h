// SPDX-License-Identifier: Apache-2.0
// Runs fettlemark-cli as other programs do: as a process with three streams.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace app {

struct Launch {
    std::vector<std::string> arguments;
    /// Standard input, piece by piece; an empty piece ends it. None: empty standard input.
    std::function<std::string()> input = {};
    /// A file that standard output goes to; empty: it is caught.
    std::string outputFile = {};
    /// Nobody reads standard output.
    bool outputBroken = false;
    /// Streams that are closed before the program starts, such as 1.
    std::vector<int> closed = {};
    /// "NAME=value", beside the environment of the test.
    std::vector<std::string> environment = {};
};

struct Finished {
    int exitCode = -1;  ///< 128 + signal where one ended it
    std::string output;
    std::string error;
    std::size_t bytesTaken = 0;  ///< of the input, until the program ended
    double seconds = 0;
};

/// Runs the program that the build made and waits for its end.
Finished runCli(const Launch& launch);
Finished runCli(std::vector<std::string> arguments);
/// The same with `input` as standard input.
Finished runCli(std::vector<std::string> arguments, const std::string& input);

}  // namespace app
