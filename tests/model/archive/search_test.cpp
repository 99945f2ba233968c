// SPDX-License-Identifier: Apache-2.0
// Certificates are found by words and by what they state.
#include "archive/search.h"

#include <algorithm>
#include <random>
#include <set>

#include "archive_fixture.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// What is stated on a row that is put into the table past the program: who may release does not
/// matter to finding.
struct Row {
    std::string serial = "S-17";
    std::string heat = "H 204";
    std::string part = "P-9";
    std::string order = "O-1";
    std::string customer = "First Buyer";
    std::string customerOrder = "FB 4711/20";
    std::string type = "3.1";
    std::string verdict = "acceptable";
    std::string issuedAt = "2026-11-25T09:30:00Z";
    std::optional<std::int64_t> supersedes = {};
};

std::string quoted(const std::string& text) {
    std::string result = "'";
    for (const char c : text) result += c == '\'' ? "''" : std::string(1, c);
    return result + "'";
}

class Search : public ArchiveTest {
protected:
    /// The row's number.
    std::int64_t add(const Row& row) {
        const std::string number = std::to_string(++last_);
        std::string values = number;
        for (const std::string& text :
             {row.serial, row.heat, row.part, row.order, row.customer, row.customerOrder, row.type,
              std::string("en"), row.verdict, row.issuedAt, std::string("B. Release"),
              std::string(64, '0')})
            values += ", " + quoted(text);
        values += ", 1, " + (row.supersedes ? std::to_string(*row.supersedes) : "NULL");
        EXPECT_EQ(raw_.run("INSERT INTO certificate_number VALUES (" + number +
                           "); INSERT INTO certificate (number, casting_serial, heat, part_number, "
                           "order_number, customer, customer_reference, certificate_type, "
                           "language, verdict, issued_at, issued_by, file_sha256, file_bytes, "
                           "supersedes) VALUES (" +
                           values + ")"),
                  SQLITE_OK)
            << raw_.message();
        return last_;
    }
    [[nodiscard]] std::vector<std::int64_t> found(const CertificateSearch& search) const {
        std::vector<std::int64_t> numbers;
        const auto page = findCertificates(*archive_, search);
        EXPECT_THAT(page, Succeeds());
        if (page)
            for (const auto& certificate : page->certificates)
                numbers.push_back(certificate.number);
        return numbers;
    }
    [[nodiscard]] std::vector<std::int64_t> byWords(const std::string& words) const {
        return found({.words = words});
    }

    std::int64_t last_ = 0;
    RawDatabase raw_{path()};
};

TEST_F(Search, ShowsWhatACertificateStates) {
    add({});
    add({.verdict = "not judged", .issuedAt = "2026-11-26T00:00:00Z", .supersedes = 1});
    const auto page = findCertificates(*archive_, {});
    ASSERT_THAT(page, Succeeds());
    ASSERT_EQ(page->certificates.size(), 2U);
    EXPECT_EQ(page->next, std::nullopt);
    const FoundCertificate& newer = page->certificates[0];
    EXPECT_EQ(newer.number, 2);
    EXPECT_EQ(newer.verdict, Word::NotJudged);
    EXPECT_EQ(newer.supersedes, 1);
    EXPECT_EQ(newer.supersededBy, std::nullopt);
    const FoundCertificate& older = page->certificates[1];
    EXPECT_EQ(older.number, 1);
    EXPECT_EQ(older.serial, "S-17");
    EXPECT_EQ(older.heat, "H 204");
    EXPECT_EQ(older.part, "P-9");
    EXPECT_EQ(older.order, "O-1");
    EXPECT_EQ(older.customer, "First Buyer");
    EXPECT_EQ(older.customerOrder, "FB 4711/20");
    EXPECT_EQ(older.type, "3.1");
    EXPECT_EQ(older.verdict, Word::Acceptable);
    EXPECT_EQ(older.issuedAt, "2026-11-25T09:30:00Z");
    EXPECT_EQ(older.issuedBy, "B. Release");
    EXPECT_EQ(older.supersedes, std::nullopt);
    EXPECT_EQ(older.supersededBy, 2);
}

TEST_F(Search, LooksForWordsInEveryFieldButTheVerdict) {
    add({"Alpha-1", "Bravo", "Charlie", "Delta", "Echo Foxtrot", "Golf", "3.2"});
    add({});
    for (const char* word :
         {"alpha", "bravo", "charlie", "delta", "echo", "foxtrot", "golf", "3.2", "Alpha-1"})
        EXPECT_THAT(byWords(word), ElementsAre(1)) << word;
    EXPECT_THAT(byWords("delta alpha-1 FOXTROT"), ElementsAre(1));
    EXPECT_THAT(byWords("delta alpha buyer"), IsEmpty());
    EXPECT_THAT(byWords("acceptable"), IsEmpty());
    EXPECT_THAT(byWords("release"), IsEmpty());
    EXPECT_THAT(byWords(""), ElementsAre(2, 1));
    EXPECT_THAT(byWords(" \t\n "), ElementsAre(2, 1));
}

TEST_F(Search, TakesTheLastWordAsBegunUnlessASpaceFollows) {
    add({.serial = "QF-0001234", .customer = "Harrow Pumps"});
    for (const char* words : {"h", "ha", "harro", "harrow", "harrow p", "pumps har", "qf-0", "0001",
                              "QF-0001234", "qf-00012"})
        EXPECT_THAT(byWords(words), ElementsAre(1)) << words;
    EXPECT_THAT(byWords("harr pumps"), IsEmpty());
    EXPECT_THAT(byWords("harrows"), IsEmpty());
    EXPECT_THAT(byWords("harro "), IsEmpty());
    EXPECT_THAT(byWords("harrow "), ElementsAre(1));
    EXPECT_THAT(byWords("001234"), IsEmpty());
    // The parts of a word with signs in it stand one behind the other.
    EXPECT_THAT(byWords("pumps-harrow"), IsEmpty());
}

TEST_F(Search, IsBegunWithinWordsOfAnyLength) {
    const std::string longWord = "abcdefghijklmnopqrstuvwxyz0123456789";
    add({.customer = longWord});
    for (std::size_t length = 1; length <= longWord.size(); ++length)
        EXPECT_THAT(byWords(longWord.substr(0, length)), ElementsAre(1)) << length;
}

TEST_F(Search, DoesNotMindCaseAndAccents) {
    add({.customer =
             "Gie\xc3\x9f\x65rei Pr\xc3\xbc\x66ung \xc3\x89t\xc3\xa9"});  // Gießerei Prüfung Été
    add({.customer = "\xd0\x9b\xd0\xb8\xd1\x82\xd1\x8c\xd1\x91"});        // Литьё
    for (const char* words : {"prufung", "PR\xc3\x9c\x46UNG", "pru\xcc\x88\x66ung", "ete",
                              "\xc3\xa9te", "e\xcc\x81te\xcc\x81"})
        EXPECT_THAT(byWords(words), ElementsAre(1)) << words;
    EXPECT_THAT(byWords("\xd0\xbb\xd0\xb8\xd1\x82\xd1\x8c"), ElementsAre(2));
}

TEST_F(Search, TakesNothingForASignOfAQuery) {
    add({.order = "NOT", .customer = "OR", .customerOrder = "AND NEAR"});
    add({});
    for (const char* words :
         {"\"", "\"\"", "*", "^", "-", "+", ":", "(", ")", "{", "}", "'", ";", "%", "_", "\\", "?"})
        EXPECT_THAT(byWords(words), IsEmpty()) << words;
    for (const char* words : {"first \"",
                              "\"first",
                              "fir*",
                              "first\"",
                              "^first",
                              "-first",
                              "(first",
                              "first)",
                              "{first}",
                              "* first",
                              "first ^",
                              "first OR",
                              "first'; DROP TABLE certificate; --",
                              "first?",
                              "heat:first",
                              "customer : first",
                              "first NEAR(buyer)",
                              "first + buyer",
                              "NOT first",
                              "fi*rst",
                              "first AND"})
        EXPECT_THAT(findCertificates(*archive_, {.words = words}), Succeeds()) << words;
    EXPECT_THAT(byWords("\"first\""), ElementsAre(2));
    EXPECT_THAT(byWords("first buyer"), ElementsAre(2));
    EXPECT_THAT(byWords("first * buyer"), ElementsAre(2));
    EXPECT_THAT(byWords("first OR or"), IsEmpty());
    EXPECT_THAT(byWords("customer:first"), IsEmpty());
    EXPECT_THAT(byWords("NOT"), ElementsAre(1));
    EXPECT_THAT(byWords("or AND not near"), ElementsAre(1));
    EXPECT_THAT(byWords("NOT first"), IsEmpty());
}

TEST_F(Search, EndsWordsAtWhatIsNoCharacter) {
    add({});
    using std::string_literals::operator""s;
    EXPECT_THAT(byWords("first\0buyer"s), ElementsAre(1));
    EXPECT_THAT(byWords("first\x01\x7f"s), ElementsAre(1));
    EXPECT_THAT(byWords("\xef\xbb\xbf"
                        "first"),
                ElementsAre(1));
    EXPECT_THAT(byWords("first\xef\xbf\xbe\xef\xbf\xbf"), ElementsAre(1));
    EXPECT_THAT(byWords("first\xc2\xa0\xe2\x80\xa8"
                        "buyer"),
                ElementsAre(1));
    EXPECT_THAT(byWords("fi\xe2\x80\x8brst"), IsEmpty());
}

TEST_F(Search, RefusesWordsThatAreNone) {
    add({});
    const auto refused = [&](const std::string& words, const char* why) {
        const auto page = findCertificates(*archive_, {.words = words});
        ASSERT_THAT(page, FailsWith(ErrorKind::Input));
        EXPECT_THAT(page.error().message(), HasSubstr(why));
    };
    refused("\xff", "UTF-8");
    refused("first \xc3", "UTF-8");
    refused("\xed\xa0\x80", "UTF-8");
    refused(std::string(10'000, 'a'), "at most 1000");
    std::string many;
    for (std::size_t i = 0; i < kMostWords; ++i) many += "first ";
    EXPECT_THAT(byWords(many), ElementsAre(1));
    refused(many + "first", "33 words are too many");
    std::string dashed;
    while (dashed.size() + 2 <= kLongestWords) dashed += "a-";
    EXPECT_THAT(byWords(dashed), IsEmpty());
    EXPECT_THAT(byWords(std::string(kLongestWords, '"')), IsEmpty());
}

TEST_F(Search, ComparesWhatIsStatedExactly) {
    add({});
    add({.serial = "S-18",
         .heat = "H 205",
         .part = "P-10",
         .order = "O-2",
         .customer = "Second Buyer",
         .verdict = "not acceptable"});
    add({.customer = "First Buyer Works", .verdict = "not judged"});
    EXPECT_THAT(found({.serial = "S-17"}), ElementsAre(3, 1));
    EXPECT_THAT(found({.heat = "H 205"}), ElementsAre(2));
    EXPECT_THAT(found({.part = "P-10"}), ElementsAre(2));
    EXPECT_THAT(found({.order = "O-2"}), ElementsAre(2));
    EXPECT_THAT(found({.customer = "First Buyer"}), ElementsAre(1));
    EXPECT_THAT(found({.customer = "first buyer"}), IsEmpty());
    EXPECT_THAT(found({.verdict = Word::Acceptable}), ElementsAre(1));
    EXPECT_THAT(found({.verdict = Word::NotAcceptable}), ElementsAre(2));
    EXPECT_THAT(found({.verdict = Word::NotJudged}), ElementsAre(3));
    // Through the index of the words as well.
    EXPECT_THAT(found({.words = "buyer", .customer = "First Buyer"}), ElementsAre(1));
    EXPECT_THAT(found({.words = "buyer", .customer = "first buyer"}), IsEmpty());
    EXPECT_THAT(found({.words = "buyer", .customer = "Buyer"}), IsEmpty());
    EXPECT_THAT(found({.words = "buyer", .verdict = Word::Acceptable}), ElementsAre(1));
    EXPECT_THAT(found({.words = "second", .verdict = Word::NotAcceptable}), ElementsAre(2));
    EXPECT_THAT(found({.words = "first", .verdict = Word::NotAcceptable}), IsEmpty());
    EXPECT_THAT(found({.serial = "S-17", .verdict = Word::NotJudged}), ElementsAre(3));
    EXPECT_THAT(found({.heat = "H 204", .part = "P-9", .order = "O-1"}), ElementsAre(3, 1));
    EXPECT_THAT(found({.heat = "H 204", .part = "P-10"}), IsEmpty());
}

TEST_F(Search, FindsWhatTheIndexOfWordsCannotTellApart) {
    const std::string tall(1000, 'x');
    add({.part = "---", .customer = "*"});
    add({.part = "...", .customer = tall});
    add({.part = "---", .customer = ""});
    add({.part = "\xf0\x9f\x98\x80", .customer = "\""});
    EXPECT_THAT(found({.part = "---", .customer = "*"}), ElementsAre(1));
    EXPECT_THAT(found({.words = "s-17", .part = "---"}), ElementsAre(3, 1));
    EXPECT_THAT(found({.part = "...", .customer = tall}), ElementsAre(2));
    EXPECT_THAT(found({.part = "---", .customer = ""}), ElementsAre(3));
    EXPECT_THAT(found({.part = "\xf0\x9f\x98\x80", .customer = "\""}), ElementsAre(4));
    EXPECT_THAT(found({.words = "s", .customer = "\"", .verdict = Word::Acceptable}),
                ElementsAre(4));
    EXPECT_THAT(found({.words = "-", .verdict = Word::Acceptable}), IsEmpty());
}

TEST_F(Search, GoesByDaysEvenWhereTheClockWasSetBack) {
    for (const char* time : {"2026-10-31T23:59:59Z", "2026-11-01T00:00:00Z", "2024-02-29T12:00:00Z",
                             "2026-11-30T23:59:59Z", "2026-12-01T00:00:00Z", "2031-01-01T00:00:00Z",
                             "2026-11-15T12:00:00Z"})
        add({.issuedAt = time});
    for (const char* words : {"", "buyer", "buyer first"}) {
        const auto between = [&](std::optional<std::string> from, std::optional<std::string> to) {
            return found({.words = words, .from = std::move(from), .to = std::move(to)});
        };
        EXPECT_THAT(between("2026-11-01", "2026-11-30"), ElementsAre(7, 4, 2));
        EXPECT_THAT(between("2026-11-30", "2026-11-30"), ElementsAre(4));
        EXPECT_THAT(between("2026-11-02", std::nullopt), ElementsAre(7, 6, 5, 4));
        EXPECT_THAT(between(std::nullopt, "2026-10-31"), ElementsAre(3, 1));
        EXPECT_THAT(between("2024-02-29", "2024-02-29"), ElementsAre(3));
        EXPECT_THAT(between("2025-01-01", "2025-12-31"), IsEmpty());
        EXPECT_THAT(between("0000-01-01", "9999-12-31"), ElementsAre(7, 6, 5, 4, 3, 2, 1));
        EXPECT_THAT(between("2032-01-01", std::nullopt), IsEmpty());
        EXPECT_THAT(between(std::nullopt, "2020-01-01"), IsEmpty());
    }
    EXPECT_THAT(found({.heat = "H 204", .from = "2026-11-01", .to = "2026-11-30", .before = 7}),
                ElementsAre(4, 2));
}

TEST_F(Search, RefusesDatesThatAreNone) {
    for (const char* date : {"2026-13-01", "2026-02-29", "26-11-2026", "2026-1-1", "today", "",
                             "2026-11-25T09:30:00Z", "+026-11-25"}) {
        EXPECT_THAT(findCertificates(*archive_, {.from = date}), FailsWith(ErrorKind::Input));
        EXPECT_THAT(findCertificates(*archive_, {.to = date}), FailsWith(ErrorKind::Input));
    }
    EXPECT_THAT(findCertificates(*archive_, {.from = "2026-11-26", .to = "2026-11-25"}),
                FailsWith(ErrorKind::Input));
}

TEST_F(Search, GivesEachCertificateOnceOverItsPages) {
    for (int i = 0; i < 10; ++i) add({.heat = i % 3 == 0 ? "H 1" : "H 2"});
    for (const CertificateSearch& search :
         {CertificateSearch{}, CertificateSearch{.words = "buyer"},
          CertificateSearch{.heat = "H 2"}, CertificateSearch{.words = "buyer", .heat = "H 2"},
          CertificateSearch{.words = "buyer", .from = "2026-01-01"},
          CertificateSearch{.heat = "H 2", .to = "2026-12-31"}}) {
        const std::vector<std::int64_t> all = found(search);
        ASSERT_GE(all.size(), 6U);
        EXPECT_TRUE(std::ranges::is_sorted(all, std::greater<>()));
        for (const int size : {1, 2, 3, 5, 10, 11}) {
            CertificateSearch paged = search;
            paged.pageSize = size;
            std::vector<std::int64_t> together;
            do {
                const auto page = findCertificates(*archive_, paged);
                ASSERT_THAT(page, Succeeds());
                EXPECT_LE(page->certificates.size(), static_cast<std::size_t>(size));
                for (const auto& one : page->certificates) together.push_back(one.number);
                if (page->next) {
                    EXPECT_EQ(page->certificates.size(), static_cast<std::size_t>(size));
                    EXPECT_EQ(page->next, together.back());
                    EXPECT_LT(together.size(), all.size());
                }
                paged.before = page->next;
            } while (paged.before);
            EXPECT_EQ(together, all) << size;
        }
    }
}

// Every row is looked at by a search of our own that knows nothing of an index: the words of a
// field are what stands between signs, and everything is ASCII.
TEST_F(Search, OracleFindsWhatLookingAtEveryRowFinds) {
    std::mt19937 random(17);  // the same numbers on every machine
    const auto pick = [&](const auto& from) {
        return std::string(from[random() % std::size(from)]);
    };
    constexpr const char* kWords[] = {"a",  "ab",  "abc", "b",    "bc",
                                      "10", "101", "1",   "Pump", "PUMPS"};
    constexpr const char* kSigns[] = {"-", " ", "/", ". ", "--"};
    constexpr const char* kVerdicts[] = {"acceptable", "not acceptable", "not judged"};
    constexpr const char* kDates[] = {"2025-12-31", "2026-01-01", "2026-02-10", "2026-02-11"};
    const auto text = [&] {
        std::string made = pick(kWords);
        for (auto more = random() % 3; more > 0; --more) made += pick(kSigns) + pick(kWords);
        return made;
    };
    std::vector<Row> rows;
    ASSERT_EQ(raw_.run("BEGIN"), SQLITE_OK);
    for (int i = 0; i < 300; ++i) {
        rows.push_back({"S" + text(), pick(kWords), pick(kWords), text(), text(), text(), "3.1",
                        pick(kVerdicts), pick(kDates) + "T10:00:00Z"});
        add(rows.back());
    }
    ASSERT_EQ(raw_.run("COMMIT"), SQLITE_OK);

    const auto tokens = [](const std::string& from) {
        std::vector<std::string> all(1);
        for (const char c : from) {
            if (std::isalnum(static_cast<unsigned char>(c)))
                all.back() += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
            else if (!all.back().empty())
                all.emplace_back();
        }
        if (all.back().empty()) all.pop_back();
        return all;
    };
    // `word` (one or several tokens) stands in a row of the field's tokens.
    const auto stands = [&](const std::string& field, const std::string& word, bool begun) {
        const auto in = tokens(field);
        const auto sought = tokens(word);
        for (std::size_t start = 0; start + sought.size() <= in.size(); ++start) {
            bool fits = true;
            for (std::size_t i = 0; i < sought.size(); ++i) {
                const bool last = begun && i + 1 == sought.size();
                fits = fits &&
                       (last ? in[start + i].starts_with(sought[i]) : in[start + i] == sought[i]);
            }
            if (fits) return true;
        }
        return false;
    };
    int withSomething = 0;
    for (int round = 0; round < 2000; ++round) {
        CertificateSearch search;
        search.pageSize = 1000;
        std::vector<std::string> words;
        for (auto count = random() % 3; count > 0; --count)
            words.push_back(random() % 3 == 0 ? pick(kWords) + "-" + pick(kWords) : pick(kWords));
        for (const std::string& word : words)
            search.words += (search.words.empty() ? "" : " ") + word;
        const bool begun = random() % 2 == 0;
        if (!begun && !search.words.empty()) search.words += " ";
        const Row& model = rows[random() % rows.size()];
        if (random() % 4 == 0) search.heat = model.heat;
        if (random() % 4 == 0) search.part = model.part;
        if (random() % 6 == 0) search.customer = model.customer;
        if (random() % 4 == 0) search.verdict = Word::NotAcceptable;
        if (random() % 4 == 0) search.from = pick(kDates);
        if (random() % 4 == 0) search.to = pick(kDates);
        if (search.from && search.to && *search.to < *search.from)
            std::swap(search.from, search.to);

        std::vector<std::int64_t> expected;
        for (std::size_t i = rows.size(); i-- > 0;) {
            const Row& row = rows[i];
            bool fits = (!search.heat || row.heat == *search.heat) &&
                        (!search.part || row.part == *search.part) &&
                        (!search.customer || row.customer == *search.customer) &&
                        (!search.verdict || row.verdict == "not acceptable") &&
                        (!search.from || row.issuedAt.substr(0, 10) >= *search.from) &&
                        (!search.to || row.issuedAt.substr(0, 10) <= *search.to);
            for (std::size_t w = 0; w < words.size() && fits; ++w) {
                bool somewhere = false;
                for (const std::string& field : {row.serial, row.heat, row.part, row.order,
                                                 row.customer, row.customerOrder, row.type})
                    somewhere =
                        somewhere || stands(field, words[w], begun && w + 1 == words.size());
                fits = somewhere;
            }
            if (fits) expected.push_back(static_cast<std::int64_t>(i) + 1);
        }
        withSomething += expected.empty() ? 0 : 1;
        ASSERT_EQ(found(search), expected) << "\"" << search.words << "\"";
    }
    EXPECT_GT(withSomething, 200);
}

class SearchIndex : public Search {
protected:
    void SetUp() override { fill(); }
    static constexpr char kFinding[] = "search index: does not agree with the certificates";
};

TEST_F(SearchIndex, IsFoundWantingAndMadeAnew) {
    EXPECT_THAT(findings(), Not(testing::Contains(HasSubstr("search index"))));
    add({});
    ASSERT_THAT(byWords("buyer"), ElementsAre(1));
    constexpr char kWordsTakenOut[] =
        "INSERT INTO certificate_words (certificate_words, rowid, customer) "
        "VALUES ('delete', 1, 'First Buyer')";
    for (const char* damage :
         {"INSERT INTO certificate_words (certificate_words) VALUES ('delete-all')", kWordsTakenOut,
          "INSERT INTO certificate_words (rowid, customer) VALUES (7, 'Nobody')",
          "UPDATE certificate_words_docsize SET id = 9",
          "DELETE FROM certificate_words_data WHERE id > 10"}) {
        ASSERT_EQ(raw_.run(damage), SQLITE_OK) << raw_.message();
        EXPECT_THAT(findings(), testing::Contains(HasSubstr(kFinding))) << damage;
        ASSERT_THAT(rebuildSearchIndex(*archive_, actor_), Succeeds());
        EXPECT_THAT(findings(), Not(testing::Contains(HasSubstr("search index")))) << damage;
        EXPECT_THAT(byWords("buyer"), ElementsAre(1)) << damage;
    }
    const auto history = archive_->history(1, 1000);
    EXPECT_EQ(history->back().action, "search index rebuilt");
}

TEST_F(SearchIndex, DoesNotFollowARowThatIsChangedPastTheProgram) {
    add({});
    raw_.dropTriggers();
    ASSERT_EQ(raw_.run("UPDATE certificate SET customer = 'Other'"), SQLITE_OK);
    EXPECT_THAT(byWords("other"), IsEmpty());
    EXPECT_THAT(findings(), testing::Contains(HasSubstr("certificate 1")));
}

TEST_F(SearchIndex, IsCheckedWhileAnotherProgramWrites) {
    add({});
    ASSERT_EQ(raw_.run("BEGIN IMMEDIATE"), SQLITE_OK);
    const auto verified = reopened().verify();
    EXPECT_THAT(verified, Succeeds());
    ASSERT_EQ(raw_.run("ROLLBACK"), SQLITE_OK);
    // Nothing of the check is left behind.
    EXPECT_THAT(archive_->reserveCertificateNumber(actor_), Succeeds());
    EXPECT_THAT(byWords("buyer"), ElementsAre(1));
}

}  // namespace
}  // namespace model
