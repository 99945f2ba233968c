// SPDX-License-Identifier: Apache-2.0
#include "signing_in.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <system_error>
#include <unistd.h>

#include "trust/identity.h"

namespace app {
namespace {

/// The longest passphrase, the end of its line, and one byte to see that more follows.
using Buffer = std::array<char, model::kLongestPassphraseBytes + 3>;

class Input {
public:
    explicit Input(const std::string& source)
        : isFile_(source != "-"),
          number_(isFile_ ? ::open(source.c_str(), O_RDONLY | O_CLOEXEC) : STDIN_FILENO),
          failure_(number_ < 0 ? errno : 0) {}
    Input(const Input&) = delete;
    Input& operator=(const Input&) = delete;
    ~Input() {
        if (isFile_ && number_ >= 0) ::close(number_);
    }

    /// Bytes read; negative: errno says why not.
    ssize_t fill(Buffer& buffer) const {
        if (failure_ != 0) {
            errno = failure_;
            return -1;
        }
        std::size_t size = 0;
        while (size < buffer.size()) {
            const ssize_t count = ::read(number_, buffer.data() + size, buffer.size() - size);
            if (count < 0 && errno == EINTR) continue;
            if (count < 0) return -1;
            if (count == 0) break;
            size += static_cast<std::size_t>(count);
        }
        return static_cast<ssize_t>(size);
    }

private:
    bool isFile_;
    int number_;
    int failure_;  ///< why there is no number
};

model::Result<model::SecretBytes> firstLine(const std::string& place, std::string_view text) {
    const auto end = text.find('\n');
    if (end != std::string_view::npos && end + 1 != text.size())
        return model::inputError(place, "must hold the passphrase on its only line");
    if (end != std::string_view::npos) text = text.substr(0, end);
    if (text.ends_with('\r')) text.remove_suffix(1);
    if (text.empty()) return model::inputError(place, "holds no passphrase");
    if (text.size() > model::kLongestPassphraseBytes)
        return model::inputError(place, "holds more than the longest passphrase, %1 bytes",
                                 {std::to_string(model::kLongestPassphraseBytes)});
    return model::SecretBytes(text);
}

}  // namespace

model::Result<model::SecretBytes> passphraseFrom(const Arguments& arguments,
                                                 std::string_view option) {
    const std::string& source = *arguments.value(option);
    const std::string place = source == "-" ? "standard input" : source;
    Buffer buffer{};
    const ssize_t size = Input(source).fill(buffer);
    if (size < 0) {
        const int cause = errno;
        if (cause == ENOENT || cause == ENOTDIR || cause == EISDIR)
            return model::inputError(place, "is no file with a passphrase");
        return model::refusal(place, "cannot be read: %1",
                              {std::generic_category().message(cause)});
    }
    auto passphrase = firstLine(place, {buffer.data(), static_cast<std::size_t>(size)});
    ::explicit_bzero(buffer.data(), buffer.size());
    return passphrase;
}

model::Result<model::SignedIn> signedInFrom(model::Archive& archive, const Arguments& arguments) {
    const auto passphrase = passphraseFrom(arguments);
    if (!passphrase) return passphrase.error();
    auto person = model::signIn(archive, *arguments.value("--person"), *passphrase);
    if (!person && model::isWrongPassphrase(person.error()))
        return model::inputError(*arguments.value("--passphrase"), person.error().reason);
    return person;
}

model::Result<model::UtcTime> dayFrom(const Arguments& arguments, std::string_view option) {
    const std::string& date = *arguments.value(option);
    const auto time = model::timeFrom(date + "T23:59:59Z");
    if (!time)
        return model::inputError(std::string(option), "\"%1\" is no date like 2029-12-31", {date});
    return *time;
}

}  // namespace app
