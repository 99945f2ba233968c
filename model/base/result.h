// SPDX-License-Identifier: Apache-2.0
// What a function returns when its caller, a file, the disk or another program can make it fail.
// Our own mistakes are asserted instead; no exception crosses a module's border.
#pragma once

#include <cassert>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace model {

/// What the person who caused the failure can do about it.
enum class ErrorKind {
    Input,     ///< the input or the call is wrong: correct it and try again
    Refused,   ///< the machine refused: disk full, no permission, locked, unreadable
    Conflict,  ///< somebody else changed the same thing meanwhile
    Damaged,   ///< what was stored is not what was written
};

/// One failure: where, and why. `reason` is a whole English sentence part in which %1, %2 ...
/// stand for `arguments`, so that a screen can translate the sentence and keep the arguments.
struct Error {
    ErrorKind kind = ErrorKind::Input;
    std::string place;  ///< file, file:line or JSON path; empty where there is none
    std::string reason;
    std::vector<std::string> arguments;

    /// "place: reason" in English, on one line.
    [[nodiscard]] std::string message() const;
};

[[nodiscard]] inline Error inputError(std::string place, std::string reason,
                                      std::vector<std::string> arguments = {}) {
    return {ErrorKind::Input, std::move(place), std::move(reason), std::move(arguments)};
}
[[nodiscard]] inline Error refusal(std::string place, std::string reason,
                                   std::vector<std::string> arguments = {}) {
    return {ErrorKind::Refused, std::move(place), std::move(reason), std::move(arguments)};
}

/// A T, or the Error that stood in its way. value() and error() assert which of the two it holds.
template <class T>
class [[nodiscard]] Result {
public:
    Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
    Result(Error error) : held_(std::in_place_index<1>, std::move(error)) {}

    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }

    [[nodiscard]] T& value() & {
        assert(ok());
        return *std::get_if<0>(&held_);
    }
    [[nodiscard]] const T& value() const& {
        assert(ok());
        return *std::get_if<0>(&held_);
    }
    [[nodiscard]] T&& value() && {
        assert(ok());
        return std::move(*std::get_if<0>(&held_));
    }
    [[nodiscard]] const Error& error() const {
        assert(!ok());
        return *std::get_if<1>(&held_);
    }

    T& operator*() & { return value(); }
    const T& operator*() const& { return value(); }
    T* operator->() { return &value(); }
    const T* operator->() const { return &value(); }

private:
    std::variant<T, Error> held_;
};

/// Done, or the Error that stood in its way.
template <>
class [[nodiscard]] Result<void> {
public:
    Result() = default;
    Result(Error error) : error_(std::move(error)), failed_(true) {}

    [[nodiscard]] bool ok() const { return !failed_; }
    explicit operator bool() const { return ok(); }
    [[nodiscard]] const Error& error() const {
        assert(failed_);
        return error_;
    }

private:
    Error error_;
    bool failed_ = false;
};

}  // namespace model
