/// Months in which more, or fewer, parts of a kind need replacing, where the history shows it.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// Factors on the rate of replacement by calendar month, January first; they average to 1.
struct Season {
  std::array<double, 12> factors{};

  /// The days without a season in which as much is replaced as in the `days` days after `today`.
  [[nodiscard]] double clock(Date today, int days) const;
};

/// Fewer whole years than this show no season, whatever happened in them.
inline constexpr int least_years = 3;

/// Replacements of one kind by calendar year and month, and the days in use that led to them.
struct MonthCounts {
  struct Year {
    std::array<double, 12> replaced{};
    std::array<double, 12> days_in_use{};
  };
  std::vector<Year> years;  ///< whole ones
};

/// The chance that months differ as much when there is no season, against how much the same month
/// differs from year to year: the F ratio of the months' Pearson chi-square to that of months by
/// years, each over its degrees of freedom (analysis of variance of a two-way table of rates;
/// McCullagh and Nelder, Generalized Linear Models, 2nd ed. 1989, ch. 6 for the dispersion, from
/// memory). 1 when years or replacements are too few to say. Waves of parts that were issued
/// together move from year to year, so they raise what it is compared with.
[[nodiscard]] double chance_without_season(const MonthCounts& counts);

/// The factors, each shrunk to 1 as far as its month's count leaves it open. Meaningful where
/// chance_without_season is small.
[[nodiscard]] Season season_of(const MonthCounts& counts);

/// Whole calendar years of a clinic's history up to `today`. A replacement is an ending after which
/// the same item is handed out again: by wear, loss or recall.
[[nodiscard]] std::map<Kind, MonthCounts> month_counts(const Clinic& clinic, Date today);

/// The kinds whose history shows a season: at most 1 % false alarms among them by Benjamini and
/// Hochberg. Others have none.
[[nodiscard]] std::map<Kind, Season> seasons(const Clinic& clinic, Date today);

}  // namespace sparewell::supply
