// SPDX-License-Identifier: Apache-2.0
#include "streams.h"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <optional>
#include <string_view>
#include <unistd.h>

namespace app {
namespace {

constexpr std::size_t kLongestLine = 4000;
constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

/// The bytes of the UTF-8 character at the start of `text`; none if there is none (RFC 3629).
std::optional<std::size_t> characterSize(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const auto continues = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned first = byte(0);
    const unsigned second = byte(1);
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF && continues(1)) return 2;
    if (first >= 0xE0 && first <= 0xEF && continues(1) && continues(2) &&
        !(first == 0xE0 && second < 0xA0) && !(first == 0xED && second > 0x9F))
        return 3;
    if (first >= 0xF0 && first <= 0xF4 && continues(1) && continues(2) && continues(3) &&
        !(first == 0xF0 && second < 0x90) && !(first == 0xF4 && second > 0x8F))
        return 4;
    return std::nullopt;
}

/// Control characters (C0, DEL, C1) and the line and paragraph separators.
bool endsLine(std::string_view character) {
    if (character.size() == 1)
        return static_cast<unsigned char>(character[0]) < 0x20 || character[0] == 0x7F;
    if (character.size() == 2)
        return character[0] == '\xC2' && static_cast<unsigned char>(character[1]) < 0xA0;
    return character == "\xE2\x80\xA8" || character == "\xE2\x80\xA9";
}

}  // namespace

void prepareStreams() {
    std::signal(SIGPIPE, SIG_IGN);
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
        if (::fcntl(stream, F_GETFD) != -1 || errno != EBADF) continue;
        // Opened the wrong way round, so that using it fails. The lowest free number is taken.
        const int flags = stream == STDIN_FILENO ? O_WRONLY : O_RDONLY;
        if (::open("/dev/null", flags) != stream) ::_exit(4);
    }
}

model::Result<void> writeOutput(const std::string& text) {
    const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    const int writeCause = errno;
    const bool flushed = std::fflush(stdout) == 0;
    const int flushCause = errno;
    const bool closed = std::fclose(stdout) == 0;
    if (written && flushed && closed) return {};
    const int cause = !written ? writeCause : !flushed ? flushCause : errno;
    return model::refusal("standard output", "cannot be written: %1", {std::strerror(cause)});
}

std::string asOneLine(const std::string& message) {
    std::string line;
    std::string_view rest = message;
    while (!rest.empty()) {
        if (line.size() > kLongestLine) return line + "...";
        const std::optional<std::size_t> size = characterSize(rest);
        const std::string_view character = rest.substr(0, size.value_or(1));
        if (!size)
            line += kReplacement;
        else if (endsLine(character))
            line += ' ';
        else
            line += character;
        rest.remove_prefix(character.size());
    }
    return line;
}

void writeErrorLine(const std::string& message) {
    const std::string line = asOneLine(message) + "\n";
    // Nobody is left to be told if this fails.
    (void)std::fwrite(line.data(), 1, line.size(), stderr);
}

}  // namespace app
