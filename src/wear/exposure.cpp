#include "wear/exposure.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::wear {
namespace {

void add_days(std::vector<WearSpan>& spans, const FactorVector& factors, double days) {
  if (!(days > 0)) return;
  const auto same = std::ranges::find(spans, factors, &WearSpan::factors);
  if (same == spans.end()) {
    spans.push_back({factors, days});
  } else {
    same->days += days;
  }
}

/// Walks both calendars at once, a piece where neither changes at a time.
void add_life(Exposure& exposure, Date from, Date end, const std::vector<UsageSpan>& usage,
              const std::vector<ShareSpan>& shares) {
  std::size_t in_usage = span_on(usage, from);
  std::size_t in_shares = 0;
  while (from < end) {
    Date until = end;
    if (in_usage + 1 < usage.size()) until = std::min(until, usage[in_usage + 1].from);
    if (in_shares + 1 < shares.size()) until = std::min(until, shares[in_shares + 1].from);
    add_days(exposure.spans, usage[in_usage].factors,
             shares[in_shares].share * days_between(from, until));
    exposure.at_end = usage[in_usage].factors;
    from = until;
    while (in_usage + 1 < usage.size() && usage[in_usage + 1].from <= from) ++in_usage;
    while (in_shares + 1 < shares.size() && shares[in_shares + 1].from <= from) ++in_shares;
  }
}

}  // namespace

double wear_age(const Exposure& exposure, const FactorVector& beta) {
  double age = 0;
  for (const WearSpan& span : exposure.spans) {
    age += span.days * std::exp(log_wear_rate(span.factors, beta));
  }
  return age;
}

Exposures::Exposures(const Clinic& clinic, const ClinicIndex& index, Date today)
    : today_{today}, usage_{clinic}, alternation_{clinic, index, today} {}

Exposure Exposures::of(const Unit& unit, Kind kind) const {
  const bool ended = unit.ended_on && *unit.ended_on <= today_;
  const Date end = std::max(unit.issued_on, ended ? *unit.ended_on : today_);
  const auto& usage = usage_.spans(unit.patient);
  const auto shares = alternation_.shares(unit, kind, end);
  Exposure exposure;
  exposure.worn_out = ended && unit.end_reason && is_wear(*unit.end_reason);
  if (end > unit.issued_on) {
    add_life(exposure, unit.issued_on, end, usage, shares);
    return exposure;
  }
  exposure.at_end = usage[span_on(usage, unit.issued_on)].factors;
  if (ended) add_days(exposure.spans, exposure.at_end, 0.5 * shares.front().share);
  return exposure;
}

}  // namespace sparewell::wear
