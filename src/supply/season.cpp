#include "supply/season.hpp"

#include <algorithm>
#include <cmath>

#include <boost/math/distributions/fisher_f.hpp>

#include "supply/renewal.hpp"
#include "wear/false_discovery.hpp"

namespace sparewell::supply {
namespace {

constexpr std::size_t months = 12;
// Fewer in all say nothing about twelve months (our choice).
constexpr double least_replaced = 120;
constexpr double false_alarms = 0.01;

int year_of(Date day) {
  return static_cast<int>(std::chrono::year_month_day{day}.year());
}

std::size_t month_of(Date day) {
  return static_cast<unsigned>(std::chrono::year_month_day{day}.month()) - 1;
}

Date first_of_next_month(Date day) {
  const std::chrono::year_month_day date{day};
  return Date{(date.year() / date.month() + std::chrono::months{1}) / std::chrono::day{1}};
}

double sum(const std::array<double, months>& values) {
  double total = 0;
  for (const double value : values) total += value;
  return total;
}

/// What each month of the year would have had without a season.
std::array<double, months> expected_in(const MonthCounts::Year& year) {
  std::array<double, months> expected{};
  const double in_use = sum(year.days_in_use);
  const double rate = in_use > 0 ? sum(year.replaced) / in_use : 0;
  for (std::size_t m = 0; m < months; ++m) expected[m] = rate * year.days_in_use[m];
  return expected;
}

struct Table {
  std::array<double, months> replaced{};
  std::array<double, months> expected{};
  double by_month = 0;  ///< mean square
  double by_year = 0;   ///< mean square of months by years, 1 at least: as counts differ anyway
  double years = 0;
};

Table table_of(const MonthCounts& counts) {
  Table table;
  for (const auto& year : counts.years) {
    const auto expected = expected_in(year);
    for (std::size_t m = 0; m < months; ++m) {
      table.replaced[m] += year.replaced[m];
      table.expected[m] += expected[m];
    }
  }
  for (std::size_t m = 0; m < months; ++m) {
    if (!(table.expected[m] > 0)) continue;
    const double apart = table.replaced[m] - table.expected[m];
    table.by_month += apart * apart / table.expected[m];
    const double factor = table.replaced[m] / table.expected[m];
    for (const auto& year : counts.years) {
      const double wanted = factor * expected_in(year)[m];
      if (!(wanted > 0)) continue;
      table.by_year += (year.replaced[m] - wanted) * (year.replaced[m] - wanted) / wanted;
    }
  }
  table.years = static_cast<double>(counts.years.size());
  table.by_month /= months - 1;
  table.by_year = std::max(1.0, table.by_year / ((months - 1) * (table.years - 1)));
  return table;
}

void add_days(MonthCounts& counts, int first_year, Date from, Date to) {
  for (Date at = from; at < to;) {
    const Date next = std::min(to, first_of_next_month(at));
    const auto year = static_cast<std::size_t>(year_of(at) - first_year);
    counts.years[year].days_in_use[month_of(at)] += days_between(at, next);
    at = next;
  }
}

}  // namespace

double Season::clock(Date today, int days_ahead) const {
  double clock = 0;
  const Date end = today + days{days_ahead};
  for (Date at = today + days{1}; at <= end;) {
    const Date next = std::min(end + days{1}, first_of_next_month(at));
    clock += factors[month_of(at)] * days_between(at, next);
    at = next;
  }
  return clock;
}

double chance_without_season(const MonthCounts& counts) {
  if (counts.years.size() < least_years) return 1;
  const Table table = table_of(counts);
  if (sum(table.replaced) < least_replaced) return 1;
  const boost::math::fisher_f ratio{months - 1.0, (months - 1.0) * (table.years - 1)};
  return boost::math::cdf(boost::math::complement(ratio, table.by_month / table.by_year));
}

Season season_of(const MonthCounts& counts) {
  const Table table = table_of(counts);
  // How much months truly differ: what is left of their spread after that of counts.
  double spread = 0;
  for (std::size_t m = 0; m < months; ++m) {
    if (!(table.expected[m] > 0)) continue;
    const double apart = table.replaced[m] / table.expected[m] - 1;
    spread += (apart * apart - table.by_year / table.expected[m]) / months;
  }
  Season season;
  season.factors.fill(1);
  if (!(spread > 0)) return season;
  double average = 0;
  for (std::size_t m = 0; m < months; ++m) {
    const double weight = table.expected[m] / table.by_year;  // in counts that vary as Poisson ones
    const double seen = table.expected[m] > 0 ? table.replaced[m] / table.expected[m] : 1;
    season.factors[m] = (1 / spread + weight * seen) / (1 / spread + weight);
    average += season.factors[m] / months;
  }
  for (double& factor : season.factors) factor /= average;
  return season;
}

std::map<Kind, MonthCounts> month_counts(const Clinic& clinic, Date today) {
  if (clinic.units.empty()) return {};
  Date earliest = std::ranges::min(clinic.units, {}, &Unit::issued_on).issued_on;
  if (clinic.settings.records_begin) earliest = std::max(earliest, *clinic.settings.records_begin);
  const int first = year_of(earliest) + 1;  // the first whole one
  const int after = year_of(today + days{1});
  if (after <= first) return {};
  const Date from{std::chrono::year{first} / 1 / 1};
  const Date to{std::chrono::year{after} / 1 / 1};
  const ClinicIndex index{clinic};
  std::map<Kind, MonthCounts> made;
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (item == nullptr) continue;
    MonthCounts& counts = made[item->kind];
    counts.years.resize(static_cast<std::size_t>(after - first));
    add_days(counts, first, std::max(from, unit.issued_on),
             std::min(to, unit.ended_on.value_or(to)));
    if (!unit.ended_on || !unit.end_reason || *unit.ended_on < from || *unit.ended_on >= to)
      continue;
    const bool same_item =
        is_wear(*unit.end_reason) ||
        std::ranges::find(same_item_reasons, *unit.end_reason) != same_item_reasons.end();
    if (!same_item) continue;
    const auto year = static_cast<std::size_t>(year_of(*unit.ended_on) - first);
    ++counts.years[year].replaced[month_of(*unit.ended_on)];
  }
  return made;
}

std::map<Kind, Season> seasons(const Clinic& clinic, Date today) {
  const auto counts = month_counts(clinic, today);
  std::vector<double> chances;
  for (const auto& [kind, of_kind] : counts) chances.push_back(chance_without_season(of_kind));
  const auto adjusted = wear::adjusted_for_false_discoveries(chances);
  std::map<Kind, Season> made;
  std::size_t i = 0;
  for (const auto& [kind, of_kind] : counts) {
    if (adjusted[i++] <= false_alarms) made.emplace(kind, season_of(of_kind));
  }
  return made;
}

}  // namespace sparewell::supply
