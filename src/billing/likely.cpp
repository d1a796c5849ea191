#include <cstdlib>

#include "billing/pairing.hpp"

namespace sparewell::billing {
namespace {

// In days; a whole fortnight off is better than any of these.
constexpr std::int64_t cost_initial = 16;
constexpr std::int64_t cost_side_missing = 20;
constexpr std::int64_t cost_came_back = 40;
constexpr std::int64_t cost_side_differs = 100;
constexpr std::int64_t cost_code_differs = 140;
constexpr std::int64_t cost_code_unknown = 160;
constexpr std::int64_t cost_far = 200;
/// A code that stands nowhere is that of a part only when the day is the same, or nearly.
constexpr int days_of_unknown_code = 3;

}  // namespace

std::int64_t cost_alone_of(const Issue& issue) {
  return issue.standing == Standing::expected ? cost_alone : 0;
}

std::int64_t cost_alone_of(const Billed& billed) {
  return billed.before_books ? 0 : cost_alone;
}

std::optional<Likely> likely(const Issue& issue, const Billed& billed,
                             const CodeLikeness& likeness) {
  const int apart = std::abs(days_between(issue.day, billed.line->service_date));
  if (apart > farthest_days) return std::nullopt;
  const auto code = likeness.of(issue.code, issue.kind, *billed.line);
  if (code == Likeness::none) return std::nullopt;
  const bool far = apart > ordinary_days;
  const bool side_differs = billed.side && *billed.side != issue.side;
  const bool code_differs = code == Likeness::same_kind || code == Likeness::unknown;
  // One thing may be wrong, not two.
  if (static_cast<int>(far) + static_cast<int>(side_differs) + static_cast<int>(code_differs) > 1)
    return std::nullopt;
  if (code == Likeness::unknown && apart > days_of_unknown_code) return std::nullopt;
  Likely found{apart, apart == 0 ? Agreement::exact : Agreement::days_apart};
  const auto note = [&](bool holds, std::int64_t cost, Agreement agreement) {
    if (!holds) return;
    found.cost += cost;
    found.agreement = agreement;
  };
  note(code == Likeness::initial, cost_initial, Agreement::initial_code);
  note(!billed.side, cost_side_missing, Agreement::side_missing);
  note(issue.standing == Standing::came_back, cost_came_back, Agreement::came_back);
  note(side_differs, cost_side_differs, Agreement::side_differs);
  note(code == Likeness::same_kind, cost_code_differs, Agreement::code_differs);
  note(code == Likeness::unknown, cost_code_unknown, Agreement::code_unknown);
  note(far, cost_far, Agreement::far_apart);
  return found;
}

}  // namespace sparewell::billing
