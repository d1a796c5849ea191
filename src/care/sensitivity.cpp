#include "care/sensitivity.hpp"

#include <algorithm>

namespace sparewell::care {
namespace {

/// A path found between what the item holds and what is recorded.
struct Match {
  SubstancePath path;
  bool assumed = false;
  bool upwards = false;

  [[nodiscard]] Verdict verdict() const {
    const bool sure = !assumed && !upwards && path.certain();
    return sure ? Verdict::conflict : Verdict::possible_conflict;
  }
};

/// From what the item holds to the recorded substance, or from the recorded substance up to a group
/// that the item names: a part that names "rubber accelerators" may hold each of them.
void find_matches(std::vector<Match>& found, const std::string& held, const std::string& recorded,
                  bool assumed, const Substances& substances) {
  for (auto& path : substances.path(held, recorded)) {
    found.push_back({std::move(path), assumed, false});
  }
  for (auto& path : substances.path(recorded, held)) {
    const bool upwards = path.names.size() > 1;
    if (path.certain()) found.push_back({std::move(path), assumed, upwards});
  }
  // A material that may hold a whole group may hold each of the group.
  if (!found.empty()) return;
  for (const auto& group : substances.groups_of(recorded)) {
    for (auto& path : substances.path(held, group)) {
      if (!path.certain()) found.push_back({std::move(path), assumed, true});
    }
  }
}

}  // namespace

SensitivityVerdict verdict_of(const Item& item, const Sensitivity& recorded,
                              const SubstanceTable& table) {
  const auto& substances = table.substances;
  std::vector<Match> found;
  for (const auto& held : item.constituents) {
    find_matches(found, held, recorded.substance, false, substances);
  }
  if (item.constituents.empty()) {
    for (const auto& content : table.contents) {
      if (content.material != item.material) continue;
      find_matches(found, content.substance, recorded.substance, true, substances);
    }
  }
  SensitivityVerdict made;
  made.recorded = recorded;
  for (const auto& held : item.constituents) {
    if (!substances.knows(held)) made.unknown.push_back(held);
  }
  if (!substances.knows(recorded.substance)) made.unknown.push_back(recorded.substance);
  const auto gravest = std::ranges::min_element(found, {}, &Match::verdict);
  if (gravest != found.end()) {
    made.verdict = gravest->verdict();
    made.path = gravest->path;
    made.assumed = gravest->assumed;
    made.upwards = gravest->upwards;
  } else {
    const bool answered = !item.constituents.empty() && made.unknown.empty();
    made.verdict = answered ? Verdict::none_known : Verdict::not_declared;
  }
  return made;
}

std::optional<SensitivityDecision> decision_on(const SensitivityVerdict& verdict,
                                               const ItemCode& item,
                                               std::span<const SensitivityDecision> decisions,
                                               Date day) {
  std::optional<SensitivityDecision> found;
  for (const auto& each : decisions) {
    const bool of_this = each.patient == verdict.recorded.patient && each.item == item &&
                         each.substance == verdict.recorded.substance && each.in_force_on(day);
    // Verdicts are ordered from the gravest on.
    if (!of_this || verdict.verdict < each.verdict) continue;
    const auto& noted = verdict.recorded.noted_on;
    if (noted && *noted > each.decided_on) continue;
    if (!found || found->decided_on <= each.decided_on) found = each;
  }
  return found;
}

Gravity gravity(const SensitivityVerdict& verdict) {
  if (!verdict.decided) return gravity(verdict.verdict);
  return verdict.verdict == Verdict::conflict ? Gravity::ask : Gravity::note;
}

Gravity gravity(Verdict verdict) {
  switch (verdict) {
    case Verdict::conflict:
      return Gravity::stops;
    case Verdict::none_known:
      return Gravity::note;
    default:
      return Gravity::ask;
  }
}

std::vector<SensitivityVerdict> check_sensitivities(const Item& item, const PatientRef& patient,
                                                    std::span<const Sensitivity> sensitivities,
                                                    const SubstanceTable& table,
                                                    std::span<const SensitivityDecision> decisions,
                                                    Date day) {
  std::vector<SensitivityVerdict> made;
  for (const auto& recorded : sensitivities) {
    if (recorded.patient != patient) continue;
    made.push_back(verdict_of(item, recorded, table));
    made.back().decided = decision_on(made.back(), item.code, decisions, day);
  }
  std::ranges::stable_sort(made, {}, [](const SensitivityVerdict& verdict) {
    return std::pair{verdict.verdict, verdict.decided.has_value()};
  });
  if (made.empty()) made.emplace_back();
  return made;
}

bool usually_touches_skin(Kind kind) {
  return kind == Kind::liner || kind == Kind::sleeve || kind == Kind::sock;
}

}  // namespace sparewell::care
