#include "wear/alternation.hpp"

#include <algorithm>

namespace sparewell::wear {
namespace {

bool alternates(Kind kind) {
  return kind == Kind::liner || kind == Kind::sleeve || kind == Kind::sock;
}

/// Turns changes of the count, one an entry, into counts, one entry a date.
template <class Steps>
void accumulate(Steps& steps) {
  std::ranges::sort(steps, {}, [](const auto& step) { return step.from; });
  Steps counts;
  int in_use = 0;
  for (const auto& step : steps) {
    in_use += step.in_use;
    if (!counts.empty() && counts.back().from == step.from) {
      counts.back().in_use = in_use;
    } else {
      counts.push_back({step.from, in_use});
    }
  }
  steps = std::move(counts);
}

template <class Steps>
auto last_step_by(const Steps& steps, Date day) {
  const auto after = std::ranges::upper_bound(steps, day, {}, [](const auto& s) { return s.from; });
  return after == steps.begin() ? steps.end() : after - 1;
}

/// Zero-day lives are not among those counted, but are worn all the same.
double part_of(int in_use, bool counted) {
  return 1.0 / std::max(1, in_use + (counted ? 0 : 1));
}

}  // namespace

std::size_t Alternation::slot(Side side, Kind kind) {
  const std::size_t of_kind = kind == Kind::liner ? 0 : kind == Kind::sleeve ? 1 : 2;
  return static_cast<std::size_t>(side) * alternating_kinds + of_kind;
}

Alternation::Alternation(const Clinic& clinic, const ClinicIndex& index, Date today) {
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (!item || !alternates(item->kind) || unit.share || unit.issued_on > today) continue;
    const bool ended = unit.ended_on && *unit.ended_on <= today;
    if (ended && *unit.ended_on <= unit.issued_on) continue;
    Steps& steps = steps_[unit.patient][slot(unit.side, item->kind)];
    steps.push_back({unit.issued_on, 1});
    if (ended) steps.push_back({*unit.ended_on, -1});
  }
  for (auto& [patient, of_patient] : steps_) {
    for (Steps& steps : of_patient) accumulate(steps);
  }
}

const Alternation::Steps* Alternation::steps(const Unit& unit, Kind kind) const {
  const auto found = steps_.find(unit.patient);
  return found == steps_.end() ? nullptr : &found->second[slot(unit.side, kind)];
}

std::vector<ShareSpan> Alternation::shares(const Unit& unit, Kind kind, Date end) const {
  if (unit.share) return {{unit.issued_on, *unit.share}};
  const Steps* all = alternates(kind) ? steps(unit, kind) : nullptr;
  if (!all) return {{unit.issued_on, 1}};
  std::vector<ShareSpan> spans;
  auto step = last_step_by(*all, unit.issued_on);
  const bool counted = end > unit.issued_on;
  if (step == all->end()) {
    spans.push_back({unit.issued_on, part_of(0, counted)});
    step = all->begin();
  }
  for (; step != all->end() && (spans.empty() || step->from < end); ++step) {
    spans.push_back({step->from, part_of(step->in_use, counted)});
  }
  return spans;
}

double Alternation::share_on(const Unit& unit, Kind kind, Date day) const {
  if (unit.share) return *unit.share;
  const Steps* all = alternates(kind) ? steps(unit, kind) : nullptr;
  if (!all) return 1;
  const auto step = last_step_by(*all, day);
  return step == all->end() ? 1 : part_of(step->in_use, true);
}

}  // namespace sparewell::wear
