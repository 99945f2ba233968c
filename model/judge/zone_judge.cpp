// SPDX-License-Identifier: Apache-2.0
#include "judge/zone_judge.h"

#include <algorithm>

#include "judge/forbidden.h"
#include "judge/ultrasonic_zone.h"
#include "limits/words.h"

namespace model {
namespace {

std::string listed(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
    return text;
}

/// The aligned rule that is summed with this linear one, if there is one.
const Rule* alignedPartner(const LimitTable& table, const Rule& rule) {
    const LevelKey* linear = table.keyOf(IndicationClass::Linear);
    const LevelKey* aligned = table.keyOf(IndicationClass::Aligned);
    if (rule.kind != RuleKind::CumulativeLength || linear == nullptr || aligned == nullptr ||
        rule.key != linear->name)
        return nullptr;
    for (const Rule& other : table.rules)
        if (other.kind == rule.kind && other.key == aligned->name) return &other;
    return nullptr;
}

/// A rule as it is applied at some levels: alone, summed with a partner, or as somebody's partner.
struct Application {
    const Rule* rule = nullptr;
    const Rule* partner = nullptr;
};

std::vector<Application> applicationsOf(const LimitTable& table, const Levels& levels) {
    std::vector<Application> applications;
    std::vector<const Rule*> summed;
    const bool together = sumsTogether(table, levels);
    for (const Rule& rule : table.rules) {
        if (!levels.contains(rule.key)) continue;
        const Rule* partner = together ? alignedPartner(table, rule) : nullptr;
        if (partner != nullptr) summed.push_back(partner);
        applications.push_back({&rule, partner});
    }
    std::erase_if(applications, [&](const Application& application) {
        return std::find(summed.begin(), summed.end(), application.rule) != summed.end();
    });
    return applications;
}

bool isDear(const Rule& rule) {
    return rule.framed;
}

}  // namespace

Word wordOf(const ExaminationVerdict& verdict) {
    bool open = !verdict.reasons.empty();
    for (const Check& check : verdict.checks) {
        if (check.passes == false) return Word::NotAcceptable;
        open = open || !check.passes;
    }
    return open ? Word::NotJudged : Word::Acceptable;
}

const Grouped& ZoneJudge::groupedFor(const Levels& levels) {
    const Levels key = groupsAfterRelevance(table()) ? levels : Levels{};
    const auto known = grouped_.find(key);
    if (known != grouped_.end()) return known->second;
    return grouped_.emplace(key, groupFindings(bundle_, levels)).first->second;
}

ExaminationVerdict ZoneJudge::judge(std::size_t member) {
    const Examination& examination = *bundle_.members[member].examination;
    ExaminationVerdict verdict;
    verdict.zone = examination.zone;
    verdict.method = examination.method;
    verdict.stage = examination.stage;
    verdict.repairCycle = examination.repairCycle;
    verdict.repeat = examination.repeat;
    verdict.tableId = table().id;
    verdict.tableRevision = table().revision;
    verdict.tableDigest = table().digest;
    verdict.levels = examination.levels;

    const Grouped& grouped = groupedFor(examination.levels);
    const Vicinity vicinity = vicinityOf(bundle_, member, grouped);
    const ZoneView view(bundle_, member, grouped, vicinity, examination.levels);
    std::optional<UltrasonicZone> ultrasonic;
    if (table().method == Method::Ultrasonic) {
        if (!reflectors_) reflectors_ = reflectorItemsOf(bundle_, grouped);
        ultrasonic.emplace(view, *reflectors_);
    }
    giveStatedReasons(view, verdict);
    if (ultrasonic) {
        ultrasonic->listIndications(verdict);
        ultrasonic->giveReasons(verdict);
    } else {
        listIndications(view, verdict);
        giveReasons(view, verdict);
    }
    const bool applicable = std::find(table().materials.begin(), table().materials.end(),
                                      sheet_.casting.material) != table().materials.end();
    if (applicable) {
        if (ultrasonic)
            ultrasonic->applyRules(verdict);
        else
            applyRules(view, verdict);
    } else {
        verdict.reasons.push_back("the table is not for " +
                                  std::string(word(sheet_.casting.material)));
    }
    if (auto check = forbiddenKindCheck(view)) verdict.checks.push_back(std::move(*check));
    if (applicable && ultrasonic) ultrasonic->findBestLevels(verdict);
    if (applicable && !ultrasonic) findBestLevels(view, verdict);
    giveNotes(view, verdict);
    verdict.word = wordOf(verdict);
    return verdict;
}

void ZoneJudge::listIndications(const ZoneView& view, ExaminationVerdict& verdict) const {
    for (const Indication& indication : view.examination().indications)
        verdict.indications.push_back({indication.id, std::nullopt, false, ""});
    for (std::size_t i = 0; i < bundle_.findings.size(); ++i) {
        if (!view.isOwn(i)) continue;
        const Finding& finding = bundle_.findings[i];
        JudgedIndication& listedOne = verdict.indications[finding.indication];
        listedOne.classified = finding.classified;
        if (!view.grouped->relevant[i]) continue;
        listedOne.considered =
            !finding.classified || view.considers(*finding.classified, finding.length());
        if (const auto group = view.grouped->groupOf[i]) {
            const FindingGroup& joined = view.grouped->groups[*group];
            listedOne.group = joined.id;
            listedOne.considered =
                listedOne.considered || view.considers(joined.classified, joined.length);
        }
    }
    for (const FindingGroup& group : view.grouped->groups) {
        JudgedGroup judged{group.id, group.classified, {}, group.length};
        bool own = false;
        for (const std::size_t finding : group.findings) {
            judged.members.push_back(view.nameOf(finding));
            own = own || view.isOwn(finding);
        }
        if (own) verdict.groups.push_back(std::move(judged));
    }
}

void ZoneJudge::applyRules(const ZoneView& view, ExaminationVerdict& verdict) const {
    bool outside = false;
    for (const Application& application : applicationsOf(table(), *view.levels)) {
        RuleOutcome outcome = applyRule(view, *application.rule, application.partner, Want::Exact);
        if (outcome.check) verdict.checks.push_back(std::move(*outcome.check));
        if (!outcome.leftOut.empty()) verdict.notes.push_back(outcome.leftOut);
        outside = outside || outcome.outside;
    }
    if (outside)
        verdict.reasons.push_back("the thickness of " + toText(view.examination().thickness) +
                                  " mm is outside the table");
}

void ZoneJudge::giveStatedReasons(const ZoneView& view, ExaminationVerdict& verdict) const {
    const Examination& examination = view.examination();
    if (examination.indications.empty() && examination.reflectors.empty() &&
        !examination.noIndications)
        verdict.reasons.push_back("no indication is listed and \"no indications\" is not stated");
    for (const NotExamined& area : examination.notExamined)
        if (area.agreed.empty())
            verdict.reasons.push_back(
                toText(area.area) + " mm2 were not examined without an agreement: " + area.reason);
}

void ZoneJudge::giveReasons(const ZoneView& view, ExaminationVerdict& verdict) const {
    std::vector<std::string> unclassed;
    std::map<IndicationClass, std::vector<std::string>> unordered;
    std::size_t nonLinear = 0;
    std::size_t linear = 0;
    for (std::size_t i = 0; i < bundle_.findings.size(); ++i) {
        const Finding& finding = bundle_.findings[i];
        if (!view.grouped->relevant[i]) continue;
        if (finding.classified && isNonLinear(*finding.classified)) ++nonLinear;
        if (finding.classified == IndicationClass::Linear) ++linear;
        if (!view.isOwn(i)) continue;
        if (!finding.classified) {
            unclassed.push_back(finding.id());
            continue;
        }
        // A group that replaces its members answers for them.
        const auto group = view.grouped->groupOf[i];
        if (group && view.grouped->groups[*group].replaces) continue;
        const LevelKey* key = table().keyOf(*finding.classified);
        if (key == nullptr || !view.levels->contains(key->name))
            unordered[*finding.classified].push_back(finding.id());
    }
    for (const JudgedGroup& group : verdict.groups) {
        const LevelKey* key = table().keyOf(group.classified);
        if (key == nullptr || !view.levels->contains(key->name))
            unordered[group.classified].push_back(group.id);
    }
    if (!unclassed.empty())
        verdict.reasons.push_back("the table's ratio of linear to non-linear is unknown: " +
                                  listed(unclassed));
    for (const auto& [classified, names] : unordered)
        verdict.reasons.push_back("no level is ordered for " + std::string(word(classified)) +
                                  ": " + listed(names));
    const bool anyOwn = !verdict.indications.empty();
    if (anyOwn && table().rows.known == Known::Unknown && nonLinear >= 2)
        verdict.reasons.push_back("how the table forms rows of non-linear indications is unknown");
    if (anyOwn && table().joins.known == Known::Unknown && (linear >= 2 || nonLinear + linear >= 2))
        verdict.reasons.push_back("how the table joins neighbouring indications is unknown");
}

void ZoneJudge::giveNotes(const ZoneView& view, ExaminationVerdict& verdict) const {
    const Examination& examination = view.examination();
    if (!examination.surface) verdict.notes.emplace_back("edges not joined");
    for (std::size_t i = 0; i < bundle_.findings.size(); ++i)
        if (view.isOwn(i) && bundle_.findings[i].source != nullptr &&
            bundle_.findings[i].source->removed) {
            verdict.notes.emplace_back("an examination at stage finish machined is due");
            break;
        }
    if (table().threshold.known == Known::Unknown && !examination.indications.empty())
        verdict.notes.emplace_back(
            "the table's relevance threshold is unknown: all indications "
            "are considered");
}

ZoneJudge::Trial ZoneJudge::tryLevels(const ZoneView& ordered, const Levels& levels,
                                      const std::vector<std::string>& keys) {
    // Only where relevance comes before grouping do other levels group otherwise.
    const Grouped& grouped = groupedFor(levels);
    Vicinity regrouped;
    if (&grouped != ordered.grouped) regrouped = vicinityOf(bundle_, ordered.member, grouped);
    const ZoneView view(bundle_, ordered.member, grouped,
                        &grouped == ordered.grouped ? *ordered.vicinity : regrouped, levels);
    bool unknown = false;
    std::vector<Application> applications = applicationsOf(table(), levels);
    // What needs no frame search first: it often decides.
    std::stable_partition(applications.begin(), applications.end(),
                          [](const Application& a) { return !isDear(*a.rule); });
    for (const Application& application : applications) {
        const auto varied = [&](const Rule* rule) {
            return rule != nullptr && std::find(keys.begin(), keys.end(), rule->key) != keys.end();
        };
        if (!varied(application.rule) && !varied(application.partner)) continue;
        const RuleOutcome outcome =
            applyRule(view, *application.rule, application.partner, Want::Decided);
        if (outcome.outside) return Trial::Fails;
        if (!outcome.check) continue;
        if (outcome.check->passes == false) return Trial::Fails;
        unknown = unknown || !outcome.check->passes;
    }
    return unknown ? Trial::Unknown : Trial::Passes;
}

/// Varies one key at a time, strictest level first; linear and aligned ordered at the same number
/// move together.
void ZoneJudge::findBestLevels(const ZoneView& view, ExaminationVerdict& verdict) {
    const LevelKey* linear = table().keyOf(IndicationClass::Linear);
    const LevelKey* aligned = table().keyOf(IndicationClass::Aligned);
    const bool together = sumsTogether(table(), *view.levels);
    for (const LevelKey& key : table().keys) {
        if (!view.levels->contains(key.name)) continue;
        verdict.bestLevels[key.name] = std::nullopt;
        for (const std::string& level : key.levels) {
            Levels tried = *view.levels;
            tried[key.name] = level;
            std::vector<std::string> keys{key.name};
            if (together && (&key == linear || &key == aligned)) {
                const LevelKey& other = &key == linear ? *aligned : *linear;
                for (const std::string& partner : other.levels)
                    if (levelNumber(partner) == levelNumber(level)) tried[other.name] = partner;
                keys.push_back(other.name);
            }
            const Trial trial = tryLevels(view, tried, keys);
            if (trial == Trial::Unknown) verdict.bestLevelsUnknown.push_back(level);
            if (trial != Trial::Passes) continue;
            verdict.bestLevels[key.name] = level;
            break;
        }
    }
}

}  // namespace model
