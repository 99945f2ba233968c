// SPDX-License-Identifier: Apache-2.0
#include "people/shell.h"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <sys/wait.h>

namespace people {

Folder::Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "fettlemark-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

void Folder::write(const std::string& name, std::string_view bytes) const {
    std::ofstream file(path_ / name, std::ios::binary);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (!file.flush()) throw std::runtime_error("cannot write " + name);
}

std::string Folder::read(const std::string& name) const {
    std::ifstream file(path_ / name, std::ios::binary);
    if (!file) throw std::runtime_error("cannot read " + name);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::string Folder::path(const std::string& name) const {
    return (path_ / name).string();
}

Folder::Outcome Folder::run(const std::string& command) const {
    const std::string whole =
        "cd '" + path_.string() + "' && export LC_ALL=C.UTF-8 && { " + command + "; } 2>&1";
    FILE* pipe = popen(whole.c_str(), "r");
    if (pipe == nullptr) throw std::runtime_error("cannot run " + command);
    Outcome outcome;
    std::array<char, 4096> part{};
    std::size_t size = 0;
    while ((size = fread(part.data(), 1, part.size(), pipe)) > 0)
        outcome.output.append(part.data(), size);
    const int status = pclose(pipe);
    outcome.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
    return outcome;
}

}  // namespace people
