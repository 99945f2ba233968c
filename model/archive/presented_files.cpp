// SPDX-License-Identifier: Apache-2.0
#include "archive/presented_files.h"

#include "archive/stored_file.h"
#include "archive/stored_words.h"

namespace model {

Result<std::vector<Error>> PresentedFiles::check(std::int64_t number,
                                                 std::optional<std::string_view> certificate) {
    const auto row = digests_.first(number);
    if (!row) return row.error();
    std::vector<Error> findings;
    if (!*row) return findings;
    std::vector<std::string> digests{digests_.text(0)};
    if (auto endorsed = digests_.textOrNone(1)) digests.push_back(std::move(*endorsed));

    const std::string name = "certificate " + std::to_string(number);
    std::optional<std::string> before;
    const auto checkFollows = [&](std::string_view next) {
        if (before && (next.size() <= before->size() || !next.starts_with(*before)))
            findings.push_back(
                connection_.damaged(name, "does not begin with the file that was signed before"));
    };
    for (const std::string& digest : digests) {
        auto bytes = loadStoredFile(folder_, digest);
        if (!bytes && bytes.error().kind != ErrorKind::Damaged) return bytes.error();
        if (bytes)
            checkFollows(*bytes);
        else
            findings.push_back(connection_.damaged(
                name + " before its release: " + bytes.error().place, bytes.error().reason));
        before = bytes ? std::optional(std::move(*bytes)) : std::nullopt;
    }
    if (certificate) checkFollows(*certificate);
    return findings;
}

Result<std::vector<std::int64_t>> PresentedFiles::unreleased() const {
    SqlStatement statement(connection_,
                           "SELECT number FROM presentation WHERE NOT EXISTS (SELECT 1 FROM "
                           "certificate WHERE certificate.number = presentation.number) "
                           "ORDER BY number");
    if (auto done = statement.run(); !done) return done.error();
    std::vector<std::int64_t> numbers;
    auto read = eachRow(statement, [&](const SqlStatement& each) -> Result<void> {
        numbers.push_back(each.whole(0));
        return {};
    });
    if (!read) return read.error();
    return numbers;
}

}  // namespace model
