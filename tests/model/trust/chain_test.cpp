// SPDX-License-Identifier: Apache-2.0
#include "trust/chain.h"

#include <gtest/gtest.h>
#include <vector>

namespace model {
namespace {

// Source: NIST, "Secure Hash Standard" examples for FIPS 180-4 SHA-256, one-block and two-block
// message.
TEST(ChainOracle, RestsOnSha256) {
    EXPECT_EQ(toHex(sha256("abc")),
              "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(toHex(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

// Source: sha256sum (GNU coreutils 9.1) over the 32 bytes of the hash before, followed by the
// row's bytes.
TEST(ChainOracle, HashesThePreviousHashBeforeTheBytes) {
    EXPECT_EQ(toHex(chained(kGenesis, "")),
              "66687aadf862bd776c8fc18b8e9f8e20089714856ee233b3902a591d0d5f2925");
    const Digest first = chained(kGenesis, R"({"a":1})");
    EXPECT_EQ(toHex(first), "b06a229070741292512e8760f470dd7a4c46ccfdf253df781d88dabe58c1ccb1");
    EXPECT_EQ(toHex(chained(first, "{\"b\":\"\xc3\xa9\"}")),
              "79ccf3cfad8b57711ea51d7678c108df870e8054f8f5b7649ef73924f03513d4");
}

struct Row {
    std::int64_t sequence;
    std::string bytes;
    Digest hash;
};

std::vector<Row> threeRows() {
    std::vector<Row> rows;
    Digest previous = kGenesis;
    for (const char* bytes : {"first", "second", "third"}) {
        previous = chained(previous, bytes);
        rows.push_back({static_cast<std::int64_t>(rows.size()) + 1, bytes, previous});
    }
    return rows;
}

/// The place of the first failure; empty where all rows fit.
std::string verified(const std::vector<Row>& rows) {
    ChainVerifier verifier;
    for (const Row& row : rows) {
        const auto result = verifier.add(row.sequence, row.bytes, row.hash);
        if (!result) {
            EXPECT_EQ(result.error().kind, ErrorKind::Damaged);
            return result.error().place;
        }
    }
    return "";
}

TEST(ChainVerifier, AcceptsAnUnalteredHistory) {
    EXPECT_EQ(verified({}), "");
    EXPECT_EQ(verified(threeRows()), "");
    ChainVerifier verifier;
    EXPECT_EQ(verifier.head(), Head());
    const auto rows = threeRows();
    ASSERT_TRUE(verifier.add(1, rows[0].bytes, rows[0].hash));
    EXPECT_EQ(verifier.head(), (Head{1, rows[0].hash}));
}

TEST(ChainVerifier, FindsAnAlteredRow) {
    auto rows = threeRows();
    rows[1].bytes = "sekond";
    EXPECT_EQ(verified(rows), "history row 2");
}

TEST(ChainVerifier, FindsARowWhoseHashWasMadeToFitAlone) {
    auto rows = threeRows();
    rows[1].bytes = "sekond";
    rows[1].hash = chained(rows[0].hash, rows[1].bytes);
    EXPECT_EQ(verified(rows), "history row 3");
}

TEST(ChainVerifier, FindsMissingSwappedAndRepeatedRows) {
    auto rows = threeRows();
    std::swap(rows[1], rows[2]);
    EXPECT_EQ(verified(rows), "history row 2");
    rows = threeRows();
    std::swap(rows[1].bytes, rows[2].bytes);
    EXPECT_EQ(verified(rows), "history row 2");
    rows = threeRows();
    rows.erase(rows.begin());
    EXPECT_EQ(verified(rows), "history row 1");
    rows = threeRows();
    rows.insert(rows.begin() + 1, rows[0]);
    EXPECT_EQ(verified(rows), "history row 2");
}

TEST(ChainVerifier, StaysWhereItFailed) {
    const auto rows = threeRows();
    ChainVerifier verifier;
    ASSERT_TRUE(verifier.add(1, rows[0].bytes, rows[0].hash));
    EXPECT_FALSE(verifier.add(2, "other", rows[1].hash));
    EXPECT_EQ(verifier.head().sequence, 1);
    EXPECT_TRUE(verifier.add(2, rows[1].bytes, rows[1].hash));
}

TEST(Head, IsReadAsItIsPrinted) {
    const Head head{17, sha256("abc")};
    EXPECT_EQ(toText(head), "17:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    const auto again = parseHead(toText(head));
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(*again, head);
    const auto upper =
        parseHead("17:BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD");
    ASSERT_TRUE(upper.ok());
    EXPECT_EQ(*upper, head);
}

TEST(Head, RefusesWhatIsNoHead) {
    const std::string digits(64, 'a');
    for (const std::string& text :
         {std::string(), std::string("17"), std::string("17:"), "17:" + digits + "a",
          "17:" + digits.substr(1), "17:" + digits.substr(1) + "g", "-1:" + digits, ":" + digits,
          "x:" + digits, " 17:" + digits, "17 :" + digits, "99999999999999999999:" + digits}) {
        const auto head = parseHead(text);
        ASSERT_FALSE(head.ok()) << text;
        EXPECT_EQ(head.error().kind, ErrorKind::Input);
    }
}

}  // namespace
}  // namespace model
