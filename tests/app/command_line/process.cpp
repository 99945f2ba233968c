// SPDX-License-Identifier: Apache-2.0
#include "process.h"

#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <stdexcept>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;

namespace app {
namespace {

/// A pipe whose ends the started program does not inherit by accident.
struct Pipe {
    int read = -1;
    int write = -1;

    Pipe() {
        std::array<int, 2> ends{};
        if (::pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
        read = ends[0];
        write = ends[1];
    }
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;
    ~Pipe() {
        shut(read);
        shut(write);
    }
    static void shut(int& end) {
        if (end >= 0) ::close(end);
        end = -1;
    }
};

std::vector<char*> pointersTo(std::vector<std::string>& texts) {
    std::vector<char*> pointers;
    pointers.reserve(texts.size() + 1);
    for (std::string& text : texts) pointers.push_back(text.data());
    pointers.push_back(nullptr);
    return pointers;
}

pid_t start(const Launch& launch, const Pipe& in, const Pipe& out, const Pipe& err) {
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, in.read, 0);
    if (launch.outputFile.empty())
        posix_spawn_file_actions_adddup2(&actions, out.write, 1);
    else
        posix_spawn_file_actions_addopen(&actions, 1, launch.outputFile.c_str(), O_WRONLY, 0);
    posix_spawn_file_actions_adddup2(&actions, err.write, 2);
    for (const int stream : launch.closed) posix_spawn_file_actions_addclose(&actions, stream);

    // The test ignores SIGPIPE; the program must find it as a shell leaves it.
    posix_spawnattr_t attributes;
    posix_spawnattr_init(&attributes);
    sigset_t defaults;
    sigemptyset(&defaults);
    sigaddset(&defaults, SIGPIPE);
    posix_spawnattr_setsigdefault(&attributes, &defaults);
    posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGDEF);

    std::vector<std::string> words = launch.arguments;
    words.insert(words.begin(), FETTLEMARK_CLI);
    std::vector<std::string> environment = launch.environment;
    for (char** entry = environ; *entry != nullptr; ++entry) environment.emplace_back(*entry);
    pid_t child = -1;
    const int failure = ::posix_spawn(&child, FETTLEMARK_CLI, &actions, &attributes,
                                      pointersTo(words).data(), pointersTo(environment).data());
    posix_spawn_file_actions_destroy(&actions);
    posix_spawnattr_destroy(&attributes);
    if (failure != 0) throw std::runtime_error("fettlemark-cli cannot be started");
    return child;
}

/// Takes what there is; closes the end and says false when there will be no more.
void take(int& end, std::string& into) {
    std::array<char, 65'536> buffer{};
    const ssize_t size = ::read(end, buffer.data(), buffer.size());
    if (size > 0)
        into.append(buffer.data(), static_cast<std::size_t>(size));
    else if (size == 0 || errno != EINTR)
        Pipe::shut(end);
}

class Feeder {
public:
    Feeder(const std::function<std::string()>& source, int& end) : source_(source), end_(end) {
        ::fcntl(end_, F_SETFL, O_NONBLOCK);
        next();
    }
    void feed() {
        const ssize_t size = ::write(end_, piece_.data() + at_, piece_.size() - at_);
        if (size < 0) {
            if (errno != EAGAIN && errno != EINTR) Pipe::shut(end_);
            return;
        }
        at_ += static_cast<std::size_t>(size);
        taken += static_cast<std::size_t>(size);
        if (at_ == piece_.size()) next();
    }
    std::size_t taken = 0;

private:
    void next() {
        piece_ = source_ ? source_() : std::string();
        at_ = 0;
        if (piece_.empty()) Pipe::shut(end_);
    }
    const std::function<std::string()>& source_;
    int& end_;
    std::string piece_;
    std::size_t at_ = 0;
};

}  // namespace

Finished runCli(const Launch& launch) {
    std::signal(SIGPIPE, SIG_IGN);
    Pipe in;
    Pipe out;
    Pipe err;
    if (launch.outputBroken) Pipe::shut(out.read);
    const auto started = std::chrono::steady_clock::now();
    const pid_t child = start(launch, in, out, err);
    Pipe::shut(in.read);
    Pipe::shut(out.write);
    Pipe::shut(err.write);

    Finished finished;
    Feeder feeder(launch.input, in.write);
    while (in.write >= 0 || out.read >= 0 || err.read >= 0) {
        std::array<pollfd, 3> waiting{pollfd{in.write, POLLOUT, 0}, pollfd{out.read, POLLIN, 0},
                                      pollfd{err.read, POLLIN, 0}};
        if (::poll(waiting.data(), waiting.size(), -1) < 0) continue;
        if (waiting[0].revents != 0) feeder.feed();
        if (waiting[1].revents != 0) take(out.read, finished.output);
        if (waiting[2].revents != 0) take(err.read, finished.error);
    }
    int status = 0;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    finished.exitCode = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    finished.bytesTaken = feeder.taken;
    finished.seconds =
        std::chrono::duration<double>(std::chrono::steady_clock::now() - started).count();
    return finished;
}

Finished runCli(std::vector<std::string> arguments) {
    return runCli(Launch{.arguments = std::move(arguments)});
}

Finished runCli(std::vector<std::string> arguments, const std::string& input) {
    Launch launch{.arguments = std::move(arguments)};
    launch.input = [input, given = false]() mutable {
        if (given) return std::string();
        given = true;
        return input;
    };
    return runCli(launch);
}

}  // namespace app
