#include "billing/leftovers.hpp"

#include <cstdlib>
#include <tuple>

#include "billing/claim_findings.hpp"

namespace sparewell::billing {
namespace {

struct Near {
  WhyAlone why = WhyAlone::nothing_near;
  bool other_code = false;
  bool other_side = false;
  int apart = 0;
  std::size_t place = 0;
  [[nodiscard]] auto order() const { return std::tie(other_code, other_side, apart); }
};

/// How issue and line stand to each other though they are not paired; empty when the codes have
/// nothing in common.
std::optional<Near> near(const BookRules& rules, const Issue& issue, const Billed& billed) {
  const auto code = rules.likeness->of(issue.code, issue.kind, *billed.line);
  if (code == Likeness::none || code == Likeness::unknown) return std::nullopt;
  Near found;
  found.other_code = code == Likeness::same_kind;
  found.other_side = billed.side && *billed.side != issue.side;
  found.apart = std::abs(days_between(issue.day, billed.line->service_date));
  if (likely(issue, billed, *rules.likeness)) {
    found.why = WhyAlone::paired_already;
  } else if (found.apart > farthest_days) {
    found.why = WhyAlone::too_far;
  } else if (found.other_side) {
    found.why = WhyAlone::other_side;
  } else {
    found.why = found.other_code ? WhyAlone::other_code : WhyAlone::too_far;
  }
  return found;
}

template <class Other, class Look>
std::optional<Near> nearest(const std::vector<Other>& others, const Look& look) {
  std::optional<Near> best;
  for (std::size_t i = 0; i < others.size(); ++i) {
    auto found = look(others[i]);
    if (!found || (best && best->order() <= found->order())) continue;
    found->place = i;
    best = found;
  }
  return best;
}

}  // namespace

void add_leftovers(const BookRules& rules, const PatientCase& one,
                   std::vector<Leftover>& leftovers) {
  for (std::size_t i = 0; i < one.issues.size(); ++i) {
    if (one.units_left[i].empty()) continue;
    const Issue& issue = one.issues[i];
    Leftover left;
    left.units = one.units_left[i];
    left.quantity = static_cast<int>(left.units.size());
    const auto line =
        nearest(one.billed, [&](const Billed& billed) { return near(rules, issue, billed); });
    if (line) {
      left.why = line->why;
      left.nearest = one.billed[line->place].position;
    }
    if (issue.standing != Standing::expected) left.why = WhyAlone::need_not;
    leftovers.push_back(std::move(left));
  }
  for (std::size_t j = 0; j < one.billed.size(); ++j) {
    const Billed& billed = one.billed[j];
    const bool money = one.money_left[j] && one.money_left[j]->minor != 0;
    if (one.pieces_left[j] == 0 && !money) continue;
    Leftover left;
    left.claim_line = billed.position;
    left.quantity = one.pieces_left[j];
    left.money = one.money_left[j];
    const auto part =
        nearest(one.issues, [&](const Issue& issue) { return near(rules, issue, billed); });
    if (part) {
      left.why = part->why;
      left.nearest = one.issues[part->place].units.front();
    }
    if (!counts_parts(*rules.codes, *billed.line)) left.why = WhyAlone::no_part;
    if (billed.before_books) left.why = WhyAlone::need_not;
    leftovers.push_back(std::move(left));
  }
}

}  // namespace sparewell::billing
