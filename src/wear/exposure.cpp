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
std::vector<WearSpan> worn_between(Date from, Date end, const std::vector<UsageSpan>& usage,
                                   const std::vector<ShareSpan>& shares) {
  std::vector<WearSpan> spans;
  std::size_t in_usage = span_on(usage, from);
  std::size_t in_shares = 0;
  while (from < end) {
    Date until = end;
    if (in_usage + 1 < usage.size()) until = std::min(until, usage[in_usage + 1].from);
    if (in_shares + 1 < shares.size()) until = std::min(until, shares[in_shares + 1].from);
    add_days(spans, usage[in_usage].factors, shares[in_shares].share * days_between(from, until));
    from = until;
    while (in_usage + 1 < usage.size() && usage[in_usage + 1].from <= from) ++in_usage;
    while (in_shares + 1 < shares.size() && shares[in_shares + 1].from <= from) ++in_shares;
  }
  return spans;
}

}  // namespace

double wear_age(const std::vector<WearSpan>& spans, const FactorVector& beta) {
  double age = 0;
  for (const WearSpan& span : spans) {
    age += span.days * std::exp(log_wear_rate(span.factors, beta));
  }
  return age;
}

Exposures::Exposures(const Clinic& clinic, const ClinicIndex& index, Date today,
                     std::optional<Date> records_begin)
    : today_{today},
      entries_{clinic, today, records_begin},
      usage_{clinic},
      alternation_{clinic, index, today} {}

Exposure Exposures::of(const Unit& unit, Kind kind) const {
  const bool ended = unit.ended_on && *unit.ended_on <= today_;
  const auto entry = entries_.of(unit);
  if (ended && entry && *unit.ended_on <= *entry) return {};
  const Date end = std::max(unit.issued_on, ended ? *unit.ended_on : today_);
  const auto& usage = usage_.spans(unit.patient);
  const auto shares = alternation_.shares(unit, kind, end);
  Exposure exposure;
  exposure.worn_out = ended && unit.end_reason && is_wear(*unit.end_reason);
  if (end > unit.issued_on) {
    exposure.spans = worn_between(unit.issued_on, end, usage, shares);
    exposure.at_end = usage[span_on(usage, end - days{1})].factors;
    if (entry) {
      exposure.before_entry = worn_between(unit.issued_on, std::min(end, *entry), usage, shares);
    }
    return exposure;
  }
  exposure.at_end = usage[span_on(usage, unit.issued_on)].factors;
  if (ended) add_days(exposure.spans, exposure.at_end, 0.5 * shares.front().share);
  return exposure;
}

}  // namespace sparewell::wear
