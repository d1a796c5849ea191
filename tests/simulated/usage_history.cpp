#include "simulated/usage_history.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::simulated {
namespace {

using sample::Random;

constexpr double days_a_year = 365.25;
constexpr int announced_days_ahead = 365;

double to_half_hours(double hours, double most) {
  return std::clamp(0.5 * std::round(2 * hours), 0.0, most);
}

/// A job: what may change while the person stays the same.
void draw_work(Usage& usage, bool strong, Random& random) {
  const double before = usage.kneeling_hours.value_or(random.chance(0.5) ? 0 : 5);
  if (strong) {
    usage.kneeling_hours = before > 0 ? 0 : random.whole(4, 7);
  } else {
    usage.kneeling_hours = random.chance(0.55) ? 0 : 0.5 * random.whole(1, 10);
  }
  usage.activity = static_cast<Activity>(1 + random.weighted({0.1, 0.3, 0.4, 0.2}));
  usage.wear_hours = to_half_hours(12 + 2.5 * random.normal(), 18);
}

Usage draw_person(const UsageLaw& law, Date start, Random& random) {
  Usage usage;
  usage.from_date = start;
  draw_work(usage, law.changes_are_strong, random);
  usage.sweating = static_cast<Sweating>(random.weighted({0.2, 0.5, 0.3}));
  usage.impact_sport = random.chance(0.25);
  return usage;
}

}  // namespace

UsageHistory::UsageHistory(const UsageLaw& law, Date start, Date today, Random& random)
    : law_{law} {
  Usage usage = draw_person(law, start, random);
  add(usage);
  const Date last = today + days{law.announced > 0 ? announced_days_ahead : 0};
  if (!(law.changes_a_year > 0)) return;
  while (true) {
    const double gap = random.exponential() * days_a_year / law.changes_a_year;
    if (gap > days_between(usage.from_date, last)) return;
    usage.from_date += days{std::max(1, static_cast<int>(gap))};
    if (usage.from_date > last) return;
    draw_work(usage, law.changes_are_strong, random);
    if (usage.from_date <= today || random.chance(law.announced)) add(usage);
  }
}

void UsageHistory::add(const Usage& usage) {
  spans_.push_back({usage, wear::updated_factors({}, usage)});
}

const UsageHistory::Span& UsageHistory::on(Date day) const {
  const auto after = std::ranges::upper_bound(
      spans_, day, {}, [](const Span& span) { return span.usage.from_date; });
  return after == spans_.begin() ? spans_.front() : *(after - 1);
}

double UsageHistory::wear_rate(Date day, const wear::FactorVector& beta) const {
  return std::exp(wear::log_wear_rate(on(day).factors, beta));
}

void UsageHistory::record(const PatientRef& patient, std::optional<Date> records_begin,
                          Random& random, std::vector<Usage>& recorded,
                          std::vector<Usage>& truth) const {
  for (const Span& span : spans_) {
    Usage known = span.usage;
    known.patient = patient;
    truth.push_back(known);
    if (records_begin && known.from_date < *records_begin) {
      if (&span != &on(*records_begin)) continue;
      known.from_date = *records_begin;
    }
    if (!law_.sport_recorded) known.impact_sport.reset();
    if (law_.kneeling_error_hours > 0) {
      const double error = law_.kneeling_error_hours * random.normal();
      known.kneeling_hours = to_half_hours(*known.kneeling_hours + error, 12);
    }
    recorded.push_back(known);
  }
}

}  // namespace sparewell::simulated
