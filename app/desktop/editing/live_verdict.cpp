// SPDX-License-Identifier: Apache-2.0
#include "editing/live_verdict.h"

#include <algorithm>
#include <charconv>

#include "judge/judge.h"

namespace app {
namespace {

/// More rejected rows than this are not sought one by one.
constexpr int kMostRounds = 200;

/// The rows of one examination that can be read, by their index.
struct ReadExamination {
    int examination = 0;
    std::vector<int> rows;
};

/// "examinations[2].indications[0].id" taken apart.
struct Place {
    std::optional<std::size_t> examination;
    std::optional<std::size_t> indication;
    std::string field;
};

std::optional<std::size_t> indexAfter(std::string_view text, std::string_view name) {
    const auto at = text.find(std::string(name) + "[");
    if (at == std::string_view::npos) return std::nullopt;
    const auto* begin = text.data() + at + name.size() + 1;
    std::size_t index = 0;
    const auto [end, status] = std::from_chars(begin, text.data() + text.size(), index);
    if (status != std::errc() || end == begin) return std::nullopt;
    return index;
}

Place placeOf(const std::string& path) {
    Place place;
    place.examination = indexAfter(path, "examinations");
    place.indication = indexAfter(path, "indications");
    if (!place.indication) place.indication = indexAfter(path, "reflectors");
    if (place.indication) {
        const auto dot = path.rfind('.');
        const auto bracket = path.rfind(']');
        if (dot != std::string::npos && dot > bracket) place.field = path.substr(dot + 1);
    }
    return place;
}

class Judging {
public:
    Judging(const model::CastingFile& file, const model::TableSet& tables)
        : file_(file), tables_(tables), dirty_(file.examinations.size(), false) {
        live_.examinations.resize(file.examinations.size());
    }

    LiveVerdict run() {
        readRows();
        for (int round = 0; round < kMostRounds; ++round) {
            const auto judged = judge();
            if (judged) {
                finish(*judged);
                return std::move(live_);
            }
            if (!leaveOut(judged.error())) {
                failAll(judged.error());
                return std::move(live_);
            }
            if (read_.empty()) break;
        }
        markPartial();
        return std::move(live_);
    }

private:
    void readRows() {
        for (std::size_t e = 0; e < file_.examinations.size(); ++e) {
            const auto& draft = file_.examinations[e];
            ReadExamination read{static_cast<int>(e), {}};
            if (draft.header.method == model::Method::Ultrasonic) {
                readEach(draft.reflectors, read, [&](const model::TypedReflector& row) {
                    return model::read(row, draft.settings);
                });
            } else {
                readEach(draft.rows, read,
                         [](const model::TypedIndication& row) { return model::read(row); });
            }
            read_.push_back(std::move(read));
        }
    }

    template <class Row, class Reader>
    void readEach(const std::vector<Row>& rows, ReadExamination& read, Reader reader) {
        for (std::size_t r = 0; r < rows.size(); ++r) {
            if (model::isBlank(rows[r])) continue;
            auto reading = reader(rows[r]);
            if (reading.value) {
                read.rows.push_back(static_cast<int>(r));
                continue;
            }
            dirty_[static_cast<std::size_t>(read.examination)] = true;
            for (auto& error : reading.errors) {
                live_.rowProblems.push_back(
                    {read.examination, static_cast<int>(r), error.field, std::move(error.error)});
            }
        }
    }

    template <class Row>
    static void keepRows(std::vector<Row>& rows, const std::vector<int>& kept) {
        std::vector<Row> all = std::move(rows);
        rows.clear();
        for (const int row : kept) rows.push_back(std::move(all[static_cast<std::size_t>(row)]));
    }

    [[nodiscard]] model::Result<model::Sheet> sheet() const {
        model::CastingFile readable = file_;
        readable.examinations.clear();
        for (const auto& read : read_) {
            auto draft = file_.examinations[static_cast<std::size_t>(read.examination)];
            if (draft.header.method == model::Method::Ultrasonic) {
                keepRows(draft.reflectors, read.rows);
            } else {
                keepRows(draft.rows, read.rows);
            }
            readable.examinations.push_back(std::move(draft));
        }
        return model::sheetOf(readable);
    }

    [[nodiscard]] model::Result<model::Verdict> judge() const {
        const auto readable = sheet();
        if (!readable) return readable.error();
        return model::judge(*readable, tables_);
    }

    /// Leaves out the row or the examination that the judge refused; false: it names none.
    bool leaveOut(const model::Error& error) {
        const Place place = placeOf(error.place);
        if (!place.examination || *place.examination >= read_.size()) return false;
        auto& read = read_[*place.examination];
        dirty_[static_cast<std::size_t>(read.examination)] = true;
        if (place.indication && *place.indication < read.rows.size()) {
            const auto at = read.rows.begin() + static_cast<std::ptrdiff_t>(*place.indication);
            live_.rowProblems.push_back({read.examination, *at, place.field, error});
            read.rows.erase(at);
            return true;
        }
        live_.examinationProblems.push_back({read.examination, error});
        read_.erase(read_.begin() + static_cast<std::ptrdiff_t>(*place.examination));
        return true;
    }

    void failAll(const model::Error& error) {
        for (std::size_t e = 0; e < file_.examinations.size(); ++e) {
            live_.examinationProblems.push_back({static_cast<int>(e), error});
            dirty_[e] = true;
        }
        markPartial();
    }

    /// An examination is partial when it, or one that is judged together with it, is dirty.
    void markPartial() {
        for (std::size_t e = 0; e < file_.examinations.size(); ++e) {
            for (std::size_t other = 0; other < file_.examinations.size(); ++other) {
                if (dirty_[other] && touches(e, other)) live_.examinations[e].partial = true;
            }
        }
    }

    [[nodiscard]] bool touches(std::size_t a, std::size_t b) const {
        if (a == b) return true;
        const auto& one = file_.examinations[a].header;
        const auto& two = file_.examinations[b].header;
        if (one.zone == two.zone) return true;
        return one.surface && two.surface && one.surface->id == two.surface->id;
    }

    void finish(const model::Verdict& verdict) {
        markPartial();
        for (std::size_t i = 0; i < verdict.examinations.size() && i < read_.size(); ++i) {
            auto& live = live_.examinations[static_cast<std::size_t>(read_[i].examination)];
            live.verdict = verdict.examinations[i];
            live.word = live.partial ? std::max(live.verdict->word, model::Word::NotJudged)
                                     : live.verdict->word;
        }
        const bool whole = live_.rowProblems.empty() && live_.examinationProblems.empty();
        if (whole) live_.complete = verdict;
    }

    const model::CastingFile& file_;
    const model::TableSet& tables_;
    std::vector<bool> dirty_;
    std::vector<ReadExamination> read_;
    LiveVerdict live_;
};

}  // namespace

model::Word LiveVerdict::worst() const {
    auto word = examinations.empty() ? model::Word::NotJudged : model::Word::Acceptable;
    for (const auto& examination : examinations) {
        if (examination.verdict && examination.verdict->superseded) continue;
        word = std::max(word, examination.word);
    }
    return word;
}

LiveVerdict judgeLive(const model::CastingFile& file, const model::TableSet& tables) {
    return Judging(file, tables).run();
}

}  // namespace app
