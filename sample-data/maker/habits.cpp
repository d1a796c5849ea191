#include "habits.hpp"

#include <algorithm>

#include "calendar.hpp"

namespace sparewell::sample {
namespace {

double half_hours(double hours) {
  return static_cast<int>(hours * 2 + 0.5) / 2.0;
}

double kneeling(Random& random) {
  if (random.chance(0.7)) return half_hours(random.uniform(0, 0.8));
  return half_hours(std::min(5.0, 1 + random.exponential()));
}

Usage first_row(const PatientRef& patient, Date joined, Random& random) {
  Usage usage;
  usage.patient = patient;
  usage.from_date = joined;
  usage.activity = static_cast<Activity>(random.weighted({0.03, 0.17, 0.38, 0.34, 0.08}));
  usage.kneeling_hours = kneeling(random);
  usage.wear_hours =
      usage.activity == Activity::k0 ? 4.0 : half_hours(12 + 2 * std::max(-2.5, random.normal()));
  usage.sweating = static_cast<Sweating>(random.weighted({0.2, 0.6, 0.2}));
  usage.impact_sport = usage.activity >= Activity::k3 && random.chance(0.25);
  if (random.chance(0.08)) usage.kneeling_hours.reset();
  if (random.chance(0.08)) usage.wear_hours.reset();
  if (random.chance(0.08)) usage.sweating.reset();
  if (random.chance(0.05)) usage.impact_sport.reset();
  if (random.chance(0.03)) usage.activity.reset();
  return usage;
}

Usage change_on(const PatientRef& patient, Date day) {
  Usage usage;
  usage.patient = patient;
  usage.from_date = day;
  return usage;
}

/// Sweats more from June to the end of September, every year.
void add_summers(std::vector<Usage>& rows, const PatientRef& patient, Date joined, Date until) {
  for (int year = year_of(joined); year <= year_of(until); ++year) {
    for (const bool begins : {true, false}) {
      const Date day = begins ? make_date(year, 6, 1) : make_date(year, 10, 1);
      if (day <= joined || day > until) continue;
      rows.push_back(change_on(patient, day));
      rows.back().sweating = begins ? Sweating::high : Sweating::normal;
    }
  }
}

/// A change of job, of training or of strength on some day in between.
void add_change(std::vector<Usage>& rows, const PatientRef& patient, Date joined, Date until,
                Random& random) {
  const int span = days_between(joined, until);
  if (span < 60) return;
  Usage change = change_on(patient, joined + days{random.whole(30, span)});
  switch (random.weighted({0.5, 0.2, 0.3})) {
    case 0:
      change.kneeling_hours = kneeling(random);
      change.wear_hours = half_hours(random.uniform(9, 16));
      break;
    case 1:
      change.impact_sport = random.chance(0.5);
      break;
    default:
      change.activity = static_cast<Activity>(random.whole(1, 4));
      break;
  }
  rows.push_back(change);
}

}  // namespace

std::vector<Usage> make_usage(const PatientRef& patient, Date joined, Date until, Random& random) {
  std::vector<Usage> rows{first_row(patient, joined, random)};
  if (random.chance(0.15)) add_summers(rows, patient, joined, until);
  while (random.chance(0.4)) add_change(rows, patient, joined, until, random);
  const auto earlier = [](const Usage& a, const Usage& b) { return a.from_date < b.from_date; };
  std::ranges::stable_sort(rows, earlier);
  const auto same_day = [](const Usage& a, const Usage& b) { return a.from_date == b.from_date; };
  rows.erase(std::ranges::unique(rows, same_day).begin(), rows.end());
  return rows;
}

}  // namespace sparewell::sample
